"""Packs: energy, volts, sag and heat, and which part limits the current first, in drive and in braking."""

from collections.abc import Mapping
from functools import partial

from logic.answers.asked import Asked, Asking
from logic.answers.braking import BrakeParts
from logic.answers.hazards import Hazard, by_severity
from logic.answers.pack_parts import BRAKE, BURST, DRIVE
from logic.answers.reading import Item, Reading
from logic.answers.run import Figures, Run, answer
from logic.board import Board, Value
from logic.frozen import frozen
from logic.pack import cells
from logic.pack.limits import OverLimit, faults, may_cut_out, weakest
from logic.tables import pick


@frozen
class PackFigures:
    """Results by name, the part that limits first in each way, and what deserves a word, the worst first."""

    items: Mapping[str, Item]
    weakest: dict[str, str]
    hazards: tuple[Hazard, ...]


@answer()
def pack_figures(board: Board, rider: Value | None, asking: Asking) -> PackFigures:
    """Return everything the page of a pack's energy and limits shows."""
    run = Run(lambda: BrakeParts(Reading(board, rider), Asked(asking)))
    items = run.when_read(RESULTS if board.pack.cell_resistance is not None else {**RESULTS, **USUAL})
    hazards = [*run.view(hazards_of_limits, []), *run.view(_cuts_out, [])]
    return PackFigures(items, run.view(_weakest, {}), by_severity(hazards))


@answer()
def pack_energy(board: Board) -> Item:
    """Return the energy of all packs alone, or what stands in its way."""
    return Run(lambda: BrakeParts(Reading(board))).figure("energy", *RESULTS["energy"])


def _loaded(parts: BrakeParts) -> float:
    return cells.terminal_voltage(
        open_circuit_voltage=parts.voltage("nominal"),
        current=parts.battery_current,
        resistance=parts.pack_resistance,
    )


def _cell_current(parts: BrakeParts) -> float:
    return cells.cell_current(current=parts.battery_current, parallel=parts.parallel, packs=parts.packs)


def _limit(way: str, parts: BrakeParts) -> float:
    return weakest_current(parts.limits(way))


def weakest_current(limits: dict[str, float]) -> float:
    """Return the current of the part that limits first, the recorded number itself."""
    return limits[weakest(limits).part]


def _cells_mass(parts: BrakeParts) -> float:
    return cells.cells_mass(
        cell_mass=parts.read("pack.cell_mass"),
        series=parts.series,
        parallel=parts.parallel,
        packs=parts.packs,
    )


def _mass(parts: BrakeParts) -> tuple[float, float]:
    bare = _cells_mass(parts)
    shares = [
        pick("pack_practice", name=f"finished pack, {end}").number("share") for end in ("light", "heavy")
    ]
    return shares[0] * bare, shares[1] * bare


def _usual(kind: str, parts: BrakeParts) -> tuple[float, float]:
    row = pick("cell_kinds", kind=kind)
    low, high = (
        cells.pack_resistance(
            cell_resistance=row.number(f"resistance_{end}"),
            series=parts.series,
            parallel=parts.parallel,
            packs=parts.packs,
        )
        for end in ("low", "high")
    )
    return low, high


RESULTS: Figures[BrakeParts] = {
    "energy": ("energy", lambda parts: parts.energy_all),
    "energy_each": ("energy", lambda parts: parts.energy(parts.one)),
    "full": ("voltage", lambda parts: parts.voltage("full")),
    "nominal": ("voltage", lambda parts: parts.voltage("nominal")),
    "empty": ("voltage", lambda parts: parts.voltage("empty")),
    "capacity": ("charge", lambda parts: parts.capacity(parts.packs)),
    "resistance": ("resistance", lambda parts: parts.pack_resistance),
    "limit_drive": ("current", partial(_limit, DRIVE)),
    "limit_brake": ("current", partial(_limit, BRAKE)),
    "limit_burst": ("current", partial(_limit, BURST)),
    "slows_as_set": ("acceleration", lambda parts: parts.slows(parts.set_current)),
    "stop_as_set": ("way", lambda parts: parts.stops(parts.set_current)),
    "slows_for_long": ("acceleration", lambda parts: parts.slows(_limit(BRAKE, parts))),
    "stop_for_long": ("way", lambda parts: parts.stops(_limit(BRAKE, parts))),
    "slows_burst": ("acceleration", lambda parts: parts.slows(_limit(BURST, parts))),
    "stop_burst": ("way", lambda parts: parts.stops(_limit(BURST, parts))),
    "full_braking": ("voltage", lambda parts: parts.volts_with(parts.set_current, "full")),
    "sag": (
        "voltage",
        lambda parts: cells.sag(current=parts.battery_current, resistance=parts.pack_resistance),
    ),
    "loaded_voltage": ("voltage", _loaded),
    "pack_heat": (
        "power",
        lambda parts: cells.heat(current=parts.battery_current, resistance=parts.pack_resistance),
    ),
    "cell_current": ("current", _cell_current),
    "short": (
        "current",
        lambda parts: cells.short_circuit_current(
            voltage=parts.voltage("full"), resistance=parts.pack_resistance
        ),
    ),
    "cells_mass": ("mass", _cells_mass),
    "packs_mass": ("mass", _mass),
}
USUAL: Figures[BrakeParts] = {
    f"resistance_{kind}": ("resistance", partial(_usual, kind)) for kind in ("power", "energy")
}
"""Quantity and computation of each result, in the order shown."""


def _weakest(parts: BrakeParts) -> dict[str, str]:
    known = {way: parts.known_limits(way) for way in (DRIVE, BRAKE, BURST)}
    return {way: weakest(limits).part for way, limits in known.items() if limits}


def limit_faults(parts: BrakeParts) -> list[OverLimit]:
    """Return what is wrong between the controller's limits and the parts in their path, drive first."""
    found: list[OverLimit] = []
    # A stop lasts seconds: the cells' 10 s limit counts where it is known, else the one for charging.
    brake_way = BURST if parts.read.board.pack.cell_brake_current is not None else BRAKE
    for way in (DRIVE, brake_way):
        limits = parts.known_limits(way)
        if "controller" in limits:
            found += faults(controller=limits["controller"], limits=limits, braking=way != DRIVE)
    return found


def hazards_of_limits(parts: BrakeParts) -> list[Hazard]:
    """Return the faults as hazards with both currents."""
    return [
        Hazard(
            fault.signal,
            fault.key,
            (("asked", fault.asked, "current"), ("allowed", fault.allowed, "current")),
        )
        for fault in limit_faults(parts)
    ]


def _cuts_out(parts: BrakeParts) -> list[Hazard]:
    cuts_out = may_cut_out(
        rest_voltage=parts.voltage("full"),
        current=parts.set_current,
        resistance=parts.pack_resistance,
        full_voltage=parts.voltage("full"),
    )
    return [Hazard("", "full pack cuts out")] if cuts_out else []
