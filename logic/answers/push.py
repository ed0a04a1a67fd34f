"""Speed and push in full: push against load for every charge, what rules where, and how soon a speed is reached."""

from collections.abc import Callable, Mapping
from dataclasses import replace
from functools import cached_property, partial

from logic.answers.asked import Asked, Asking
from logic.answers.braking import axle_grip
from logic.answers.parts import CHARGES, Parts, chosen
from logic.answers.reading import Item, Reading
from logic.answers.riding import energy_of_each_metre
from logic.answers.run import Figures, Run, answer, kv_bands
from logic.board import Board, Value, faults
from logic.drive.flow import Flow, at_full_remote, at_steady_speed, overall_efficiency
from logic.drive.gearing import electrically_limited_speed, motor_angular_speed
from logic.drive.motor import back_emf
from logic.drive.performance import acceleration_at, climb_at, steady_speed
from logic.drive.push import ruling_limit
from logic.drive.quick import plain, quick_load, quick_push, quick_top, searched
from logic.drive.road import Road, load_curve
from logic.drive.start import distance_to_speed, time_to_speed
from logic.errors import InputError, NoFigure
from logic.frozen import frozen

REACHED = (20.0 / 3.6, 30.0 / 3.6)
"""Speeds to which a start is timed: 20 and 30 km/h."""

MEETINGS = {"full": "top_loaded_full", "nominal": "top_loaded", "empty": "top_loaded_empty"}
"""Result of the top speed at each charge: on a level road without wind it is that of every other page."""

POINTS = 60
FACING_UP = 1.08
STRETCHES = 120


class PushParts(Parts):
    """The parts of a board that push and load rest on, with the asked road."""

    def __init__(self, reading: Reading, asked: Asked) -> None:
        """Take the board from a reading and the question beside it."""
        super().__init__(reading)
        self.asked = asked

    @cached_property
    def speed(self) -> float:
        """Speed along the curve."""
        return self.asked("ask.speed")

    @cached_property
    def push_at(self) -> float:
        """Push there."""
        return self.push(self.speed)

    @cached_property
    def asked_road(self) -> Road:
        """The road with the asked grade and wind."""
        return replace(self.road, grade=self.asked("ask.grade"), wind=self.asked("ask.wind"))

    @cached_property
    def full_remote(self) -> Flow:
        """What flows at the asked speed with the remote held full, nominal pack."""
        if self.speed > quick_top(self.nominal):
            raise NoFigure("speed", self.speed, "not reached", quantity="speed")
        return at_full_remote(self.nominal, self.speed)

    @cached_property
    def steady(self) -> Flow:
        """What flows while the asked speed is held, nominal pack."""
        return at_steady_speed(self.nominal, self.asked_road, self.speed)


@frozen
class PushStretch:
    """Speeds over which one limit rules the push at full remote."""

    low: float
    high: float
    limit: str


@frozen
class PushCurves:
    """Push by charge and the road load, over speed; the meeting of each charge, None where there is none."""

    push: dict[str, tuple[tuple[float, float], ...]]
    load: tuple[tuple[float, float], ...]
    meetings: dict[str, tuple[float, float] | None]
    cursor: tuple[float, float, float] | None


@frozen
class Pushing:
    """Results by name, the curves, which limit rules where, and what does not fit together."""

    items: Mapping[str, Item]
    curves: PushCurves | None
    stretches: tuple[PushStretch, ...]
    faults: tuple[InputError, ...]


@answer()
def pushing(board: Board, rider: Value | None, asking: Asking) -> Pushing:
    """Return everything the page of speed and push shows. What cannot be given says what stands in its way."""

    def make(of: Board) -> PushParts:
        return PushParts(Reading(of, rider), Asked(asking))

    run = Run(lambda: make(board))
    shown = dict(RESULTS)
    if board.controller.erpm_limit is not None:
        shown["erpm_speed"] = ("speed", _erpm_speed)
    items = kv_bands(board, make, shown, run.when_read(shown), *MEETINGS.values())
    stretches = run.view(partial(_stretches, cap=run.view(_erpm_speed, None)), ())
    return Pushing(items, run.view(_curves, None), stretches, faults(board))


def _meeting(charge: str, parts: PushParts) -> float:
    steady = steady_speed(parts.drive(charge), parts.asked_road)
    if steady.speed is None:
        raise NoFigure("speed", None, steady.outcome)
    return steady.speed


def _efficiency(parts: PushParts) -> float:
    flow = parts.full_remote
    return overall_efficiency(force=flow.push, speed=parts.speed, power=flow.battery_power)


