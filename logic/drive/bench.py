"""A motor on the bench: its constants from a spin-up, from volts and amperes, and from counting."""

from logic.errors import InputError, NoFigure, positive
from logic.si import Ampere, Ohm, One, RadianPerSecond, RadianPerSecondPerVolt, Volt
from logic.workings import cited


@cited(
    "angular_speed / (duty * voltage - no_load_current * winding_resistance)",
    source="derived voltage balance of the winding at the no-load current",
    standing="derived",
)
def speed_constant_from_spin(
    *,
    angular_speed: RadianPerSecond,
    voltage: Volt,
    duty: One,
    no_load_current: Ampere,
    winding_resistance: Ohm,
) -> RadianPerSecondPerVolt:
    """Return Kv from a free spin at a known voltage, six-step or DC-equivalent.

    Raises InputError unless angular speed, voltage and duty are positive, and ("no such motor") when the no-load
    current alone would use all the volts.

    >>> speed_constant_from_spin(
    ...     angular_speed=760.0, voltage=40.0, duty=1.0, no_load_current=20.0, winding_resistance=0.1
    ... )
    20.0
    """
    positive(angular_speed=angular_speed, voltage=voltage, duty=duty)
    if duty > 1.0:
        raise InputError("duty", duty, "range", low=0.0, high=1.0)
    left = duty * voltage - no_load_current * winding_resistance
    if left <= 0.0:
        raise NoFigure("voltage", voltage, "no such motor")
    return angular_speed / left


@cited("magnets / 2", source="motor-torque-constant three-phase motor theory, electrical angle")
def pole_pairs_from_magnets(*, magnets: One) -> One:
    """Return the pole pairs of a rotor. Raises InputError unless the count is positive and even ("odd magnets").

    >>> pole_pairs_from_magnets(magnets=14.0)
    7.0
    """
    positive(magnets=magnets)
    if magnets % 2.0 == 1.0:
        raise NoFigure("ask.magnets", magnets, "odd magnets")
    return magnets / 2.0


@cited("taken / meant - 1", source="derived a torque from the wrong convention", standing="derived")
def mixing_error(*, taken: One, meant: One) -> One:
    """Return by how much a torque is off when amperes of one meaning are taken for another.

    Raises InputError unless both are positive.

    >>> round(mixing_error(taken=1.0, meant=0.866), 3)
    0.155
    """
    positive(taken=taken, meant=meant)
    return taken / meant - 1.0
