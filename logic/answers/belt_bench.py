"""Setting a belt on the bench: the best pull depth, several pulls, a hung weight, and pulling the motor."""

from functools import cached_property, partial

from logic.answers.belt_parts import BeltParts
from logic.answers.reading import Item, Open, Reading, Result
from logic.answers.run import Figures, Run, answer
from logic.answers.tension import BeltReading, judged, one_pull, put_in
from logic.belt.best_depth import deflection_part, force_part
from logic.belt.pull_fit import Pull, Tools, fit_pulls, fitted_error, fitted_tension, fitted_zero
from logic.belt.pull_reading import (
    read_pull,
    tension_error,
    tension_per_deflection,
    tension_per_force,
    tension_per_stiffness,
)
from logic.belt.running import shaft_pull, tension_from_shaft_pull
from logic.belt.scale import pull_force
from logic.belt.shaft_reading import shaft_tension_error
from logic.belt.travel import nudge
from logic.belt.verdict import Measured
from logic.board import Board
from logic.frozen import frozen
from logic.person import Person
from logic.si import Metre, Newton, One
from logic.tables import pick
from logic.workings import Given, given

MISFIT = 1.5
"""From here on several pulls do not belong to one belt."""


class BenchParts(BeltParts):
    """The parts that setting a belt rests on beside a single pull."""

    @cached_property
    def best_pull(self) -> Newton:
        """Pull for the target at the best depth."""
        return pull_force(tension=self.target.tension, deflection=self.best, **self.span_and_belt)

    def slopes(self, force: Newton, depth: Metre) -> dict[str, float]:
        """Return how the tension moves with pull, depth and stiffness."""
        return {
            "per_force": tension_per_force(deflection=depth, span=self.span),
            "per_depth": tension_per_deflection(force=force, deflection=depth, **self.span_and_belt),
            "per_stiffness": tension_per_stiffness(deflection=depth, span=self.span, length=self.belt_length),
        }

    @cached_property
    def best_slopes(self) -> dict[str, float]:
        """Slopes at the best depth."""
        return self.slopes(self.best_pull, self.best)

    @cached_property
    def best_error(self) -> Newton:
        """Error of one pull at the best depth on a belt of the target."""
        return tension_error(**self.tool_errors, **self.best_slopes)

    @cached_property
    def friction(self) -> One:
        """Share of a pull that the slots may take or give."""
        return pick("belt_practice", name="slot friction").number("fraction")

    @cached_property
    def askew(self) -> float:
        """Angle that a pull by eye may lie off the line of centres."""
        return pick("belt_practice", name="pull angle").number("angle")

    def shaft_error(self, tension: Newton, pull: Newton) -> Newton:
        """Return the error of pulling the motor."""
        return shaft_tension_error(
            tension=tension,
            pull=pull,
            scale_error=self.force_error,
            friction=self.friction,
            angle=self.askew,
        )

    def nudge_from(self, tension: Newton) -> Metre:
        """Return the way to move the motor from a tension to the target."""
        return nudge(
            wanted=self.target.tension,
            tension=tension,
            length=self.belt_length,
            stiffness=self.belt.stiffness,
            centre=self.centre,
            **self.pulleys,
        )


def _share(parts: BenchParts) -> float:
    return parts.best_error / parts.target.tension


def _from_scale(parts: BenchParts) -> float:
    return force_part(slope=parts.best_slopes["per_force"], error=parts.force_error)


def _from_depth(parts: BenchParts) -> float:
    return deflection_part(slope=parts.best_slopes["per_depth"], error=parts.depth_error)


def _from_stiffness(parts: BenchParts) -> float:
    return force_part(slope=parts.best_slopes["per_stiffness"], error=parts.stiffness_error)


def _motor_pull(parts: BenchParts) -> float:
    return shaft_pull(tension=parts.target.tension, wrap=parts.wrap)


def _motor_error(parts: BenchParts) -> float:
    return parts.shaft_error(parts.target.tension, _motor_pull(parts))


BENCH: Figures[BenchParts] = {
    "best_depth": ("length", lambda parts: parts.best),
    "best_pull": ("force", lambda parts: parts.best_pull),
    "best_error": ("force", lambda parts: parts.best_error),
    "best_share": ("share", _share),
    "from_depth": ("force", _from_depth),
    "from_scale": ("force", _from_scale),
    "from_stiffness": ("force", _from_stiffness),
    "motor_pull": ("force", _motor_pull),
    "motor_error": ("force", _motor_error),
}
"""Quantity and computation of what one should do on the bench."""


@answer()
def bench_plan(board: Board, person: Person) -> dict[str, Item]:
    """Return the best depth with its pull and what its error is made of, and the pull on the motor."""
    return Run(lambda: BenchParts(Reading(board), person)).figures(BENCH)


@frozen
class Positions:
    """Readings of one belt at several wheel positions, in the order they were taken."""

    readings: tuple[BeltReading, ...]
    tightest: BeltReading | None
    slackest: BeltReading | None
    spread: Item


