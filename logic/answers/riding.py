"""Riding at a steady speed: what each metre takes of the charge, and how far it goes; one sum for every page.

The energy of a pack is that of its cells at rest, so the heat inside the pack counts: rest volts times current.
"""

from dataclasses import replace
from functools import cached_property

from logic.answers.asked import Asked
from logic.answers.pack_parts import PackParts
from logic.answers.parts import Parts
from logic.answers.reading import Item, Reading, Result
from logic.board import Board, Value
from logic.drive.flow import Flow, at_steady_speed
from logic.drive.limits import energy_per_distance
from logic.drive.road import Road
from logic.errors import InputError, Missing
from logic.pack.range import cold_share, range_distance, usable_energy
from logic.tables import pick
from logic.workings import Given, given, unrecorded

FREEZING = 273.15


def energy_of_each_metre(parts: Parts, flow: Flow) -> float:
    """Return what each metre takes of a nominal pack's charge while a speed is held."""
    power = parts.nominal.open_circuit_voltage * flow.battery_current
    return energy_per_distance(battery_power=power, speed=flow.speed)


class RidingParts(PackParts):
    """The packs, the drive and the road at one speed; a page says which, and on what climb."""

    @property
    def speed(self) -> float:
        """Speed that is held."""
        raise NotImplementedError

    @property
    def climbing(self) -> Road:
        """The road that is ridden: level unless a page asks about a climb."""
        return self.road

    @cached_property
    def flow(self) -> Flow:
        """What flows at that speed on that road, nominal pack."""
        return at_steady_speed(self.nominal, self.climbing, self.speed)

    @cached_property
    def per_distance(self) -> float:
        """Energy of each metre."""
        return energy_of_each_metre(self, self.flow)

    def per_distance_at(self, road: Road, speed: float) -> float:
        """Return the energy of each metre on another road or at another speed."""
        return energy_of_each_metre(self, at_steady_speed(self.nominal, road, speed))

    def share_left(self, kelvin: float) -> float:
        """Return the part of the energy left at a temperature, as a number put in."""
        with unrecorded():
            share = cold_share(temperature=kelvin)
        name = f"Part of the energy left at {kelvin - FREEZING:.0f} degrees C"
        where = "usual cells at moderate current, straight between the rows"
        return given(
            Given(name, float(share), "1", "share", standing="estimate", source="memory", where=where)
        )

    @cached_property
    def window(self) -> float:
        """Part of the charge that is ridden."""
        return self.read("pack.window")

    def usable(self, kelvin: float) -> float:
        """Return the energy for riding."""
        return usable_energy(energy=self.energy_all, window=self.window, cold_share=self.share_left(kelvin))

    @cached_property
    def usable_now(self) -> float:
        """Energy for riding at the temperature asked about."""
        return self.usable(self.asked("ask.cells_at"))

    @cached_property
    def modelled_range(self) -> float:
        """Distance that the energy for riding gives at that speed on that road."""
        return range_distance(energy=self.usable_now, per_distance=self.per_distance)


def with_spread(item: Item, parts: RidingParts) -> Item:
    """Return a modelled range with the band that rolling and drag leave open, unless they are measured."""
    if not isinstance(item, Result):
        return item
    read, ends = parts.read, []
    try:
        with unrecorded():
            for end in ("high", "low"):
                row = pick("range_spread", end=end)
                other = Reading(_with_road(read.board, row.cells), read.rider)
                ends.append(type(parts)(other, Asked(parts.asked.chosen)).modelled_range)
    except (Missing, InputError):
        return item
    return replace(item, band=(ends[0], ends[1])) if ends[0] < ends[1] else item


def _with_road(board: Board, cells: dict[str, float]) -> Board:
    for name in ("rolling", "drag_area"):
        value = board.value(f"load.{name}")
        if value is None or value.known != "measured":
            board = board.with_value(f"load.{name}", Value(float(cells[name])))
    return board
