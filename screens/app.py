"""The app: it joins the store, the clock and the shell, and does nothing else."""

from datetime import datetime
from pathlib import Path
from typing import Any

from kivy.base import ExceptionManager
from kivy.clock import Clock
from kivy.core.window import Window
from kivymd.app import MDApp
from kivymd.theming import ThemeManager

from logic.store import Clock as TellsTime
from logic.store.opening import open_store
from screens.phone.daylight import theme_of
from screens.reminder import remind
from screens.shell import Shell
from screens.state import State
from screens.theme import theme
from screens.trouble import TellsTrouble


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
        """Open the store and the state."""
        super().__init__(**kwargs)
        self.theme_cls.theme_style_switch_animation = False
        self.store = open_store(data, clock)
        self.state = State(self.store, clock)
        if demo and not self.state.boards():
            self.state.add_demo_boards()
        self.state.bind(person=self._dress)
        self._dress()

    def _dress(self, *_: object) -> None:
        theme.apply(theme_of(self.state.person), self.state.person.text)

    def build(self) -> Shell:
        """Return the shell. What the first screen does not need is loaded once its frame stands."""
        Window.clearcolor = theme.ground
        self.shell = Shell(self.state)
        self._tells = TellsTrouble(self.shell)
        ExceptionManager.add_handler(self._tells)
        Window.bind(on_flip=self._first_frame_stands)
        return self.shell

    def _first_frame_stands(self, *_: object) -> None:
        Window.unbind(on_flip=self._first_frame_stands)
        Clock.schedule_once(lambda *_: self._warm_up(), 0.1)

    def _warm_up(self) -> None:
        """Load what the first screen did not need, so that the first page and the first number typed do not wait for it."""
        from logic.units import registry  # noqa: PLC0415  (kept off the path to the first frame)

        registry()
        self.shell.warm_up()

    def open_settings(self, *_: object) -> bool:
        """Keep Kivy's own settings panel shut: ours is a page."""
        return False

    def on_pause(self) -> bool:
        """Let the phone put the app away: everything is saved already."""
        remind(self.state)
        return True

    def on_resume(self) -> None:
        """Follow the phone's own theme, which may have changed meanwhile."""
        self._dress()

    def on_stop(self) -> None:
        """Close the file and let go of the window."""
        ExceptionManager.remove_handler(self._tells)
        self.shell.release()
        self.store.close()
