"""Which part limits the current first, and what braking does to a pack.

Currents are of the whole board, on the battery side, unless a name says cell.
"""

from collections.abc import Mapping

from logic.errors import InputError, positive
from logic.frozen import frozen
from logic.si import Ampere, Ohm, One, Volt
from logic.tables import pick
from logic.workings import cited

PARTS = ("cell", "bms", "fuse", "connector", "controller")
"""Parts that can limit the current, from the cells outward."""

CAN_OPEN = ("bms", "fuse")
"""Parts that limit by opening the circuit, which takes the brakes away."""


@frozen
class PartLimit:
    """A part and the current of the whole board it allows."""

    part: str
    current: Ampere


@frozen
class OverLimit:
    """What is wrong: a key, its signal word, the part, and the current asked against the one allowed."""

    key: str
    signal: str
    part: str
    asked: float
    allowed: float


@cited("cell_limit * parallel * packs", source="derived equal cells share the current", standing="derived")
def cells_limit(*, cell_limit: Ampere, parallel: One, packs: One) -> Ampere:
    """Return the current of the whole board at which each cell reaches its limit.

    >>> cells_limit(cell_limit=4.0, parallel=2, packs=1)
    8.0
    """
    positive(cell_limit=cell_limit, parallel=parallel, packs=packs)
    return cell_limit * parallel * packs


def weakest(limits: Mapping[str, float]) -> PartLimit:
    """Return the part that allows the least; on a tie the one nearest to the cells.

    Leave out a part whose limit is not known. Raises InputError for a part that is not one of PARTS, for a
    limit that is not positive, and for no limit at all.

    >>> weakest({"controller": 30.0, "cell": 50.0, "fuse": 40.0})
    PartLimit(part='controller', current=30.0)
    """
    for part, current in limits.items():
        if part not in PARTS:
            raise InputError("part", part, "unknown part")
        positive(**{part: current})
    if not limits:
        raise InputError("limits", dict(limits), "empty")
    part = min(limits, key=lambda name: (limits[name], PARTS.index(name)))
    return PartLimit(part, limits[part])


def faults(*, controller: Ampere, limits: Mapping[str, float], braking: bool) -> tuple[OverLimit, ...]:
    """Return what is wrong with a controller limit against the parts in its path, drive or braking.

    The controller must limit first. A fuse or BMS that can open at or below the controller's limit takes the
    brakes away while riding ("opens first"); a cell or connector below it is overloaded ("over limit"). All
    are WARNING.

    >>> [fault.key for fault in faults(controller=30.0, limits={"fuse": 30.0, "cell": 50.0}, braking=False)]
    ['fuse opens first']
    >>> [fault.key for fault in faults(controller=12.0, limits={"cell": 8.0}, braking=True)]
    ['braking over cell limit']
    """
    positive(controller=controller)
    found = []
    for part in PARTS:
        allowed = limits.get(part)
        if allowed is None or part == "controller":
            continue
        positive(**{part: allowed})
        way = "braking " if braking else ""
        if part in CAN_OPEN and allowed <= controller:
            found.append(OverLimit(f"{way}{part} opens first", "WARNING", part, controller, allowed))
        elif part not in CAN_OPEN and allowed < controller:
            found.append(OverLimit(f"{way}over {part} limit", "WARNING", part, controller, allowed))
    return tuple(found)


@cited("rest_voltage + current * resistance", source="derived Kirchhoff's voltage law", standing="derived")
def braking_voltage(*, rest_voltage: Volt, current: Ampere, resistance: Ohm) -> Volt:
    """Return the voltage at the plug while braking current flows in.

    >>> braking_voltage(rest_voltage=42.0, current=8.0, resistance=0.125)
    43.0
    """
    positive(rest_voltage=rest_voltage, resistance=resistance)
    return rest_voltage + current * resistance


@cited(
    "max(full_voltage - rest_voltage, 0 * full_voltage) / resistance",
    source="derived Kirchhoff's voltage law",
    standing="derived",
)
def current_to_full(*, full_voltage: Volt, rest_voltage: Volt, resistance: Ohm) -> Ampere:
    """Return the braking current that lifts the pack to its full voltage: none is left on a full pack.

    >>> current_to_full(full_voltage=42.0, rest_voltage=41.0, resistance=0.125)
    8.0
    """
    positive(full_voltage=full_voltage, rest_voltage=rest_voltage, resistance=resistance)
    return max(full_voltage - rest_voltage, 0.0) / resistance


def may_cut_out(*, rest_voltage: Volt, current: Ampere, resistance: Ohm, full_voltage: Volt) -> bool:
    """Tell whether braking lifts the pack above full charge, where the brake may cut out at once.

    >>> may_cut_out(rest_voltage=42.0, current=8.0, resistance=0.125, full_voltage=42.0)
    True
    """
    return braking_voltage(rest_voltage=rest_voltage, current=current, resistance=resistance) > full_voltage


def low_voltage(name: str) -> tuple[Volt, Volt]:
    """Return where a controller should start to hold back and where it should stop, in volts per cell.

    >>> low_voltage("NMC")
    (3.3, 3.0)
    """
    row = pick("low_voltage", name=name)
    return row.number("start"), row.number("end")
