"""What holds the motor current down: the controller's motor limit, its battery limit, the largest duty, the pack.

The controller is ideal: it passes on all power, and it never draws a pack past its most power, where more current
gives less. Battery limits are for the whole board, motor currents for one motor in DC-equivalent amperes.
"""

from math import sqrt
from typing import Literal

from logic.errors import InputError, not_negative, positive
from logic.si import Ampere, JoulePerMetre, MetrePerSecond, Ohm, One, Volt, Watt
from logic.workings import cited

Limit = Literal["motor current", "battery current", "duty", "pack"]

ROUNDING = 1e-9
"""A power above the pack's most by no more than this share is the most itself."""


def _check_pack(open_circuit_voltage: float, pack_resistance: float) -> None:
    positive(open_circuit_voltage=open_circuit_voltage)
    not_negative(pack_resistance=pack_resistance)


def _check_duty(duty: float) -> None:
    if not 0.0 < duty <= 1.0:
        raise InputError("duty", duty, "range", low=0.0, high=1.0)


@cited(
    "min(battery_current_limit, open_circuit_voltage / (2 * pack_resistance))"
    " if pack_resistance > 0 else battery_current_limit",
    source="derived current x sagged voltage is largest at half the short-circuit current",
    standing="derived",
)
def battery_current_drawn(
    *, battery_current_limit: Ampere, open_circuit_voltage: Volt, pack_resistance: Ohm
) -> Ampere:
    """Return the battery current that the limit comes to: a limit that the pack cannot give does not limit.

    Raises InputError unless limit and voltage are positive.

    >>> battery_current_drawn(battery_current_limit=80.0, open_circuit_voltage=40.0, pack_resistance=0.4)
    50.0
    """
    positive(battery_current_limit=battery_current_limit)
    _check_pack(open_circuit_voltage, pack_resistance)
    if not pack_resistance > 0.0:
        return battery_current_limit
    return min(battery_current_limit, open_circuit_voltage / (2.0 * pack_resistance))


@cited(
    "(sqrt(back_emf**2 + 4 * winding_resistance * battery_current_limit"
    " * (open_circuit_voltage - battery_current_limit * pack_resistance) / motors) - back_emf)"
    " / (2 * winding_resistance)",
    source="derived power of the sagged pack at its limit = power of all motors",
    standing="derived",
)
def battery_limited_current(  # noqa: PLR0913  (the balance has six numbers)
    *,
    back_emf: Volt,
    winding_resistance: Ohm,
    open_circuit_voltage: Volt,
    pack_resistance: Ohm,
    battery_current_limit: Ampere,
    motors: One,
) -> Ampere:
    """Return the motor current, per motor, at which the whole board draws its battery limit.

    Raises InputError unless resistance, voltage, limit and motors are positive, and for a limit above the
    short-circuit current; `battery_current_drawn` is below it.

    >>> current = battery_limited_current(
    ...     back_emf=3.0,
    ...     winding_resistance=0.1,
    ...     open_circuit_voltage=42.0,
    ...     pack_resistance=0.1,
    ...     battery_current_limit=20.0,
    ...     motors=2.0,
    ... )
    >>> round(current, 9)  # 50 A x (3 V + 50 A x 0.1 ohm) = 400 W = half of 20 A x 40 V
    50.0
    """
    positive(
        winding_resistance=winding_resistance, battery_current_limit=battery_current_limit, motors=motors
    )
    _check_pack(open_circuit_voltage, pack_resistance)
    sagged = open_circuit_voltage - battery_current_limit * pack_resistance
    if sagged < 0.0:
        most = open_circuit_voltage / pack_resistance
        raise InputError("battery_current_limit", battery_current_limit, "more than the pack", 0.0, most)
    product = 4.0 * winding_resistance * sagged * battery_current_limit / motors
    return (sqrt(back_emf**2 + product) - back_emf) / (2.0 * winding_resistance)


