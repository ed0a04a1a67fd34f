"""Lines over two axes: each told apart by colour, by dashes and by its name where the lines are far from each other."""

from collections.abc import Callable, Iterator, Sequence
from math import isfinite
from typing import NamedTuple

from screens.pictures.axis import cut, opened, plain_number, reach, round_ticks
from screens.pictures.strokes import Disc, Label, Path, Picture, Point, Stroke

STYLES: tuple[tuple[str, tuple[float, ...]], ...] = (
    ("chart_a", ()),
    ("chart_b", (9.0, 5.0)),
    ("chart_c", (3.0, 4.0)),
    ("text", (12.0, 4.0, 3.0, 4.0)),
)
"""Tone and dashes (ink, gap, in dp; none is a full line) of the first to the fourth line."""
TICKS = 5
ENOUGH = 15
"""Points of a line that say well enough how far away it is."""
CORNER = 0.15
"""Share of the height within which a nought is in the corner."""


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
    text: Callable[[float], str] = plain_number,
) -> Picture:
    """Return a chart of up to four lines. Raises ValueError for a fifth: there is no fifth style to tell it by.

    `cursor` is where along it one stands: an upright line.
    """
    if len(curves) > len(STYLES):
        raise ValueError(f"a chart shows at most {len(STYLES)} lines, not {len(curves)}")
    curves = [
        Curve(name, [(x, y) for x, y in points if isfinite(x) and isfinite(y)]) for name, points in curves
    ]
    xs = [x for _, points in curves for x, _ in points] + [mark.x for mark in marks]
    ys = [y for _, points in curves for _, y in points] + [mark.y for mark in marks]
    left, right = opened(min(xs), max(xs))
    foot, top = reach(ys, from_zero=from_zero)
    strokes = list(_ticks((left, right), (foot, top), text))
    strokes.append(Path(((left, top), (left, foot), (right, foot)), "outline", 1.1))
    if cursor is not None and left <= cursor <= right:
        strokes.append(Path(((cursor, foot), (cursor, top)), "outline", 2.0, (3.0, 3.0)))
    for (tone, dashes), curve in zip(STYLES, curves, strict=False):
        strokes += [Path(tuple(part), tone, 3.0, dashes) for part in cut(curve.points, right, top)]
    strokes += [
        Label(y_title, (left, top), ("rt",), tone="second", gap=2.0, must=True),
        Label(x_title, (right, foot), ("lt", "t"), tone="second", gap=2.0),
    ]
    for mark in marks:
        strokes.append(Disc((mark.x, mark.y), 5.0, "ground", "text"))
        if mark.text:
            sides = ("rt", "t", "r", "lb", "b", "lt")
            strokes.append(Label(mark.text, (mark.x, mark.y), sides, bold=True, must=True))
    for place, curve in enumerate(curves):
        if curve.name and curve.points:
            at = _apart(place, curves, (top - foot) or 1.0)
            strokes.append(
                Label(
                    curve.name,
                    at,
                    ("t", "b", "rt", "lt", "rb", "lb", "l", "r"),
                    tone=STYLES[place][0],
                    bold=True,
                )
            )
    return Picture(
        tuple(strokes),
        (left, foot, right, top),
        to_scale=False,
        height=220.0,
        margins=(44.0, 26.0, 12.0, 24.0),
    )


def _ticks(
    across: tuple[float, float], up: tuple[float, float], text: Callable[[float], str]
) -> Iterator[Stroke]:
    """Yield the lines and numbers of both axes."""
    (left, right), (foot, top) = across, up
    levels = round_ticks(foot, top, TICKS)
    for value in levels:
        yield Path(((left, value), (right, value)), "hair", 1.0)
        yield Label(text(value), (left, value), ("l",), tone="second", must=True, gap=5.0)
    for value in round_ticks(left, right, TICKS):
        yield Path(((value, foot), (value, foot + (top - foot) * 0.025)), "outline", 1.0)
        # One nought in the corner serves both axes.
        if not (value == left == 0.0 in levels and -foot <= CORNER * (top - foot)):
            yield Label(text(value), (value, foot), ("b",), tone="second", must=True)


def _apart(place: int, curves: Sequence[Curve], tall: float) -> Point:
    """Return the point of a line that is farthest from the others, away from the ends of the frame."""
    points = list(curves[place].points)
    inside = points[len(points) // 5 : max(len(points) // 5 + 1, 4 * len(points) // 5)]
    others = [
        curve.points[:: max(1, len(curve.points) // ENOUGH)] for at, curve in enumerate(curves) if at != place
    ]

    def distance(point: Point) -> float:
        px, py = point
        wide = abs(px) + 1e-9
        return min(
            (min(abs(y - py) / tall + abs(x - px) / wide for x, y in other) for other in others if other),
            default=0.0,
        )

    return max(inside[:: max(1, len(inside) // 12)], key=distance)
