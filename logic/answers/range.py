"""Range: modelled at a speed and a climb, or learnt from rides; and how cold, speed and hills take it."""

from collections.abc import Sequence
from dataclasses import dataclass, replace
from functools import cached_property

from logic.answers.asked import Asked, Asking
from logic.answers.pack_parts import PackParts
from logic.answers.reading import Item, Open, Reading, Result, attempt
from logic.board import Board, Value
from logic.drive.flow import at_steady_speed
from logic.drive.limits import energy_per_distance
from logic.drive.road import Road
from logic.errors import InputError, Missing
from logic.pack.range import (
    FEWEST,
    Learnt,
    Ride,
    cold_share,
    energy_from_voltages,
    learnt,
    range_band,
    range_distance,
    usable_energy,
)
from logic.si import Ampere, Volt, Watt
from logic.tables import pick
from logic.workings import Given, cited, fresh, given, recording, unrecorded

GRADES = (0.0, 0.02, 0.05)
"""Climbs that the chart compares."""
SPEEDS = tuple(step / 3.6 for step in range(8, 41, 2))
"""Speeds of the chart: 8 to 40 km/h, as far as the drive reaches."""
FREEZING = 273.15
FLAT_CURVES = ("LFP",)
"""Chemistries whose volts tell too little of their charge to learn from."""


@cited("voltage * current", source="derived power with the heat inside the pack", standing="derived")
def power_of_pack(*, voltage: Volt, current: Ampere) -> Watt:
    """Return the power taken from the charge, heat in the pack included: rest volts times current.

    >>> power_of_pack(voltage=36.0, current=5.0)
    180.0
    """
    return voltage * current


@dataclass(frozen=True)
class LoggedRide:
    """One ride of the log. Energy in J, or rest volts before and after; what is not known is None."""

    distance: float | None
    energy: float | None = None
    volts_before: float | None = None
    volts_after: float | None = None


@dataclass(frozen=True)
class RangeAnswer:
    """Results by name, rides that counted and that did not, and the curves of range over speed by grade.

    `learnt` tells whether the head rests on rides. A curve that the drive cannot ride is left out.
    """

    items: dict[str, Item]
    modelled: Item
    learnt: bool
    counted: int
    left_out: int
    curves: tuple[tuple[float, tuple[tuple[float, float], ...]], ...]


