"""The packs of a board as the pack answers see them: cells, energy, resistance, limits; each read once."""

from functools import cached_property

from logic.answers.asked import Asked
from logic.answers.parts import Parts, chosen
from logic.answers.reading import Reading
from logic.errors import Missing
from logic.pack import cells
from logic.pack.limits import cells_limit
from logic.tables import pick

DRIVE, BRAKE, BURST = "drive", "brake", "burst"
"""Ways a current flows: out of the pack, into it for as long as one likes, into it for about ten seconds."""

FIELDS = {
    DRIVE: ("pack.cell_discharge_current", "pack.bms_discharge_current", "controller.battery_current"),
    BRAKE: ("pack.cell_charge_current", "pack.bms_charge_current", "controller.regen_current"),
    BURST: ("pack.cell_brake_current", "pack.bms_charge_current", "controller.regen_current"),
}
"""Board values of cell, BMS and controller for each way."""


class PackParts(Parts):
    """Everything a pack answer may need."""

    def __init__(self, reading: Reading, asked: Asked | None = None) -> None:
        """Take the board from a reading and the page's own answers."""
        super().__init__(reading)
        self.asked = asked or Asked()

    @cached_property
    def parallel(self) -> float:
        """Cells in parallel in one pack."""
        return self.read("pack.parallel")

    @cached_property
    def packs(self) -> float:
        """Packs joined to ride."""
        return self.read("pack.packs")

    @cached_property
    def one(self) -> float:
        """One pack by itself."""
        return chosen("Packs looked at", 1.0, "1", "count")

    @cached_property
    def capacity_cell(self) -> float:
        """Rated capacity of one cell."""
        return self.read("pack.cell_capacity")

    @cached_property
    def resistance_cell(self) -> float:
        """Resistance of one cell."""
        return self.read("pack.cell_resistance")

    def resistance(self, packs: float) -> float:
        """Return the resistance of one or all packs."""
        return cells.pack_resistance(
            cell_resistance=self.resistance_cell, series=self.series, parallel=self.parallel, packs=packs
        )

    @cached_property
    def pack_resistance(self) -> float:
        """Resistance of the packs together."""
        return self.resistance(self.packs)

    @cached_property
    def least_resistance_cell(self) -> float:
        """Low end of what the resistance of one cell may be; a measured one is taken as it is."""
        value = self.read.board.pack.cell_resistance
        if value is None:
            return pick("cell_kinds", kind="power").number("resistance_low")
        if value.known == "measured":
            return self.resistance_cell
        share = pick("pack_practice", name="resistance not measured").number("share")
        return share * self.resistance_cell

    def capacity(self, packs: float) -> float:
        """Return the capacity of one or all packs."""
        return cells.pack_capacity(cell_capacity=self.capacity_cell, parallel=self.parallel, packs=packs)

    def energy(self, packs: float) -> float:
        """Return the energy of one or all packs."""
        return cells.pack_energy(
            cell_voltage=self.chemistry.nominal,
            cell_capacity=self.capacity_cell,
            series=self.series,
            parallel=self.parallel,
            packs=packs,
        )

    @cached_property
    def energy_all(self) -> float:
        """Energy of all packs."""
        return self.energy(self.packs)

    @cached_property
    def battery_current(self) -> float:
        """Current asked about: the one that was asked, else the controller's battery limit."""
        if self.asked.has("ask.current"):
            return self.asked("ask.current")
        return self.read("controller.battery_current")

    def limits(self, way: str) -> dict[str, float]:
        """Return what each known part allows for the whole board. Raises Missing when nothing is known."""
        found = self.known_limits(way)
        if not found:
            cell, _, controller = FIELDS[way]
            raise Missing(FIELDS[BRAKE][0] if way == BURST else cell, controller)
        return found

    def known_limits(self, way: str) -> dict[str, float]:
        """Return what each known part allows for the whole board; empty when nothing is known."""
        cell, bms, controller = FIELDS[way]
        if way == BURST and not self._set(cell):
            # A burst that is not known is no more than what the cells take for long.
            cell = FIELDS[BRAKE][0]
        found = {}
        if self._set(cell) and self._set("pack.parallel") and self._set("pack.packs"):
            found["cell"] = cells_limit(cell_limit=self.read(cell), parallel=self.parallel, packs=self.packs)
        if self._set(bms) and self._set("pack.packs"):
            found["bms"] = self.read(bms) * self.packs
        if self._set("pack.fuse"):
            found["fuse"] = self.read("pack.fuse")
        if self._set("pack.connector_current"):
            found["connector"] = self.read("pack.connector_current")
        if self._set(controller) and float(self.read.board.value(controller).si) > 0.0:  # type: ignore[union-attr]
            found["controller"] = self.read(controller)
        return found

    def _set(self, key: str) -> bool:
        return self.read.board.value(key) is not None
