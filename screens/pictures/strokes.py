"""Strokes: lines, arcs, fills, arrows and texts in the drawing's own units, x to the right and y up.

Widths and text sizes are dp: they do not grow with the drawing. Colours are names of tones (text, second, main, good, bad,
outline, key, ground, chart_a, chart_b, chart_c), given their colour by whoever paints.
"""

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
