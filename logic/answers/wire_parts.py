"""The lead between pack and controller: what its numbers rest on."""

from functools import cached_property

from logic.answers.pack_parts import PackParts
from logic.answers.run import Figures
from logic.errors import InputError
from logic.pack import cells, inrush
from logic.pack.cells import short_circuit_current
from logic.pack.fuse import FuseChoice, fuse_choice, time_to_heat
from logic.pack.wiring import (
    Ampacity,
    ampacity,
    copper_resistance,
    gauge_of_diameter,
    riding_current,
    stranded_resistance,
    voltage_drop,
    wire_diameter,
    wire_heat,
)
from logic.si import Metre, Ohm, OhmPerMetre
from logic.tables import pick
from logic.workings import cited

INSULATION = "XLPE"
"""Taken for a lead whose insulation is not known."""


@cited(
    "pack_resistance + 2 * resistance_per_length * length", source="derived go and return", standing="derived"
)
def loop_of_lead(*, pack_resistance: Ohm, resistance_per_length: OhmPerMetre, length: Metre) -> Ohm:
    """Return the resistance that a short at the end of the lead leaves: pack and both wires.

    >>> loop_of_lead(pack_resistance=0.1, resistance_per_length=0.005, length=1.0)
    0.11
    """
    return pack_resistance + 2.0 * resistance_per_length * length


class WireParts(PackParts):
    """The pack's lead and what flows in it."""

    @cached_property
    def peak(self) -> float:
        """Battery current limit: what the lead carries at most."""
        return self.read("controller.battery_current")

    @cached_property
    def riding(self) -> float:
        """Root-mean-square current of a ride."""
        return riding_current(
            high_current=self.peak,
            low_current=self.asked("ask.cruise"),
            share=self.asked("ask.peak_share"),
        )

    @cached_property
    def area(self) -> float:
        """Copper of one wire."""
        return self.read("pack.lead_area")

    @cached_property
    def length(self) -> float:
        """Length of the lead, one way."""
        return self.read("pack.lead_length")

    @cached_property
    def copper(self) -> float:
        """Resistance of a metre of solid copper, warm: the least, for a short."""
        return copper_resistance(area=self.area, temperature=self.asked("ask.wire_at"))

    @cached_property
    def per_length(self) -> float:
        """Resistance that a metre of one wire of fine strands has at most, warm: for drop and heat."""
        excess = pick("wire_constants", name="fine strands").number("excess")
        return stranded_resistance(excess=excess, resistance_per_length=self.copper)

    @cached_property
    def loop(self) -> float:
        """Resistance of pack and lead together; a lead that is not known counts for nothing."""
        if self.read.board.pack.lead_area is None or self.read.board.pack.lead_length is None:
            return self.pack_resistance
        return loop_of_lead(
            pack_resistance=self.pack_resistance, resistance_per_length=self.copper, length=self.length
        )

    @cached_property
    def short(self) -> float:
        """Current into a short at the end of the lead, full pack."""
        return short_circuit_current(voltage=self.voltage("full"), resistance=self.loop)

    @cached_property
    def capacitance(self) -> float:
        """Capacitors of the controllers, in all."""
        return self.read("controller.capacitance")

    @cached_property
    def precharge(self) -> float:
        """Resistor that fills them."""
        return self.asked("ask.precharge")

    def gauge(self) -> float:
        """Return the gauge nearest to the copper, with its fraction."""
        return gauge_of_diameter(
            diameter=wire_diameter(area=self.area),
            thinnest=pick("wire_constants", name="gauge 36").number("diameter"),
        )

    def stands_short(self) -> float:
        """Return how long the wire stands a short before its insulation goes."""
        copper = pick("wire_constants", name="copper short")
        insulation = pick("insulation", name=self.read.choice("pack.lead_insulation", INSULATION))
        return time_to_heat(
            constant=copper.number("constant"),
            area=self.area,
            current=self.short,
            start=insulation.number("steady"),
            end=insulation.number("short"),
            zero=copper.number("zero"),
        )

    def carries(self) -> Ampacity:
        """Return what the wire carries."""
        try:
            return ampacity(area=self.area)
        except InputError as problem:
            raise InputError(
                "pack.lead_area", self.area, "range", problem.low, problem.high, "section"
            ) from problem

    def closed(self, current: float) -> float:
        """Return what is left of a current in a closed deck."""
        share = pick("wire_practice", name="closed deck").number("value")
        return share * current

    def fuse(self) -> FuseChoice:
        """Return the range of fuse ratings, up to what the wire carries for long in a closed deck.

        What it must break is reckoned with the least resistance.
        """
        return fuse_choice(
            peak_current=self.peak,
            riding=self.riding,
            wire_limit=self.closed(self.carries().hot),
            full_voltage=self.voltage("full"),
            resistance=cells.pack_resistance(
                cell_resistance=self.least_resistance_cell,
                series=self.series,
                parallel=self.parallel,
                packs=self.packs,
            ),
        )

    def fuse_ends(self) -> tuple[float, float]:
        """Return what the rating must lie above, and what it must not pass."""
        choice = self.fuse()
        return choice.low, choice.high


LEAD: Figures[WireParts] = {
    "riding": ("current", lambda parts: parts.riding),
    "closed_low": ("current", lambda parts: parts.closed(parts.carries().hot)),
    "closed_high": ("current", lambda parts: parts.closed(parts.carries().free_high)),
    "free_low": ("current", lambda parts: parts.carries().free_low),
    "free_high": ("current", lambda parts: parts.carries().free_high),
    "gauge": ("ratio", lambda parts: parts.gauge()),
    "per_length": ("resistance_per_length", lambda parts: parts.per_length),
    "drop": (
        "voltage",
        lambda parts: voltage_drop(
            current=parts.peak, resistance_per_length=parts.per_length, length=parts.length
        ),
    ),
    "wire_heat": (
        "heat_per_length",
        lambda parts: wire_heat(current=parts.riding, resistance_per_length=parts.per_length),
    ),
    "short_at_end": ("current", lambda parts: parts.short),
    "stands_short": ("time", lambda parts: parts.stands_short()),
}

INRUSH: Figures[WireParts] = {
    "spark_energy": (
        "heat",
        lambda parts: inrush.capacitor_energy(capacitance=parts.capacitance, voltage=parts.voltage("full")),
    ),
    "spark_current": (
        "current",
        lambda parts: inrush.inrush_current(voltage=parts.voltage("full"), resistance=parts.loop),
    ),
    "precharge_time": (
        "time",
        lambda parts: inrush.precharge_time(
            time_constants=pick("wire_practice", name="pre-charge time constants").number("value"),
            resistance=parts.precharge,
            capacitance=parts.capacitance,
        ),
    ),
    "precharge_current": (
        "current",
        lambda parts: inrush.inrush_current(voltage=parts.voltage("full"), resistance=parts.precharge),
    ),
    "precharge_power": (
        "power",
        lambda parts: inrush.precharge_power(voltage=parts.voltage("full"), resistance=parts.precharge),
    ),
}
