"""Where a chart's labels stand: beside what they name, clear of each other, over as few lines as can be."""

from collections.abc import Iterable, Iterator, Sequence
from math import hypot

from kivy.metrics import dp

from screens.widgets.plane import Box, Point, Segment

NEAR = 3
"""A line nearer to a label than this, in dp, counts as crossed."""
APART = 8
"""Least distance between two labels in dp."""
CROSSING = 12
"""How many places further down the list a label goes rather than cross a line."""


def best_place(boxes: Iterable[Box], taken: Sequence[Box], ink: Sequence[Box]) -> Box | None:
    """Return the first box that touches nothing taken and crosses the fewest lines; None when all touch."""
    near = dp(NEAR)
    best: Box | None = None
    least = float("inf")
    for step, box in enumerate(boxes):
        if step > least:
            break
        if any(box.meets(other, dp(APART) if other.text else near) for other in taken):
            continue
        x, y, right, top = box.x - near, box.y - near, box.right + near, box.top + near
        crossed = sum(
            1
            for _, left, low, wide, tall in ink
            if left < right and x < left + wide and low < top and y < low + tall
        )
        if step + CROSSING * crossed < least:
            best, least = box, step + CROSSING * crossed
    return best


def places(plot: Box, wide: float, tall: float, anchors: Sequence[Point]) -> Iterator[Point]:
    """Yield lower left corners around the anchors, the best first, then a grid over the plot; all inside it.

    One anchor is a ring: its label stands around it or further out. Several are a line's points from its end
    backwards: the name may stand anywhere, in the line's colour.
    """
    first, low = plot.x + dp(2), plot.y + dp(2)
    last, high = plot.right - wide, plot.top - tall
    if high < low or last < first:
        return
    ring = len(anchors) == 1
    for gap in (8, 16, 28, 40) if ring else (8,):
        for x, y in anchors[:: max(1, len(anchors) // 10)]:
            for left, foot in around(x, y, wide, tall, gap * dp(1)):
                yield min(max(first, left), last), min(max(low, foot), high)
    rows = 0 if ring else int((high - low) / tall) + 1
    for row in range(rows):
        for column in range(5):
            yield last - column / 4 * (last - first), high - row * tall


def leader(anchors: Sequence[Point], box: Box) -> list[Segment]:
    """Return a stroke from the nearest point of a line, or from a ring's rim, to its label, unless close."""
    far, x, y, to_x, to_y = min(
        (hypot(to_x - x, to_y - y), x, y, to_x, to_y)
        for x, y in anchors
        for to_x, to_y in [(min(max(x, box.x), box.right), min(max(y, box.y), box.top))]
    )
    if far <= dp(14):
        return []
    start = dp(6) / far if len(anchors) == 1 else 0.0
    return [(x + (to_x - x) * start, y + (to_y - y) * start, to_x, to_y)]


def cross(one: Segment, other: Segment) -> bool:
    """Tell whether two strokes cross.

    >>> cross((0, 0, 2, 2), (0, 2, 2, 0)), cross((0, 0, 2, 2), (1, 0, 3, 2))
    (True, False)
    """

    def side(stroke: Segment, x: float, y: float) -> float:
        from_x, from_y, to_x, to_y = stroke
        return (to_x - from_x) * (y - from_y) - (to_y - from_y) * (x - from_x)

    return all(
        side(line, *ends[:2]) * side(line, *ends[2:]) < 0.0 for line, ends in ((one, other), (other, one))
    )


def around(x: float, y: float, wide: float, tall: float, gap: float) -> tuple[Point, ...]:
    """Return the lower left corners of a box at eight places around a point."""
    right, left, over, under = x + gap, x - gap - wide, y + gap, y - gap - tall
    middle, level = x - wide / 2, y - tall / 2
    return (
        (right, over),
        (left, over),
        (left, under),
        (right, under),
        (right, level),
        (left, level),
        (middle, over),
        (middle, under),
    )
