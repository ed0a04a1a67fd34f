"""How screws are tightened, as strokes: the order round a pattern, the pull on a key's arm, a set screw on a flat."""

from collections.abc import Iterator
from itertools import pairwise
from math import cos, pi, sin, sqrt

from screens.pictures.hatching import SINGLE, hatches
from screens.pictures.strokes import Arc, Arrow, Disc, Fill, Label, Path, Picture, Point, Stroke, box, frame
from screens.tongue import _

RADIUS = 16.0
"""A screw head of a pattern in dp: its number stands in it at any size of text."""


def order_of(count: int) -> tuple[int, ...]:
    """Return the order in which the screws of a circle are tightened, numbered round it from 0.

    Opposite ones follow each other; where none is opposite, every second one.

    >>> order_of(4), order_of(5), order_of(6)
    ((0, 2, 1, 3), (0, 2, 4, 1, 3), (0, 3, 1, 4, 2, 5))
    """
    if count % 2:
        return tuple(2 * place % count for place in range(count))
    half = count // 2
    return tuple(one for first in range(half) for one in (first, first + half))


def cross_pattern(count: int) -> Picture:
    """Return the order round a circle of screws: 1, 2, 3 with an arrow from each to the next."""
    order = order_of(count)
    places = [
        (cos(angle), sin(angle)) for angle in (pi * (0.75 - 2 * place / count) for place in range(count))
    ]
    strokes: list[Stroke] = [Arc((0.0, 0.0), 1.42, tone="outline", width=1.0)]
    for one, other in pairwise(order):
        strokes.append(
            Arrow(_along(places[one], places[other], 0.2), _along(places[one], places[other], 0.78), "main")
        )
    for number, place in enumerate(order, start=1):
        strokes += [
            Disc(places[place], RADIUS, "text"),
            Label(str(number), places[place], ("c",), tone="ground", bold=True, must=True),
        ]
    return Picture(tuple(strokes), (-1.45, -1.45, 1.45, 1.45), height=140.0, margins=(4.0, 4.0, 4.0, 4.0))


def pull_on_key(arm: str, pull: str, *, spanner: bool) -> Picture:
    """Return a key or spanner on its screw, pulled at the end of its arm, square to it; both lengths in words."""
    long, thick = 4.0, 0.22
    tool = ((0.0, -thick), (long + 0.3, -thick), (long + 0.3, thick), (0.0, thick))
    hexagon = tuple((0.42 * cos(pi * side / 3), 0.42 * sin(pi * side / 3)) for side in range(6))
    strokes: list[Stroke] = [
        Fill(tool, "second"),
        Arc((0.0, 0.0), 0.8, tone="text", width=2.5),
        Fill(hexagon, "text"),
        *([Path(((-0.8, -thick), (0.0, -thick)), "text", 2.5)] if spanner else []),
        # Square to the arm.
        Path(((long - 0.35, thick), (long - 0.35, thick + 0.35), (long, thick + 0.35)), "text", 1.5),
        Arrow((long, thick), (long, 1.9), "main", 4.0),
        Path(((0.0, -0.5), (0.0, -1.25)), "outline", 1.0),
        Path(((long, -thick), (long, -1.25)), "outline", 1.0),
        Arrow((0.0, -1.1), (long, -1.1), "text", 1.0, both=True),
        Label(arm, (long / 2, -1.1), ("b",), bold=True, must=True),
        Label(pull, (long, 1.9), ("l", "lt", "lb"), tone="main", bold=True, must=True),
        Arc((0.0, 0.0), 1.15, 0.3 * pi, 0.75 * pi, "outline", 1.5),
    ]
    return Picture(tuple(strokes), (-1.2, -1.3, long + 0.5, 2.0), height=130.0, margins=(8.0, 26.0, 8.0, 6.0))


