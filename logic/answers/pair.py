"""One pair of pulleys on a board, each figure with its working."""

from dataclasses import replace
from functools import cached_property

from logic.answers.asked import Asked, Asking
from logic.answers.belt_parts import BeltParts
from logic.answers.braking import brake_of
from logic.answers.parts import standstill
from logic.answers.reading import Item, Reading
from logic.answers.run import Figures, Run, answer, kv_bands
from logic.belt.geometry import teeth_in_mesh
from logic.belt.tension import effective_pull
from logic.board import Board, Value
from logic.drive.flow import at_steady_speed
from logic.drive.gearing import (
    electrical_angular_speed,
    motor_angular_speed,
    unloaded_angular_speed,
    unloaded_speed,
)
from logic.drive.motor import winding_heat
from logic.drive.performance import climb_at, steady_speed
from logic.drive.road import Road
from logic.drive.stopping import distance_of_stop
from logic.errors import NoFigure
from logic.si import One, RadianPerSecond
from logic.workings import cited


@cited("1 - angular_speed / limit", source="derived share that is left", standing="derived")
def margin_to_limit(*, angular_speed: RadianPerSecond, limit: RadianPerSecond) -> One:
    """Return what is left under a limit of angular speed, as a share of it; negative beyond it.

    >>> margin_to_limit(angular_speed=600.0, limit=800.0)
    0.25
    """
    return 1.0 - angular_speed / limit


class PairParts(BeltParts):
    """The parts of a board with the pair on it."""

    def __init__(self, reading: Reading, asked: Asked) -> None:
        """Take the board from a reading and the question beside it."""
        super().__init__(reading)
        self.asked = asked

    @cached_property
    def loaded(self) -> float:
        """Loaded top speed. Raises InputError with the outcome when push and load do not meet."""
        steady = steady_speed(self.nominal, self.road)
        if steady.speed is None:
            raise NoFigure("speed", None, steady.outcome)
        return steady.speed

    @cached_property
    def climb_road(self) -> Road:
        """The reference climb."""
        return replace(self.road, grade=self.asked("ask.climb_grade"))

    @cached_property
    def top_electrical(self) -> float:
        """Electrical angular speed of the unloaded motor on a full pack."""
        return electrical_angular_speed(
            angular_speed=unloaded_angular_speed(
                voltage=self.voltage("full"), duty=self.duty, speed_constant=self.speed_constant
            ),
            pole_pairs=self.read("motor.pole_pairs"),
        )


def pair_board(board: Board, motor: int, wheel: int, belt: int | None) -> Board:
    """Return the board with the pair and its belt. A centre or span measured with other pulleys is left out."""
    pair = {"drive.motor_teeth": motor, "drive.wheel_teeth": wheel, "drive.belt_teeth": belt}
    other = board
    for key, teeth in pair.items():
        before = board.value(key)
        if teeth is not None and (before is None or float(before.si) != teeth):
            other = other.with_value(key, Value(float(teeth), "chosen"))
    if other is board:
        return board
    return other.with_value("drive.centre", None).with_value("drive.span", None)


@answer()
def pair_details(board: Board, rider: Value | None, asking: Asking) -> dict[str, Item]:
    """Return every figure of a board's pair with its working, in the order shown."""

    def make(of: Board) -> PairParts:
        return PairParts(Reading(of, rider), Asked(asking))

    items = Run(lambda: make(board)).figures(RESULTS)
    return dict(kv_bands(board, make, RESULTS, items, "top_loaded", "top_full"))


def _unloaded(parts: PairParts) -> float:
    return unloaded_speed(
        voltage=parts.voltage("full"),
        duty=parts.duty,
        speed_constant=parts.speed_constant,
        circumference=parts.circumference,
        ratio=parts.ratio,
    )


def _heat(parts: PairParts) -> float:
    drive = parts.nominal
    flow = at_steady_speed(drive, parts.climb_road, parts.asked("ask.climb_speed"))
    return winding_heat(current=flow.current, winding_resistance=drive.winding_resistance)


def _stop(parts: PairParts) -> float:
    return distance_of_stop(brake_of(parts, parts.asked), parts.road, parts.loaded)


RESULTS: Figures[PairParts] = {
    "top_loaded": ("speed", lambda parts: parts.loaded),
    "top_full": ("speed", _unloaded),
    "ratio": ("ratio", lambda parts: parts.ratio),
    "push_start": ("force", lambda parts: parts.starting_push),
    "climb_start": ("share", lambda parts: climb_at(parts.starting_push, parts.road, standstill())),
    "climb_heat": ("power", _heat),
    "stop": ("way", _stop),
    "angular_speed_loaded": (
        "angular_speed",
        lambda parts: motor_angular_speed(
            speed=parts.loaded, circumference=parts.circumference, ratio=parts.ratio
        ),
    ),
    "electrical": ("angular_speed", lambda parts: parts.top_electrical),
    "erpm_margin": (
        "share",
        lambda parts: margin_to_limit(
            angular_speed=parts.top_electrical, limit=parts.read("controller.erpm_limit")
        ),
    ),
    "belt_load": (
        "share",
        lambda parts: (
            effective_pull(torque=parts.torque, pitch_diameter=parts.motor_pulley)
            / parts.belt.working_tension
        ),
    ),
    "belt": ("teeth", lambda parts: parts.read("drive.belt_teeth")),
    "centre": ("length", lambda parts: parts.centre),
    "teeth_in_mesh": ("ratio", lambda parts: teeth_in_mesh(wrap=parts.wrap, teeth=parts.small_teeth)),
}
"""Quantity and computation of each figure."""
