"""Ranges, round ticks, the cutting of lines, and the axes that a chart stands on."""

from collections.abc import Iterator, Sequence
from itertools import pairwise
from math import ceil, floor, log10

from screens.pictures.strokes import Label, Path, Point, Stroke

MINUS = "\N{MINUS SIGN}"
TICKS = 5
CORNER = 0.15
"""Share of the height within which a nought is in the corner."""


def plain_number(value: float, mark: str) -> str:
    """Return a number as a tick shows it, with a real minus sign and the person's decimal mark."""
    return f"{value:g}".replace("-", MINUS).replace(".", mark)


def round_ticks(low: float, high: float, most: int) -> list[float]:
    """Return at most `most` multiples of 1, 2 or 5 times a power of ten within the range.

    >>> round_ticks(0.0, 38.0, 5)
    [0.0, 10.0, 20.0, 30.0]
    """
    power = floor(log10((high - low) / max(most, 1)))
    for size, factor in ((power, 1), (power, 2), (power, 5), (power + 1, 1), (power + 1, 2), (power + 1, 5)):
        step = factor * 10.0**size
        first, last = ceil(low / step - 1e-9), floor(high / step + 1e-9)
        if last - first + 1 <= most:
            return [round(at * step, 12) for at in range(first, last + 1)]
    return []


def opened(low: float, high: float) -> tuple[float, float]:
    """Return the range, opened by one on both sides if it is a single value."""
    return (low, high) if low < high else (low - 1.0, high + 1.0)


def reach(values: Sequence[float], *, from_zero: bool) -> tuple[float, float]:
    """Return the range an axis takes to show the values, with a little air above."""
    low, high = min(values), max(values)
    if from_zero:
        low, high = min(0.0, low), max(0.0, high)
    low, high = opened(low, high)
    air = 0.06 * (high - low)
    return (low if from_zero and low == 0.0 else low - air), (
        high if from_zero and high == 0.0 else high + air
    )


def cut(points: Sequence[Point], right: float, top: float) -> list[list[Point]]:
    """Return the parts of a polyline within 0 to right and 0 to top."""
    parts: list[list[Point]] = []
    for (x0, y0), (x1, y1) in pairwise(points):
        start, end = 0.0, 1.0
        for room, rate in ((x0, x1 - x0), (right - x0, x0 - x1), (y0, y1 - y0), (top - y0, y0 - y1)):
            # Inside where room + rate * share >= 0.
            if rate > 0:
                start = max(start, -room / rate)
            elif rate < 0:
                end = min(end, room / -rate)
            elif room < 0:
                end = -1.0
        if start >= end:
            continue
        first = (x0 + start * (x1 - x0), y0 + start * (y1 - y0))
        if start > 0.0 or not parts or parts[-1][-1] != first:
            parts.append([first])
        parts[-1].append((x1, y1) if end == 1.0 else (x0 + end * (x1 - x0), y0 + end * (y1 - y0)))
    return parts


def grid(across: Point, up: Point, mark: str) -> Iterator[Stroke]:
    """Yield the lines and numbers of both axes, from their lower to their upper end, and the two axes themselves.

    A number that has no room beside its neighbour is left out: its line stands.
    """
    (left, right), (foot, top) = across, up
    levels = round_ticks(foot, top, TICKS)
    for value in levels:
        yield Path(((left, value), (right, value)), "hair", 1.0)
        yield Label(plain_number(value, mark), (left, value), ("l",), tone="second", gap=5.0)
    for value in round_ticks(left, right, TICKS):
        yield Path(((value, foot), (value, foot + (top - foot) * 0.025)), "outline", 1.0)
        # One nought in the corner serves both axes.
        if not (value == left == 0.0 in levels and -foot <= CORNER * (top - foot)):
            yield Label(plain_number(value, mark), (value, foot), ("b",), tone="second")
    yield Path(((left, top), (left, foot), (right, foot)), "outline", 1.1)
