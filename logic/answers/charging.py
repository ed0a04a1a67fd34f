"""Charging: what a charger does to these cells, how long it takes, and at what temperature."""

from functools import cached_property, partial

from logic.answers.asked import Asked, Asking
from logic.answers.hazards import Hazard, by_severity
from logic.answers.pack_parts import PackParts
from logic.answers.reading import Item, Open, Reading
from logic.answers.run import Figures, Middle, Run, answer
from logic.board import Board
from logic.errors import InputError, NotCharged
from logic.frozen import frozen
from logic.pack import cells
from logic.pack.charging import (
    ChargerCheck,
    charge_rate,
    charger_check,
    charging_window,
    current_outcome,
    missing_charge,
    temperature_row,
    time_to_charge,
    wall_energy_band,
)
from logic.pack.limits import cells_limit
from logic.si import Joule, One
from logic.tables import pick
from logic.workings import cited


@cited("energy * (target - charge)", source="derived charge counted in watt-hours", standing="derived")
def energy_to_refill(*, energy: Joule, charge: One, target: One) -> Joule:
    """Return the energy to put back, from one share of charge to another.

    >>> energy_to_refill(energy=1000.0, charge=0.25, target=1.0)
    750.0
    """
    return energy * (target - charge)


@frozen
class Charging:
    """Results by name; the charger against the pack, None while a value is missing; hazards, the worst first.

    `amps` is an outcome of `current_outcome`, or "" while a value is missing.
    """

    items: dict[str, Item]
    check: ChargerCheck | None
    amps: str
    temperature: str
    hazards: tuple[Hazard, ...]


class ChargeParts(PackParts):
    """What stands on the charger: one pack, or all of them joined."""

    @cached_property
    def joined(self) -> float:
        """Packs on the charger together."""
        return self.packs if self.asked.choice("ask.charged") == "joined" else self.one

    @cached_property
    def amps(self) -> float:
        """Current of the charger."""
        return self.read("pack.charger_current")

    @cached_property
    def cell_amps(self) -> float:
        """Current into each cell."""
        return cells.cell_current(current=self.amps, parallel=self.parallel, packs=self.joined)

    @cached_property
    def charge(self) -> float:
        """Share of a full charge that is left."""
        return self.asked("ask.charge")

    @cached_property
    def target(self) -> float:
        """Share of a full charge to stop at. Raises InputError when the charge is above it already."""
        target = self.asked("ask.target")
        if target < self.charge:
            raise InputError("ask.target", target, "target below charge", low=self.charge, high=1.0)
        return target

    @cached_property
    def rate(self) -> float:
        """Charge rate of the cells."""
        return charge_rate(current=self.cell_amps, capacity=self.capacity_cell)

    @cached_property
    def missing(self) -> float:
        """Amp-hours to put in."""
        return missing_charge(capacity=self.capacity(self.joined), charge=self.charge, target=self.target)

    def time(self, tail: str) -> float:
        """Return the time with the short, the usual or the long tail of the charge."""
        return time_to_charge(rate=self.rate, charge=self.charge, target=self.target, tail=tail)

    def most(self) -> float:
        """Return the most amps that cells and BMS take; cells without a limit take what is usual."""
        if self.read.board.pack.cell_charge_current is None:
            usual = pick("cell_kinds", kind="energy").number("usual_charge")
            most = usual * self.capacity(self.joined)
        else:
            limit = self.read("pack.cell_charge_current")
            most = cells_limit(cell_limit=limit, parallel=self.parallel, packs=self.joined)
        if self.read.board.pack.bms_charge_current is None:
            return most
        return min(most, self.read("pack.bms_charge_current") * self.joined)

    @cached_property
    def refill(self) -> float:
        """Energy to put back."""
        return energy_to_refill(energy=self.energy(self.joined), charge=self.charge, target=self.target)

    def wall(self) -> tuple[float, float]:
        """Return the band of the energy from the wall."""
        band = wall_energy_band(energy=self.refill)
        return band.low, band.high

    def check(self) -> ChargerCheck:
        """Return whether the charger's volts are right."""
        return charger_check(
            charger_voltage=self.read("pack.charger_voltage"),
            series=int(self.series),
            cells=self.chemistry,
        )