@cited(
    "min(duty, (back_emf + sqrt(back_emf**2 + winding_resistance * open_circuit_voltage**2"
    " / (motors * pack_resistance))) / open_circuit_voltage) if pack_resistance > 0 else duty",
    source="derived duty at which duty x sagged voltage drives the most current",
    standing="derived",
)
def useful_duty(  # noqa: PLR0913  (the balance has six numbers)
    *,
    duty: One,
    back_emf: Volt,
    winding_resistance: Ohm,
    open_circuit_voltage: Volt,
    pack_resistance: Ohm,
    motors: One,
) -> One:
    """Return the duty up to which more duty gives more current; a stiff pack takes all that the controller has.

    Raises InputError unless resistance, voltage and motors are positive and the duty is above 0 and at most 1.

    >>> round(
    ...     useful_duty(
    ...         duty=0.95,
    ...         back_emf=0.0,
    ...         winding_resistance=0.08,
    ...         open_circuit_voltage=40.0,
    ...         pack_resistance=0.5,
    ...         motors=1.0,
    ...     ),
    ...     9,
    ... )  # the winding through the duty looks to the pack like its own resistance: 0.08 / 0.4**2 = 0.5 ohm
    0.4
    """
    positive(winding_resistance=winding_resistance, motors=motors)
    _check_pack(open_circuit_voltage, pack_resistance)
    _check_duty(duty)
    if not pack_resistance > 0.0:
        return duty
    square = back_emf**2 + winding_resistance * open_circuit_voltage**2 / (motors * pack_resistance)
    return min(duty, (back_emf + sqrt(square)) / open_circuit_voltage)


@cited(
    "(duty * open_circuit_voltage - back_emf) / (winding_resistance + motors * duty**2 * pack_resistance)",
    source="derived duty x sagged voltage = motor voltage, battery current = duty x motor currents",
    standing="derived",
)
def duty_limited_current(  # noqa: PLR0913  (the balance has six numbers)
    *,
    back_emf: Volt,
    winding_resistance: Ohm,
    open_circuit_voltage: Volt,
    pack_resistance: Ohm,
    duty: One,
    motors: One,
) -> Ampere:
    """Return the motor current, per motor, that a duty drives; negative above the unloaded speed.

    Raises InputError unless resistance, voltage and motors are positive and the duty is above 0 and at most
    1.

    >>> duty_limited_current(
    ...     back_emf=30.0,
    ...     winding_resistance=0.05,
    ...     open_circuit_voltage=40.0,
    ...     pack_resistance=0.1,
    ...     duty=1.0,
    ...     motors=2.0,
    ... )
    40.0
    """
    positive(winding_resistance=winding_resistance, motors=motors)
    _check_pack(open_circuit_voltage, pack_resistance)
    _check_duty(duty)
    return (duty * open_circuit_voltage - back_emf) / (
        winding_resistance + motors * duty**2 * pack_resistance
    )


@cited(
    "max(0, min(motor_current_limit, battery_limited, duty_limited))",
    source="derived the limit met first; drive only, no braking",
    standing="derived",
)
def motor_current(*, motor_current_limit: Ampere, battery_limited: Ampere, duty_limited: Ampere) -> Ampere:
    """Return the current of one motor at full remote: the smallest of the three, at least none.

    Raises InputError unless the motor limit is positive.

    >>> motor_current(motor_current_limit=45.0, battery_limited=63.2, duty_limited=40.0)
    40.0
    """
    positive(motor_current_limit=motor_current_limit)
    return max(0.0, min(motor_current_limit, battery_limited, duty_limited))


@cited("motors * electric_power", source="derived ideal controllers", standing="derived")
def battery_power(*, motors: One, electric_power: Watt) -> Watt:
    """Return the power the board takes from its pack. Raises InputError unless there are motors.

    >>> battery_power(motors=2.0, electric_power=400.0)
    800.0
    """
    positive(motors=motors)
    return motors * electric_power


@cited(
    "2 * battery_power"
    " / (open_circuit_voltage + sqrt(max(0, open_circuit_voltage**2 - 4 * pack_resistance * battery_power)))",
    source="derived smaller root of power = current x sagged voltage",
    standing="derived",
)
def battery_current(*, battery_power: Watt, open_circuit_voltage: Volt, pack_resistance: Ohm) -> Ampere:
    """Return the battery current of the whole board at a power.

    Raises InputError unless the voltage is positive, and for more power than the pack can give.

    >>> battery_current(battery_power=800.0, open_circuit_voltage=42.0, pack_resistance=0.1)
    20.0
    """
    _check_pack(open_circuit_voltage, pack_resistance)
    square = open_circuit_voltage**2 - 4.0 * pack_resistance * battery_power
    if square < -ROUNDING * open_circuit_voltage**2:
        most = open_circuit_voltage**2 / (4.0 * pack_resistance)
        raise InputError("battery_power", battery_power, "more than the pack", high=most)
    return 2.0 * battery_power / (open_circuit_voltage + sqrt(max(0.0, square)))


@cited("battery_power / speed", source="derived energy over way", standing="derived")
def energy_per_distance(*, battery_power: Watt, speed: MetrePerSecond) -> JoulePerMetre:
    """Return the energy of each metre at a steady speed (3.6 J/m is 1 Wh/km).

    Raises InputError unless it moves.

    >>> energy_per_distance(battery_power=360.0, speed=10.0)
    36.0
    """
    positive(speed=speed)
    return battery_power / speed
