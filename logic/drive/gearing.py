"""Teeth, wheel and angular speed: what turns how fast."""

from math import pi

from logic.errors import InputError, positive
from logic.si import Metre, MetrePerSecond, One, RadianPerSecond, RadianPerSecondPerVolt, Volt
from logic.workings import cited


@cited("wheel_teeth / motor_teeth", source="derived teeth that pass, pulley by pulley", standing="derived")
def ratio(*, wheel_teeth: One, motor_teeth: One) -> One:
    """Return the turns of the motor for one turn of the wheel. Raises InputError unless both are positive.

    >>> ratio(wheel_teeth=40.0, motor_teeth=16.0)
    2.5
    """
    positive(wheel_teeth=wheel_teeth, motor_teeth=motor_teeth)
    return wheel_teeth / motor_teeth


@cited("pi * wheel_diameter", source="derived a wheel that rolls without slip", standing="derived")
def rolling_circumference(*, wheel_diameter: Metre) -> Metre:
    """Return the way rolled in one turn of the wheel. Raises InputError unless the diameter is positive.

    A worn wheel rolls less far: the diameter is the one measured today. Flattening under load is left out.

    >>> round(rolling_circumference(wheel_diameter=0.100), 4)
    0.3142
    """
    positive(wheel_diameter=wheel_diameter)
    return pi * wheel_diameter


@cited(
    "2 * pi * ratio * speed / circumference",
    source="derived turns of the wheel times the ratio",
    standing="derived",
)
def motor_angular_speed(*, speed: MetrePerSecond, circumference: Metre, ratio: One) -> RadianPerSecond:
    """Return the angular speed of the motor at a road speed; 2 pi turns the count of turns into an angle.

    Raises InputError unless circumference and ratio are positive.

    >>> round(motor_angular_speed(speed=5.0, circumference=0.5, ratio=2.0), 1)
    125.7
    """
    positive(circumference=circumference, ratio=ratio)
    return 2.0 * pi * ratio * speed / circumference


@cited(
    "angular_speed * pole_pairs",
    source="motor-torque-constant three-phase motor theory, electrical angle",
)
def electrical_angular_speed(*, angular_speed: RadianPerSecond, pole_pairs: One) -> RadianPerSecond:
    """Return the electrical angular speed (rpm in, erpm out, when both are shown so).

    Pole pairs are half the magnets of the rotor. Raises InputError unless they are positive.

    >>> electrical_angular_speed(angular_speed=100.0, pole_pairs=7.0)
    700.0
    """
    positive(pole_pairs=pole_pairs)
    return angular_speed * pole_pairs


@cited(
    "angular_speed * pitch_diameter / 2",
    source="derived speed of the pitch line of a pulley",
    standing="derived",
)
def belt_speed(*, angular_speed: RadianPerSecond, pitch_diameter: Metre) -> MetrePerSecond:
    """Return the speed of the belt on a pulley. Raises InputError unless the pitch diameter is positive.

    >>> belt_speed(angular_speed=400.0, pitch_diameter=0.025)
    5.0
    """
    positive(pitch_diameter=pitch_diameter)
    return angular_speed * pitch_diameter / 2.0


@cited(
    "duty * voltage * speed_constant",
    source="derived back-EMF equal to the largest mean voltage",
    standing="derived",
)
def unloaded_angular_speed(
    *, voltage: Volt, duty: One, speed_constant: RadianPerSecondPerVolt
) -> RadianPerSecond:
    """Return the angular speed at which a motor draws nothing any more at the largest duty.

    Raises InputError unless all are positive and the duty is at most 1. A printed Kv is good to about 10 %.

    >>> unloaded_angular_speed(voltage=40.0, duty=0.95, speed_constant=20.0)
    760.0
    """
    positive(voltage=voltage, speed_constant=speed_constant)
    if not 0.0 < duty <= 1.0:
        raise InputError("duty", duty, "range", low=0.0, high=1.0)
    return duty * voltage * speed_constant


@cited(
    "duty * voltage * speed_constant * circumference / (2 * pi * ratio)",
    source="derived angular speed of the unloaded motor, at the wheel",
    standing="derived",
)
def unloaded_speed(
    *, voltage: Volt, duty: One, speed_constant: RadianPerSecondPerVolt, circumference: Metre, ratio: One
) -> MetrePerSecond:
    """Return the road speed without any load, which a board can come near but not hold.

    Raises InputError unless all are positive and the duty is at most 1. A printed Kv is good to about 10 %,
    and so is this speed.

    >>> round(unloaded_speed(voltage=40.0, duty=0.95, speed_constant=20.0, circumference=0.3, ratio=2.5), 2)
    14.51
    """
    positive(circumference=circumference, ratio=ratio)
    angular_speed = unloaded_angular_speed(voltage=voltage, duty=duty, speed_constant=speed_constant)
    return angular_speed * circumference / (2.0 * pi * ratio)


@cited(
    "electrical_angular_speed_limit * circumference / (2 * pi * ratio * pole_pairs)",
    source="derived electrical angular speed at a road speed, turned round",
    standing="derived",
)
def electrically_limited_speed(
    *, electrical_angular_speed_limit: RadianPerSecond, pole_pairs: One, circumference: Metre, ratio: One
) -> MetrePerSecond:
    """Return the road speed at which a controller's limit of electrical angular speed is reached.

    It caps the speed whatever the push. Raises InputError unless all are positive.

    >>> round(
    ...     electrically_limited_speed(
    ...         electrical_angular_speed_limit=7000.0, pole_pairs=7.0, circumference=0.3, ratio=2.5
    ...     ),
    ...     2,
    ... )
    19.1
    """
    positive(
        electrical_angular_speed_limit=electrical_angular_speed_limit,
        pole_pairs=pole_pairs,
        circumference=circumference,
        ratio=ratio,
    )
    return electrical_angular_speed_limit * circumference / (2.0 * pi * ratio * pole_pairs)