@answer(pulls=(9.0, 9.5, 8.8, 9.2), depth=0.0011)
def positions(board: Board, person: Person, pulls: tuple[Newton, ...], depth: Metre) -> Positions:
    """Return the readings of pulls at one depth; the belt is set by the tightest of them."""
    run = Run(lambda: BenchParts(Reading(board), person, depth))
    readings = tuple(
        judged(run, partial(one_pull, f"Pull, position {number}", pull))
        for number, pull in enumerate(pulls, start=1)
    )
    known = [reading for reading in readings if isinstance(reading.tension, Result)]
    if not known:
        return Positions(readings, None, None, Open("spread"))
    tightest, slackest = max(known, key=_tension), min(known, key=_tension)
    apart = run.figure("spread", "force", lambda _: _tension(tightest) - _tension(slackest))
    return Positions(readings, tightest, slackest, apart)


def _tension(reading: BeltReading) -> float:
    assert isinstance(reading.tension, Result)  # noqa: S101  (the caller left the others out)
    return reading.tension.value


@frozen
class FittedReading:
    """What several pulls tell together; `agree` is False when they do not belong to one belt."""

    reading: BeltReading
    zero: Item
    agree: bool


@answer(pulls=((7.0, 0.001), (14.0, 0.0015), (26.0, 0.0025)))
def fitted_reading(board: Board, person: Person, pulls: tuple[tuple[Newton, Metre], ...]) -> FittedReading:
    """Return the tension that fits pulls of (N, m) best, with the zero error of the depth."""
    run = Run(lambda: PullFitParts(Reading(board), person, pulls))
    reading = judged(
        run, lambda parts: Measured(fitted_tension(**parts.around), fitted_error(**parts.around))
    )
    zero = run.figure("zero", "length", lambda parts: fitted_zero(**parts.around))
    return FittedReading(reading, zero, run.view(PullFitParts.agree, otherwise=True))


class PullFitParts(BenchParts):
    """The parts of a board, and several pulls of one belt."""

    def __init__(self, reading: Reading, person: Person, pulls: tuple[tuple[Newton, Metre], ...]) -> None:
        """Take the board from a reading, the tools from the person, and pulls of (N, m)."""
        super().__init__(reading, person)
        self.pulls = pulls

    @cached_property
    def zero_share(self) -> One:
        """Share of the depth's error that is alike in all pulls."""
        return pick("belt_practice", name="zero share").number("fraction")

    @cached_property
    def around(self) -> dict[str, float]:
        """What the fit takes: the pulls, the errors of the tools, and the belt."""
        numbers: dict[str, float] = {}
        for number, (force, depth) in enumerate(self.pulls, start=1):
            numbers[f"pull_{number}"] = put_in(f"Pull {number}", force)
            numbers[f"depth_{number}"] = given(
                Given(f"Depth {number}", float(depth), "m", "length", known="measured")
            )
        return {"zero_share": self.zero_share, **self.tool_errors, **self.span_and_belt, **numbers}

    def agree(self) -> bool:
        """Tell whether the pulls belong to one belt."""
        tools = Tools(self.force_error, self.depth_error, self.zero_share, self.stiffness_error)
        fit = fit_pulls([Pull(force, depth) for force, depth in self.pulls], tools, **self.span_and_belt)
        return fit.misfit <= MISFIT


@answer(weight=10.0, depth=0.0011)
def weight_reading(board: Board, person: Person, weight: Newton, depth: Metre) -> BeltReading:
    """Return the tension that a weight hung at mid-span tells by the depth it makes."""
    return judged(Run(lambda: BenchParts(Reading(board), person, depth)), partial(_weighed, weight))


def _weighed(weight: Newton, parts: BenchParts) -> Measured:
    force = put_in("Hung weight", weight)
    return read_pull(
        force=force,
        deflection=parts.depth,
        force_error=pick("belt_practice", name="weighing error").number("fraction") * force,
        deflection_error=parts.depth_error,
        stiffness_error=parts.stiffness_error,
        **parts.span_and_belt,
    )


@answer(pull=60.0)
def motor_reading(board: Board, person: Person, pull: Newton) -> BeltReading:
    """Return the tension of each span while the motor is pulled along the line of centres."""
    return judged(Run(lambda: BenchParts(Reading(board), person)), partial(_by_motor, pull))


def _by_motor(pull: Newton, parts: BenchParts) -> Measured:
    force = put_in("Pull on the motor", pull)
    tension = tension_from_shaft_pull(pull=force, wrap=parts.wrap)
    return Measured(tension, parts.shaft_error(tension, force))


@answer(tension=70.0)
def nudge_for(board: Board, person: Person, tension: Newton) -> Item:
    """Return how far to move the motor from a tension to the target; below zero is towards the wheel."""
    run = Run(lambda: BenchParts(Reading(board), person))
    return run.figure("nudge", "length", lambda parts: parts.nudge_from(put_in("Belt tension now", tension)))
