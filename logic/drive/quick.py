"""Push, load and brake each as one plain expression, for tables that ask thousands of times.

The cited curves stay the reference: a test holds these to them on random drives, to the last digits. Nothing here
is recorded, so no working rests on it.
"""

from collections.abc import Callable
from math import cos, pi, sin, sqrt

from logic.drive.push import Drive
from logic.drive.road import Road, slope_angle
from logic.drive.stopping import Brake

Curve = Callable[[float], float]
"""A force in N by a road speed in m/s."""


def quick_push(drive: Drive) -> Curve:
    """Return the push at full remote, as `push_curve` does."""
    emf_per_speed = 2.0 * drive.ratio / (drive.wheel_diameter * drive.motor_constant)
    resistance, voltage = drive.winding_resistance, drive.open_circuit_voltage
    drawn, weakness = drive.battery_current_limit, drive.motors * drive.pack_resistance
    if weakness:
        drawn = min(drawn, voltage / (2.0 * drive.pack_resistance))
    product = 4.0 * resistance * (voltage - drawn * drive.pack_resistance) * drawn / drive.motors
    most = resistance * voltage**2 / weakness if weakness else float("inf")
    limit, drag = drive.motor_current_limit, drive.no_load_current
    push_per_ampere = (
        2.0 * drive.motors * drive.ratio * drive.efficiency / (drive.wheel_diameter * drive.motor_constant)
    )

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
    drive = brake.drive
    emf_per_speed = 2.0 * drive.ratio / (drive.wheel_diameter * drive.motor_constant)
    push_per_ampere = 2.0 * drive.motors * drive.ratio / (drive.wheel_diameter * drive.motor_constant)
    resistance, most, grip = drive.winding_resistance, brake.brake_current_limit, brake.grip
    regen = brake.regen_current_limit
    power = regen * (drive.open_circuit_voltage + regen * drive.pack_resistance) / drive.motors

    def force(speed: float) -> float:
        emf = emf_per_speed * speed
        current = most
        if most * (emf - most * resistance) > power:
            current = (emf - sqrt(emf * emf - 4.0 * resistance * power)) / (2.0 * resistance)
        return min(push_per_ampere * current, grip)

    return force


def quick_top(drive: Drive) -> float:
    """Return the unloaded speed, as `top_unloaded_speed` does."""
    rotation = drive.duty * drive.open_circuit_voltage * drive.motor_constant
    return rotation * pi * drive.wheel_diameter / (2.0 * pi * drive.ratio)
