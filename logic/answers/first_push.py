"""The best push and climb that the values so far allow: what nobody knows without a bench is taken as usual, with its band."""

from collections.abc import Mapping
from functools import partial

from logic.answers.first_speed import FIRST, WEIGHT
from logic.answers.gearing import RESULTS, GearingParts
from logic.answers.parts import Parts
from logic.answers.reading import RIDER, Item
from logic.answers.rough import RoughParts, RoughReading, RoughRun
from logic.answers.run import WhenRead, answer
from logic.board import Board, Value

HILLS = ("controller.motor_current", "drive.motors")
"""Values that say how hard it pushes: a limit that is not known cannot be taken as usual here."""
FIGURES = ("push_start", "climb_start", "push_at", "climb_at")


class RoughGearing(RoughParts, GearingParts):
    """The parts of a board with what is usual, and the speed at which push and climb are asked."""

    def __init__(self, at_speed: float, reading: RoughReading) -> None:
        """Take the board from a reading, and the speed in m/s."""
        Parts.__init__(self, reading)
        self.at_speed = at_speed


@answer(at_speed=6.0)
def first_push(board: Board, rider: Value | None, at_speed: float) -> Mapping[str, Item]:
    """Return push and climb by name, each with its band; nothing while a value is missing that one can know."""
    wanted = (*FIRST, *WEIGHT, *HILLS)
    if any((rider if key == RIDER.key else board.value(key)) is None for key in wanted):
        return {}
    run = RoughRun(board, rider, partial(RoughGearing, at_speed))
    return WhenRead(FIGURES, lambda name: run.banded(name, *RESULTS[name]))
