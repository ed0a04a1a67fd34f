"""Paints marks into a canvas: boxes, text, and pictures of strokes."""

from collections.abc import Sequence
from functools import lru_cache
from itertools import groupby, pairwise
from math import cos, hypot, pi, sin
from typing import Any

from kivy.graphics import Color, InstructionGroup, Line, Mesh, Rectangle
from kivy.metrics import dp

from screens.paper.ink import broken
from screens.paper.picture import lay
from screens.paper.sheet import Box, Drawing, Ink, Laid
from screens.paper.written import written
from screens.pictures.laid import Placed
from screens.pictures.strokes import Point
from screens.theme import theme

DASHES = (9.0, 6.0)


Piece = tuple[Any, ...]
"""What paints a piece of a block, and what it paints it by."""


class Painted:
    """A block on a canvas, its lower left corner at the origin: grounds and frames, then what stands in them.

    A piece that is the same as the one that was painted in its place is left as it is.
    """

    def __init__(self, canvas: Any) -> None:  # noqa: ANN401  (Kivy's canvas has no types)
        """Begin empty."""
        self._canvas = canvas
        self._kept: list[tuple[Piece, Any]] = []

    def show(self, laid: Laid, *, again: bool) -> None:
        """Paint what changed; all of it `again` where the colours did."""
        wanted = _pieces(laid)
        for place, piece in enumerate(wanted):
            if place == len(self._kept):
                group = InstructionGroup()
                self._canvas.add(group)
                self._kept.append((piece, group))
            else:
                before, group = self._kept[place]
                if before == piece and not again:
                    continue
                self._kept[place] = (piece, group)
                group.clear()
            paint, *by = piece
            paint(group, *by)
        for _piece, group in self._kept[len(wanted) :]:
            # A group and what is in it know each other: uncleared, its textures stay until the rare great sweep of Python.
            group.clear()
            self._canvas.remove(group)
        del self._kept[len(wanted) :]


def _pieces(laid: Laid) -> list[Piece]:
    boxes = tuple(mark for mark in laid.marks if isinstance(mark, Box))
    inks = tuple(mark for mark in laid.marks if isinstance(mark, Ink))
    pieces: list[Piece] = [(_boxes, boxes, laid.height)] if boxes else []
    if inks:
        pieces.append((_inks, inks, laid.height))
    for mark in laid.marks:
        if isinstance(mark, Drawing):
            x, y = mark.x, laid.height - mark.y - mark.height
            placed = lay(mark.picture, mark.width, mark.height, mark.scale)
            for (flat, _tone), group in groupby(placed, lambda one: (_is_flat(one), one.tone)):
                strokes = tuple(group)
                pieces += [(_flat, strokes, x, y)] if flat else [(_stroke, one, x, y) for one in strokes]
    return pieces


def _boxes(canvas: Any, boxes: tuple[Box, ...], height: float) -> None:  # noqa: ANN401  (as above)
    for tone, vertices, indices in _shapes(boxes, height, dp(1)):
        _tint(canvas, tone)
        canvas.add(Mesh(vertices=vertices, indices=indices, mode="triangles"))


@lru_cache(256)
def _shapes(
    boxes: tuple[Box, ...],
    height: float,
    _dp: float,  # dashes are as long as it says
) -> list[tuple[str, list[float], list[int]]]:
    """Return boxes as triangles by their tones: a block that comes again in other words has the same ones."""
    shapes: dict[tuple[bool, str], Shape] = {}
    for mark in boxes:
        if mark.fill:
            _fill(shapes.setdefault((True, mark.fill), Shape()), mark, height)
    for mark in boxes:
        if mark.edge:
            _edge(shapes.setdefault((False, mark.edge), Shape()), mark, height)
    return [(tone, shape.vertices, shape.indices) for (_, tone), shape in shapes.items()]


def _tint(canvas: Any, tone: str) -> None:  # noqa: ANN401
    canvas.add(Color(*theme.colour(tone)))


