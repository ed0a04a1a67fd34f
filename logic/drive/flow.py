"""What turns and flows at a speed: angular speed, currents, powers, heat; full remote or a speed held steady."""

from logic.drive.gearing import motor_angular_speed, rolling_circumference
from logic.drive.limits import Limit, battery_current, battery_power, motor_current
from logic.drive.motor import (
    back_emf,
    electric_power,
    motor_torque,
    shaft_power,
    torque_constant,
    winding_heat,
)
from logic.drive.push import Drivetrain, current_for_push, limits_at, push_of, ruling_limit
from logic.drive.road import Road, load_curve
from logic.errors import NoFigure, positive
from logic.frozen import frozen
from logic.si import Ampere, MetrePerSecond, Newton, NewtonMetre, One, RadianPerSecond, Volt, Watt
from logic.workings import cited, unrecorded


@frozen(kw_only=True)
class Flow:
    """What turns and flows at a speed.

    Current, torque, shaft power and heat are of one motor, battery figures of the whole board. Motor amperes
    are DC-equivalent. `limit` is the one that rules at full remote, None at a steady speed.
    """

    speed: MetrePerSecond
    angular_speed: RadianPerSecond
    current: Ampere
    torque: NewtonMetre
    push: Newton
    shaft_power: Watt
    winding_heat: Watt
    battery_power: Watt
    battery_current: Ampere
    limit: Limit | None


def at_full_remote(drive: Drivetrain, speed: MetrePerSecond) -> Flow:
    """Return what flows at a speed with the remote held full."""
    angular_speed, emf = _turning(drive, speed)
    current = motor_current(**limits_at(drive, emf))
    with unrecorded():
        limit = ruling_limit(drive, emf)
    return _flow(drive, speed, angular_speed, emf, current, limit)


def at_steady_speed(drive: Drivetrain, road: Road, speed: MetrePerSecond) -> Flow:
    """Return what flows while the remote is held so that a speed stays as it is.

    Raises InputError for a speed that the drive cannot hold there ("not reached") and for one that must be
    braked ("needs the brake").
    """
    angular_speed, emf = _turning(drive, speed)
    current = current_for_push(
        tractive_force=load_curve(road)(speed),
        wheel_diameter=drive.wheel_diameter,
        motors=drive.motors,
        ratio=drive.ratio,
        efficiency=drive.efficiency,
        torque_constant=torque_constant(speed_constant=drive.speed_constant),
        no_load_current=drive.no_load_current,
    )
    if current < 0.0:
        raise NoFigure("speed", speed, "needs the brake")
    if current > motor_current(**limits_at(drive, emf)):
        raise NoFigure("speed", speed, "not reached")
    return _flow(drive, speed, angular_speed, emf, current, None)


def _turning(drive: Drivetrain, speed: MetrePerSecond) -> tuple[RadianPerSecond, Volt]:
    angular_speed = motor_angular_speed(
        speed=speed,
        circumference=rolling_circumference(wheel_diameter=drive.wheel_diameter),
        ratio=drive.ratio,
    )
    return angular_speed, back_emf(angular_speed=angular_speed, speed_constant=drive.speed_constant)


def _flow(  # noqa: PLR0913  (all of them are known to both callers)
    drive: Drivetrain,
    speed: MetrePerSecond,
    angular_speed: RadianPerSecond,
    emf: Volt,
    current: Ampere,
    limit: Limit | None,
) -> Flow:
    torque = motor_torque(
        torque_constant=torque_constant(speed_constant=drive.speed_constant),
        current=current,
        no_load_current=drive.no_load_current,
    )
    power = battery_power(
        motors=drive.motors,
        electric_power=electric_power(
            current=current, back_emf=emf, winding_resistance=drive.winding_resistance
        ),
    )
    return Flow(
        speed=speed,
        angular_speed=angular_speed,
        current=current,
        torque=torque,
        push=push_of(drive, torque),
        shaft_power=shaft_power(torque=torque, angular_speed=angular_speed),
        winding_heat=winding_heat(current=current, winding_resistance=drive.winding_resistance),
        battery_power=power,
        battery_current=battery_current(
            battery_power=power,
            open_circuit_voltage=drive.open_circuit_voltage,
            pack_resistance=drive.pack_resistance,
        ),
        limit=limit,
    )


@cited("force * speed / power", source="derived power on the road over power taken", standing="derived")
def overall_efficiency(*, force: Newton, speed: MetrePerSecond, power: Watt) -> One:
    """Return the share of the pack's power that reaches the road. Raises InputError unless the power is positive.

    >>> overall_efficiency(force=60.0, speed=10.0, power=750.0)
    0.8
    """
    positive(power=power)
    return force * speed / power