def _time(parts: ChargeParts) -> Middle:
    """Return the usual time, with the shortest and the longest as its band."""
    band = (parts.time("short"), parts.time("long"))
    return Middle(parts.time("usual"), band)


RESULTS: Figures[ChargeParts] = {
    "most": ("current", lambda parts: parts.most()),
    "cell_amps": ("current", lambda parts: parts.cell_amps),
    "rate": ("charge_rate", lambda parts: parts.rate),
    "full": ("voltage", lambda parts: parts.voltage("full")),
    "missing": ("charge", lambda parts: parts.missing),
    "refill": ("energy", lambda parts: parts.refill),
    "heat": (
        "power",
        lambda parts: cells.heat(current=parts.amps, resistance=parts.resistance(parts.joined)),
    ),
    "time": ("long_time", _time),
    "wall": ("energy", ChargeParts.wall),
}

WHILE_CHARGING = ("most", "cell_amps", "rate", "time", "heat")
"""Results that hold only while charge flows."""


@answer()
def charging(board: Board, asking: Asking) -> Charging:
    """Return everything the charging page shows."""
    run = _run(board, Asked(asking))
    cells_at = Asked(asking)("ask.cells_at")
    check, amps = run.view(ChargeParts.check, None), run.view(_amps, "")
    row = temperature_row(temperature=cells_at)
    hazards = [
        *_charger_hazards(check),
        *run.view(partial(_amps_hazards, amps=amps), []),
        *run.view(_over_bms, []),
    ]
    if row.text("signal"):
        hazards.append(Hazard(row.text("signal"), f"charging {row.text('key')}"))
    items = run.figures(RESULTS) | _withheld(cells_at)
    return Charging(items, check, amps, row.text("key"), by_severity(hazards))


def _run(board: Board, asked: Asked | None = None) -> Run[ChargeParts]:
    return Run(lambda: ChargeParts(Reading(board), asked))


def _withheld(temperature: float) -> dict[str, Item]:
    """Return what is said in place of amps and times at a temperature at which cells are not charged."""
    low, high = charging_window()
    if low <= temperature < high:
        return {}
    problem = NotCharged("ask.cells_at", temperature, "not charged", low, high, "temperature")
    return {name: Open(name, problem=problem) for name in WHILE_CHARGING}


def wrong_charger(board: Board) -> bool:
    """Tell whether the charger of a board is wrong for its packs: DANGER. False while a value is missing."""
    check = _run(board).view(ChargeParts.check, None)
    return check is not None and check.danger


def _charger_hazards(check: ChargerCheck | None) -> list[Hazard]:
    if check is None or check.outcome == "matches":
        return []
    return [
        Hazard(
            "DANGER" if check.danger else "",
            f"charger {check.outcome}",
            (("low", check.low, "voltage"), ("high", check.high, "voltage")),
        )
    ]


def _limit(parts: ChargeParts) -> float | None:
    return parts.read("pack.cell_charge_current") if parts.read.board.pack.cell_charge_current else None


def _amps(parts: ChargeParts) -> str:
    return current_outcome(
        cell_current=parts.cell_amps, cell_limit=_limit(parts), cell_capacity=parts.capacity_cell
    )


def _amps_hazards(parts: ChargeParts, amps: str) -> list[Hazard]:
    numbers = (("asked", parts.cell_amps, "current"),)
    if amps == "over cell limit":
        limit = _limit(parts) or 0.0
        return [Hazard("WARNING", "charging over cell limit", (*numbers, ("allowed", limit, "current")))]
    if amps == "over any limit":
        return [Hazard("WARNING", "charging over any limit", numbers)]
    return [Hazard("", amps, numbers)] if amps == "look at the cell sheet" else []


def _over_bms(parts: ChargeParts) -> list[Hazard]:
    over = parts.amps > parts.read("pack.bms_charge_current") * parts.joined
    return [Hazard("", "charger over BMS")] if over else []
