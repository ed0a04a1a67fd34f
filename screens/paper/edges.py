"""Keeps a paper beside the system's bars and above its keyboard, as the phone turns and the keyboard comes and goes."""

from typing import Any

from kivy.clock import Clock
from kivy.core.window import Window

from screens.phone import bars

OFTEN, SOON = 0.2, 0.3
"""Seconds between looks at the keyboard while one writes, and until the first look after a change."""
FIRST = 0.45
"""Share of the height that the keyboard is taken to cover until it has been seen: what is written stands above it at once."""


class Edges:
    """Reads what is covered when the window changes, when the app comes back, and while one writes."""

    def __init__(self, paper: Any) -> None:  # noqa: ANN401  (the paper; see `Paper.keep_free`)
        """Read what is covered now. Where Android does not tell its keyboard, it moves the window up to the field itself."""
        self._paper = paper
        self._keyboard = 0.0
        """How high the keyboard stood last."""
        self._soon = Clock.create_trigger(lambda *_: self.read(), SOON)
        self._while = Clock.create_trigger(lambda *_: self.read(), OFTEN, interval=True)
        Window.softinput_mode = "below_target"
        Window.bind(on_resize=self._resized)
        paper.bind(writing=self._writing)
        self.read()

    def read(self) -> None:
        """Read what is covered and have the page laid out beside it. Nothing moves under a finger."""
        paper = self._paper
        if paper.pressed:
            self._soon()
            return
        covered = bars.covered()
        writes = paper.writing is not None
        if writes and covered.keyboard:
            self._keyboard = covered.keyboard
        paper.keep_free(covered.bars, covered.keyboard if writes else 0.0)

    def _resized(self, *_: object) -> None:
        # The insets follow a moment after the size.
        self.read()
        self._soon()

    def _writing(self, paper: Any, writing: object) -> None:  # noqa: ANN401  (as above)
        if not bars.tells_keyboard():
            return
        self._while.cancel()
        self._soon.cancel()
        if writing is None:
            self._soon()
            return
        paper.keep_free(paper.free, self._keyboard or paper.height * FIRST)
        Clock.schedule_once(self._watch, SOON)

    def _watch(self, *_: object) -> None:
        if self._paper.writing is not None:
            self.read()
            self._while()

    def release(self) -> None:
        """Look no more."""
        self._soon.cancel()
        self._while.cancel()
        Clock.unschedule(self._watch)
        Window.unbind(on_resize=self._resized)
