"""Braking down a long hill into the pack: voltage first, then how much height the charge can take back."""

from logic.errors import InputError, not_negative, positive
from logic.pack.limits import may_cut_out
from logic.si import Ampere, Joule, Kilogram, Metre, MetrePerSecondSquared, Ohm, One, Volt
from logic.tables import pick
from logic.workings import cited


def _check_charge(charge: One) -> None:
    if not 0.0 <= charge <= 1.0:
        raise InputError("charge", charge, "range", low=0.0, high=1.0)


@cited("energy * (1 - charge)", source="derived energy missing to full", standing="derived")
def headroom(*, energy: Joule, charge: One) -> Joule:
    """Return the energy that a pack can still take.

    >>> round(headroom(energy=288 * 3600, charge=0.9) / 3600, 1)
    28.8
    """
    positive(energy=energy)
    _check_charge(charge)
    return energy * (1.0 - charge)


@cited(
    "mass * gravity * drop * recovery",
    source="derived potential energy that reaches the pack",
    standing="derived",
)
def energy_of_descent(*, mass: Kilogram, gravity: MetrePerSecondSquared, drop: Metre, recovery: One) -> Joule:
    """Return the energy that braking all the way down brings back; rolling and air make the real one less.

    >>> round(energy_of_descent(mass=95.0, gravity=9.80665, drop=100.0, recovery=1.0) / 3600, 1)
    25.9
    """
    positive(mass=mass, gravity=gravity, drop=drop, recovery=recovery)
    return mass * gravity * drop * recovery


@cited(
    "free_energy / (mass * gravity * recovery)",
    source="derived potential energy that reaches the pack, turned round",
    standing="derived",
)
def drop_taken_back(
    *, free_energy: Joule, mass: Kilogram, gravity: MetrePerSecondSquared, recovery: One
) -> Metre:
    """Return the drop in height after which the pack is full.

    >>> round(drop_taken_back(free_energy=28.8 * 3600, mass=95.0, gravity=9.80665, recovery=0.7))
    159
    """
    positive(mass=mass, gravity=gravity, recovery=recovery)
    not_negative(free_energy=free_energy)
    return free_energy / (mass * gravity * recovery)


def recovery() -> One:
    """Return the part of the height's energy that reaches the pack at most: an estimate."""
    return pick("descent", name="recovery").number("value")


def descent_outcome(  # noqa: PLR0913  (voltage and energy are two questions, each with its figures)
    *,
    rest_voltage: Volt,
    current: Ampere,
    resistance: Ohm,
    full_voltage: Volt,
    charge: One,
    free_energy: Joule,
    descent_energy: Joule,
) -> str:
    """Return "may cut out at once", "full before the bottom", "start lower" or "room".

    Voltage is asked first: `current` is the braking current into the pack. "start lower" is the habit of
    starting long hills at or below 90 % charge.

    >>> descent_outcome(rest_voltage=42.0, current=8.0, resistance=0.125, full_voltage=42.0, charge=1.0,
    ...     free_energy=0.0, descent_energy=1000.0)
    'may cut out at once'
    """
    _check_charge(charge)
    if may_cut_out(
        rest_voltage=rest_voltage, current=current, resistance=resistance, full_voltage=full_voltage
    ):
        return "may cut out at once"
    if descent_energy > free_energy:
        return "full before the bottom"
    if charge > pick("descent", name="start charge").number("value"):
        return "start lower"
    return "room"
