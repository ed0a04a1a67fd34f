"""The best stopping distance that the values so far allow: by how boards usually slow, then modelled with what is usual."""

from functools import cached_property

from logic.answers.asked import Asked, Asking
from logic.answers.first_figure import SEEN, FirstFigure, lacking
from logic.answers.reading import Item, Open, assumed
from logic.answers.rough import SUFFIX, RoughParts, RoughReading, RoughRun, taken_as_usual
from logic.answers.run import answer
from logic.answers.stopping import STOPS, StopParts, stop_alone
from logic.board import Board, Value
from logic.drive.even_braking import even_braking_distance, slowed_on_slope
from logic.drive.road import slope_angle, standard
from logic.drive.stopping import reaction_distance, stop_distance
from logic.tables import pick

HEAD = "stop_dry_design"
BRAKES = ("controller.brake_current", "controller.regen_current")
"""Values that the controller shows."""


LEVEL = "usual deceleration"
"""Names what the motors usually slow a board by among what leaves a figure open."""


class RoughStop(RoughParts, StopParts):
    """A stop with what is usual where nothing is entered."""

    @cached_property
    def usual_deceleration(self) -> float:
        """What motors alone usually slow a board by, on the level."""
        row, column = (
            pick("usual_braking", name="motors alone"),
            "deceleration" + SUFFIX[self.read.end(LEVEL)],
        )
        return assumed("Motors alone slow it by", row, column, "m/s**2", "acceleration")

    @cached_property
    def usual_stop(self) -> float:
        """Whole way at that deceleration, with the design reaction."""
        slope = slope_angle(grade=self.asked("ask.stop_grade"))
        slows = slowed_on_slope(
            deceleration=self.usual_deceleration, gravity=standard("gravity"), slope=slope
        )
        time = pick("reaction", name="design").number("time")
        return stop_distance(
            reaction=reaction_distance(speed=self.speed, reaction_time=time),
            braking=even_braking_distance(speed=self.speed, deceleration=slows),
        )


@answer()
def first_stop(board: Board, rider: Value | None, asking: Asking) -> FirstFigure:
    """Return the best whole way of a dry stop that the values so far allow, in m."""

    def make(reading: RoughReading) -> RoughStop:
        return RoughStop(reading, Asked(asking))

    if lacking(board, rider, SEEN):
        usual = RoughRun(board, rider, make, (LEVEL,))
        return FirstFigure("by usual", usual.banded(HEAD, "way", lambda parts: parts.usual_stop))
    run = RoughRun(board, rider, make, (*taken_as_usual(board), *lacking(board, rider, BRAKES)))
    return FirstFigure("modelled", run.banded(HEAD, *STOPS[HEAD]), run.taken)


@answer()
def stop_so_far(board: Board, rider: Value | None, asking: Asking) -> Item:
    """Return the dry stop alone: the full answer, else the best that the values so far allow."""
    full = stop_alone(board, rider, asking)
    if isinstance(full, Open) and full.missing:
        return first_stop(board, rider, asking).item
    return full
