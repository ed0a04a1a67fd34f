"""Readings of one belt over its way or its days: each with its error, over the window it should lie in."""

from collections.abc import Sequence
from itertools import pairwise
from typing import NamedTuple

from screens.pictures.axis import grid, opened, reach
from screens.pictures.chart import HEIGHT, MARGINS
from screens.pictures.strokes import Disc, Fill, Label, Path, Picture, Stroke, box
from screens.tongue import _

AIR = 0.06
"""Share of the width that the first and the last reading stand off the frame."""


class Reading(NamedTuple):
    """A reading on the axes, and how far it may be off."""

    x: float
    y: float
    error: float


def history(
    readings: Sequence[Reading], window: tuple[float, float] | None, *, y_title: str, mark: str = "."
) -> Picture | None:
    """Return the readings joined in their order; None without any. `window` is floor and ceiling, `mark` decimal."""
    if not readings:
        return None
    left, right = opened(min(one.x for one in readings), max(one.x for one in readings))
    air = AIR * (right - left)
    left, right = left - air, right + air
    ends = [one.y + side * one.error for one in readings for side in (-1, 1)]
    foot, top = reach([*ends, *(window or ())], from_zero=False)
    foot = max(0.0, foot)
    strokes: list[Stroke] = []
    if window is not None:
        low, high = (max(foot, edge) for edge in window)
        strokes.append(Fill(box(left, low, right, high), "key"))
        strokes += [Path(((left, edge), (right, edge)), "outline", 2.0) for edge in (low, high)]
    strokes += grid((left, right), (foot, top), mark)
    strokes.append(Path(tuple((one.x, one.y) for one in readings), "chart_a", 3.0))
    cap = 0.012 * (right - left)
    for one in readings:
        low, high = max(foot, one.y - one.error), one.y + one.error
        strokes.append(Path(((one.x, low), (one.x, high)), "chart_a", 2.0))
        strokes += [Path(((one.x - cap, end), (one.x + cap, end)), "chart_a", 2.0) for end in (low, high)]
        strokes.append(Disc((one.x, one.y), 5.0, "chart_a", "ground"))
    strokes.append(Label(y_title, (left, top), ("rt",), tone="second", gap=2.0, must=True))
    if window is not None:
        # Where two readings leave the most room between them.
        xs = [left, *(one.x for one in readings), right]
        before, after = max(pairwise(xs), key=lambda gap: gap[1] - gap[0])
        middle = (before + after) / 2
        strokes += [
            Label(_("ceiling"), (middle, window[1]), ("b", "t"), bold=True),
            Label(_("floor"), (middle, window[0]), ("t", "b"), bold=True),
        ]
    view = (left, foot, right, top)
    return Picture(tuple(strokes), view, to_scale=False, height=HEIGHT, margins=MARGINS)
