"""A page that comes in front fades in from the ground, so that the eye takes it for another one. Nothing moves."""

from typing import Any

from kivy.clock import Clock
from kivy.event import EventDispatcher
from kivy.graphics import Color, Rectangle
from kivy.properties import NumericProperty

from screens.theme import theme

SECONDS = 0.15


class Veil(EventDispatcher):
    """The ground laid over a paper, thinner from frame to frame. Touches and keys go through it."""

    cover = NumericProperty(0.0)

    def __init__(self, paper: Any, **kwargs: Any) -> None:  # noqa: ANN401  (the paper; Kivy's properties)
        """Lie over a paper, not to be seen."""
        super().__init__(**kwargs)
        self.paper = paper
        self._thin = Clock.create_trigger(self._thinner, 0, interval=True)
        with paper.canvas.after:
            self._ink = Color(0, 0, 0, 0)
            self._box = Rectangle(size=(0, 0))

    def drop(self) -> None:
        """Cover the paper and begin to fade."""
        self._box.pos, self._box.size = self.paper.pos, self.paper.size
        self.cover = 1.0
        self._thin()

    def lift(self) -> None:
        """Be gone at once."""
        self._thin.cancel()
        self.cover = 0.0

    def _thinner(self, passed: float) -> None:
        self.cover = max(0.0, self.cover - passed / SECONDS)
        if not self.cover:
            self._thin.cancel()

    def on_cover(self, *_: object) -> None:
        """Take the colour of the ground; once it is gone there is nothing to draw."""
        self._ink.rgba = (*theme.colour("ground")[:3], self.cover)
        if not self.cover:
            self._box.size = (0, 0)
