"""Wire: gauge, resistance, drop, heating, and what it carries."""

from math import log, pi, sqrt

from logic.errors import InputError, positive
from logic.frozen import frozen
from logic.si import (
    Ampere,
    Kelvin,
    Metre,
    OhmMetre,
    OhmPerMetre,
    One,
    PerKelvin,
    SquareMetre,
    Volt,
    WattPerMetre,
)
from logic.tables import Row, pick, rows
from logic.workings import cited

ROUNDING = 1e-3
"""Relative slack between a computed area and the printed one, which has three digits."""


@frozen
class Ampacity:
    """Continuous amperes of one wire: a band in free air, one in a closed deck, and their printed row.

    `hot` is the column for hot surroundings without moving air, which the careful end in a closed deck comes from.
    """

    free_low: Ampere
    free_high: Ampere
    hot: Ampere
    closed_low: Ampere
    closed_high: Ampere
    row: Row


@cited("thinnest * 92**((36 - gauge) / 39)", source="astm-b258 rule of the gauge steps")
def gauge_diameter(*, gauge: One, thinnest: Metre) -> Metre:
    """Return the diameter of a solid wire; 1/0 is gauge 0, 4/0 is -3. `thinnest` is gauge 36.

    >>> round(gauge_diameter(gauge=12, thinnest=0.127e-3) * 1000, 3)
    2.053
    """
    positive(thinnest=thinnest)
    return float(thinnest * 92.0 ** ((36.0 - gauge) / 39.0))


@cited(
    "36 - 39 * log(diameter / thinnest) / log(92)", source="astm-b258 rule of the gauge steps, turned round"
)
def gauge_of_diameter(*, diameter: Metre, thinnest: Metre) -> One:
    """Return the gauge of a diameter, with its fraction.

    >>> round(gauge_of_diameter(diameter=2.053e-3, thinnest=0.127e-3), 2)
    12.0
    """
    positive(diameter=diameter, thinnest=thinnest)
    return 36.0 - 39.0 * log(diameter / thinnest) / log(92.0)


@cited("pi * diameter**2 / 4", source="derived area of a circle", standing="derived")
def wire_area(*, diameter: Metre) -> SquareMetre:
    """Return the copper area of a solid wire; a stranded one of the same gauge has about the same.

    >>> round(wire_area(diameter=2.053e-3) * 1e6, 2)
    3.31
    """
    positive(diameter=diameter)
    return pi * diameter**2 / 4.0


@cited("sqrt(4 * area / pi)", source="derived area of a circle", standing="derived")
def wire_diameter(*, area: SquareMetre) -> Metre:
    """Return the diameter of the solid wire that has a copper area.

    >>> round(wire_diameter(area=3.31e-6) * 1000, 3)
    2.053
    """
    positive(area=area)
    return sqrt(4.0 * area / pi)


@cited(
    "resistivity * (1 + coefficient * (temperature - reference)) / area",
    source="iec-60028 resistance and its change with temperature",
)
def wire_resistance(
    *,
    resistivity: OhmMetre,
    coefficient: PerKelvin,
    temperature: Kelvin,
    reference: Kelvin,
    area: SquareMetre,
) -> OhmPerMetre:
    """Return the resistance of a metre of solid wire; `stranded_resistance` is what fine strands may have.

    >>> round(1000 * wire_resistance(resistivity=0.017241e-6, coefficient=0.00393, temperature=293.15,
    ...     reference=293.15, area=3.31e-6), 2)
    5.21
    """
    positive(resistivity=resistivity, coefficient=coefficient, area=area)
    positive(temperature=temperature, reference=reference)
    if coefficient * (temperature - reference) <= -1.0:
        raise InputError("temperature", temperature, "range", low=reference - 1.0 / coefficient)
    return resistivity * (1.0 + coefficient * (temperature - reference)) / area


def copper_resistance(*, area: SquareMetre, temperature: Kelvin) -> OhmPerMetre:
    """Return the resistance of a metre of copper wire.

    >>> round(1000 * copper_resistance(area=3.31e-6, temperature=273.15 + 80), 2)
    6.44
    """
    copper = pick("wire_constants", name="copper")
    return wire_resistance(
        resistivity=copper.number("resistivity"),
        coefficient=copper.number("coefficient"),
        temperature=temperature,
        reference=copper.number("reference"),
        area=area,
    )


@cited("excess * resistance_per_length", source="iec-60228 most resistance of a class against solid copper")
def stranded_resistance(*, excess: One, resistance_per_length: OhmPerMetre) -> OhmPerMetre:
    """Return the most that a metre of stranded wire may have, from that of solid copper of its section.

    >>> stranded_resistance(excess=1.25, resistance_per_length=0.008)
    0.01
    """
    positive(excess=excess, resistance_per_length=resistance_per_length)
    return excess * resistance_per_length


@cited("2 * current * resistance_per_length * length", source="derived go and return", standing="derived")
def voltage_drop(*, current: Ampere, resistance_per_length: OhmPerMetre, length: Metre) -> Volt:
    """Return the voltage lost in a pair of wires of a length.

    >>> round(voltage_drop(current=30.0, resistance_per_length=0.0052, length=0.5), 3)
    0.156
    """
    positive(resistance_per_length=resistance_per_length, length=length)
    return 2.0 * current * resistance_per_length * length


@cited("current**2 * resistance_per_length", source="derived Joule's law", standing="derived")
def wire_heat(*, current: Ampere, resistance_per_length: OhmPerMetre) -> WattPerMetre:
    """Return the heat in a metre of one wire; `current` is the root-mean-square riding current.

    >>> wire_heat(current=20.0, resistance_per_length=0.005)
    2.0
    """
    positive(resistance_per_length=resistance_per_length)
    return current**2 * resistance_per_length


@cited(
    "sqrt(share * high_current**2 + (1 - share) * low_current**2)",
    source="derived mean of the squares",
    standing="derived",
)
def riding_current(*, high_current: Ampere, low_current: Ampere, share: One) -> Ampere:
    """Return the root-mean-square current of a ride that takes `high_current` for a share of its time.

    Heating of wire, plugs and cells goes with this figure, not with the mean.

    >>> riding_current(high_current=30.0, low_current=0.0, share=0.25)
    15.0
    """
    if not 0.0 <= share <= 1.0:
        raise InputError("share", share, "range", low=0.0, high=1.0)
    return sqrt(share * high_current**2 + (1.0 - share) * low_current**2)


def ampacity(*, area: SquareMetre) -> Ampacity:
    """Return what a wire carries, from the printed size that is not thicker than it.

    The columns disagree, so both answers are bands. Free air is that of the columns for air of about 30 degrees C.
    Raises InputError outside the printed sizes.

    >>> band = ampacity(area=3.31e-6)
    >>> band.free_low, band.free_high, band.closed_low, band.closed_high
    (40.0, 41.0, 12.5, 20.5)
    """
    positive(area=area)
    table = rows("wire_ampacity")
    thinnest, thickest = table[-1].cells["area"], table[0].cells["area"]
    if not thinnest * (1.0 - ROUNDING) <= area <= thickest * (1.0 + ROUNDING):
        raise InputError("area", area, "range", low=thinnest, high=thickest, quantity="area")
    row = next(row for row in table if row.cells["area"] <= area * (1.0 + ROUNDING))
    air, hot = [row.number(column) for column in ("chassis", "nec") if column in row], row.number("ptfe")
    share = pick("wire_practice", name="closed deck").number("value")
    low, high = min(air), max(air)
    return Ampacity(low, high, hot, share * hot, share * high, row)