def _inks(canvas: Any, marks: tuple[Ink, ...], height: float) -> None:  # noqa: ANN401
    """Paint texts, those of one tone that stand on one texture in one go."""
    found: dict[tuple[str, int], tuple[Any, list[float]]] = {}
    for mark in marks:
        text = written(mark.lines, mark.size, mark.bold, mark.align, mark.font)
        wide, tall = text.size
        x = round(mark.x + (mark.width - wide) / 2 if mark.align != "left" else mark.x)
        y = round(height - mark.y - tall)
        right, top = x + wide, y + tall
        u0, v0, u1, v1, u2, v2, u3, v3 = text.tex_coords
        vertices = found.setdefault((mark.tone, text.id), (text, []))[1]
        vertices += (x, y, u0, v0, right, y, u1, v1, right, top, u2, v2, x, top, u3, v3)
    for (tone, _), (text, vertices) in found.items():
        _tint(canvas, tone)
        corners = [first + corner for first in range(0, len(vertices) // 4, 4) for corner in QUAD]
        canvas.add(Mesh(vertices=vertices, indices=corners, mode="triangles", texture=text))


QUAD = (0, 1, 2, 2, 3, 0)
"""Corners of the two triangles of a rectangle."""


class Shape:
    """Polygons of one colour, drawn in one go: each instruction of a canvas costs time at every frame."""

    def __init__(self) -> None:
        """Begin empty."""
        self.vertices: list[float] = []
        self.indices: list[int] = []

    def add(self, points: Sequence[Point]) -> None:
        """Add a polygon without dents."""
        first = self._put(points)
        for place in range(1, len(points) - 1):
            self.indices += (first, first + place, first + place + 1)

    def ring(self, outer: Sequence[Point], inner: Sequence[Point]) -> None:
        """Add what lies between two polygons of as many points."""
        count, first = len(outer), self._put((*outer, *inner))
        for place in range(count):
            after = (place + 1) % count
            a, b, c, d = first + place, first + after, first + count + place, first + count + after
            self.indices += (a, b, c, b, d, c)

    def dash(self, x0: float, y0: float, x1: float, y1: float, half: float) -> None:
        """Add a straight piece of a line with blunt ends."""
        length = hypot(x1 - x0, y1 - y0) or 1.0
        dx, dy = (y1 - y0) / length * half, (x0 - x1) / length * half
        self.add(((x0 + dx, y0 + dy), (x1 + dx, y1 + dy), (x1 - dx, y1 - dy), (x0 - dx, y0 - dy)))

    def mesh(self) -> Mesh:
        """Return it as Kivy draws it."""
        return Mesh(vertices=self.vertices, indices=self.indices, mode="triangles")

    def _put(self, points: Sequence[Point]) -> int:
        first = len(self.vertices) // 4
        for x, y in points:
            self.vertices += (x, y, 0.0, 0.0)
        return first


CORNER = tuple((1.0 - cos(step * pi / 12), 1.0 - sin(step * pi / 12)) for step in range(7))
"""A quarter of a circle in its square, from one side to the next."""


def _rounded(x: float, y: float, wide: float, tall: float, radius: float) -> list[Point]:
    """Return the corners of a rectangle, rounded, all the way round."""
    right, top = x + wide, y + tall
    if radius <= 0.0:
        return [(x, y), (right, y), (right, top), (x, top)]
    turns = [(radius * a, radius * b) for a, b in CORNER]
    return [
        *((x + a, y + b) for a, b in turns),
        *((right - b, y + a) for a, b in turns),
        *((right - a, top - b) for a, b in turns),
        *((x + b, top - a) for a, b in turns),
    ]


def _whole(mark: Box, height: float) -> tuple[float, float, float, float, float]:
    """Return place, size and radius of a box on whole pixels, so that its edges are sharp."""
    x, y = round(mark.x), round(height - mark.y - mark.height)
    wide, tall = round(mark.x + mark.width) - x, max(1, round(height - mark.y) - y)
    return x, y, wide, tall, min(mark.radius, wide / 2, tall / 2)


def _fill(shape: Shape, mark: Box, height: float) -> None:
    shape.add(_rounded(*_whole(mark, height)))


def _edge(shape: Shape, mark: Box, height: float) -> None:
    x, y, wide, tall, radius = _whole(mark, height)
    line = max(1, round(mark.line))
    if mark.dashed:
        half = line / 2
        left, low, right, top = x + half, y + half, x + wide - half, y + tall - half
        corners = ((left, low), (right, low), (right, top), (left, top), (left, low))
        for piece in dashes(corners, DASHES):
            shape.dash(*piece, half)
        return
    outer = _rounded(x, y, wide, tall, radius)
    inside = max(0.0, radius - line)
    inner = _rounded(x + line, y + line, wide - 2 * line, tall - 2 * line, inside)
    if len(inner) != len(outer):
        inner = [corner for corner in inner for _ in CORNER]
    shape.ring(outer, inner)


def dashes(points: Any, pattern: tuple[float, ...]) -> list[tuple[float, float, float, float]]:  # noqa: ANN401
    """Return the inked parts of a line through points; the pattern is ink, gap, ink, gap in dp."""
    found, at, left = [], 0, dp(pattern[0])
    for (x0, y0), (x1, y1) in pairwise(points):
        length, done = hypot(x1 - x0, y1 - y0), 0.0
        while length - done > 1e-6:  # noqa: PLR2004  (what rounding leaves)
            step = min(left, length - done)
            if at % 2 == 0:
                start, end = done / length, (done + step) / length
                found.append(
                    (
                        x0 + (x1 - x0) * start,
                        y0 + (y1 - y0) * start,
                        x0 + (x1 - x0) * end,
                        y0 + (y1 - y0) * end,
                    )
                )
            done, left = done + step, left - step
            if left <= 1e-6:  # noqa: PLR2004
                at = (at + 1) % len(pattern)
                left = dp(pattern[at])
    return found


THIN = 4.0
"""Width in dp up to which nobody sees how a line ends."""
ROUND = 24
"""Corners that a disc is drawn with."""


def _is_flat(stroke: Placed) -> bool:
    """Tell whether a stroke is of plain pieces, which are drawn in one go with those beside it."""
    straight = len(stroke.points) == 2 and stroke.width <= THIN  # noqa: PLR2004  (two ends)
    return stroke.kind in ("fill", "disc") or (stroke.kind == "line" and (bool(stroke.dashes) or straight))


def _flat(canvas: Any, strokes: tuple[Placed, ...], x: float, y: float) -> None:  # noqa: ANN401
    """Paint fills, discs, dashes and straight lines of one colour in one go: a code has hundreds, a gauge a dozen."""
    shape = Shape()
    for stroke in strokes:
        points = [(px + x, py + y) for px, py in stroke.points]
        if stroke.kind == "fill":
            shape.add(points)
        elif stroke.kind == "disc":
            turns = (2 * pi * corner / ROUND for corner in range(ROUND))
            (px, py), radius = points[0], stroke.width
            shape.add([(px + radius * cos(turn), py + radius * sin(turn)) for turn in turns])
        else:
            half = max(0.5, dp(stroke.width) / 2)
            lines = dashes(points, stroke.dashes) if stroke.dashes else [(*points[0], *points[1])]
            for line in lines:
                shape.dash(*line, half)
    _tint(canvas, strokes[0].tone)
    canvas.add(shape.mesh())


def _stroke(canvas: Any, stroke: Placed, x: float, y: float) -> None:  # noqa: ANN401
    points = [(px + x, py + y) for px, py in stroke.points]
    _tint(canvas, stroke.tone)
    if stroke.kind == "line":
        flat = [part for point in points for part in point]
        canvas.add(Line(points=flat, width=max(1.0, dp(stroke.width) / 2), joint="round"))
    else:
        text = broken(stroke.text, stroke.width, stroke.bold, 1e6)
        found = written(text.lines, text.size, stroke.bold, "left")
        canvas.add(Rectangle(texture=found, pos=(round(points[0][0]), round(points[0][1])), size=found.size))
