"""Strokes laid out in a room: lines, fills and texts in its own units, each text where it is free.

Who paints brings a Pen, which knows how wide a text is: the paper and the build sheet lay the same drawing out the same way.
"""

from collections.abc import Callable, Iterator
from itertools import compress, count, pairwise, product
from math import atan2, ceil, cos, hypot, sin
from typing import NamedTuple

from screens.pictures.strokes import Arc, Arrow, Disc, Drawing, Fill, Label, Path, Point

ROUND = 2
"""Anchors from which on a text may stand anywhere round its point."""
FARTHER = (22.0, 40.0, 64.0, 90.0)
"""Gaps in dp that the name of a line may have to it, with a thin line between them."""
HEAD = 9.0
"""Length of an arrow's head in dp."""
SMALLEST = 9
"""Size in dp that a text which is too wide shrinks to."""


class Pen(NamedTuple):
    """What painting on something needs to know: how long a dp is there, and how texts come out."""

    dp: Callable[[float], float]
    size: Callable[[float, float], float]
    """Size of a text by its role and the text scale."""
    wide: Callable[[str, float, bool], float]
    """Width of a text by its size, and whether it is bold."""
    line: Callable[[float, bool], float]
    """Height of a line, by the same."""


def fixed_pen(unit: float, wide: Callable[[str, float, bool], float]) -> Pen:
    """Return the Pen of a page that is no screen: `unit` is the length of a dp there."""
    return Pen(
        lambda dp: dp * unit, lambda role, scale: role * scale * unit, wide, lambda size, _bold: size * 1.2
    )


class Placed(NamedTuple):
    """A stroke in the painter's units from the lower left corner: a line, fill, text, or disc whose width is its radius."""

    kind: str
    points: tuple[Point, ...]
    tone: str
    width: float = 1.0
    dashes: tuple[float, ...] = ()
    text: str = ""
    bold: bool = False
    height: float = 0.0


class Room(NamedTuple):
    """A rectangle that is taken."""

    x: float
    y: float
    right: float
    top: float


def height_of(picture: Drawing, width: float, pen: Pen, *, height: float = 0.0, text: float = 1.0) -> float:
    """Return the height a drawing takes at a width: its shape's if it is to scale, else `height` or what it asks for.

    It is at most half as high as wide, unless its shape asks for more.
    """
    left, bottom, right, top = picture.margins
    if picture.to_scale:
        x0, y0, x1, y1 = picture.box
        share = (y1 - y0) / (x1 - x0)
        tall = min(
            (width - pen.dp(left + right)) * share + pen.dp(bottom + top), pen.dp(picture.height) * 1.5
        )
    else:
        tall = max(pen.dp(height or picture.height), width / 2 if not height and not picture.fixed else 0.0)
        tall = min(tall, max(width, pen.dp(picture.height)))
    return tall + (text - 1.0) * pen.dp(bottom + top)


def lay(picture: Drawing, width: float, height: float, pen: Pen, text: float = 1.0) -> list[Placed]:
    """Return the strokes in the painter's units, for a room and a text scale."""
    left, bottom, right, top = (pen.dp(side) for side in picture.margins)
    more = (text - 1.0) / 2
    left, bottom, top = left * text, bottom * (1 + more), top * (1 + more)
    x0, y0, x1, y1 = picture.box
    across, up = (width - left - right) / (x1 - x0), (height - bottom - top) / (y1 - y0)
    if picture.to_scale:
        across = up = min(across, up)
        left += (width - left - right - across * (x1 - x0)) / 2

    def at(point: Point) -> Point:
        return left + (point[0] - x0) * across, bottom + (point[1] - y0) * up

    placed: list[Placed] = []
    taken: list[Room] = []
    for stroke in picture.strokes:
        if isinstance(stroke, Label):
            continue
        for one in _strokes(stroke, at, across, pen):
            placed.append(one)
            if one.kind == "line" and one.width >= 1.2:  # noqa: PLR2004  (hairlines may pass under a text)
                taken += pieces(one.points, pen)
    for stroke in picture.strokes:
        if isinstance(stroke, Label):
            points = [at(point) for point in (stroke.at, *stroke.others)]
            placed += _place(stroke, points, taken, (width, height), text, pen)
    return placed


