"""Push, load and brake each as one plain expression, for tables that ask thousands of times.

What does not change with the speed comes from the cited formulas; what is left is held to the cited curves by a test
on random drives, to the last digits, and the table to the figures of its pages. Nothing here
is recorded, so no working rests on it.
"""

from collections.abc import Callable
from dataclasses import replace
from math import cos, sin, sqrt
from typing import Any, TypeVar

from logic.drive.brake import Brake, Ruler, brake_push, power_taken_back
from logic.drive.gearing import motor_angular_speed, rolling_circumference
from logic.drive.motor import back_emf, torque_constant
from logic.drive.push import Drivetrain, push_of, top_unloaded_speed
from logic.drive.road import Road, slope_angle
from logic.workings import is_recording, unrecorded

Curve = Callable[[float], float]
"""A force in N by a road speed in m/s."""

Seen = TypeVar("Seen", Drivetrain, Road, Brake)


def plain(of: Seen) -> Seen:
    """Return a drive, a road or a brake as plain numbers."""
    numbers: dict[str, Any] = {
        name: plain(part) if isinstance(part, Drivetrain) else float(part) for name, part in vars(of).items()
    }
    return replace(of, **numbers)


def searched(cited_curve: Curve, make: Callable[[], Curve]) -> Curve:
    """Return a curve as its cited formulas where it is recorded; a search, which is not, takes the quick one made so."""
    with unrecorded():
        quick = make()
    return lambda speed: cited_curve(speed) if is_recording() else quick(speed)


quick_top = top_unloaded_speed
"""The unloaded speed needs no quicker writing."""


def _emf_per_speed(drive: Drivetrain) -> float:
    """Return the volts one motor makes at each metre per second of the road."""
    turning = motor_angular_speed(
        speed=1.0,
        circumference=rolling_circumference(wheel_diameter=drive.wheel_diameter),
        ratio=drive.ratio,
    )
    return back_emf(angular_speed=turning, speed_constant=drive.speed_constant)


def quick_push(drive: Drivetrain) -> Curve:
    """Return the push at full remote, as `push_curve` does."""
    emf_per_speed = _emf_per_speed(drive)
    resistance, voltage = drive.winding_resistance, drive.open_circuit_voltage
    drawn, weakness = drive.battery_current_limit, drive.motors * drive.pack_resistance
    if weakness:
        drawn = min(drawn, voltage / (2.0 * drive.pack_resistance))
    product = 4.0 * resistance * (voltage - drawn * drive.pack_resistance) * drawn / drive.motors
    most = resistance * voltage**2 / weakness if weakness else float("inf")
    limit, drag = drive.motor_current_limit, drive.no_load_current
    push_per_ampere = push_of(drive, torque_constant(speed_constant=drive.speed_constant))

    def push(speed: float) -> float:
        emf = emf_per_speed * speed
        battery = (sqrt(emf * emf + product) - emf) / (2.0 * resistance)
        duty = min(drive.duty, (emf + sqrt(emf * emf + most)) / voltage)
        by_duty = (duty * voltage - emf) / (resistance + weakness * duty**2)
        return push_per_ampere * (max(0.0, min(limit, battery, by_duty)) - drag)

    return push


def quick_load(road: Road) -> Curve:
    """Return the road load, as `load_curve` does."""
    slope = slope_angle(grade=road.grade)
    steady = road.mass * road.gravity * (road.rolling_coefficient * cos(slope) + sin(slope))
    air = 0.5 * road.air_density * road.drag_area
    wind = road.wind

    def load(speed: float) -> float:
        through_air = speed + wind
        return air * through_air * abs(through_air) + steady

    return load


def quick_brake(brake: Brake) -> Curve:
    """Return the braking force, as `brake_curve` does."""
    (current, push_per_ampere), grip = _braking(brake), brake.grip
    return lambda speed: min(push_per_ampere * current(speed), grip)


def quick_ruler(brake: Brake) -> Callable[[float], Ruler]:
    """Return what holds the braking force down as a function of the speed."""
    (current, push_per_ampere), most = _braking(brake), brake.brake_current_limit

    def ruler(speed: float) -> Ruler:
        amperes = current(speed)
        if push_per_ampere * amperes >= brake.grip:
            return "tyre grip"
        return "pack takes back" if amperes < most else "motor brake current"

    return ruler


def _braking(brake: Brake) -> tuple[Curve, float]:
    """Return the brake current of one motor by the speed, as far as the pack takes it back, and the push of an ampere."""
    drive = brake.drive
    emf_per_speed = _emf_per_speed(drive)
    push_per_ampere = brake_push(
        motors=drive.motors,
        torque_constant=torque_constant(speed_constant=drive.speed_constant),
        current=1.0,
        ratio=drive.ratio,
        wheel_diameter=drive.wheel_diameter,
    )
    resistance, most = drive.winding_resistance, brake.brake_current_limit
    power = (
        power_taken_back(
            current_limit=brake.regen_current_limit,
            open_circuit_voltage=drive.open_circuit_voltage,
            pack_resistance=drive.pack_resistance,
        )
        / drive.motors
    )

    def current(speed: float) -> float:
        emf = emf_per_speed * speed
        if most * (emf - most * resistance) > power:
            return (emf - sqrt(emf * emf - 4.0 * resistance * power)) / (2.0 * resistance)
        return most

    return current, push_per_ampere
