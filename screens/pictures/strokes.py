"""Strokes: lines, arcs, fills, arrows and texts in the drawing's own units, x to the right and y up.

Widths and text sizes are dp: they do not grow with the drawing. Colours are names of tones (text, second, main, good, bad,
outline, key, ground, chart_a, chart_b, chart_c), given their colour by whoever paints.
"""

from collections.abc import Callable
from dataclasses import replace
from functools import cached_property
from operator import is_

from logic.frozen import frozen

Point = tuple[float, float]


@frozen
class Path:
    """A line through points; `dashes` is ink, gap, ink, gap in dp."""

    points: tuple[Point, ...]
    tone: str = "text"
    width: float = 1.5
    dashes: tuple[float, ...] = ()
    closed: bool = False


@frozen
class Arc:
    """A circle, or a part of it from one angle to another, in radians from the right, against the clock."""

    centre: Point
    radius: float
    start: float = 0.0
    end: float = 6.283185307179586
    tone: str = "text"
    width: float = 1.5
    dashes: tuple[float, ...] = ()


@frozen
class Fill:
    """A filled outline."""

    points: tuple[Point, ...]
    tone: str = "key"


@frozen
class Disc:
    """A filled circle whose radius is in dp: a mark on a chart."""

    centre: Point
    radius: float = 5.0
    tone: str = "text"
    edge: str = ""


@frozen
class Arrow:
    """A line with a head at its end, or at both ends."""

    start: Point
    end: Point
    tone: str = "text"
    width: float = 2.0
    both: bool = False


@frozen
class Label:
    """A text at a point. `anchors` are the sides of the point it may stand on, the best first.

    Of l, r, t, b, c and two letters together (lt: to the left and above). The first that is free is taken; one that finds no
    room is left out unless it `must` be there.
    """

    text: str
    at: Point
    anchors: tuple[str, ...] = ("r", "l", "t", "b", "rt", "rb", "lt", "lb")
    tone: str = "text"
    bold: bool = False
    size: float = 14.0
    must: bool = False
    gap: float = 6.0
    others: tuple[Point, ...] = ()
    """Points where it may stand as well, the best first: the name of a line may stand anywhere along it."""


Stroke = Path | Arc | Fill | Disc | Arrow | Label


def box(left: float, foot: float, right: float, top: float) -> tuple[Point, ...]:
    """Return the corners of a rectangle."""
    return (left, foot), (right, foot), (right, top), (left, top)


def frame(corners: tuple[Point, ...], tone: str = "text", width: float = 1.5) -> Path:
    """Return a line round corners."""
    return Path(corners, tone, width, closed=True)


def flipped(stroke: Stroke, *, upside_down: bool = False) -> Stroke:
    """Return a stroke with its sides changed, or `upside_down`; its text upright. Of arcs only circles change sides."""
    turned = str.maketrans("tb" if upside_down else "lr", "bt" if upside_down else "rl")

    def over(point: Point) -> Point:
        return (point[0], -point[1]) if upside_down else (-point[0], point[1])

    if isinstance(stroke, Arc):
        arc = (-stroke.end, -stroke.start) if upside_down else (stroke.start, stroke.end)
        return replace(stroke, centre=over(stroke.centre), start=arc[0], end=arc[1])
    if isinstance(stroke, Disc):
        return replace(stroke, centre=over(stroke.centre))
    if isinstance(stroke, Arrow):
        return replace(stroke, start=over(stroke.start), end=over(stroke.end))
    if isinstance(stroke, Label):
        sides = tuple(side.translate(turned) for side in stroke.anchors)
        return replace(stroke, at=over(stroke.at), anchors=sides)
    return replace(stroke, points=tuple(map(over, stroke.points)))


@frozen
class Picture:
    """A drawing: its strokes and the box they lie in, `left, bottom, right, top`.

    `to_scale` keeps a length the same in both directions. `height` is the wanted height in dp; `margins` (left, bottom, right,
    top) are dp kept free around the box for texts.
    """

    strokes: tuple[Stroke, ...]
    box: tuple[float, float, float, float]
    to_scale: bool = True
    height: float = 180.0
    margins: tuple[float, float, float, float] = (8.0, 8.0, 8.0, 8.0)
    fixed: bool = False
    """Whether the height does not follow the width: a gauge."""


class Later:
    """A drawing that is made when it is first painted: what lies folded or out of sight costs nothing.

    `of` is what it is made of: two are the same drawing while these are the same objects. Its height does not follow from
    what is in it.
    """

    to_scale = fixed = False

    def __init__(
        self,
        make: Callable[[], Picture],
        *of: object,
        height: float,
        margins: tuple[float, float, float, float],
    ) -> None:
        """Take what makes it; `height` and `margins` in dp as the drawing would have them."""
        self._make, self._of, self.height, self.margins = make, of, height, margins

    @cached_property
    def whole(self) -> Picture:
        """Return the drawing."""
        return self._make()

    @property
    def strokes(self) -> tuple[Stroke, ...]:
        """Return its strokes."""
        return self.whole.strokes

    @property
    def box(self) -> tuple[float, float, float, float]:
        """Return the box they lie in."""
        return self.whole.box

    def __eq__(self, other: object) -> bool:
        """Tell whether another is made of the same."""
        return (
            isinstance(other, Later)
            and len(self._of) == len(other._of)
            and all(map(is_, self._of, other._of))
        )

    def __hash__(self) -> int:
        """Return a number for it; drawings are never kept by it."""
        return hash(self.height)


Drawing = Picture | Later
"""What can be painted."""