def _strokes(
    stroke: Path | Arc | Fill | Disc | Arrow, at: Callable[[Point], Point], across: float, pen: Pen
) -> Iterator[Placed]:
    if isinstance(stroke, Path):
        points = tuple(at(point) for point in stroke.points)
        if stroke.closed:
            points = (*points, points[0])
        yield Placed("line", points, stroke.tone, stroke.width, stroke.dashes)
    elif isinstance(stroke, Arc):
        centre, radius = at(stroke.centre), stroke.radius * across
        steps = max(16, ceil(abs(stroke.end - stroke.start) * radius / 5))
        turn = (stroke.end - stroke.start) / steps
        points = tuple(
            (
                centre[0] + radius * cos(stroke.start + turn * n),
                centre[1] + radius * sin(stroke.start + turn * n),
            )
            for n in range(steps + 1)
        )
        yield Placed("line", points, stroke.tone, stroke.width, stroke.dashes)
    elif isinstance(stroke, Fill):
        yield Placed("fill", tuple(at(point) for point in stroke.points), stroke.tone)
    elif isinstance(stroke, Disc):
        if stroke.edge:
            yield Placed("disc", (at(stroke.centre),), stroke.edge, pen.dp(stroke.radius) + pen.dp(2))
        yield Placed("disc", (at(stroke.centre),), stroke.tone, pen.dp(stroke.radius))
    else:
        start, end = at(stroke.start), at(stroke.end)
        yield Placed("line", (start, end), stroke.tone, stroke.width)
        for tip, tail in ((end, start), *(((start, end),) if stroke.both else ())):
            way = atan2(tip[1] - tail[1], tip[0] - tail[0])
            wings = [
                (tip[0] - pen.dp(HEAD) * cos(way + turn), tip[1] - pen.dp(HEAD) * sin(way + turn))
                for turn in (0.42, -0.42)
            ]
            yield Placed("fill", (tip, *wings), stroke.tone)


def pieces(points: tuple[Point, ...], pen: Pen) -> list[Room]:
    """Return small rooms that cover a line."""
    rooms = []
    for (x0, y0), (x1, y1) in pairwise(points):
        # A level or upright line is a room by itself.
        count = 1 if x0 == x1 or y0 == y1 else max(1, int(hypot(x1 - x0, y1 - y0) / pen.dp(8)))
        for step in range(count):
            ax, ay = x0 + (x1 - x0) * step / count, y0 + (y1 - y0) * step / count
            bx, by = x0 + (x1 - x0) * (step + 1) / count, y0 + (y1 - y0) * (step + 1) / count
            rooms.append(Room(min(ax, bx), min(ay, by), max(ax, bx), max(ay, by)))
    return rooms


def _place(  # noqa: PLR0913  (the room and what is in it)
    label: Label, points: list[Point], taken: list[Room], room_for: Point, text: float, pen: Pen
) -> Iterator[Placed]:
    width, height = room_for
    size = pen.size(label.size, text)
    while pen.wide(label.text, size, label.bold) > width and size > pen.dp(SMALLEST):
        size -= 1
    # The name of a line stands beside it, else farther off at the end of a thin line, else it is smaller. So does what must
    # stand somewhere round its point.
    round_it = label.must and len(label.anchors) > ROUND
    gaps = (label.gap, *FARTHER) if label.others or round_it else (label.gap,)
    least = min(size, pen.size(label.size, 1.0)) if label.others else size
    tries = [(size - less, gap) for less in range(int(size - least) + 1) for gap in gaps]
    for size, gap in tries:
        found = _free(label, points, taken, room_for, size, pen.dp(gap), pen)
        if found is not None:
            break
    else:
        if not label.must:
            return
        at = points[0]
        wide, tall = pen.wide(label.text, size, label.bold), pen.line(size, label.bold)
        x = min(max(0.0, at[0] - wide / 2), width - wide)
        y = min(max(0.0, at[1] + pen.dp(label.gap)), height - tall)
        found = at, Room(x, y, x + wide, y + tall)
    at, best = found
    taken.append(best)
    if gap != label.gap:
        edge = min(max(at[0], best.x), best.right), min(max(at[1], best.y), best.top)
        yield Placed("line", (at, edge), label.tone, 1.0)
        yield Placed("disc", (at,), label.tone, pen.dp(3))
    yield Placed("text", ((best.x, best.y),), label.tone, size, (), label.text, label.bold, best.top - best.y)


def _free(  # noqa: PLR0913  (the room and what is in it)
    label: Label, points: list[Point], taken: list[Room], room_for: Point, size: float, gap: float, pen: Pen
) -> tuple[Point, Room] | None:
    """Return the first of the points beside which a text of a size is free, with its room; None where it is nowhere."""
    width, height = room_for
    wide, tall = pen.wide(label.text, size, label.bold), pen.line(size, label.bold)
    apart = pen.dp(2)
    rooms = [(other.x, other.y, other.right + apart, other.top + apart) for other in taken]
    for at, anchor in product(points, label.anchors):
        x = at[0] - wide / 2 + (wide / 2 + gap) * (("r" in anchor) - ("l" in anchor))
        if anchor in ("t", "b"):
            # Above or below its point a text may slide along, so that it stays in the picture.
            x = min(max(0.0, x), width - wide)
        y = at[1] - tall / 2 + (tall / 2 + gap * 0.6) * (("t" in anchor) - ("b" in anchor))
        room = Room(x, y, x + wide, y + tall)
        if x < 0 or y < 0 or room.right > width or room.top > height:
            continue
        right, top = room.right + apart, room.top + apart
        meets = (x < x1 and x0 < right and y < y1 and y0 < top for x0, y0, x1, y1 in rooms)
        blocking = next(compress(count(), meets), None)
        if blocking is None:
            return at, room
        # What is in the way at one place mostly is at the next one, too.
        rooms.insert(0, rooms.pop(blocking))
    return None
