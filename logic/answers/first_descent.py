"""The drop that a charge takes back, as far as the values go: with the usual load and cells where nothing is entered."""

from functools import cached_property

from logic.answers.asked import Asked, Asking
from logic.answers.descents import RESULTS, DescentParts
from logic.answers.first_figure import FirstFigure, lacking
from logic.answers.first_range import PACK
from logic.answers.first_speed import WEIGHT
from logic.answers.reading import Open, assumed
from logic.answers.rough import SUFFIX, RoughParts, RoughReading, RoughRun
from logic.answers.run import answer
from logic.board import Board, Value
from logic.tables import pick

HEAD = "drop_back"
LOAD = "load.board_mass"


class RoughDescent(RoughParts, DescentParts):
    """A descent with what is usual where nothing is entered."""

    def __init__(self, reading: RoughReading, asked: Asked) -> None:
        """Take the board from a reading and the question."""
        DescentParts.__init__(self, reading, asked)

    @cached_property
    def mass(self) -> float:
        """All that moves, as usual until rider and board were weighed."""
        if not lacking(self.read.board, self.read.rider, WEIGHT):
            return super().mass
        row = pick("usual_load", name="all that moves")
        return assumed("All that moves", row, "mass" + SUFFIX[self.read.end(LOAD)], "kg", "mass")


@answer()
def first_descent(board: Board, rider: Value | None, asking: Asking) -> FirstFigure:
    """Return the best drop in m that the values so far allow."""
    lacks = lacking(board, rider, PACK)
    if lacks:
        return FirstFigure("nothing", Open(HEAD, missing=lacks))

    def make(reading: RoughReading) -> RoughDescent:
        return RoughDescent(reading, Asked(asking))

    weight = (LOAD,) if lacking(board, rider, WEIGHT) else ()
    item = RoughRun(board, rider, make, weight).banded(HEAD, *RESULTS[HEAD])
    taken = (*lacking(board, rider, ("pack.packs", "pack.chemistry")), *lacking(board, rider, WEIGHT))
    return FirstFigure("modelled", item, taken)
