"""Charging: the charger against the cells, the time, the temperature and the energy from the wall."""

from dataclasses import dataclass

from logic.errors import InputError, positive
from logic.pack.cells import Chemistry, chemistries, chemistry
from logic.si import Ampere, Coulomb, Joule, Kelvin, One, PerSecond, Second, Volt
from logic.tables import Row, pick, raw, rows
from logic.workings import cited, unrecorded

MOST_SERIES = 30
"""Series counts that are tried when a charger is told apart."""

HOUR = 3600.0
"""Seconds of an hour: printed charge rates are per hour."""

ROUNDING = 1e-9
"""Relative slack for sums of decimal fractions, so that the edge of a tolerance belongs to it."""


@dataclass(frozen=True)
class ChargerCheck:
    """Outcome of charger voltage against pack. Every outcome but "matches" is DANGER.

    `others` are the packs (series count, chemistry) that this charger would fit.
    """

    outcome: str
    danger: bool
    low: Volt
    high: Volt
    others: tuple[tuple[int, str], ...] = ()


@dataclass(frozen=True)
class Band:
    """A low and a high end."""

    low: float
    high: float


def charger_check(*, charger_voltage: Volt, series: int, cells: Chemistry) -> ChargerCheck:
    """Return whether a charger's voltage is right for a pack, and what it is for if not.

    The outcomes are "matches", "other chemistry", "other series", "too high" and "too low".

    >>> charger_check(charger_voltage=42.0, series=10, cells=chemistry("NMC")).outcome
    'matches'
    >>> charger_check(charger_voltage=29.4, series=10, cells=chemistry("NMC")).others
    ((7, 'NMC'), (7, 'NCA'), (8, 'LFP'))
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
    else:
        outcome = "too high" if charger_voltage > high else "too low"
    return ChargerCheck(outcome, danger=True, low=low, high=high, others=others)


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

    >>> round(charge_rate(current=3.0, capacity=1.7 * 3600) * 3600, 2)
    1.76
    """
    positive(current=current, capacity=capacity)
    return current / capacity


def current_outcome(*, cell_current: Ampere, cell_limit: Ampere | None, cell_capacity: Coulomb) -> str:
    """Return "over cell limit" (a WARNING), "look at the cell sheet" or "within limit".

    A look is due when the limit is not known and the rate is above what cells are usually charged with.

    >>> current_outcome(cell_current=3.0, cell_limit=None, cell_capacity=1.7 * 3600)
    'look at the cell sheet'
    """
    positive(cell_current=cell_current, cell_capacity=cell_capacity)
    if cell_limit is not None:
        positive(cell_limit=cell_limit)
        return "over cell limit" if cell_current > cell_limit * (1.0 + ROUNDING) else "within limit"
    usual = pick("cell_kinds", kind="energy").number("usual_charge")
    over = charge_rate(current=cell_current, capacity=cell_capacity) > usual * (1.0 + ROUNDING)
    return "look at the cell sheet" if over else "within limit"


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
    "taper * missing / current", source="derived constant current, then constant voltage", standing="derived"
)
def charge_time(*, taper: One, missing: Coulomb, current: Ampere) -> Second:
    """Return the time to put `missing` in; `taper` covers the slow end of the charge.

    >>> charge_time(taper=1.25, missing=4.0 * 3600, current=2.0) / 3600
    2.5
    """
    positive(taper=taper, current=current)
    return taper * missing / current


def taper(*, rate: PerSecond, target: One) -> Band:
    """Return the band of the factor on amp-hours over amps, for a charge rate and a target share of charge.

    Up to 80 % the current is constant and the factor 1; between 80 % and full the band spans both. Raises
    InputError above 1 C, where no figure is trusted: allow 3 hours and read the cell's sheet.

    >>> taper(rate=0.5 / 3600, target=1.0)
    Band(low=1.1, high=1.3)
    >>> taper(rate=0.5 / 3600, target=0.8)
    Band(low=1.0, high=1.0)
    """
    positive(rate=rate)
    if target <= raw("charge_taper")["constant_until"]:
        return Band(1.0, 1.0)
    for row in rows("charge_taper"):
        if rate <= row.cells["up_to"] * (1.0 + ROUNDING):
            return Band(row.number("low") if target >= 1.0 else 1.0, row.number("high"))
    raise InputError("rate", rate, "above 1 C", high=1.0 / HOUR)


def charge_time_band(*, capacity: Coulomb, charge: One, target: One, current: Ampere) -> Band:
    """Return the shortest and the longest likely time in seconds. Raises as `taper` does.

    >>> band = charge_time_band(capacity=8.0 * 3600, charge=0.0, target=1.0, current=3.0)
    >>> round(band.low / 3600, 1), round(band.high / 3600, 1)
    (2.9, 3.5)
    """
    missing = missing_charge(capacity=capacity, charge=charge, target=target)
    factor = taper(rate=charge_rate(current=current, capacity=capacity), target=target)
    return Band(
        charge_time(taper=factor.low, missing=missing, current=current),
        charge_time(taper=factor.high, missing=missing, current=current),
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
