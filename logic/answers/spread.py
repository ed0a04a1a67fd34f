"""The band that a printed motor constant leaves open."""

from collections.abc import Callable
from dataclasses import replace

from logic.answers.reading import Item, Result
from logic.board import Board
from logic.errors import InputError, Missing
from logic.tables import pick
from logic.workings import unrecorded


def with_kv_band(board: Board, item: Item, compute: Callable[[Board], float]) -> Item:
    """Return a result with its band while Kv is only printed; `compute` works it out for a board.

    Without a band where an end cannot be worked out, and where Kv was measured.
    """
    kv = board.motor.kv
    if kv is None or kv.known == "measured" or not isinstance(item, Result):
        return item
    ends = []
    with unrecorded():
        share = pick("spreads", name="printed motor constant").number("share")
        for factor in (1.0 - share, 1.0 + share):
            try:
                ends.append(compute(board.with_value("motor.kv", replace(kv, si=float(kv.si) * factor))))
            except (Missing, InputError):
                return item
    return replace(item, band=(min(*ends, item.value), max(*ends, item.value)))
