"""A block laid out: marks to paint and areas to touch, in pixels from its upper left corner. Needs no window."""

from dataclasses import dataclass, field
from math import inf, log
from typing import Any, NamedTuple

from kivy.metrics import dp

from screens.paper.icons import ICON_FONT, POINTS
from screens.paper.ink import Block, broken, line_of, longest_word, shortened, width_of
from screens.paper.scale import EDGE, TOUCH, Look
from screens.pictures.strokes import Drawing as Drawn

SHARES = {"left": 0.0, "center": 0.5, "right": 1.0}
"""How much of the room that a text leaves lies before it."""


class Box(NamedTuple):
    """A rectangle: filled, framed or both, with corners rounded by a radius."""

    x: float
    y: float
    width: float
    height: float
    fill: str = ""
    edge: str = ""
    line: float = 1.0
    dashed: bool = False
    radius: float = 0.0


class Ink(NamedTuple):
    """Text in lines, or an icon by its font."""

    text: str
    lines: tuple[str, ...]
    x: float
    y: float
    width: float
    height: float
    size: float
    bold: bool
    tone: str
    align: str = "left"
    font: str = ""
    room: float = 0.0
    """How wide it may be: what a test holds it to."""
    cut: bool = False
    """Whether it was shortened on purpose: a title in the header."""


class Drawing(NamedTuple):
    """A picture and the room it has."""

    x: float
    y: float
    width: float
    height: float
    picture: Drawn
    scale: float = 1.0


class Touch(NamedTuple):
    """An area to touch: the part of the block it stands for, and what it is called aloud."""

    part: str
    x: float
    y: float
    width: float
    height: float
    name: str
    on: str = "text"
    """Tone of what is shown while it is pressed."""
    holds: bool = False
    """Whether it repeats while it is held."""


class Laid(NamedTuple):
    """A block laid out."""

    width: float
    height: float
    marks: tuple[Box | Ink | Drawing, ...] = ()
    touches: tuple[Touch, ...] = ()
    said: str = ""


@dataclass
class Sheet:
    """Collects marks and touches from top to bottom; `y` is how far it is filled."""

    width: float
    look: Look
    marks: list[Box | Ink | Drawing] = field(default_factory=list)
    touches: list[Touch] = field(default_factory=list)
    y: float = 0.0

    def fits(self, text: str, role: float, room: float, *, bold: bool = False) -> Block:
        """Return a text broken to a room."""
        return broken(text, self.look.size(role), bold, room)

    def wide(self, text: str, role: float, *, bold: bool = False) -> float:
        """Return the width of a text on one line."""
        return width_of(text, self.look.size(role), bold)

    def longest(self, text: str, role: float, *, bold: bool = False) -> float:
        """Return the width of the widest word."""
        return longest_word(text, self.look.size(role), bold)

    def line(self, role: float, *, bold: bool = False) -> float:
        """Return the height of a line."""
        return line_of(self.look.size(role), bold)

    def write(  # noqa: PLR0913  (a text with its place and its look)
        self,
        text: str,
        role: float,
        x: float,
        y: float,
        room: float,
        *,
        tone: str = "text",
        bold: bool = False,
        align: str = "left",
        tall: float | None = None,
        one: bool = False,
    ) -> Block:
        """Write a text into a room, its upper edge at y, or in the middle of what is `tall` from there; return what it takes.

        `one` keeps it on one line.
        """
        if not text:
            return Block((), 0.0, 0.0, 0.0)
        size = self.look.size(role)
        shown = shortened(text, size, bold, room) if one else text
        laid = broken(shown, size, bold, inf if one else room)
        left = x + (room - laid.width) * SHARES[align]
        top = y if tall is None else y + (tall - laid.height) / 2
        look = (laid.size, bold, tone, align, "", room, shown != text)
        self.marks.append(Ink(text, laid.lines, left, top, laid.width, laid.height, *look))
        return laid

    def icon(  # noqa: PLR0913  (a sign with its place)
        self, name: str, x: float, y: float, side: float, tone: str = "text", *, tall: float | None = None
    ) -> None:
        """Draw an icon into a square, its upper edge at y, or in the middle of what is `tall` from there."""
        sign, size = chr(POINTS[name]), _rung(side * 0.86)
        wide, high = width_of(sign, size, False, ICON_FONT), line_of(size, False, ICON_FONT)  # noqa: FBT003
        left, top = x + (side - wide) / 2, y + ((side if tall is None else tall) - high) / 2
        look: dict[str, Any] = {"bold": False, "tone": tone, "font": ICON_FONT, "room": side}
        self.marks.append(Ink("", (sign,), left, top, wide, high, size, **look))

    def box(self, x: float, y: float, width: float, height: float, **look: Any) -> None:  # noqa: ANN401  (Box's)
        """Draw a rectangle."""
        self.marks.append(Box(x, y, width, height, **look))

    def shift(self, down: float) -> None:
        """Move what is drawn down."""
        self.marks = [mark._replace(y=mark.y + down) for mark in self.marks]

    def touch(  # noqa: PLR0913  (an area)
        self,
        part: str,
        x: float,
        y: float,
        width: float,
        height: float,
        name: str,
        **more: Any,  # noqa: ANN401  (Touch's)
    ) -> None:
        """Make an area that can be touched."""
        self.touches.append(Touch(part, x, y, width, height, name, **more))

    def done(self, said: str) -> Laid:
        """Return the block as it was filled."""
        return Laid(self.width, self.y, tuple(self.marks), tuple(self.touches), said)


def _rung(size: float) -> float:
    """Return the nearest of the few sizes of icons: the graphics read the whole font anew for each, a third of a megabyte."""
    least, step = dp(16), 1.185
    return float(least * step ** round(log(size / least, step)))


def inner(sheet: Sheet) -> tuple[float, float]:
    """Return the left edge of what stands on a page, and its room."""
    return dp(EDGE), sheet.width - 2 * dp(EDGE)


def touchable(height: float) -> float:
    """Return a height that a finger can hit."""
    return max(dp(TOUCH), height)
