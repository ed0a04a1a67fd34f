"""One motor: volts, amperes, torque and heat.

Inside, every motor current is in DC-equivalent amperes and the resistance is from line to line; then the
torque constant is 1 / Kv in SI, the heat is I**2 R, and the energy balance closes whatever a stated limit
meant. A stated current is converted once, by `dc_equivalent_current`.
"""

from logic.errors import not_negative, positive
from logic.si import (
    Ampere,
    NewtonMetre,
    NewtonMetrePerAmpere,
    Ohm,
    One,
    RadianPerSecond,
    RadianPerSecondPerVolt,
    Volt,
    Watt,
    WattPerNewtonMetreSquared,
)
from logic.tables import pick, rows
from logic.workings import cited


def current_meanings() -> tuple[str, ...]:
    """Return what a stated motor current can mean, as keys of `conversion`.

    >>> current_meanings()
    ('six-step', 'sine peak', 'sine rms')
    """
    return tuple(row.text("meaning") for row in rows("torque_constants"))


def conversion(meaning: str) -> One:
    """Return DC-equivalent amperes for one stated ampere, and record the row.

    Raises InputError for a key that is not among `current_meanings`.

    >>> round(conversion("sine peak"), 3)
    0.866
    """
    return pick("torque_constants", meaning=meaning).number("conversion")


@cited("conversion * current", source="derived equal air-gap power", standing="derived")
def dc_equivalent_current(*, current: Ampere, conversion: One) -> Ampere:
    """Return a stated motor current in DC-equivalent amperes.

    Raises InputError unless the conversion is positive.

    >>> dc_equivalent_current(current=40.0, conversion=0.75)
    30.0
    """
    positive(conversion=conversion)
    return conversion * current


@cited("1 / speed_constant", source="derived power balance of an ideal machine", standing="derived")
def torque_constant(*, speed_constant: RadianPerSecondPerVolt) -> NewtonMetrePerAmpere:
    """Return the torque of one DC-equivalent ampere (9.549 / Kv with Kv in rpm per volt).

    Saturation is left out: far above the rated current a real motor gives less. Raises InputError unless the
    speed constant is positive.

    >>> torque_constant(speed_constant=20.0)
    0.05
    """
    positive(speed_constant=speed_constant)
    return 1.0 / speed_constant


@cited("conversion * torque_constant", source="derived equal air-gap power", standing="derived")
def torque_constant_stated(*, torque_constant: NewtonMetrePerAmpere, conversion: One) -> NewtonMetrePerAmpere:
    """Return the torque of one ampere of a stated meaning, to be shown beside the current it belongs to.

    Raises InputError unless the conversion is positive.

    >>> torque_constant_stated(torque_constant=0.05, conversion=0.5)
    0.025
    """
    positive(conversion=conversion)
    return conversion * torque_constant


@cited(
    "angular_speed / speed_constant", source="derived definition of the speed constant", standing="derived"
)
def back_emf(*, angular_speed: RadianPerSecond, speed_constant: RadianPerSecondPerVolt) -> Volt:
    """Return the voltage that a turning motor makes. Raises InputError unless the speed constant is positive.

    >>> back_emf(angular_speed=400.0, speed_constant=20.0)
    20.0
    """
    positive(speed_constant=speed_constant)
    return angular_speed / speed_constant


@cited(
    "torque_constant * (current - no_load_current)",
    source="derived torque of the current that is left after the motor's own drag",
    standing="derived",
)
def motor_torque(
    *, torque_constant: NewtonMetrePerAmpere, current: Ampere, no_load_current: Ampere
) -> NewtonMetre:
    """Return the torque at the shaft of one motor; below the no-load current it drags, and this is negative.

    The no-load current is taken as constant; in truth it grows with angular speed. Raises InputError when it is
    negative or the torque constant is not positive.

    >>> motor_torque(torque_constant=0.05, current=21.0, no_load_current=1.0)
    1.0
    """
    positive(torque_constant=torque_constant)
    not_negative(no_load_current=no_load_current)
    return torque_constant * (current - no_load_current)


@cited(
    "heat * torque_constant**2", source="derived heat of the winding at one newton metre", standing="derived"
)
def resistance_of_size(*, heat: WattPerNewtonMetreSquared, torque_constant: NewtonMetrePerAmpere) -> Ohm:
    """Return the winding's resistance, line to line, by what a can of its size loses at one newton metre.

    One can wound for another Kv keeps its copper: resistance goes with the square of the torque constant. Raises
    InputError unless both are positive.

    >>> round(resistance_of_size(heat=20.0, torque_constant=0.05), 3)
    0.05
    """
    positive(heat=heat, torque_constant=torque_constant)
    return heat * torque_constant**2


@cited("torque_constant * current", source="derived torque of the whole current", standing="derived")
def limit_torque(*, torque_constant: NewtonMetrePerAmpere, current: Ampere) -> NewtonMetre:
    """Return the most torque a current limit lets through: what a belt must carry.

    The no-load current is left out.

    Raises InputError unless the torque constant is positive.

    >>> limit_torque(torque_constant=0.05, current=40.0)
    2.0
    """
    positive(torque_constant=torque_constant)
    return torque_constant * current


@cited("current**2 * winding_resistance", source="derived heat in a resistance", standing="derived")
def winding_heat(*, current: Ampere, winding_resistance: Ohm) -> Watt:
    """Return the heat in the winding of one motor, line to line, DC-equivalent amperes.

    Iron loss is not in it. Copper at 100 degrees Celsius has 1.31 times its resistance at 20. Raises
    InputError unless the resistance is positive.

    >>> winding_heat(current=20.0, winding_resistance=0.05)
    20.0
    """
    positive(winding_resistance=winding_resistance)
    return current**2 * winding_resistance


@cited(
    "current * (back_emf + current * winding_resistance)",
    source="derived voltage balance of the winding, times its current",
    standing="derived",
)
def electric_power(*, current: Ampere, back_emf: Volt, winding_resistance: Ohm) -> Watt:
    """Return the power one motor takes from an ideal controller.

    Raises InputError unless the resistance is positive.

    >>> electric_power(current=20.0, back_emf=30.0, winding_resistance=0.05)
    620.0
    """
    positive(winding_resistance=winding_resistance)
    return current * (back_emf + current * winding_resistance)


@cited("torque * angular_speed", source="derived power of a shaft", standing="derived")
def shaft_power(*, torque: NewtonMetre, angular_speed: RadianPerSecond) -> Watt:
    """Return the power at the shaft of one motor.

    >>> shaft_power(torque=1.5, angular_speed=400.0)
    600.0
    """
    return torque * angular_speed
