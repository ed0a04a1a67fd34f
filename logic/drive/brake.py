"""What brakes: the motors, what the pack takes back, what the tyre holds, and which of them is met first."""

from collections.abc import Callable
from math import sqrt
from typing import Literal

from logic.drive.gearing import motor_angular_speed, rolling_circumference
from logic.drive.motor import back_emf, torque_constant
from logic.drive.push import Drivetrain
from logic.errors import not_negative, positive
from logic.frozen import frozen
from logic.si import (
    Ampere,
    Metre,
    MetrePerSecond,
    Newton,
    NewtonMetrePerAmpere,
    Ohm,
    One,
    Volt,
    Watt,
)
from logic.workings import cited

Ruler = Literal["motor brake current", "pack takes back", "tyre grip"]
"""What holds the braking force down."""


@cited(
    "current_limit * (open_circuit_voltage + current_limit * pack_resistance)",
    source="derived power at the pack's plug while current flows in",
    standing="derived",
)
def power_taken_back(*, current_limit: Ampere, open_circuit_voltage: Volt, pack_resistance: Ohm) -> Watt:
    """Return the power that goes into the pack at a braking limit, its own heating included.

    Raises InputError unless the voltage is positive and the others are not negative.

    >>> power_taken_back(current_limit=8.0, open_circuit_voltage=40.0, pack_resistance=0.125)
    328.0
    """
    positive(open_circuit_voltage=open_circuit_voltage)
    not_negative(current_limit=current_limit, pack_resistance=pack_resistance)
    return current_limit * (open_circuit_voltage + current_limit * pack_resistance)


@cited(
    "(back_emf - sqrt(back_emf**2 - 4 * winding_resistance * power / motors)) / (2 * winding_resistance)"
    " if brake_current * (back_emf - brake_current * winding_resistance) > power / motors else brake_current",
    source="derived braking power less winding heat = power the pack takes back",
    standing="derived",
)
def brake_current_within(
    *, brake_current: Ampere, back_emf: Volt, winding_resistance: Ohm, power: Watt, motors: One
) -> Ampere:
    """Return the brake current of one motor that sends no more than `power` back from all motors.

    Slow enough, or braking hard enough, the windings burn all of it: then the motor's own limit stands.
    Raises InputError unless current, resistance and motors are positive and the power is not negative.

    >>> brake_current_within(
    ...     brake_current=35.0, back_emf=30.0, winding_resistance=0.05, power=590.0, motors=2.0
    ... )
    10.0
    """
    positive(brake_current=brake_current, winding_resistance=winding_resistance, motors=motors)
    not_negative(power=power)
    if brake_current * (back_emf - brake_current * winding_resistance) > power / motors:
        root = sqrt(back_emf**2 - 4.0 * winding_resistance * power / motors)
        return (back_emf - root) / (2.0 * winding_resistance)
    return brake_current


@cited(
    "2 * motors * torque_constant * current * ratio / wheel_diameter",
    source="derived torque of all motors over the wheel's radius",
    standing="derived",
)
def brake_push(
    *,
    motors: One,
    torque_constant: NewtonMetrePerAmpere,
    current: Ampere,
    ratio: One,
    wheel_diameter: Metre,
) -> Newton:
    """Return the braking force of a brake current. Losses of belt and motor would add to it and are left out.

    Raises InputError unless all but the current are positive.

    >>> brake_push(motors=2.0, torque_constant=0.05, current=36.0, ratio=2.5, wheel_diameter=0.1)
    180.0
    """
    positive(motors=motors, torque_constant=torque_constant, ratio=ratio, wheel_diameter=wheel_diameter)
    return 2.0 * motors * torque_constant * current * ratio / wheel_diameter


@cited(
    "(sqrt(open_circuit_voltage**2 + 4 * pack_resistance * power) - open_circuit_voltage) / (2 * pack_resistance)",
    source="derived power at the pack's plug, turned round for the current",
    standing="derived",
)
def current_taken_back(*, power: Watt, open_circuit_voltage: Volt, pack_resistance: Ohm) -> Ampere:
    """Return the current into the pack that a braking power makes.

    Raises InputError unless voltage and resistance are positive and the power is not negative.

    >>> round(current_taken_back(power=328.0, open_circuit_voltage=40.0, pack_resistance=0.125), 9)
    8.0
    """
    positive(open_circuit_voltage=open_circuit_voltage, pack_resistance=pack_resistance)
    not_negative(power=power)
    root = sqrt(open_circuit_voltage**2 + 4.0 * pack_resistance * power)
    return (root - open_circuit_voltage) / (2.0 * pack_resistance)


@cited(
    "max(0, motors * current * (back_emf - current * winding_resistance))",
    source="derived voltage balance of the winding while it brakes",
    standing="derived",
)
def braking_power(*, motors: One, current: Ampere, back_emf: Volt, winding_resistance: Ohm) -> Watt:
    """Return the power all motors send back; none once the windings burn it all.

    Raises InputError unless motors and resistance are positive.

    >>> braking_power(motors=2.0, current=10.0, back_emf=30.0, winding_resistance=0.05)
    590.0
    """
    positive(motors=motors, winding_resistance=winding_resistance)
    return max(0.0, motors * current * (back_emf - current * winding_resistance))


@cited("min(by_motors, by_grip)", source="derived the limit met first", standing="derived")
def braking_force(*, by_motors: Newton, by_grip: Newton) -> Newton:
    """Return the braking force that acts: what the motors give, as far as the tyre holds.

    >>> braking_force(by_motors=120.0, by_grip=90.0)
    90.0
    """
    return min(by_motors, by_grip)


@frozen(kw_only=True)
class Brake:
    """The brake side of a drive: limits per motor and for the whole board, and what the tyre holds."""

    drive: Drivetrain
    brake_current_limit: Ampere
    regen_current_limit: Ampere
    grip: Newton


def current_curve(brake: Brake) -> Callable[[float], float]:
    """Return the brake current of one motor, as far as the pack takes it back, as a function of the speed."""
    drive = brake.drive
    circumference = rolling_circumference(wheel_diameter=drive.wheel_diameter)
    power = power_taken_back(
        current_limit=brake.regen_current_limit,
        open_circuit_voltage=drive.open_circuit_voltage,
        pack_resistance=drive.pack_resistance,
    )

    def current(speed: MetrePerSecond) -> Ampere:
        angular_speed = motor_angular_speed(speed=speed, circumference=circumference, ratio=drive.ratio)
        return brake_current_within(
            brake_current=brake.brake_current_limit,
            back_emf=back_emf(angular_speed=angular_speed, speed_constant=drive.speed_constant),
            winding_resistance=drive.winding_resistance,
            power=power,
            motors=drive.motors,
        )

    return current


def motor_curve(brake: Brake) -> Callable[[float], float]:
    """Return the braking force of the motors, whatever the tyre holds, as a function of the speed."""
    drive, current = brake.drive, current_curve(brake)
    constant = torque_constant(speed_constant=drive.speed_constant)

    def force(speed: MetrePerSecond) -> Newton:
        return brake_push(
            motors=drive.motors,
            torque_constant=constant,
            current=current(speed),
            ratio=drive.ratio,
            wheel_diameter=drive.wheel_diameter,
        )

    return force


def brake_curve(brake: Brake) -> Callable[[float], float]:
    """Return the braking force that acts as a function of the speed."""
    by_motors = motor_curve(brake)

    def force(speed: MetrePerSecond) -> Newton:
        return braking_force(by_motors=by_motors(speed), by_grip=brake.grip)

    return force
