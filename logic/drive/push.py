"""Push of the wheels on the road: the drive as one frozen value, and its push by the speed.

No arithmetic stands between the cited calls, so a working can be traced from a result down to the numbers put
in.
"""

from collections.abc import Callable

from logic.drive.gearing import motor_angular_speed, rolling_circumference, unloaded_speed
from logic.drive.limits import (
    Limit,
    battery_current_drawn,
    battery_limited_current,
    duty_limited_current,
    motor_current,
    useful_duty,
)
from logic.drive.motor import back_emf, motor_torque, torque_constant
from logic.errors import InputError, not_negative, positive
from logic.frozen import frozen
from logic.si import (
    Ampere,
    Metre,
    MetrePerSecond,
    Newton,
    NewtonMetre,
    NewtonMetrePerAmpere,
    Ohm,
    One,
    RadianPerSecondPerVolt,
    Volt,
)
from logic.workings import cited


@frozen(kw_only=True)
class Drivetrain:
    """All that makes the push.

    Motor amperes are DC-equivalent and per motor, battery amperes for the whole board. `open_circuit_voltage`
    is of the pack at the charge in question. Raises InputError for values no drive has.
    """

    motors: One
    speed_constant: RadianPerSecondPerVolt
    winding_resistance: Ohm
    no_load_current: Ampere
    motor_current_limit: Ampere
    battery_current_limit: Ampere
    duty: One
    open_circuit_voltage: Volt
    pack_resistance: Ohm
    ratio: One
    wheel_diameter: Metre
    efficiency: One

    def __post_init__(self) -> None:
        """Refuse what no drive has."""
        numbers = dict(vars(self))
        not_negative(**{name: numbers.pop(name) for name in ("no_load_current", "pack_resistance")})
        positive(**numbers)
        for name in ("duty", "efficiency"):
            if numbers[name] > 1.0:
                raise InputError(name, numbers[name], "range", low=0.0, high=1.0)


@cited(
    "2 * motors * torque * ratio * efficiency / wheel_diameter",
    source="derived torque of all motors through the belts, over the wheel's radius",
    standing="derived",
)
def tractive_force(
    *, motors: One, torque: NewtonMetre, ratio: One, efficiency: One, wheel_diameter: Metre
) -> Newton:
    """Return the push of all driven wheels on the road, as far as the tyres and the road hold.

    A dragging motor's small negative torque is passed on with the same efficiency. Raises InputError unless
    motors, ratio, efficiency and diameter are positive and the efficiency is at most 1.

    >>> tractive_force(motors=2.0, torque=2.0, ratio=2.5, efficiency=0.9, wheel_diameter=0.1)
    180.0
    """
    positive(motors=motors, ratio=ratio, wheel_diameter=wheel_diameter)
    if not 0.0 < efficiency <= 1.0:
        raise InputError("efficiency", efficiency, "range", low=0.0, high=1.0)
    return 2.0 * motors * torque * ratio * efficiency / wheel_diameter


@cited(
    "tractive_force * wheel_diameter / (2 * motors * ratio * efficiency * torque_constant) + no_load_current",
    source="derived push of the wheels, turned round for the current",
    standing="derived",
)
def current_for_push(  # noqa: PLR0913  (what the push passes through has seven numbers)
    *,
    tractive_force: Newton,
    wheel_diameter: Metre,
    motors: One,
    ratio: One,
    efficiency: One,
    torque_constant: NewtonMetrePerAmpere,
    no_load_current: Ampere,
) -> Ampere:
    """Return the current of one motor that gives a push.

    Raises InputError unless the drive's figures are positive.

    >>> current_for_push(
    ...     tractive_force=180.0,
    ...     wheel_diameter=0.1,
    ...     motors=2.0,
    ...     ratio=2.5,
    ...     efficiency=0.9,
    ...     torque_constant=0.05,
    ...     no_load_current=1.0,
    ... )
    41.0
    """
    positive(
        wheel_diameter=wheel_diameter,
        motors=motors,
        ratio=ratio,
        efficiency=efficiency,
        torque_constant=torque_constant,
    )
    return (
        tractive_force * wheel_diameter / (2.0 * motors * ratio * efficiency * torque_constant)
        + no_load_current
    )


