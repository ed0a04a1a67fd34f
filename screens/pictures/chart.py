"""Lines over two axes: each told apart by colour, by dashes and by its name where the lines are far from each other."""

from collections.abc import Callable, Iterator, Sequence
from itertools import pairwise
from math import isfinite
from typing import NamedTuple

from screens.pictures.axis import cut, grid, opened, reach
from screens.pictures.strokes import Disc, Label, Later, Path, Picture, Point

STYLES: tuple[tuple[str, tuple[float, ...]], ...] = (
    ("chart_a", ()),
    ("chart_b", (9.0, 5.0)),
    ("chart_c", (3.0, 4.0)),
    ("text", (12.0, 4.0, 3.0, 4.0)),
)
"""Tone and dashes (ink, gap, in dp; none is a full line) of the first to the fourth line."""
HEIGHT, MARGINS = 220.0, (44.0, 26.0, 12.0, 24.0)
"""Height of a chart, and what is kept free around it (left, bottom, right, top), in dp."""
ENOUGH = 24
"""Points across the frame that say well enough where a line runs."""
INSIDE = 0.15
"""Share of the width at either end where a name has less room."""
TOGETHER = 0.01
"""Share of the height by which two lines may differ and look like one."""


class Curve(NamedTuple):
    """One line: its name, and its points in the order they are joined."""

    name: str
    points: Sequence[Point]


class Mark(NamedTuple):
    """A marked point and its short label, "" for none."""

    x: float
    y: float
    text: str


def chart(  # noqa: PLR0913  (two axes)
    curves: Sequence[Curve],
    marks: Sequence[Mark] = (),
    *,
    x_title: str,
    y_title: str,
    from_zero: bool = True,
    cursor: float | None = None,
    mark: str = ".",
) -> Picture:
    """Return a chart of up to four lines. Raises ValueError for a fifth: there is no fifth style to tell it by.

    `cursor` is where along it one stands: an upright line; `mark` is the decimal mark of its ticks.
    """
    if len(curves) > len(STYLES):
        raise ValueError(f"a chart shows at most {len(STYLES)} lines, not {len(curves)}")
    curves = [
        Curve(name, [(x, y) for x, y in points if isfinite(x) and isfinite(y)]) for name, points in curves
    ]
    xs = [x for _, points in curves for x, _ in points] + [one.x for one in marks]
    ys = [y for _, points in curves for _, y in points] + [one.y for one in marks]
    left, right = opened(min(xs), max(xs))
    foot, top = reach(ys, from_zero=from_zero)
    curves = list(_told_apart(curves, top - foot))
    strokes = list(grid((left, right), (foot, top), mark))
    if cursor is not None and left <= cursor <= right:
        strokes.append(Path(((cursor, foot), (cursor, top)), "outline", 2.0, (3.0, 3.0)))
    for (tone, dashes), curve in zip(STYLES, curves, strict=False):
        strokes += [Path(tuple(part), tone, 3.0, dashes) for part in cut(curve.points, right, top)]
    strokes += [
        Label(y_title, (left, top), ("rt",), tone="second", gap=2.0, must=True),
        Label(x_title, (right, foot), ("lt", "t"), tone="second", gap=2.0),
    ]
    for x, y, text in marks:
        strokes.append(Disc((x, y), 5.0, "ground", "text"))
        if text:
            sides = ("rt", "t", "r", "lb", "b", "lt")
            strokes.append(Label(text, (x, y), sides, bold=True, must=True))
    for (tone, _dashes), curve, points in zip(
        STYLES, curves, _apart(curves, ((left, right), (foot, top))), strict=False
    ):
        if curve.name and points:
            at, *others = points
            around = ("t", "b", "rt", "lt", "rb", "lb", "l", "r")
            strokes.append(Label(curve.name, at, around, tone=tone, bold=True, others=tuple(others)))
    view = (left, foot, right, top)
    return Picture(tuple(strokes), view, to_scale=False, height=HEIGHT, margins=MARGINS)


def chart_later(make: Callable[[], Picture], *of: object) -> Later:
    """Return a chart that is made when it is first painted; the same as another while it is made `of` the same."""
    return Later(make, *of, height=HEIGHT, margins=MARGINS)


def _told_apart(curves: Sequence[Curve], tall: float) -> Iterator[Curve]:
    """Yield the curves; those that lie on each other all the way are one curve with the names of all."""
    left = list(curves)
    while left:
        first = left.pop(0)
        same = [one for one in left if _alike(first.points, one.points, TOGETHER * tall)]
        left = [one for one in left if one not in same]
        yield Curve(", ".join(one.name for one in (first, *same) if one.name), first.points)


def _alike(one: Sequence[Point], other: Sequence[Point], off: float) -> bool:
    """Tell whether two lines have the same points but for so much."""
    return (
        len(one) == len(other) > 0
        and all(abs(y - b) <= off for (_x, y), (_a, b) in zip(one, other, strict=True))
        and all(x == a for (x, _y), (a, _b) in zip(one, other, strict=True))
    )


def _apart(curves: Sequence[Curve], frame: tuple[Point, Point]) -> Iterator[list[Point]]:
    """Yield for each line its points in the frame, first those that are farthest from the other lines."""
    (left, right), (foot, top) = frame
    wide, tall = right - left, top - foot

    def near(points: Sequence[Point]) -> list[complex]:
        """Return some points along a line, as shares of the frame."""
        shares = [((x - left) / wide, (y - foot) / tall) for x, y in _filled(points, wide)]
        return [complex(x, y) for x, y in shares if 0.0 <= x <= 1.0 and 0.0 <= y <= 1.0]

    along = [near(curve.points) if curve.points else [] for curve in curves]
    for place, (curve, own) in enumerate(zip(curves, along, strict=True)):
        others = [point for at, points in enumerate(along) if at != place for point in points]

        def apart(point: complex, others: list[complex] = others) -> float:
            found = min(map(abs, map(point.__sub__, others)), default=1.0)
            # At the ends of the frame a name has half the room.
            return found if INSIDE <= point.real <= 1.0 - INSIDE else found / 2

        ranked = sorted(own, key=apart, reverse=True)
        yield [(left + at.real * wide, foot + at.imag * tall) for at in ranked] or list(curve.points[:1])


def _filled(points: Sequence[Point], wide: float) -> Iterator[Point]:
    """Yield points of a line that are close enough together to stand for it."""
    step = wide / ENOUGH
    yield points[0]
    for (x0, y0), (x1, y1) in pairwise(points):
        count = max(1, round(abs(x1 - x0) / step))
        for part in range(1, count + 1):
            yield x0 + (x1 - x0) * part / count, y0 + (y1 - y0) * part / count