def set_screw_on_flat() -> Picture:
    """Return a pulley's hub cut across: the first set screw square on the shaft's flat, the second at 90 degrees."""
    shaft, hub, screw, flat = 1.0, 2.4, 0.42, 0.72
    half = sqrt(shaft**2 - flat**2)
    rim = [(shaft * cos(pi * step / 24), shaft * sin(pi * step / 24)) for step in range(48)]
    cut: tuple[Point, ...] = tuple((min(x, flat), y) for x, y in rim)
    strokes: list[Stroke] = [
        Arc((0.0, 0.0), hub, tone="text", width=2.0),
        Fill(cut, "second"),
        frame(cut, "text", 2.0),
        Path(((flat, -half), (flat, half)), "main", 4.0),
        Fill(((flat, -screw), (hub + 0.25, -screw), (hub + 0.25, screw), (flat, screw)), "text"),
        Fill(((-screw, shaft), (screw, shaft), (screw, hub + 0.25), (-screw, hub + 0.25)), "text"),
        Label(_("1: on the flat"), (hub + 0.3, 0.0), ("r", "rb", "b"), bold=True, must=True),
        Label(_("2: after it"), (screw + 0.1, hub + 0.45), ("r",), bold=True, must=True),
        Label(_("shaft"), (-0.2, 0.0), ("c",), tone="ground", bold=True),
    ]
    return Picture(
        tuple(strokes),
        (-hub - 0.1, -hub - 0.1, hub + 2.9, hub + 0.7),
        height=130.0,
        margins=(4.0, 4.0, 30.0, 8.0),
    )


def _along(start: Point, end: Point, share: float) -> Point:
    return start[0] + (end[0] - start[0]) * share, start[1] + (end[1] - start[1]) * share


BEARING, BORE, OUTER, SPACER, WASHER, NUT = 7.0, 4.0, 11.0, 10.0, 1.0, 6.5
"""A stack in mm: width, half the bore and half the outside of a 608 bearing, then spacer, washer and M8 nut."""
RING = 2.2
"""Thickness of a bearing's rings, the drawing's."""


def bearing_order() -> Picture:
    """Return axle, washers, bearings, spacer and nut cut along the axle, numbered from the hanger outwards."""
    widths = (WASHER, BEARING, SPACER, BEARING, WASHER, NUT)
    starts = [sum(widths[:place]) for place in range(len(widths))]
    end = sum(widths)
    strokes: list[Stroke] = [
        Fill(box(-5.0, -7.0, 0.0, 7.0), "second"),
        Fill(box(0.0, -BORE + 0.3, end + 2.5, BORE - 0.3), "outline"),
        *_wheel(starts[1], starts[3] + BEARING),
    ]
    for place, (start, width) in enumerate(zip(starts, widths, strict=True)):
        number = place + 1
        if place in (1, 3):
            strokes += _bearing(start)
            tall = OUTER
        else:
            tall = {0: 6.5, 2: 6.0, 4: 6.5, 5: 6.8}[place]
            for low, high in ((BORE, tall), (-tall, -BORE)):
                strokes.append(Fill(box(start, low, start + width, high), "text"))
        above = place in (1, 2, 3)
        at = (start + width / 2, 16.2 if above else -16.2)
        strokes.append(Path(((at[0], tall if above else -tall), at), "main", 1.0))
        strokes.append(Label(str(number), at, ("t" if above else "b",), bold=True, must=True, gap=3.0))
    return Picture(
        tuple(strokes), (-6.0, -16.5, end + 3.0, 16.5), height=130.0, margins=(8.0, 22.0, 8.0, 22.0)
    )


def _wheel(start: float, stop: float) -> Iterator[Stroke]:
    """Yield the wheel's core above and below, hatched as what is no steel."""
    for low, high in ((OUTER, 14.5), (-14.5, -OUTER)):
        yield from hatches((start, low), (stop, high), 2.2, kind=SINGLE)
        yield frame(box(start, low, stop, high), "text", 1.5)


def _bearing(start: float) -> Iterator[Stroke]:
    """Yield inner ring, ball and outer ring, above and below the axle."""
    for side in (1, -1):
        for low, high in ((BORE, BORE + RING), (OUTER - RING, OUTER)):
            yield frame(box(start, side * low, start + BEARING, side * high), "text", 2.0)
        yield Arc((start + BEARING / 2, side * (BORE + OUTER) / 2), 1.7, tone="text", width=2.0)
