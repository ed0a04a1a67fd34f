"""The type scale: seven sizes, a continuous text scale that keeps their order, and the measures of touch."""

from dataclasses import replace
from functools import lru_cache

from kivy.metrics import dp

from logic.frozen import frozen

NUMBERS = (57, 45, 36)
TITLE, LEAD, TEXT, SMALL = 28, 20, 16, 14
GENTLE = 0.2
"""What lies above LEAD grows by this share of what was asked: large text is large already."""
FRAME = 1.3
"""Header, places and keys grow with text up to this."""
BARS = 1.6
"""The words of the bars grow with text up to this: they are bold, and what is read above them needs the room."""

TOUCH = 48
"""Least side of what is touched, in dp."""
ROW = 56
"""Least height of a row, in dp."""
RADIUS = 8
"""How round the corners of all are that can be touched, and of a verdict, in dp."""
EDGE = 16
"""Margin at the sides of a page, in dp."""
LINE = 640
"""Widest line of text, in dp."""
TWO_PANES = 720
"""Width in dp from which a page stands in two panes."""


def grown(size: float, scale: float) -> float:
    """Return a size in pixels at a text scale: in full up to LEAD, gently above, always in the same order.

    >>> grown(16, 2.0) < grown(20, 2.0) < grown(28, 2.0) < grown(36, 2.0)
    True
    """
    plain = min(size, LEAD) * scale
    return float(dp(plain + max(0.0, size - LEAD) * (1.0 + (scale - 1.0) * GENTLE)))


@frozen
class Look:
    """How large things are drawn: the text scale, the largest number that there is height for, and large keys for gloves."""

    scale: float = 1.0
    number: int = 57
    low: bool = False
    """The window is low: what can stand beside each other does."""
    short: bool = False
    """The window is upright and so low that four rows of keys would leave the matter too little."""

    def size(self, role: float) -> float:
        """Return a text size in pixels."""
        return grown(role, self.scale)

    def framed(self) -> "Look":
        """Return the look of header, places and keys."""
        return self.capped(FRAME)

    def capped(self, most: float) -> "Look":
        """Return the look whose text grows to so much at the most."""
        return self if self.scale <= most else _capped(self, most)


@lru_cache(16)
def _capped(look: Look, most: float) -> Look:
    return replace(look, scale=most)