def top_unloaded_speed(drive: Drivetrain) -> MetrePerSecond:
    """Return the unloaded speed of a drive at the voltage and duty it has."""
    return unloaded_speed(
        voltage=drive.open_circuit_voltage,
        duty=drive.duty,
        speed_constant=drive.speed_constant,
        circumference=rolling_circumference(wheel_diameter=drive.wheel_diameter),
        ratio=drive.ratio,
    )


def limits_at(drive: Drivetrain, emf: Volt) -> dict[str, Ampere]:
    """Return the three limits at a back-EMF, named as `motor_current` takes them."""
    return {
        "motor_current_limit": drive.motor_current_limit,
        "battery_limited": battery_limited_current(
            back_emf=emf,
            winding_resistance=drive.winding_resistance,
            open_circuit_voltage=drive.open_circuit_voltage,
            pack_resistance=drive.pack_resistance,
            battery_current_limit=battery_current_drawn(
                battery_current_limit=drive.battery_current_limit,
                open_circuit_voltage=drive.open_circuit_voltage,
                pack_resistance=drive.pack_resistance,
            ),
            motors=drive.motors,
        ),
        "duty_limited": duty_limited_current(
            back_emf=emf,
            winding_resistance=drive.winding_resistance,
            open_circuit_voltage=drive.open_circuit_voltage,
            pack_resistance=drive.pack_resistance,
            duty=_useful_duty(drive, emf),
            motors=drive.motors,
        ),
    }


def _useful_duty(drive: Drivetrain, emf: Volt) -> One:
    return useful_duty(
        duty=drive.duty,
        back_emf=emf,
        winding_resistance=drive.winding_resistance,
        open_circuit_voltage=drive.open_circuit_voltage,
        pack_resistance=drive.pack_resistance,
        motors=drive.motors,
    )


def ruling_limit(drive: Drivetrain, emf: Volt) -> Limit:
    """Return what holds the motor current down at a back-EMF: a limit of the controller, or the pack's most power."""
    limits = limits_at(drive, emf)
    if drive.motor_current_limit <= min(limits.values()):
        return "motor current"
    if 2.0 * drive.battery_current_limit * drive.pack_resistance <= drive.open_circuit_voltage:
        return "battery current" if limits["battery_limited"] <= limits["duty_limited"] else "duty"
    # Both curves now tell the pack's most power where the duty is let out no further.
    return "pack" if _useful_duty(drive, emf) < drive.duty else "duty"


def push_curve(drive: Drivetrain) -> Callable[[float], float]:
    """Return the push at full remote as a function of the road speed; at 0 it is the push at standstill.

    Speeds are not negative: braking and rolling backwards are other questions.
    """
    circumference = rolling_circumference(wheel_diameter=drive.wheel_diameter)
    constant = torque_constant(speed_constant=drive.speed_constant)

    def push(speed: MetrePerSecond) -> Newton:
        angular_speed = motor_angular_speed(speed=speed, circumference=circumference, ratio=drive.ratio)
        emf = back_emf(angular_speed=angular_speed, speed_constant=drive.speed_constant)
        torque = motor_torque(
            torque_constant=constant,
            current=motor_current(**limits_at(drive, emf)),
            no_load_current=drive.no_load_current,
        )
        return push_of(drive, torque)

    return push


def push_of(drive: Drivetrain, torque: NewtonMetre) -> Newton:
    """Return the push of all driven wheels at a torque of one motor."""
    return tractive_force(
        motors=drive.motors,
        torque=torque,
        ratio=drive.ratio,
        efficiency=drive.efficiency,
        wheel_diameter=drive.wheel_diameter,
    )
