"""The best range that the values so far allow: by what a way usually takes, then modelled with what is usual, then as it is."""

from collections.abc import Sequence
from typing import Literal

from logic.answers.asked import Asked, Asking
from logic.answers.first_speed import FIRST, WEIGHT
from logic.answers.range import RangeParts, range_alone
from logic.answers.reading import RIDER, Item, Open
from logic.answers.rough import RoughParts, RoughReading, RoughRun
from logic.answers.run import Middle, answer
from logic.board import Board, Value
from logic.frozen import frozen
from logic.log.rides import LoggedRide
from logic.pack.range import range_distance
from logic.tables import pick

PACK = ("pack.series", "pack.parallel", "pack.cell_capacity")
"""Values that say what the pack holds: a first range."""
RIDING = (*WEIGHT, *FIRST[1:])
"""Values that say what a way takes."""

Level = Literal["nothing", "by usual", "modelled"]


@frozen
class FirstRange:
    """The best range so far, how far the values go, and which of them are taken as usual."""

    level: Level
    item: Item
    assumed: tuple[str, ...] = ()


class RoughRange(RoughParts, RangeParts):
    """The packs, the drive and the road, with what is usual where nothing is entered."""


@answer()
def first_range(board: Board, rider: Value | None, asking: Asking) -> FirstRange:
    """Return the best range that the values so far allow, in m."""
    lacks = tuple(key for key in PACK if board.value(key) is None)
    if lacks:
        return FirstRange("nothing", Open("range_modelled", missing=lacks))

    def make(reading: RoughReading) -> RoughRange:
        return RoughRange(reading, Asked(asking))

    run = RoughRun(board, rider, make)
    if any((rider if key == RIDER.key else board.value(key)) is None for key in RIDING):
        return FirstRange("by usual", run.figure("range_by_usual", "distance", _by_usual))
    item = run.banded("range_modelled", "distance", lambda parts: parts.modelled_range)
    return FirstRange("modelled", item, run.taken)


@answer()
def range_so_far(board: Board, rider: Value | None, asking: Asking, rides: Sequence[LoggedRide] = ()) -> Item:
    """Return the range alone: the full answer, else the best that the values so far allow."""
    full = range_alone(board, rider, asking, rides)
    if isinstance(full, Open) and full.missing:
        return first_range(board, rider, asking).item
    return full


def _by_usual(parts: RoughRange) -> Middle:
    low, usual, high = (
        range_distance(
            energy=parts.usable_now, per_distance=pick("range_spread", end=end).number("per_distance")
        )
        for end in ("high", "usual", "low")
    )
    return Middle(usual, (low, high))
