"""How far a charge goes: from an energy per distance, modelled or learnt from logged rides."""

from collections.abc import Sequence
from itertools import pairwise
from statistics import median

from logic.errors import InputError, positive
from logic.frozen import frozen
from logic.si import Joule, JoulePerMetre, Kelvin, Metre, One, Volt
from logic.tables import matching, pick
from logic.workings import cited

FEWEST = 3
"""Rides that are needed before anything is learnt from them."""

CONSISTENT = 1.4826
"""Standard deviation over median absolute deviation, of a normal distribution: 1 / (0.6745)."""

TWO_SIGMA = 2.0
"""Half-width of a band of about 95 %, in standard deviations."""


@frozen
class RiddenEnergy:
    """One logged ride."""

    distance: Metre
    energy: Joule


@frozen
class Learnt:
    """Energy per distance learnt from rides: the usual one and the band of about 95 % of rides."""

    low: JoulePerMetre
    usual: JoulePerMetre
    high: JoulePerMetre
    rides: int


@frozen
class RangeBand:
    """Distance a charge gives: the least, the usual and the most likely to be seen."""

    low: Metre
    usual: Metre
    high: Metre


@cited("energy / per_distance", source="derived energy over energy per distance", standing="derived")
def range_distance(*, energy: Joule, per_distance: JoulePerMetre) -> Metre:
    """Return the distance an energy gives.

    >>> range_distance(energy=288 * 3600, per_distance=12 * 3.6) / 1000
    24.0
    """
    positive(energy=energy, per_distance=per_distance)
    return energy / per_distance


@cited(
    "energy * window * cold_share",
    source="derived part of the energy that a ride can use",
    standing="derived",
)
def usable_energy(*, energy: Joule, window: One, cold_share: One) -> Joule:
    """Return the energy for riding: `window` is the share between full and the end of the ride.

    >>> usable_energy(energy=1000.0, window=0.75, cold_share=0.5)
    375.0
    """
    positive(energy=energy)
    for name, share in (("window", window), ("cold_share", cold_share)):
        if not 0.0 < share <= 1.0:
            raise InputError(name, share, "range", low=0.0, high=1.0)
    return energy * window * cold_share


@cited(
    "energy * (voltage_before - voltage_after) / (full_voltage - empty_voltage)",
    source="derived a straight line from full to empty",
    standing="estimate",
)
def energy_from_voltages(
    *, energy: Joule, voltage_before: Volt, voltage_after: Volt, full_voltage: Volt, empty_voltage: Volt
) -> Joule:
    """Return the energy of a ride from rest voltages before and after: rough, and useless on flat LFP curves.

    >>> energy_from_voltages(energy=1200.0, voltage_before=42.0, voltage_after=36.0, full_voltage=42.0,
    ...     empty_voltage=30.0)
    600.0
    """
    positive(energy=energy, empty_voltage=empty_voltage)
    if not empty_voltage < full_voltage < float("inf"):
        raise InputError("full_voltage", full_voltage, "range", low=empty_voltage)
    if not empty_voltage <= voltage_before <= full_voltage:
        raise InputError("voltage_before", voltage_before, "range", low=empty_voltage, high=full_voltage)
    if not empty_voltage <= voltage_after < voltage_before:
        raise InputError("voltage_after", voltage_after, "range", low=empty_voltage, high=voltage_before)
    return energy * (voltage_before - voltage_after) / (full_voltage - empty_voltage)


def learnt(rides: Sequence[RiddenEnergy]) -> Learnt:
    """Return the usual energy per distance and its band, such that one odd ride does not move it.

    The usual one is the median; the spread is the median distance from it, scaled to a standard deviation,
    twice to either side, and never under the least spread of the table. Raises InputError for fewer than
    three rides.

    >>> band = learnt([RiddenEnergy(10_000.0, energy) for energy in (432_000.0, 450_000.0, 2_000_000.0)])
    >>> band.usual
    45.0
    """
    if len(rides) < FEWEST:
        raise InputError("rides", len(rides), "too few", low=float(FEWEST))
    for ride in rides:
        positive(energy=ride.energy, distance=ride.distance)
    per_distance = [ride.energy / ride.distance for ride in rides]
    usual = median(per_distance)
    deviation = CONSISTENT * median(abs(value - usual) for value in per_distance)
    least = pick("range", name="least spread").number("value")
    # A spread as wide as the usual value itself would reach down to zero: the low end stops at half.
    half = max(TWO_SIGMA * deviation, least * usual)
    return Learnt(max(usual - half, usual / 2.0), usual, usual + half, len(rides))


def range_band(*, energy: Joule, per_distance: Learnt) -> RangeBand:
    """Return the range of an energy at a learnt or modelled energy per distance.

    >>> range_band(energy=432_000.0, per_distance=Learnt(36.0, 43.2, 54.0, 3))
    RangeBand(low=8000.0, usual=10000.0, high=12000.0)
    """
    return RangeBand(
        *(
            range_distance(energy=energy, per_distance=value)
            for value in (per_distance.high, per_distance.usual, per_distance.low)
        )
    )


def cold_share(*, temperature: Kelvin) -> One:
    """Return the part of the energy left at a temperature of the cells: an estimate, straight between rows.

    Warm cells give all of it. Raises InputError below the coldest row.

    >>> round(cold_share(temperature=273.15 + 10.0), 2)
    0.9
    """
    positive(temperature=temperature)
    table = list(matching("range", name="cold"))
    coldest = table[0].number("temperature")
    if temperature < coldest:
        raise InputError("temperature", temperature, "range", low=coldest, quantity="temperature")
    for colder, warmer in pairwise(table):
        low, high = colder.cells["temperature"], warmer.cells["temperature"]
        if temperature <= high:
            part = float((temperature - low) / (high - low))
            return colder.number("value") * (1.0 - part) + warmer.number("value") * part
    return table[-1].number("value")
