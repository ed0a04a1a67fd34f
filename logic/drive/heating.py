"""A motor that warms: one lump with heat in and heat out, the winding's resistance rising with it. An estimate.

A real motor has a hotter winding inside a cooler can. Temperatures are absolute.
"""

from math import log, sqrt

from logic.errors import InputError, NoFigure, positive
from logic.si import (
    Ampere,
    JoulePerKelvin,
    JoulePerKilogramKelvin,
    Kelvin,
    KelvinPerWatt,
    Kilogram,
    NewtonMetrePerAmpere,
    Ohm,
    PerKelvin,
    RadianPerSecond,
    Second,
    Watt,
    WattPerKelvin,
)
from logic.workings import cited


@cited("mass * specific_heat", source="derived one lump", standing="estimate")
def heat_capacity(*, mass: Kilogram, specific_heat: JoulePerKilogramKelvin) -> JoulePerKelvin:
    """Return the heat that warms a motor by one kelvin. Raises InputError unless both are positive.

    >>> heat_capacity(mass=0.6, specific_heat=450.0)
    270.0
    """
    positive(mass=mass, specific_heat=specific_heat)
    return mass * specific_heat


@cited("resistance * (1 + coefficient * (temperature - reference))", source="iec-60028 copper, constant mass")
def warm_resistance(
    *, resistance: Ohm, coefficient: PerKelvin, temperature: Kelvin, reference: Kelvin
) -> Ohm:
    """Return the resistance of a copper winding at a temperature; `resistance` is at the reference.

    Raises InputError unless it is positive and the temperature is not below where the rule holds.

    >>> round(
    ...     warm_resistance(resistance=0.1, coefficient=0.00393, temperature=373.15, reference=293.15) / 0.1, 2
    ... )
    1.31
    """
    positive(resistance=resistance, coefficient=coefficient, temperature=temperature)
    share = 1.0 + coefficient * (temperature - reference)
    if share <= 0.0:
        raise InputError("temperature", temperature, "range", low=reference - 1.0 / coefficient)
    return resistance * share


@cited(
    "torque_constant * no_load_current * angular_speed",
    source="derived torque of the no-load current, turning",
    standing="derived",
)
def drag_heat(
    *, torque_constant: NewtonMetrePerAmpere, no_load_current: Ampere, angular_speed: RadianPerSecond
) -> Watt:
    """Return the heat of a motor's own drag: iron and bearings. Raises InputError for a torque constant below zero.

    >>> drag_heat(torque_constant=0.05, no_load_current=1.0, angular_speed=400.0)
    20.0
    """
    positive(torque_constant=torque_constant)
    return torque_constant * no_load_current * angular_speed


@cited(
    "1 / thermal_resistance - current**2 * resistance * coefficient",
    source="derived heat that leaves less heat that grows, for each kelvin",
    standing="derived",
)
def net_cooling(
    *, thermal_resistance: KelvinPerWatt, current: Ampere, resistance: Ohm, coefficient: PerKelvin
) -> WattPerKelvin:
    """Return how much more heat leaves for each kelvin; below zero the winding runs away.

    Raises InputError unless thermal resistance and resistance are positive.

    >>> net_cooling(thermal_resistance=2.0, current=10.0, resistance=0.05, coefficient=0.004)
    0.48
    """
    positive(thermal_resistance=thermal_resistance, resistance=resistance, coefficient=coefficient)
    return 1.0 / thermal_resistance - current**2 * resistance * coefficient


@cited(
    "(current**2 * resistance * (1 - coefficient * reference) + drag_heat + air / thermal_resistance) / net_cooling",
    source="derived heat in = heat out",
    standing="derived",
)
def settled_temperature(  # noqa: PLR0913  (the balance has seven numbers)
    *,
    current: Ampere,
    resistance: Ohm,
    coefficient: PerKelvin,
    reference: Kelvin,
    drag_heat: Watt,
    air: Kelvin,
    thermal_resistance: KelvinPerWatt,
    net_cooling: WattPerKelvin,
) -> Kelvin:
    """Return the temperature a motor settles at; with a net cooling below zero there is none on this side.

    Raises InputError when the net cooling is nothing.

    >>> round(
    ...     settled_temperature(
    ...         current=10.0,
    ...         resistance=0.05,
    ...         coefficient=0.004,
    ...         reference=293.15,
    ...         drag_heat=0.0,
    ...         air=293.15,
    ...         thermal_resistance=2.0,
    ...         net_cooling=0.48,
    ...     ),
    ...     2,
    ... )
    303.57
    """
    positive(resistance=resistance, thermal_resistance=thermal_resistance)
    if net_cooling == 0.0:
        raise InputError("net_cooling", net_cooling, "not positive")
    constant = current**2 * resistance * (1.0 - coefficient * reference)
    return (constant + drag_heat + air / thermal_resistance) / net_cooling


@cited(
    "heat_capacity / net_cooling * log((settled - start) / (settled - limit))",
    source="derived warming of one lump with heat that grows in step",
    standing="estimate",
)
def time_to_temperature(
    *,
    heat_capacity: JoulePerKelvin,
    net_cooling: WattPerKelvin,
    settled: Kelvin,
    start: Kelvin,
    limit: Kelvin,
) -> Second:
    """Return how long a motor warms from a start to a limit under the same current.

    Raises InputError ("too hot at the start") for a start at or above the limit and ("stays below") when it
    settles at or under it.

    >>> round(
    ...     time_to_temperature(heat_capacity=270.0, net_cooling=0.5, settled=400.0, start=300.0, limit=350.0)
    ... )
    374
    """
    positive(heat_capacity=heat_capacity)
    if start >= limit:
        raise NoFigure("start", start, "too hot at the start")
    # With a net cooling below zero it runs away from a `settled` that lies under the start.
    if net_cooling == 0.0 or (settled - start) / (settled - limit or 1e-12) <= 0.0:
        raise NoFigure("limit", limit, "stays below")
    time = heat_capacity / net_cooling * log((settled - start) / (settled - limit))
    if time <= 0.0:
        raise NoFigure("limit", limit, "stays below")
    return time


@cited(
    "sqrt(((limit - air) / thermal_resistance - drag_heat) / warm_resistance)",
    source="derived heat in = heat out at the limit",
    standing="estimate",
)
def held_current(
    *,
    limit: Kelvin,
    air: Kelvin,
    thermal_resistance: KelvinPerWatt,
    drag_heat: Watt,
    warm_resistance: Ohm,
) -> Ampere:
    """Return the motor current at which it settles just at the limit.

    Raises InputError ("own drag") when the drag alone is too much, and unless both resistances are positive.

    >>> held_current(limit=353.0, air=293.0, thermal_resistance=1.5, drag_heat=15.0, warm_resistance=0.1)
    15.811388300841896
    """
    positive(thermal_resistance=thermal_resistance, warm_resistance=warm_resistance)
    left = (limit - air) / thermal_resistance - drag_heat
    if left <= 0.0:
        raise NoFigure("limit", limit, "own drag")
    return sqrt(left / warm_resistance)
