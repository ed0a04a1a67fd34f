"""Hatching of a cut: what a part is made of is told by its lines, not by a colour."""

from collections.abc import Iterator

from screens.pictures.strokes import Path, Point

SINGLE, PAIRS, BROKEN = "single", "pairs", "broken"
"""Light metal, steel, and all else."""
THIN, DASHES = 1.0, (5.0, 4.0)


def hatches(
    lower: Point, upper: Point, step: float, *, kind: str = SINGLE, rising: bool = True
) -> Iterator[Path]:
    """Yield lines at 45 degrees over a rectangle, from its lower left to its upper right corner.

    Two parts that touch are told apart by `rising`.
    """
    (left, foot), (right, top) = lower, upper
    tall, at, second = top - foot, left - (top - foot) + step / 2, False
    while at < right:
        ends = [(x, y) for x, y in _clipped(at, tall, left, right)]
        if len(ends) == 2:  # noqa: PLR2004  (a line has two ends)
            points = tuple((x, foot + y if rising else top - y) for x, y in ends)
            yield Path(points, "text", THIN, DASHES if kind == BROKEN else ())
        at += step * (0.35 if not second else 1.65) if kind == PAIRS else step
        second = not second


def _clipped(start: float, tall: float, left: float, right: float) -> list[Point]:
    """Return the two ends of a line that climbs one for one from the foot at `start`, within left and right."""
    begin, end = max(start, left), min(start + tall, right)
    return [(begin, begin - start), (end, end - start)] if end - begin > 0.02 * tall else []
