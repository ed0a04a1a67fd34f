"""Charging: the charger against the cells, the time, the temperature and the energy from the wall."""

from math import log

from logic.errors import InputError, positive
from logic.frozen import frozen
from logic.pack.cells import Chemistry, chemistries, chemistry
from logic.si import Ampere, Coulomb, Joule, Kelvin, One, PerSecond, Second, Volt
from logic.tables import Row, pick, rows
from logic.workings import cited, unrecorded

MOST_SERIES = 30
"""Series counts that are tried when a charger is told apart."""

ROUNDING = 1e-9
"""Relative slack for sums of decimal fractions, so that the edge of a tolerance belongs to it."""


@frozen
class ChargerCheck:
    """Outcome of charger voltage against pack. Every outcome but "matches" and "leaves part full" is DANGER.

    `others` are the packs (series count, chemistry) that this charger would fit.
    """

    outcome: str
    danger: bool
    low: Volt
    high: Volt
    others: tuple[tuple[int, str], ...] = ()


@frozen
class Band:
    """A low and a high end."""

    low: float
    high: float


def charger_check(*, charger_voltage: Volt, series: int, cells: Chemistry) -> ChargerCheck:
    """Return whether a charger's voltage is right for a pack, and what it is for if not.

    The outcomes are "matches", "other chemistry", "other series", "too high", "too low" and "leaves part full".
    A charger for another pack is wrong whichever way it is off. One that is no pack's, below the right volts,
    only leaves these cells part full; below the volts of the empty pack, current would flow back into it.

    >>> charger_check(charger_voltage=42.0, series=10, cells=chemistry("NMC")).outcome
    'matches'
    >>> charger_check(charger_voltage=29.4, series=10, cells=chemistry("NMC")).others
    ((7, 'NMC'), (7, 'NCA'), (8, 'LFP'))
    >>> charger_check(charger_voltage=41.0, series=10, cells=chemistry("NMC")).outcome
    'leaves part full'
    """
    positive(charger_voltage=charger_voltage, series=series)
    low, high = _accepted(series, cells)
    if _fits(charger_voltage, low, high):
        return ChargerCheck("matches", danger=False, low=low, high=high)
    with unrecorded():
        known = [chemistry(name) for name in chemistries()]
        others = tuple(
            (count, kind.name)
            for count in range(1, MOST_SERIES + 1)
            for kind in known
            if _fits(charger_voltage, *_accepted(count, kind))
        )
    if any(count == series and kind != cells.name for count, kind in others):
        outcome = "other chemistry"
    elif any(kind == cells.name for _, kind in others):
        outcome = "other series"
    elif charger_voltage > high:
        outcome = "too high"
    else:
        outcome = "leaves part full" if charger_voltage >= series * cells.empty else "too low"
    return ChargerCheck(outcome, danger=outcome != "leaves part full", low=low, high=high, others=others)


def _accepted(series: int, cells: Chemistry) -> tuple[Volt, Volt]:
    tolerance = pick("charger", name=cells.name).number("tolerance")
    return series * (cells.full - tolerance), series * (cells.full + tolerance)


def _fits(voltage: Volt, low: Volt, high: Volt) -> bool:
    return low * (1.0 - ROUNDING) <= voltage <= high * (1.0 + ROUNDING)


@cited(
    "current / capacity",
    source="derived charge rate as a share of the capacity in a time",
    standing="derived",
)
def charge_rate(*, current: Ampere, capacity: Coulomb) -> PerSecond:
    """Return the charge rate; 1 C is one per hour.

    >>> charge_rate(current=3.0, capacity=2.0 * 3600) * 3600
    1.5
    """
    positive(current=current, capacity=capacity)
    return current / capacity


def current_outcome(*, cell_current: Ampere, cell_limit: Ampere | None, cell_capacity: Coulomb) -> str:
    """Return "over cell limit" or "over any limit" (WARNINGS), "look at the cell sheet" or "within limit".

    Where the limit is not known, a look is due above the rate that cells are usually charged with, and above the
    one they are charged with at most no sheet is likely to allow it.

    >>> [current_outcome(cell_current=amps, cell_limit=None, cell_capacity=2.0 * 3600) for amps in (1.0, 2.0, 3.0)]
    ['within limit', 'look at the cell sheet', 'over any limit']
    """
    positive(cell_current=cell_current, cell_capacity=cell_capacity)
    if cell_limit is not None:
        positive(cell_limit=cell_limit)
        return "over cell limit" if cell_current > cell_limit * (1.0 + ROUNDING) else "within limit"
    kind = pick("cell_kinds", kind="energy")
    rate = charge_rate(current=cell_current, capacity=cell_capacity)
    if rate > kind.number("most_charge") * (1.0 + ROUNDING):
        return "over any limit"
    return (
        "look at the cell sheet" if rate > kind.number("usual_charge") * (1.0 + ROUNDING) else "within limit"
    )


@cited(
    "capacity * (target - charge)",
    source="derived charge counted in amp-hours",
    standing="derived",
)
def missing_charge(*, capacity: Coulomb, charge: One, target: One) -> Coulomb:
    """Return the amp-hours to put in, from one share of charge to another.

    >>> missing_charge(capacity=8.0, charge=0.25, target=1.0)
    6.0
    """
    positive(capacity=capacity)
    if not 0.0 <= charge <= 1.0:
        raise InputError("charge", charge, "range", low=0.0, high=1.0)
    if not charge <= target <= 1.0:
        raise InputError("target", target, "range", low=charge, high=1.0)
    return capacity * (target - charge)


