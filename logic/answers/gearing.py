"""Gearing and speed: how fast the board goes, how hard it pushes, and why."""

from collections.abc import Callable
from dataclasses import dataclass, replace
from functools import partial

from logic.answers.parts import CHARGES, Parts, chosen
from logic.answers.reading import Item, Open, Reading, Result, attempt
from logic.board import Board, Value, faults
from logic.drive.gearing import belt_speed, electrical_rotation, motor_rotation, unloaded_speed
from logic.drive.motor import torque_constant_stated
from logic.drive.performance import climb_at, steady_speed
from logic.drive.push import push_curve
from logic.drive.road import load_curve
from logic.errors import InputError, Missing
from logic.tables import pick
from logic.workings import recording, unrecorded

POINTS = 60
"""Points of each curve of the chart."""

FACING_UP = 1.08
"""The chart ends a little above the unloaded speed, so that its foot is seen."""


@dataclass(frozen=True)
class Curves:
    """Push at full remote and road load over speed, with the speed where they meet, None when they do not."""

    push: tuple[tuple[float, float], ...]
    load: tuple[tuple[float, float], ...]
    meeting: tuple[float, float] | None


@dataclass(frozen=True)
class Gearing:
    """Results by name, in the order they are shown; curves when they can be drawn; what does not fit together."""

    items: dict[str, Item]
    curves: Curves | None
    faults: tuple[InputError, ...]
    kv_printed: bool


def gearing(board: Board, rider: Value | None, at_speed: float) -> Gearing:
    """Return everything the gearing screen shows. `at_speed` in m/s is where push and climb are asked.

    A result that cannot be given says what is missing or wrong; the others are given all the same.
    """
    with recording() as recorder:
        parts = Parts(Reading(board, rider))
        speed = chosen("Chosen speed", at_speed, "m/s", "speed")
        items = {
            name: attempt(recorder, name, quantity, partial(compute, parts, speed))
            for name, (quantity, compute) in RESULTS.items()
        }
        items = {"top_loaded": _top_loaded(parts), **items}
    wrong = faults(board)
    printed = board.motor.kv is not None and board.motor.kv.known != "measured"
    if printed:
        items |= _bands(board, rider, items)
    return Gearing(items, _curves(parts), wrong, printed)


def top_speed(board: Board, rider: Value | None) -> Item:
    """Return the loaded top speed alone, or what stands in its way."""
    with recording():
        return _top_loaded(Parts(Reading(board, rider)))


def _unloaded(charge: str, parts: Parts, _: float) -> float:
    return unloaded_speed(
        voltage=parts.voltage(charge),
        duty=parts.duty,
        motor_constant=parts.motor_constant,
        circumference=parts.circumference,
        ratio=parts.ratio,
    )


def _rotation(parts: Parts, speed: float) -> float:
    return motor_rotation(speed=speed, circumference=parts.circumference, ratio=parts.ratio)


def _electrical(parts: Parts, speed: float) -> float:
    return electrical_rotation(rotation=_rotation(parts, speed), pole_pairs=parts.read("motor.pole_pairs"))


def _belt_speed(parts: Parts, speed: float) -> float:
    return belt_speed(rotation=_rotation(parts, speed), pitch_diameter=parts.motor_pulley)


def _stated_constant(parts: Parts, _: float) -> float:
    return torque_constant_stated(torque_constant=parts.torque_constant, conversion=parts.conversion)


Compute = Callable[[Parts, float], float]

RESULTS: dict[str, tuple[str, Compute]] = {
    "top_full": ("speed", partial(_unloaded, "full")),
    "top_nominal": ("speed", partial(_unloaded, "nominal")),
    "top_empty": ("speed", partial(_unloaded, "empty")),
    "push_start": ("force", lambda parts, _: push_curve(parts.drive("nominal"))(chosen_standstill())),
    "push_at": ("force", lambda parts, speed: push_curve(parts.drive("nominal"))(speed)),
    "climb_start": (
        "share",
        lambda parts, _: climb_at(parts.drive("nominal"), parts.road, chosen_standstill()),
    ),
    "climb_at": ("share", lambda parts, speed: climb_at(parts.drive("nominal"), parts.road, speed)),
    "ratio": ("ratio", lambda parts, _: parts.ratio),
    "circumference": ("length", lambda parts, _: parts.circumference),
    "rotation_at": ("rotation", _rotation),
    "electrical_at": ("rotation", _electrical),
    "belt_speed_at": ("belt_speed", _belt_speed),
    "torque_constant": ("torque_constant", _stated_constant),
}
"""Quantity and computation of each result, in the order shown after the loaded top speed."""

SPREAD_BY_KV = ("top_loaded", *(f"top_{charge}" for charge in CHARGES))
"""Results that are bands while the motor constant is only printed."""


def chosen_standstill() -> float:
    """Record standstill as the speed asked about."""
    return chosen("Speed", 0.0, "m/s", "speed")


def _top_loaded(parts: Parts) -> Item:
    try:
        steady = steady_speed(parts.drive("nominal"), parts.road)
    except Missing as gap:
        return Open("top_loaded", missing=gap.fields)
    except InputError as problem:
        return Open("top_loaded", problem=problem)
    if steady.speed is None:
        return Open("top_loaded", outcome=steady.outcome)
    return Result("top_loaded", steady.speed, "speed")


def _bands(board: Board, rider: Value | None, items: dict[str, Item]) -> dict[str, Item]:
    """Return the speeds with the band that the printed motor constant leaves open."""
    share = pick("spreads", name="printed motor constant").number("share")
    kv = board.motor.kv
    assert kv is not None  # noqa: S101  (the caller asked for a printed one)
    ends: list[dict[str, float]] = []
    for factor in (1.0 - share, 1.0 + share):
        try:
            other = board.with_value("motor.kv", replace(kv, si=float(kv.si) * factor))
        except InputError:
            return {}
        parts = Parts(Reading(other, rider))
        with unrecorded():
            ends.append({name: speed for name in SPREAD_BY_KV if (speed := _speed(name, parts)) is not None})
    return {
        name: replace(item, band=(ends[0][name], ends[1][name]))
        for name, item in items.items()
        if isinstance(item, Result) and name in ends[0] and name in ends[1]
    }


def _speed(name: str, parts: Parts) -> float | None:
    try:
        if name == "top_loaded":
            return steady_speed(parts.drive("nominal"), parts.road).speed
        return _unloaded(name.removeprefix("top_"), parts, 0.0)
    except (Missing, InputError):
        return None


def _curves(parts: Parts) -> Curves | None:
    try:
        with unrecorded():
            drive, road = parts.drive("nominal"), parts.road
            push, load = push_curve(drive), load_curve(road)
            steady = steady_speed(drive, road)
            end = steady.unloaded * FACING_UP
            speeds = [end * step / (POINTS - 1) for step in range(POINTS)]
            meeting = None if steady.speed is None else (steady.speed, push(steady.speed))
            return Curves(
                tuple((speed, push(speed)) for speed in speeds),
                tuple((speed, load(speed)) for speed in speeds),
                meeting,
            )
    except (Missing, InputError):
        return None
