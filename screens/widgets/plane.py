"""Boxes, strokes and places on the plane, in pixels: what the drawn widgets reckon with before they draw."""

from collections.abc import Iterator, Sequence
from itertools import pairwise
from math import hypot
from statistics import fmean
from typing import NamedTuple

Point = tuple[float, float]
Segment = tuple[float, float, float, float]


class Box(NamedTuple):
    """A rectangle in widget coordinates, and the text that stands in it."""

    text: str
    x: float
    y: float
    width: float
    height: float

    @property
    def right(self) -> float:
        """Return the right edge."""
        return self.x + self.width

    @property
    def top(self) -> float:
        """Return the upper edge."""
        return self.y + self.height

    def meets(self, other: "Box", gap: float = 0.0) -> bool:
        """Return whether the boxes come nearer to each other than the gap."""
        return (
            self.x < other.right + gap
            and other.x < self.right + gap
            and self.y < other.top + gap
            and other.y < self.top + gap
        )


def pieces(points: Sequence[Point], longest: float) -> list[Box]:
    """Return small boxes that cover a polyline, each from a piece of it no longer than stated."""
    boxes = []
    for (x0, y0), (x1, y1) in pairwise(points):
        count = max(1, int(hypot(x1 - x0, y1 - y0) / longest) + 1)
        across, up = (x1 - x0) / count, (y1 - y0) / count
        for step in range(count):
            left, bottom = x0 + min(step * across, (step + 1) * across), y0 + min(step * up, (step + 1) * up)
            boxes.append(Box("", left, bottom, abs(across), abs(up)))
    return boxes


def dashes(points: Sequence[Point], pattern: Sequence[float]) -> Iterator[Segment]:
    """Yield the inked parts of a polyline; the pattern is ink, gap, ink, gap... in pixels."""
    at, left = 0, pattern[0]
    for (x0, y0), (x1, y1) in pairwise(points):
        length = hypot(x1 - x0, y1 - y0)
        done = 0.0
        while done < length:
            step = min(left, length - done)
            if at % 2 == 0:
                start, end = done / length, (done + step) / length
                yield (
                    x0 + (x1 - x0) * start,
                    y0 + (y1 - y0) * start,
                    x0 + (x1 - x0) * end,
                    y0 + (y1 - y0) * end,
                )
            done += step
            left -= step
            if left <= 0:
                at = (at + 1) % len(pattern)
                left = pattern[at]


def spread(
    widths: Sequence[float], centres: Sequence[float], low: float, high: float, gap: float
) -> list[float] | None:
    """Return left edges that keep labels in order, apart and inside, as near their centres as that allows.

    None when they do not fit side by side.
    """
    total = sum(widths) + gap * (len(widths) - 1)
    if total > high - low:
        return None
    # With the widths before it taken off each wish, "in order and apart" is "not falling": neighbours whose
    # wishes fall are pooled and share their mean.
    offsets = [sum(widths[:at]) + gap * at for at in range(len(widths))]
    pools: list[list[float]] = []
    for width, centre, offset in zip(widths, centres, offsets, strict=True):
        pools.append([centre - width / 2 - offset])
        while len(pools) > 1 and fmean(pools[-2]) > fmean(pools[-1]):
            last = pools.pop()
            pools[-1] += last
    wishes = [fmean(pool) for pool in pools for _ in pool]
    return [min(max(low, wish), high - total) + offset for wish, offset in zip(wishes, offsets, strict=True)]
