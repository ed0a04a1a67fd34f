"""Cells in series and parallel, and packs joined in parallel: volts, ohms, amp-hours, energy, sag and heat.

`series` and `parallel` count the cells of one pack; `packs` is how many equal packs are joined in parallel.
"""

from logic.errors import InputError, positive
from logic.frozen import frozen
from logic.si import Ampere, Coulomb, Joule, Kilogram, Ohm, One, Volt, Watt
from logic.tables import matching, raw, rows
from logic.workings import cited


@frozen
class Chemistry:
    """Volts of one cell. `empty` ends a ride; below `floor` the cell is harmed."""

    name: str
    nominal: Volt
    full: Volt
    empty: Volt
    floor: Volt


def chemistries() -> tuple[str, ...]:
    """Return the names of the chemistries the app has figures for.

    >>> chemistries()
    ('NMC', 'NCA', 'LFP')
    """
    return tuple(row.text("name") for row in rows("chemistry"))


def chemistry(name: str) -> Chemistry:
    """Return a chemistry by name and record its figures.

    Pouch cells charged to 4.20 V count as NMC, with the data of their own sheet. Raises InputError for cells
    charged to 4.35 V ("charged above 4.20 V") and for a name not in the table ("unknown chemistry").

    >>> chemistry("LFP").full
    3.65
    >>> chemistry("LiHV")
    Traceback (most recent call last):
    ...
    logic.errors.InputError: chemistry: 'LiHV' refused (charged above 4.20 V)
    """
    for row in matching("chemistry", name=name):
        return Chemistry(
            name, row.number("nominal_low"), row.number("full"), row.number("empty"), row.number("floor")
        )
    for line in raw("chemistry")["refused"]:
        if line["name"].casefold() == name.strip().casefold():
            raise InputError("chemistry", name, line["reason"])
    raise InputError("chemistry", name, "unknown chemistry")


@cited("cell_voltage * series", source="derived cells in series carry the same current", standing="derived")
def pack_voltage(*, cell_voltage: Volt, series: One) -> Volt:
    """Voltage of a pack at rest: full, nominal or empty, as the cell voltage is.

    >>> pack_voltage(cell_voltage=4.2, series=10)
    42.0
    """
    positive(cell_voltage=cell_voltage, series=series)
    return cell_voltage * series


@cited(
    "cell_resistance * series / (parallel * packs)",
    source="derived resistances in series and parallel",
    standing="derived",
)
def pack_resistance(*, cell_resistance: Ohm, series: One, parallel: One, packs: One) -> Ohm:
    """Resistance of the packs together, of the cells alone: links, connectors and leads come on top.

    >>> pack_resistance(cell_resistance=0.025, series=10, parallel=2, packs=1)
    0.125
    """
    positive(cell_resistance=cell_resistance, series=series, parallel=parallel, packs=packs)
    return cell_resistance * series / (parallel * packs)


@cited(
    "cell_capacity * parallel * packs",
    source="derived cells in parallel share the current",
    standing="derived",
)
def pack_capacity(*, cell_capacity: Coulomb, parallel: One, packs: One) -> Coulomb:
    """Rated capacity of the packs together, as good as the label of the cell: cheap cells hold far less.

    >>> pack_capacity(cell_capacity=2.4 * 3600, parallel=2, packs=1) / 3600
    4.8
    """
    positive(cell_capacity=cell_capacity, parallel=parallel, packs=packs)
    return cell_capacity * parallel * packs


@cited(
    "cell_voltage * cell_capacity * series * parallel * packs",
    source="derived nominal volts times rated amp-hours",
    standing="derived",
)
def pack_energy(
    *, cell_voltage: Volt, cell_capacity: Coulomb, series: One, parallel: One, packs: One
) -> Joule:
    """Energy at the nominal cell voltage; with `packs` = 1 that of each pack, which is what airlines ask for.

    >>> energy = pack_energy(cell_voltage=3.6, cell_capacity=4.4 * 3600, series=10, parallel=1, packs=1)
    >>> round(energy / 3600, 1)
    158.4
    """
    positive(cell_voltage=cell_voltage, cell_capacity=cell_capacity)
    positive(series=series, parallel=parallel, packs=packs)
    return cell_voltage * cell_capacity * series * parallel * packs


@cited("current / (parallel * packs)", source="derived equal cells share the current", standing="derived")
def cell_current(*, current: Ampere, parallel: One, packs: One) -> Ampere:
    """Return the current of each cell if all share alike; unequal packs share by inverse resistance.

    >>> cell_current(current=30.0, parallel=2, packs=1)
    15.0
    """
    positive(parallel=parallel, packs=packs)
    return current / (parallel * packs)


@cited("current * resistance", source="derived Ohm's law", standing="derived")
def sag(*, current: Ampere, resistance: Ohm) -> Volt:
    """Voltage lost inside the pack while `current` flows out of it.

    >>> sag(current=30.0, resistance=0.125)
    3.75
    """
    positive(resistance=resistance)
    return current * resistance


@cited("current**2 * resistance", source="derived Joule's law", standing="derived")
def heat(*, current: Ampere, resistance: Ohm) -> Watt:
    """Heat made inside the pack at a current, in either direction.

    >>> heat(current=30.0, resistance=0.125)
    112.5
    """
    positive(resistance=resistance)
    return current**2 * resistance


@cited(
    "open_circuit_voltage - current * resistance",
    source="openstax-physics section 21.2, terminal voltage",
)
def terminal_voltage(*, open_circuit_voltage: Volt, current: Ampere, resistance: Ohm) -> Volt:
    """Voltage at the plug while `current` flows out; braking current is negative and lifts it.

    >>> terminal_voltage(open_circuit_voltage=12.0, current=20.0, resistance=0.1)
    10.0
    """
    positive(open_circuit_voltage=open_circuit_voltage, resistance=resistance)
    return open_circuit_voltage - current * resistance


@cited("voltage / resistance", source="derived Ohm's law", standing="derived")
def short_circuit_current(*, voltage: Volt, resistance: Ohm) -> Ampere:
    """Return the current into a dead short at the first instant: what a fuse must be able to break.

    >>> short_circuit_current(voltage=42.0, resistance=0.125)
    336.0
    """
    positive(voltage=voltage, resistance=resistance)
    return voltage / resistance


@cited("cell_mass * series * parallel * packs", source="derived mass of the cells", standing="derived")
def cells_mass(*, cell_mass: Kilogram, series: One, parallel: One, packs: One) -> Kilogram:
    """Mass of the bare cells; a finished pack weighs roughly 20 to 40 % more.

    >>> cells_mass(cell_mass=0.07, series=10, parallel=2, packs=1)
    1.4000000000000001
    """
    positive(cell_mass=cell_mass, series=series, parallel=parallel, packs=packs)
    return cell_mass * series * parallel * packs