@cited(
    "1 - tail * max(rate - end, 0)",
    source="derived current that falls off exponentially in constant voltage",
    standing="derived",
)
def constant_until(*, rate: PerSecond, tail: Second, end: PerSecond) -> One:
    """Return the share of a full charge up to which the current is constant.

    `tail` is the time in which the current then falls to 1/e, `end` the rate at which a charger stops.

    >>> round(constant_until(rate=1.0, tail=0.25, end=0.05), 4)
    0.7625
    """
    positive(rate=rate, tail=tail, end=end)
    return 1.0 - tail * max(rate - end, 0.0)


@cited(
    "min(rate, end + (1 - share) / tail)",
    source="derived current that falls off exponentially in constant voltage",
    standing="derived",
)
def rate_at(*, share: One, rate: PerSecond, tail: Second, end: PerSecond) -> PerSecond:
    """Return the charge rate at a share of a full charge: the charger's, or what the cells still take.

    >>> [rate_at(share=share, rate=1.0, tail=0.25, end=0.05) for share in (0.5, 0.875)]
    [1.0, 0.55]
    """
    positive(rate=rate, tail=tail, end=end)
    return min(rate, end + (1.0 - share) / tail)


@cited(
    "max(min(target, constant) - charge, 0) / rate + tail * log(rate_before / rate_after)",
    source="derived constant current, then constant voltage",
    standing="derived",
)
def charge_time(  # noqa: PLR0913  (the formula's own seven figures)
    *,
    charge: One,
    target: One,
    constant: One,
    rate: PerSecond,
    tail: Second,
    rate_before: PerSecond,
    rate_after: PerSecond,
) -> Second:
    """Return the time from one share of a full charge to another.

    `constant` is the share up to which the current is constant, `rate_before` and `rate_after` are the rates at
    both shares.

    >>> charge_time(charge=0.25, target=0.75, constant=0.8, rate=0.5, tail=0.4, rate_before=0.5, rate_after=0.5)
    1.0
    """
    positive(rate=rate, tail=tail, rate_before=rate_before, rate_after=rate_after)
    return max(min(target, constant) - charge, 0.0) / rate + tail * log(rate_before / rate_after)


TAILS = ("short", "usual", "long")
"""How slowly cells take the last of a charge: stiff ones, usual ones, and those behind the printed 3 hours."""


def time_to_charge(*, rate: PerSecond, charge: One, target: One, tail: str) -> Second:
    """Return the time to charge at a rate, with one of TAILS; it falls as the rate rises.

    Raises InputError above the rate that cells are charged with at most, where no figure is trusted.

    >>> [round(time_to_charge(rate=0.4 / 3600, charge=0.2, target=1.0, tail=tail) / 3600, 1) for tail in TAILS]
    [2.2, 2.6, 3.1]
    """
    positive(rate=rate)
    with unrecorded():
        most = pick("cell_kinds", kind="energy").number("most_charge")
        missing_charge(capacity=1.0, charge=charge, target=target)
    if rate > most * (1.0 + ROUNDING):
        raise InputError("rate", rate, "above 1 C", high=most)
    row = pick("charge_tail", name=tail)
    cells = {"rate": rate, "tail": row.number("tail"), "end": row.number("end")}
    return charge_time(
        charge=charge,
        target=target,
        constant=constant_until(**cells),
        rate=rate,
        tail=cells["tail"],
        rate_before=rate_at(share=charge, **cells),
        rate_after=rate_at(share=target, **cells),
    )


def temperature_row(*, temperature: Kelvin) -> Row:
    """Return the row for the temperature of the cells: its texts are `key` and `signal`.

    The keys are "below freezing" (no charging), "cold" (slowly, or warm up first), "normal", "warm", "hot".

    >>> temperature_row(temperature=273.15 - 1.0).text("key")
    'below freezing'
    """
    positive(temperature=temperature)
    for row in rows("charge_temperature"):
        if "below" not in row or temperature < row.cells["below"]:
            return row
    raise AssertionError("the last row of charge_temperature has no end")


def charging_window() -> tuple[Kelvin, Kelvin]:
    """Return the lowest and the highest temperature of cells at which they are charged at all.

    Source: the rows of `charge_temperature`; outside them stand those that warn.

    >>> [round(end - 273.15, 2) for end in charging_window()]
    [0.0, 45.0]
    """
    ends = [row.cells["below"] for row in rows("charge_temperature") if "below" in row]
    return ends[0], ends[-1]


@cited(
    "energy / (charger_efficiency * cell_efficiency * charge_efficiency)",
    source="derived losses in a chain",
    standing="derived",
)
def wall_energy(
    *, energy: Joule, charger_efficiency: One, cell_efficiency: One, charge_efficiency: One
) -> Joule:
    """Return the energy from the wall for the energy put back into the pack.

    >>> wall_energy(energy=100.0, charger_efficiency=0.8, cell_efficiency=1.0, charge_efficiency=1.0)
    125.0
    """
    positive(
        charger_efficiency=charger_efficiency,
        cell_efficiency=cell_efficiency,
        charge_efficiency=charge_efficiency,
    )
    return energy / (charger_efficiency * cell_efficiency * charge_efficiency)


def wall_energy_band(*, energy: Joule) -> Band:
    """Return the band of the energy from the wall: about 1.12 to 1.25 times that of the pack.

    >>> band = wall_energy_band(energy=100.0)
    >>> round(band.low), round(band.high)
    (112, 125)
    """
    charger, cell, charge = (pick("charge_losses", part=part) for part in ("charger", "cell", "amp-hours"))
    best, worst = (
        wall_energy(
            energy=energy,
            charger_efficiency=charger.number(end),
            cell_efficiency=cell.number(end),
            charge_efficiency=charge.number(end),
        )
        for end in ("high", "low")
    )
    return Band(best, worst)
