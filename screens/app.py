"""The app: it joins the store, the clock and what is in front, and does nothing else."""

from dataclasses import replace
from datetime import datetime
from pathlib import Path
from typing import Any

from kivy.base import ExceptionManager
from kivy.clock import Clock
from kivy.core.window import Window
from kivy.metrics import Metrics
from kivymd.app import MDApp
from kivymd.theming import ThemeManager

from logic.store import Clock as TellsTime
from logic.store.opening import open_store
from screens import environment
from screens.acts import Examples, Settle
from screens.front import Front
from screens.paper.paper import Paper
from screens.phone.text_size import text_scale
from screens.theme import theme
from screens.trouble import TellsTrouble
from screens.update import update
from screens.world import open_world


def _own_colours(manager: ThemeManager, *_: object) -> None:
    """Stand in for KivyMD's colour scheme, which is generated at each start; our palettes are data."""
    manager.backgroundColor = theme.ground
    manager.primaryColor = theme.main


ThemeManager.set_colors = _own_colours


def now() -> datetime:
    """Return the time here with its offset from UTC."""
    return datetime.now().astimezone()


class DeckhandApp(MDApp):
    """Deckhand. `data` is the folder of its file; `clock` tells the time of what is recorded."""

    title = "Deckhand"

    def __init__(self, data: Path, clock: TellsTime = now, *, demo: bool = False, **kwargs: Any) -> None:  # noqa: ANN401
        """Open the store and read what was in use last."""
        super().__init__(**kwargs)
        self.theme_cls.theme_style_switch_animation = False
        self.store = open_store(data, clock)
        world = open_world(self.store, clock)
        if self.store.get("person") is None and (scale := text_scale()) != world.person.text:
            # Until the person chooses a size, text is as large as on the phone's own pages.
            world = update(world, Settle({"text": scale}))
        self._world = update(world, Examples()) if demo and not self.store.boards() else world

    def build(self) -> Paper:
        """Return the paper. What the first page does not need is loaded once its frame stands."""
        self.front = Front(self._world)
        self._tells = TellsTrouble(self.front)
        ExceptionManager.add_handler(self._tells)
        Window.bind(on_flip=self._first_frame_stands)
        return self.front.paper

    def _first_frame_stands(self, *_: object) -> None:
        Window.unbind(on_flip=self._first_frame_stands)
        Clock.schedule_once(lambda *_: self.front.warm_up(), 0.1)

    def open_settings(self, *_: object) -> bool:
        """Keep Kivy's own settings panel shut: ours is a page."""
        return False

    def on_pause(self) -> bool:
        """Let the phone put the app away: everything is saved already."""
        from screens.reminder import remind  # noqa: PLC0415  (nobody is reminded at the start)

        remind(replace(self.front.world))
        return True

    def on_resume(self) -> None:
        """Take up what may have changed meanwhile, at the next frame: only then does the window have its graphics back."""
        Clock.schedule_once(self._wake, 0)

    def _wake(self, *_: object) -> None:
        before = Metrics.density
        environment.phone_metrics()
        self.front.wake(anew=Metrics.density != before)

    def on_stop(self) -> None:
        """Close the file and let go of the window."""
        ExceptionManager.remove_handler(self._tells)
        self.front.release()
        self.store.close()
