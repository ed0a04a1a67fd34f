"""The best stopping distance that the values so far allow: by how boards usually slow, then modelled with what is usual."""

from functools import cached_property

from logic.answers.asked import Asked, Asking
from logic.answers.first_figure import SEEN, FirstFigure, lacking
from logic.answers.first_speed import (
    SUFFIX,
    End,
    Ends,
    RoughParts,
    RoughReading,
    taken_as_usual,
    with_band,
)
from logic.answers.reading import assumed
from logic.answers.run import Middle, Run, answer
from logic.answers.stopping import STOPS, StopParts
from logic.board import Board, Value
from logic.drive.even_braking import even_braking_distance, slowed_on_slope
from logic.drive.road import slope_angle, standard
from logic.drive.stopping import reaction_distance, stop_distance
from logic.tables import pick

HEAD = "stop_dry_design"
BRAKES = ("controller.brake_current", "controller.regen_current")
"""Values that the controller shows."""


class RoughStop(RoughParts, StopParts):
    """A stop with what is usual where nothing is entered."""

    end: End = "usual"

    @cached_property
    def usual_deceleration(self) -> float:
        """What motors alone usually slow a board by, on the level."""
        row, column = pick("usual_braking", name="motors alone"), "deceleration" + SUFFIX[self.end]
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

    def make(key: str = "", end: End = "usual") -> RoughStop:
        parts = RoughStop(RoughReading(board, rider, key, end), Asked(asking))
        parts.end = end
        return parts

    run = Run(make)
    if lacking(board, rider, SEEN):
        low, high = (Run(lambda end=end: make(end=end)).view(_usual, None) for end in ("high", "low"))  # type: ignore[misc]
        reach = None if low is None or high is None else (low, high)
        return FirstFigure("by usual", run.figure(HEAD, "way", lambda parts: _within(parts, reach)))
    quantity, compute = STOPS[HEAD]
    taken = (*taken_as_usual(board), *lacking(board, rider, BRAKES))
    item = run.figure(HEAD, quantity, compute)
    return FirstFigure("modelled", with_band(item, taken, Ends(make, compute)), taken)


def _usual(parts: RoughStop) -> float:
    return parts.usual_stop


def _within(parts: RoughStop, reach: tuple[float, float] | None) -> float | Middle:
    return parts.usual_stop if reach is None else Middle(parts.usual_stop, reach)
