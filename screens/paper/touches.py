"""Fingers on the paper: a press is shown at once, done when the finger lifts, and repeated while it is held."""

from collections.abc import Callable
from dataclasses import dataclass
from typing import Any

from kivy.clock import Clock
from kivy.metrics import dp
from kivy.uix.widget import Widget

from screens.blocks import Block
from screens.paper.parts import Parts
from screens.paper.sheet import Touch

SHOWN = 0.12
"""Seconds for which a press is shown at least."""
HOLD, AGAIN = 0.45, 0.12
"""Seconds until a held key repeats, and between repeats."""
TREMBLE = 24
"""How far a finger may tremble, in dp."""


@dataclass
class Press:
    """A finger that is down on an area."""

    view: Any
    touch: Touch
    block: Block
    x: float
    y: float
    began: float
    top: float
    """Where the block's upper edge was in the window: it stays there."""
    repeated: int = 0


class Touches:
    """Hears one finger. `do` does what an area of a block stands for; `now` finds a block of the page as it is by its key."""

    def __init__(
        self, parts: Parts, do: Callable[[Block, Touch], None], now: Callable[[str], Block | None]
    ) -> None:
        """Begin with no finger down."""
        self.parts, self._do, self._now = parts, do, now
        self.press: Press | None = None
        self._repeat = Clock.create_trigger(self._held, HOLD)

    def down(self, touch: Any) -> None:  # noqa: ANN401  (Kivy's touch)
        """Show the press at once; whether it counts is known when the finger lifts."""
        found = self.parts.at(*touch.pos)
        if found is None or self.press is not None or self.parts.deaf_for(found[0]):
            return
        view, area, block = found
        top = view.to_window(view.x, view.top)[1] if isinstance(view.parent, Widget) else view.top
        self.press = Press(view, area, block, touch.x, touch.y, Clock.get_time(), top)
        view.press(area)
        touch.ud["paper"] = self.press
        if area.holds:
            self._repeat.timeout = HOLD
            self._repeat()

    def move(self, touch: Any) -> None:  # noqa: ANN401
        """Let go of what is pressed once the finger has left it."""
        press = self._pressed_by(touch)
        if press is not None and max(abs(touch.x - press.x), abs(touch.y - press.y)) > dp(TREMBLE):
            self._repeat.cancel()
            press.view.press(None)
            self.press = None

    def up(self, touch: Any) -> None:  # noqa: ANN401
        """Do what was pressed."""
        press = self._pressed_by(touch)
        if press is None:
            return
        self._repeat.cancel()
        if not press.repeated:
            self._do(press.block, press.touch)
        self.press = None
        left = SHOWN - (Clock.get_time() - press.began)
        if left <= 0:
            press.view.press(None)
        else:
            Clock.schedule_once(lambda *_: press.view.press(None), left)

    def show(self) -> None:
        """Show the press on what is painted now."""
        if self.press is not None and self.press.view.laid is not None:
            self.press.view.press(self.press.touch)

    def _pressed_by(self, touch: Any) -> Press | None:  # noqa: ANN401
        return self.press if touch.ud.get("paper") is self.press else None

    def _held(self, *_: object) -> None:
        press = self.press
        if press is None:
            return
        press.repeated += 1
        press.block = self._now(press.block.key) or press.block
        if press.block.acts().get(press.touch.part) is None:
            return
        self._do(press.block, press.touch)
        self._repeat.timeout = AGAIN
        self._repeat()
