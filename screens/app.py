"""The app: it joins the store, the clock and what is in front, and does nothing else."""

from contextlib import suppress
from dataclasses import replace
from datetime import datetime
from pathlib import Path
from typing import Any

from kivy.app import App
from kivy.base import ExceptionManager
from kivy.clock import Clock
from kivy.core.window import Window
from kivy.metrics import Metrics

from logic.store import Clock as TellsTime
from logic.store.errors import CannotStore
from logic.store.opening import open_store
from screens import environment
from screens.acts import Act
from screens.acts.boards import Examples
from screens.acts.keeping import Settle
from screens.front import Front
from screens.paper.paper import Paper
from screens.phone.configuration import text_scale
from screens.theme import theme
from screens.trouble import TellsTrouble, TryAgain, trouble_page
from screens.update import update
from screens.words.storage import CANNOT_OPEN
from screens.world import World, open_world


def now() -> datetime:
    """Return the time here with its offset from UTC."""
    return datetime.now().astimezone()


class DeckhandApp(App):
    """Deckhand. `data` is the folder of its file; `clock` tells the time of what is recorded."""

    title = "Deckhand"
    root: Any

    def __init__(self, data: Path, clock: TellsTime = now, *, demo: bool = False, **kwargs: Any) -> None:  # noqa: ANN401
        """Open the store and read what was in use last. `problem` is why not, where it cannot be opened."""
        super().__init__(**kwargs)
        self._data, self._clock, self._demo = data, clock, demo
        self.problem: Exception | None = None
        self._open()

    def _open(self) -> None:
        try:
            self.store = open_store(self._data, self._clock)
            self._world = self._first_world()
        except CANNOT_OPEN as problem:
            self.problem = problem
        else:
            self.problem = None

    def _first_world(self) -> World:
        world = open_world(self.store, self._clock)
        if self.store.get("person") is None and (scale := text_scale()) != world.person.text:
            # Until the person chooses a size, text is as large as on the phone's own pages.
            world = update(world, Settle({"text": scale}))
        return update(world, Examples()) if self._demo and not self.store.boards() else world

    def build(self) -> Paper:
        """Return the paper. What the first page does not need is loaded once its frame stands."""
        if self.problem is not None:
            return self._trouble(self.problem)
        self.front = Front(self._world)
        self._tells = TellsTrouble(self.front)
        ExceptionManager.add_handler(self._tells)
        Window.bind(on_flip=self._first_frame_stands)
        return self.front.paper

    def _trouble(self, problem: Exception) -> Paper:
        Window.clearcolor = theme.colour("ground")
        paper = Paper(self._try_again)
        paper.show(trouble_page(problem), "trouble", back=False)
        return paper

    def _try_again(self, act: Act) -> None:
        """Open the data once more, and go on with what came of it."""
        if not isinstance(act, TryAgain):
            return
        self._open()
        Window.remove_widget(self.root)
        self.root = self.build()
        Window.add_widget(self.root)

    def _first_frame_stands(self, *_: object) -> None:
        Window.unbind(on_flip=self._first_frame_stands)
        Clock.schedule_once(lambda *_: self.front.warm_up(), 0.1)

    def open_settings(self, *_: object) -> bool:
        """Keep Kivy's own settings panel shut: ours is a page."""
        return False

    def on_pause(self) -> bool:
        """Let the phone put the app away: everything is saved already."""
        if self.problem is None:
            from screens.reminder import remind  # noqa: PLC0415  (nobody is reminded at the start)

            remind(replace(self.front.world))
            self._keep_copy()
        return True

    def _keep_copy(self) -> None:
        """Keep a copy of everything aside once a week. Where there is no room for one, the data itself is what counts.

        It is kept while the app goes away or ends: no fault of it may hold that up.
        """
        from logic.exchange.copies import keep_weekly  # noqa: PLC0415  (not wanted at the start)

        try:
            with suppress(CannotStore, OSError):
                keep_weekly(self.store, self._clock())
        except Exception as problem:  # noqa: BLE001  (said above)
            self.front.note(problem)

    def on_resume(self) -> None:
        """Take up what may have changed meanwhile, at the next frame: only then does the window have its graphics back."""
        Clock.schedule_once(self._wake, 0)

    def _wake(self, *_: object) -> None:
        if self.problem is not None:
            return
        before = Metrics.density
        environment.phone_metrics()
        self.front.wake(anew=Metrics.density != before)

    def on_stop(self) -> None:
        """Close the file and let go of the window."""
        if self.problem is not None:
            return
        self._keep_copy()
        ExceptionManager.remove_handler(self._tells)
        self.front.release()
        self.store.close()
