"""The thread between theme and widgets: each living one is dressed again when the theme changes."""

from typing import Any
from weakref import WeakSet

from kivy.clock import Clock

from screens.theme import theme

TOKENS = ("ground", "panel", "text", "second", "main", "over_main", "outline", "key", "good", "bad", "trial")
SIZES = ("small", "body", "strong", "title", "value", "big")


class Dressed:
    """A widget whose colours and sizes follow the theme: `dress` sets them, at birth and after each change.

    One weak set serves all widgets. A binding for each widget and each token would cost more than the label
    itself.
    """

    def __init__(self, **kwargs: Any) -> None:  # noqa: ANN401 - Kivy passes property values through.
        """Build the widget, then dress it."""
        super().__init__(**kwargs)
        _living.add(self)
        self.dress()

    def dress(self, *_: object) -> None:
        """Set what depends on the theme."""


_living: WeakSet[Dressed] = WeakSet()


def _dress_all(_elapsed: float) -> None:
    for widget in list(_living):
        widget.dress()


def let_go(root: Any) -> None:  # noqa: ANN401 - Kivy's widgets have no types.
    """Dress a widget and all in it no more: it is out of use, though Python may not have cleared it away yet."""
    for widget in root.walk(restrict=True):
        _living.discard(widget)


def mix(colour: list[float], other: list[float], share: float) -> list[float]:
    """Return a colour moved by a share towards another."""
    return [one + (two - one) * share for one, two in zip(colour, other, strict=True)]


# Before the next frame, so that one change of palette is one pass whatever the number of tokens it moved.
_soon = Clock.create_trigger(_dress_all, -1)
for _name in (*TOKENS, *SIZES):
    theme.fbind(_name, _soon)