def _to_speed(formula: Callable[..., float], reached: float, parts: PushParts) -> float:
    road = parts.asked_road
    drive = parts.nominal
    if quick_push(drive)(0.0) <= quick_load(road)(0.0):
        raise NoFigure("speed", 0.0, "cannot start")
    return formula(
        tractive_force=searched(parts.push, lambda: quick_push(plain(drive))),
        road_load=searched(load_curve(road), lambda: quick_load(plain(road))),
        mass=road.mass,
        speed=chosen("Speed to reach", reached, "m/s", "speed"),
    )


def _erpm_speed(parts: PushParts) -> float:
    return electrically_limited_speed(
        electrical_angular_speed_limit=parts.read("controller.erpm_limit"),
        pole_pairs=parts.read("motor.pole_pairs"),
        circumference=parts.circumference,
        ratio=parts.ratio,
    )


def _consumption(parts: PushParts) -> float:
    return energy_of_each_metre(parts, parts.steady)


RESULTS: Figures[PushParts] = {
    **{name: ("speed", partial(_meeting, charge)) for charge, name in MEETINGS.items()},
    "time_20": ("time", partial(_to_speed, time_to_speed, REACHED[0])),
    "time_30": ("time", partial(_to_speed, time_to_speed, REACHED[1])),
    "way_20": ("way", partial(_to_speed, distance_to_speed, REACHED[0])),
    "way_30": ("way", partial(_to_speed, distance_to_speed, REACHED[1])),
    "push_at": ("force", lambda parts: parts.push_at),
    "load": ("force", lambda parts: load_curve(parts.asked_road)(parts.speed)),
    "acceleration": (
        "acceleration",
        lambda parts: acceleration_at(parts.push_at, parts.asked_road, parts.speed),
    ),
    "climb_at": ("share", lambda parts: climb_at(parts.push_at, parts.asked_road, parts.speed)),
    "full_current": ("current", lambda parts: parts.full_remote.current),
    "full_battery": ("current", lambda parts: parts.full_remote.battery_current),
    "full_heat": ("power", lambda parts: parts.full_remote.winding_heat),
    "efficiency": ("share", _efficiency),
    "angular_speed_at": ("angular_speed", lambda parts: parts.full_remote.angular_speed),
    "steady_current": ("current", lambda parts: parts.steady.current),
    "steady_battery": ("current", lambda parts: parts.steady.battery_current),
    "steady_heat": ("power", lambda parts: parts.steady.winding_heat),
    "per_distance": ("energy_per_distance", _consumption),
    "drive_grip": ("force", lambda parts: axle_grip(parts.asked, "dry", parts.asked_road, braking=False)),
    "drive_grip_wet": ("force", lambda parts: axle_grip(parts.asked, "wet", parts.asked_road, braking=False)),
}
"""Quantity and computation of each result, in the order shown."""


def _curves(parts: PushParts) -> PushCurves:
    road = parts.asked_road
    drives = {charge: parts.drive(charge) for charge in CHARGES}
    load = quick_load(road)
    end = max(quick_top(drive) for drive in drives.values()) * FACING_UP
    speeds = [end * step / (POINTS - 1) for step in range(POINTS)]
    pushes, meetings = {}, {}
    for charge, drive in drives.items():
        push = quick_push(drive)
        steady = steady_speed(drive, road)
        pushes[charge] = tuple((speed, push(speed)) for speed in speeds if speed <= quick_top(drive))
        meetings[charge] = None if steady.speed is None else (steady.speed, load(steady.speed))
    at = parts.speed
    cursor = (at, quick_push(drives["nominal"])(at), load(at)) if at <= end else None
    return PushCurves(pushes, tuple((speed, load(speed)) for speed in speeds), meetings, cursor)


def _stretches(parts: PushParts, cap: float | None) -> tuple[PushStretch, ...]:
    """Return what rules where; `cap` is the speed at the limit of electrical angular speed, None where it is open."""
    drive = parts.nominal
    grip = axle_grip(parts.asked, "dry", parts.asked_road, braking=False)
    top, push = quick_top(drive), quick_push(drive)
    found: list[PushStretch] = []
    for step in range(STRETCHES):
        low, high = top * step / STRETCHES, top * (step + 1) / STRETCHES
        middle = 0.5 * (low + high)
        angular_speed = motor_angular_speed(
            speed=middle, circumference=parts.circumference, ratio=drive.ratio
        )
        emf = back_emf(angular_speed=angular_speed, speed_constant=drive.speed_constant)
        limit: str = ruling_limit(drive, emf)
        if cap is not None and middle > cap:
            limit = "electrical rpm"
        elif push(middle) > grip:
            limit = "tyre grip"
        if found and found[-1].limit == limit:
            found[-1] = replace(found[-1], high=high)
        else:
            found.append(PushStretch(low, high, limit))
    return tuple(found)
