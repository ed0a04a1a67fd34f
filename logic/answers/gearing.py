"""Gearing and speed: how fast the board goes, how hard it pushes, and why."""

from collections.abc import Mapping
from dataclasses import field
from functools import cached_property, partial

from logic.answers.parts import CHARGES, Parts, chosen, standstill
from logic.answers.reading import Item, Reading, Result
from logic.answers.run import Figures, Points, Run, answer, kv_bands
from logic.board import Board, Value, faults
from logic.drive.gearing import belt_speed, electrical_angular_speed, motor_angular_speed, unloaded_speed
from logic.drive.motor import torque_constant_stated
from logic.drive.performance import climb_at, steady_speed
from logic.drive.push import top_unloaded_speed
from logic.drive.quick import quick_load, quick_push
from logic.errors import InputError, NoFigure
from logic.frozen import frozen

POINTS = 40
"""Points of each curve of the chart."""

FACING_UP = 1.08
"""The chart ends a little above the unloaded speed, so that its foot is seen."""


@frozen
class Curves:
    """Push at full remote and road load over speed, with the speed where they meet, None when they do not."""

    push: Points
    load: Points
    meeting: tuple[float, float] | None


@frozen
class Gearing:
    """Results by name, in the order they are shown; curves when they can be drawn; what does not fit together."""

    items: Mapping[str, Item]
    faults: tuple[InputError, ...]
    drawn: bool
    """Whether there are curves; they are worked out when they are read."""
    run: "Run[GearingParts]" = field(compare=False, repr=False)

    @cached_property
    def curves(self) -> Curves | None:
        """Return the curves, None where a value is missing."""
        return self.run.view(partial(_curves, self.items["top_loaded"]), None)


@answer(at_speed=6.0)
def gearing(board: Board, rider: Value | None, at_speed: float) -> Gearing:
    """Return everything the gearing screen shows. `at_speed` in m/s is where push and climb are asked.

    A result that cannot be given says what is missing or wrong; the others are given all the same.
    """
    make = partial(GearingParts, rider, at_speed)
    run = Run(lambda: make(board))
    items = kv_bands(board, make, RESULTS, run.when_read(RESULTS), *SPREAD_BY_KV)
    drawn = run.reads(lambda parts: (parts.nominal, parts.road))
    return Gearing(items, faults(board), drawn, run)


@answer()
def top_speed(board: Board, rider: Value | None) -> Item:
    """Return the loaded top speed alone, or what stands in its way."""
    return Run(lambda: Parts(Reading(board, rider))).figure("top_loaded", "speed", top_loaded)


class GearingParts(Parts):
    """The parts of a board, and the speed at which push and climb are asked."""

    def __init__(self, rider: Value | None, at_speed: float, board: Board) -> None:
        """Take the board with its rider, and the speed in m/s."""
        super().__init__(Reading(board, rider))
        self.at_speed = at_speed

    @cached_property
    def speed(self) -> float:
        """The speed asked about."""
        return chosen("Chosen speed", self.at_speed, "m/s", "speed")

    @cached_property
    def push_at(self) -> float:
        """Push at that speed."""
        return self.push(self.speed)


def top_loaded(parts: Parts) -> float:
    """Return the speed at which push and road load meet, nominal pack. Raises InputError where they do not."""
    steady = steady_speed(parts.nominal, parts.road)
    if steady.speed is None:
        raise NoFigure("speed", None, steady.outcome)
    return steady.speed


def top_unloaded(charge: str, parts: Parts) -> float:
    """Return the speed without load at a charge of the pack."""
    return unloaded_speed(
        voltage=parts.voltage(charge),
        duty=parts.duty,
        speed_constant=parts.speed_constant,
        circumference=parts.circumference,
        ratio=parts.ratio,
    )


def _angular_speed(parts: GearingParts) -> float:
    return motor_angular_speed(speed=parts.speed, circumference=parts.circumference, ratio=parts.ratio)


def _electrical(parts: GearingParts) -> float:
    return electrical_angular_speed(
        angular_speed=_angular_speed(parts), pole_pairs=parts.read("motor.pole_pairs")
    )


def _belt_speed(parts: GearingParts) -> float:
    return belt_speed(angular_speed=_angular_speed(parts), pitch_diameter=parts.motor_pulley)


def _stated_constant(parts: Parts) -> float:
    return torque_constant_stated(torque_constant=parts.torque_constant, conversion=parts.conversion)


RESULTS: Figures[GearingParts] = {
    "top_loaded": ("speed", top_loaded),
    "top_full": ("speed", partial(top_unloaded, "full")),
    "top_nominal": ("speed", partial(top_unloaded, "nominal")),
    "top_empty": ("speed", partial(top_unloaded, "empty")),
    "push_start": ("force", lambda parts: parts.starting_push),
    "push_at": ("force", lambda parts: parts.push_at),
    "climb_start": ("share", lambda parts: climb_at(parts.starting_push, parts.road, standstill())),
    "climb_at": ("share", lambda parts: climb_at(parts.push_at, parts.road, parts.speed)),
    "ratio": ("ratio", lambda parts: parts.ratio),
    "circumference": ("length", lambda parts: parts.circumference),
    "angular_speed_at": ("angular_speed", _angular_speed),
    "electrical_at": ("angular_speed", _electrical),
    "belt_speed_at": ("belt_speed", _belt_speed),
    "torque_constant": ("torque_constant", _stated_constant),
}
"""Quantity and computation of each result, in the order shown."""

SPREAD_BY_KV = ("top_loaded", *(f"top_{charge}" for charge in CHARGES))
"""Results that are bands while the speed constant is only printed."""


def _curves(top: Item, parts: Parts) -> Curves:
    """Return the curves, meeting at the top speed that was found already."""
    push, load = quick_push(parts.nominal), quick_load(parts.road)
    end = top_unloaded_speed(parts.nominal) * FACING_UP
    speeds = [end * step / (POINTS - 1) for step in range(POINTS)]
    return Curves(
        tuple((speed, push(speed)) for speed in speeds),
        tuple((speed, load(speed)) for speed in speeds),
        (float(top.value), push(float(top.value))) if isinstance(top, Result) else None,
    )