class RangeParts(PackParts):
    """The packs, the drive and the road at the speed and the climb asked about."""

    @cached_property
    def speed(self) -> float:
        """Speed asked about."""
        return self.asked("ask.range_speed")

    @cached_property
    def climbing(self) -> Road:
        """The road at the climb asked about."""
        return replace(self.road, grade=self.asked("ask.range_grade"))

    def share_left(self, kelvin: float) -> float:
        """Return the part of the energy left at a temperature, as a number put in."""
        with unrecorded():
            share = cold_share(temperature=kelvin)
        name = f"Part of the energy left at {kelvin - FREEZING:.0f} degrees C"
        where = "usual cells at moderate current, straight between the rows"
        return given(
            Given(name, fresh(share), "1", "share", standing="estimate", source="memory", where=where)
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

    def per_distance(self, road: Road, speed: float) -> float:
        """Return the energy of each metre at a steady speed, heat in the pack included."""
        drive = self.drive("nominal")
        flow = at_steady_speed(drive, road, speed)
        power = power_of_pack(voltage=drive.open_circuit_voltage, current=flow.battery_current)
        return energy_per_distance(battery_power=power, speed=speed)

    @cached_property
    def modelled(self) -> float:
        """Energy of each metre at the speed and climb asked about."""
        return self.per_distance(self.climbing, self.speed)


def range_answer(
    board: Board, rider: Value | None, asking: Asking, rides: Sequence[LoggedRide] = (), *, drawn: bool = True
) -> RangeAnswer:
    """Return the range of a board: learnt when three rides or more tell it, modelled besides.

    The curves are left out unless they are to be `drawn`.
    """
    with recording() as recorder:
        parts = RangeParts(Reading(board, rider), Asked(asking))
        usable = attempt(recorder, "usable", "energy", lambda: parts.usable_now)
        per_distance = attempt(recorder, "per_distance", "energy_per_distance", lambda: parts.modelled)
        modelled = attempt(
            recorder,
            "modelled",
            "distance",
            lambda: range_distance(energy=parts.usable_now, per_distance=parts.modelled),
        )
        cold = attempt(
            recorder,
            "cold",
            "distance",
            lambda: range_distance(energy=parts.usable(FREEZING), per_distance=parts.modelled),
        )
        known, left_out = _rides(board, rides)
        taught, taught_range = _learnt(parts, known)
    bands = _spread(board, rider, asking)
    if isinstance(modelled, Result) and bands is not None:
        modelled = replace(modelled, band=bands)
    is_learnt = isinstance(taught_range, Result)
    items = {
        "range": replace(taught_range if is_learnt else modelled, name="range"),
        "usable": usable,
        "per_distance": per_distance,
        "cold": cold,
        "per_distance_learnt": taught,
    }
    if is_learnt:
        items["modelled"] = modelled
    return RangeAnswer(items, modelled, is_learnt, len(known), left_out, _curves(parts) if drawn else ())


def range_alone(board: Board, rider: Value | None, asking: Asking, rides: Sequence[LoggedRide] = ()) -> Item:
    """Return the range only: the learnt one where there is one."""
    return range_answer(board, rider, asking, rides, drawn=False).items["range"]


def _learnt(parts: RangeParts, rides: list[Ride]) -> tuple[Item, Item]:
    if len(rides) < FEWEST:
        few = Open("per_distance_learnt", outcome="too few rides")
        return few, Open("learnt", outcome="too few rides")
    found = learnt(rides)

    def number(value: float, name: str) -> float:
        text = f"{name} of {found.rides} rides"
        return given(Given(text, fresh(value), "J/m", "energy_per_distance", known="measured"))

    band = Learnt(
        number(found.low, "Least"), number(found.usual, "Median"), number(found.high, "Most"), found.rides
    )
    from_rides = Result(
        "per_distance_learnt",
        band.usual,
        "energy_per_distance",
        (band.low, band.high),
    )
    try:
        ranges = range_band(energy=parts.usable_now, per_distance=band)
    except Missing as gap:
        return from_rides, Open("learnt", missing=gap.fields)
    except InputError as problem:
        return from_rides, Open("learnt", problem=problem)
    whole = Result(
        "learnt",
        ranges.usual,
        "distance",
        (ranges.low, ranges.high),
    )
    return from_rides, whole


def _rides(board: Board, rides: Sequence[LoggedRide]) -> tuple[list[Ride], int]:
    """Return the rides that tell an energy, and how many do not."""
    known = []
    for ride in rides:
        energy = _energy(board, ride)
        if energy is not None and ride.distance is not None and ride.distance > 0.0:
            known.append(Ride(ride.distance, energy))
    return known, len(rides) - len(known)


def _energy(board: Board, ride: LoggedRide) -> float | None:
    if ride.energy is not None and ride.energy > 0.0:
        return ride.energy
    if ride.volts_before is None or ride.volts_after is None:
        return None
    try:
        with unrecorded():
            parts = PackParts(Reading(board))
            if parts.chemistry.name in FLAT_CURVES:
                return None
            return energy_from_voltages(
                energy=parts.energy_all,
                voltage_before=ride.volts_before,
                voltage_after=ride.volts_after,
                full_voltage=parts.voltage("full"),
                empty_voltage=parts.voltage("empty"),
            )
    except (Missing, InputError):
        return None


def _spread(board: Board, rider: Value | None, asking: Asking) -> tuple[float, float] | None:
    """Return the modelled range at both ends of what rolling and drag may be, unless they are measured."""
    ends = []
    try:
        with unrecorded():
            for end in ("high", "low"):
                row = pick("range_spread", end=end)
                parts = RangeParts(Reading(_with_road(board, row.cells), rider), Asked(asking))
                ends.append(range_distance(energy=parts.usable_now, per_distance=parts.modelled))
    except (Missing, InputError):
        return None
    return (ends[0], ends[1]) if ends[0] < ends[1] else None


def _with_road(board: Board, cells: dict[str, float]) -> Board:
    for name in ("rolling", "drag_area"):
        value = board.value(f"load.{name}")
        if value is None or value.known != "measured":
            board = board.with_value(f"load.{name}", Value(float(cells[name])))
    return board


def _curves(parts: RangeParts) -> tuple[tuple[float, tuple[tuple[float, float], ...]], ...]:
    with unrecorded():
        return tuple((grade, points) for grade in GRADES if len(points := _curve(parts, grade)) > 1)


def _curve(parts: RangeParts, grade: float) -> tuple[tuple[float, float], ...]:
    points = []
    try:
        road = replace(parts.road, grade=grade)
        for speed in SPEEDS:
            per_distance = parts.per_distance(road, speed)
            points.append((speed, range_distance(energy=parts.usable_now, per_distance=per_distance)))
    except (Missing, InputError):
        # The drive does not reach the next speed on this climb, or a value is missing: the curve ends here.
        return tuple(points)
    return tuple(points)
