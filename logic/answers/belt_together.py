"""Which way tells this belt's tension best, and what two ways tell together."""

from collections.abc import Callable
from functools import cached_property, partial

from logic.answers.belt_sound import Calibration, SoundParts
from logic.answers.reading import Item, Reading, Result
from logic.answers.run import Run, answer
from logic.answers.tension import BeltReading, judged, put_in
from logic.belt.combine import disagreement, mean_error, weighted_mean, with_bias
from logic.belt.pluck import calibrated_error
from logic.belt.pull_fit import fitted_error
from logic.belt.pull_reading import tension_error
from logic.belt.running import shaft_pull
from logic.belt.scale import pull_force
from logic.belt.verdict import Measured
from logic.board import Board
from logic.errors import InputError
from logic.frozen import frozen
from logic.person import Person
from logic.si import Newton
from logic.tables import matching, pick, rows
from logic.workings import Given, given

FITTED_DEPTHS = 5
"""Pulls of the fitted way, from half the best depth to twice it."""


def _scale(parts: SoundParts) -> float:
    return parts.best_error / parts.target.tension


def _weight(parts: SoundParts) -> float:
    error = tension_error(
        force_error=pick("belt_practice", name="weighing error").number("fraction") * parts.best_pull,
        deflection_error=parts.depth_error,
        stiffness_error=parts.stiffness_error,
        **parts.best_slopes,
    )
    return error / parts.target.tension


def _fitted(parts: SoundParts) -> float:
    numbers: dict[str, float] = {}
    for number in range(1, FITTED_DEPTHS + 1):
        part = given(
            Given(f"Depth {number} of the best", 0.5 + 0.375 * (number - 1), "1", "share", known="chosen")
        )
        depth = part * parts.best
        numbers[f"depth_{number}"] = depth
        numbers[f"pull_{number}"] = pull_force(
            tension=parts.target.tension, deflection=depth, **parts.span_and_belt
        )
    error = fitted_error(
        force_error=parts.force_error,
        deflection_error=parts.depth_error,
        zero_share=pick("belt_practice", name="zero share").number("fraction"),
        stiffness_error=parts.stiffness_error,
        **parts.span_and_belt,
        **numbers,
    )
    return error / parts.target.tension


def _motor(parts: SoundParts) -> float:
    if parts.read.choice("mount.adjust", "slots") == "fixed":
        raise InputError("mount.adjust", "fixed", "motor cannot move")
    tension = parts.target.tension
    error = parts.shaft_error(tension, shaft_pull(tension=tension, wrap=parts.wrap))
    return error / tension


def _pluck(calibrated: Calibration | None, parts: SoundParts) -> float:
    tension = parts.target.tension
    heard = parts.frequency(tension)
    off = parts.pluck_share * heard
    if calibrated is None:
        plain = parts.error(tension, heard, off)
        return with_bias(error=plain, bias=parts.most_bias, tension=tension) / tension
    error = calibrated_error(tension=tension, frequency=heard, frequency_error=off, **calibrated.put_in())
    return error / tension


WAYS: dict[str, Callable[[SoundParts], float]] = {
    "scale": _scale,
    "pulls": _fitted,
    "weight": _weight,
    "motor": _motor,
}
"""The ways to a tension beside the pluck, and the error each would leave on this belt at its target, as a share."""


@frozen
class Ways:
    """Error of each way by its name, and the best by its error and by what it takes; "" where none can be told."""

    items: dict[str, Item]
    best: str


@answer()
def ways(board: Board, person: Person, calibrated: Calibration | None = None) -> Ways:
    """Return what each way would be good to on this belt, with these tools, on this mount."""
    run = Run(lambda: SoundParts(Reading(board), person))
    every: dict[str, Callable[[SoundParts], float]] = {**WAYS, "pluck": partial(_pluck, calibrated)}
    items = {name: run.figure(f"way_{name}", "share", compute) for name, compute in every.items()}
    return Ways(items, _best({name: item.value for name, item in items.items() if isinstance(item, Result)}))


def _best(errors: dict[str, float]) -> str:
    """Return the easiest way, or a harder one whose error is so much smaller that it is worth what it takes.

    >>> _best({"scale": 0.19, "motor": 0.15}), _best({"scale": 0.85, "motor": 0.15})
    ('scale', 'motor')
    """
    best = ""
    for row in rows("belt_ways"):
        name = row.text("name")
        if name in errors and (not best or errors[name] <= row.cells["gain"] * errors[best]):
            best = name
    return best


def takes(way: str) -> str:
    """Return what a way takes: hands, things and a place."""
    return pick("belt_ways", name=way).text("takes")


@frozen
class Told:
    """A recorded reading: by which way, the tension and its error."""

    way: str
    tension: Newton
    error: Newton


@frozen
class Together:
    """Two readings of one belt: how far they stand apart, and what they tell together when they agree.

    `advice` is a sentence for two that disagree, "" otherwise.
    """

    apart: Item
    reading: BeltReading | None
    agree: bool
    advice: str


@answer(first=Told("scale", 95.0, 18.0), second=Told("motor", 103.0, 15.0))
def together(board: Board, person: Person, first: Told, second: Told) -> Together:
    """Return whether two readings agree, and their weighted mean when they do."""
    run = Run(lambda: TogetherParts(Reading(board), person, first, second))
    apart = run.figure("apart", "ratio", lambda parts: disagreement(**parts.numbers))
    if not isinstance(apart, Result) or apart.value > 1.0:
        return Together(apart, None, agree=False, advice=_advice(first, second))
    return Together(apart, judged(run, _mean), agree=True, advice="")


class TogetherParts(SoundParts):
    """The parts of a board, and two readings of one belt."""

    def __init__(self, reading: Reading, person: Person, first: Told, second: Told) -> None:
        """Take the board from a reading, the tools from the person, and the two readings."""
        super().__init__(reading, person)
        self.first, self.second = first, second

    @cached_property
    def numbers(self) -> dict[str, float]:
        """Both tensions with their errors."""
        return {
            "first": put_in(f"Tension, {self.first.way}", self.first.tension),
            "second": put_in(f"Tension, {self.second.way}", self.second.tension),
            "first_error": put_in(f"Error, {self.first.way}", self.first.error),
            "second_error": put_in(f"Error, {self.second.way}", self.second.error),
        }


def _mean(parts: TogetherParts) -> Measured:
    errors = {name: parts.numbers[name] for name in ("first_error", "second_error")}
    return Measured(weighted_mean(**parts.numbers), mean_error(**errors))


def _advice(first: Told, second: Told) -> str:
    low, high = sorted((first, second), key=lambda told: told.tension)
    # Several fitted pulls are pulls by scale.
    names = {"pulls": "scale"}
    found = matching("belt_disagree", high=names.get(high.way, high.way), low=names.get(low.way, low.way))
    return next((row.text("text") for row in found), "")
