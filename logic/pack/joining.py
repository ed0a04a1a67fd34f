"""Joining two packs in parallel: what flows at the instant, how long it lasts, and when it is allowed.

Each pack is taken as a large capacitor behind its resistance. Real cells settle more slowly at the end.
"""

from math import log

from logic.errors import InputError, not_negative, positive
from logic.frozen import frozen
from logic.si import Ampere, Coulomb, Farad, Joule, Ohm, One, Second, Volt, Watt
from logic.tables import Row, matching, pick
from logic.workings import cited

WAYS = ("parallel", "series")
"""Ways of joining two packs."""


@frozen
class Outcome:
    """Whether two packs may be joined: "may be joined" or the DANGER that forbids it."""

    key: str
    danger: bool


@cited(
    "resistance_first + resistance_second + resistance_leads",
    source="derived one loop of two packs and their leads",
    standing="derived",
)
def loop_resistance(*, resistance_first: Ohm, resistance_second: Ohm, resistance_leads: Ohm) -> Ohm:
    """Return the resistance of the loop that two joined packs form.

    >>> loop_resistance(resistance_first=0.01, resistance_second=0.01, resistance_leads=0.03)
    0.05
    """
    positive(resistance_first=resistance_first, resistance_second=resistance_second)
    not_negative(resistance_leads=resistance_leads)
    return resistance_first + resistance_second + resistance_leads


@cited("voltage_difference / resistance", source="derived Kirchhoff's voltage law", standing="derived")
def joining_current(*, voltage_difference: Volt, resistance: Ohm) -> Ampere:
    """Return the current at the instant of joining, from the fuller pack into the lower one.

    >>> joining_current(voltage_difference=1.0, resistance=0.05)
    20.0
    """
    not_negative(voltage_difference=voltage_difference)
    positive(resistance=resistance)
    return voltage_difference / resistance


@cited("voltage_difference**2 / resistance", source="derived Joule's law", standing="derived")
def joining_heat(*, voltage_difference: Volt, resistance: Ohm) -> Watt:
    """Return the heat at the instant of joining, in both packs and the leads together.

    >>> joining_heat(voltage_difference=1.0, resistance=0.05)
    20.0
    """
    not_negative(voltage_difference=voltage_difference)
    positive(resistance=resistance)
    return voltage_difference**2 / resistance


@cited(
    "capacity / (swing * series)", source="derived a straight line from empty to full", standing="estimate"
)
def storage(*, capacity: Coulomb, swing: Volt, series: One) -> Farad:
    """Return the capacitance that stands for a pack; `swing` is the rest voltage per cell, full less empty.

    >>> storage(capacity=5.0 * 3600, swing=0.9, series=10)
    2000.0
    """
    positive(capacity=capacity, swing=swing, series=series)
    return capacity / (swing * series)


@cited(
    "voltage_difference * storage_first * storage_second / (storage_first + storage_second)",
    source="derived charge kept by two capacitors",
    standing="derived",
)
def charge_moved(*, voltage_difference: Volt, storage_first: Farad, storage_second: Farad) -> Coulomb:
    """Return the charge that has moved once the packs are level.

    >>> charge_moved(voltage_difference=1.0, storage_first=2000.0, storage_second=2000.0)
    1000.0
    """
    not_negative(voltage_difference=voltage_difference)
    positive(storage_first=storage_first, storage_second=storage_second)
    return voltage_difference * storage_first * storage_second / (storage_first + storage_second)


@cited("charge * voltage_difference / 2", source="derived energy lost by two capacitors", standing="derived")
def heat_in_all(*, charge: Coulomb, voltage_difference: Volt) -> Joule:
    """Return the heat until the packs are level; it does not depend on the resistance.

    >>> heat_in_all(charge=1000.0, voltage_difference=1.0)
    500.0
    """
    not_negative(voltage_difference=voltage_difference)
    return charge * voltage_difference / 2


@cited(
    "resistance * storage_first * storage_second / (storage_first + storage_second)",
    source="derived two capacitors and a resistor",
    standing="derived",
)
def time_constant(*, resistance: Ohm, storage_first: Farad, storage_second: Farad) -> Second:
    """Return the time in which the current falls to 37 %.

    >>> time_constant(resistance=0.21, storage_first=2000.0, storage_second=2000.0)
    210.0
    """
    positive(resistance=resistance, storage_first=storage_first, storage_second=storage_second)
    return resistance * storage_first * storage_second / (storage_first + storage_second)


@cited(
    "time_constant * log(current / final_current)",
    source="derived two capacitors and a resistor",
    standing="derived",
)
def settling_time(*, time_constant: Second, current: Ampere, final_current: Ampere) -> Second:
    """Return the time until the current has fallen from `current` to `final_current`.

    >>> round(settling_time(time_constant=210.0, current=20.0, final_current=0.2) / 60, 1)
    16.1
    """
    positive(time_constant=time_constant, final_current=final_current)
    if not final_current <= current < float("inf"):
        raise InputError("current", current, "range", low=final_current)
    return time_constant * log(current / final_current)


@cited(
    "min(cell_difference * series, charge_limit * resistance)",
    source="derived the current stays within the charge limit of the lower pack; 50 mV per cell is a habit",
    standing="practice",
)
def allowed_difference(*, cell_difference: Volt, series: One, charge_limit: Ampere, resistance: Ohm) -> Volt:
    """Return the largest difference at which two packs may be joined.

    `charge_limit` is that of the lower pack, `resistance` that of the loop at the low end of what it may be.

    >>> allowed_difference(cell_difference=0.05, series=10, charge_limit=2.5, resistance=0.16)
    0.4
    """
    positive(cell_difference=cell_difference, series=series, charge_limit=charge_limit, resistance=resistance)
    return min(cell_difference * series, charge_limit * resistance)


def joining_outcome(  # noqa: PLR0913  (each pack's count, chemistry and voltage are asked for)
    *,
    series_first: int,
    series_second: int,
    chemistry_first: str,
    chemistry_second: str,
    voltage_difference: Volt,
    allowed: Volt,
) -> Outcome:
    """Return whether two packs may be joined in parallel; every other outcome is DANGER.

    >>> joining_outcome(series_first=10, series_second=12, chemistry_first="NMC", chemistry_second="NMC",
    ...     voltage_difference=0.0, allowed=0.5)
    Outcome(key='series differ', danger=True)
    """
    positive(series_first=series_first, series_second=series_second, allowed=allowed)
    not_negative(voltage_difference=voltage_difference)
    if series_first != series_second:
        return Outcome("series differ", danger=True)
    if chemistry_first != chemistry_second:
        return Outcome("chemistry differs", danger=True)
    if voltage_difference > allowed:
        return Outcome("difference too large", danger=True)
    return Outcome("may be joined", danger=False)


def joining_figures(name: str) -> Row:
    """Return the row of a chemistry: numbers `difference` and `swing`, in volts per cell.

    >>> joining_figures("NMC").number("difference")
    0.05
    """
    return pick("joining", name=name)


def joining_rules(how: str) -> tuple[Row, ...]:
    """Return the rules of joining "parallel" or "series", in order: texts `key`, `signal` and `text`.

    >>> joining_rules("series")[0].text("key")
    'short'
    """
    if how not in WAYS:
        raise InputError("how", how, "unknown way")
    return tuple(matching("joining_rules", how=how))
