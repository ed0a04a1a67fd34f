"""Range: modelled at a speed and a climb, or learnt from rides; and how cold, speed and hills take it."""

from collections.abc import Sequence
from dataclasses import dataclass, replace
from functools import cached_property
from statistics import median

from logic.answers.asked import Asked, Asking
from logic.answers.pack_parts import PackParts
from logic.answers.reading import Item, Open, Reading, Result, attempt
from logic.answers.riding import FREEZING, RidingParts, with_spread
from logic.answers.run import answer
from logic.board import Board, Value
from logic.drive.road import Road
from logic.errors import InputError, Missing, positive
from logic.pack.range import (
    FEWEST,
    Learnt,
    Ride,
    energy_from_voltages,
    learnt,
    range_band,
    range_distance,
)
from logic.si import JoulePerMetre
from logic.workings import Given, cited, fresh, given, recording, unrecorded

GRADES = (0.0, 0.02, 0.05)
"""Climbs that the chart compares."""
SPEEDS = tuple(step / 3.6 for step in range(8, 41, 2))
"""Speeds of the chart: 8 to 40 km/h, as far as the drive reaches."""
FLAT_CURVES = ("LFP",)
"""Chemistries whose volts tell too little of their charge to learn from."""


@cited("learnt * asked / usual", source="derived the model tells how two rides differ", standing="derived")
def carried_over(*, learnt: JoulePerMetre, asked: JoulePerMetre, usual: JoulePerMetre) -> JoulePerMetre:
    """Return what rides tell, at another speed or climb: what is modelled there over what is modelled as ridden.

    >>> carried_over(learnt=45.0, asked=60.0, usual=40.0)
    67.5
    """
    positive(learnt=learnt, asked=asked, usual=usual)
    return learnt * asked / usual


@dataclass(frozen=True)
class LoggedRide:
    """One ride of the log. Energy in J, or rest volts before and after; what is not known is None.

    `speed` is the one usual on it.
    """

    distance: float | None
    energy: float | None = None
    volts_before: float | None = None
    volts_after: float | None = None
    speed: float | None = None


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


class RangeParts(RidingParts):
    """The packs, the drive and the road at the speed and the climb asked about."""

    @cached_property
    def speed(self) -> float:
        """Speed asked about."""
        return self.asked("ask.range_speed")

    @cached_property
    def climbing(self) -> Road:
        """The road at the climb asked about."""
        return replace(self.road, grade=self.asked("ask.range_grade"))

    def carried(self, band: Learnt, usual: float) -> Learnt:
        """Return what rides at a usual speed tell of the speed and climb asked about; as it is where they agree."""
        if self.speed == usual and self.asked("ask.range_grade") == 0.0:
            return band
        modelled = self.per_distance_at(self.road, usual)
        low, middle, high = (
            carried_over(learnt=learnt, asked=self.per_distance, usual=modelled)
            for learnt in (band.low, band.usual, band.high)
        )
        return Learnt(low, middle, high, band.rides)


@answer()
def range_answer(
    board: Board, rider: Value | None, asking: Asking, rides: Sequence[LoggedRide] = (), *, drawn: bool = True
) -> RangeAnswer:
    """Return the range of a board: learnt when three rides or more tell it, modelled besides.

    The curves are left out unless they are to be `drawn`.
    """
    with recording() as recorder:
        parts = RangeParts(Reading(board, rider), Asked(asking))
        usable = attempt(recorder, "usable", "energy", lambda: parts.usable_now)
        per_distance = attempt(recorder, "per_distance", "energy_per_distance", lambda: parts.per_distance)
        modelled = attempt(recorder, "range_modelled", "distance", lambda: parts.modelled_range)
        known, left_out = _rides(board, rides)
        taught = _learnt(parts, known, [ride.speed for ride in rides if ride.speed])
        cold = attempt(
            recorder,
            "range_cold",
            "distance",
            lambda: range_distance(
                energy=parts.usable(FREEZING),
                per_distance=parts.per_distance if taught.band is None else taught.band.usual,
            ),
        )
    modelled = with_spread(modelled, parts)
    is_learnt = isinstance(taught.range, Result)
    items = {
        "range": replace(taught.range if is_learnt else modelled, name="range"),
        "usable": usable,
        "per_distance": per_distance,
        "range_cold": cold,
        "per_distance_learnt": taught.per_distance,
    }
    if taught.carried is not None:
        items["per_distance_carried"] = taught.carried
    if is_learnt:
        items["range_modelled"] = modelled
    return RangeAnswer(items, modelled, is_learnt, len(known), left_out, _curves(parts) if drawn else ())


@answer()
def range_alone(board: Board, rider: Value | None, asking: Asking, rides: Sequence[LoggedRide] = ()) -> Item:
    """Return the range only: the learnt one where there is one."""
    return range_answer(board, rider, asking, rides, drawn=False).items["range"]


@dataclass(frozen=True)
class Taught:
    """What rides tell: the energy of each metre as ridden and as asked, the range, and the band it rests on."""

    per_distance: Item
    range: Item
    carried: Item | None = None
    band: Learnt | None = None


def _learnt(parts: RangeParts, rides: list[Ride], speeds: list[float]) -> Taught:
    if len(rides) < FEWEST:
        few = Open("per_distance_learnt", outcome="too few rides")
        return Taught(few, Open("learnt", outcome="too few rides"))
    found = learnt(rides)

    def number(value: float, name: str) -> float:
        text = f"{name} of {found.rides} rides"
        return given(Given(text, fresh(value), "J/m", "energy_per_distance", known="measured"))

    ridden = Learnt(
        number(found.low, "Least"), number(found.usual, "Median"), number(found.high, "Most"), found.rides
    )
    told = _between("per_distance_learnt", ridden)
    try:
        band = parts.carried(ridden, _usual_speed(parts, speeds))
        ranges = range_band(energy=parts.usable_now, per_distance=band)
    except Missing as gap:
        return Taught(told, Open("learnt", missing=gap.fields))
    except InputError as problem:
        return Taught(told, Open("learnt", problem=problem))
    whole = Result("learnt", ranges.usual, "distance", (ranges.low, ranges.high))
    carried = None if band is ridden else _between("per_distance_carried", band)
    return Taught(told, whole, carried, band)


def _between(name: str, band: Learnt) -> Result:
    return Result(name, band.usual, "energy_per_distance", (band.low, band.high))


def _usual_speed(parts: RangeParts, speeds: list[float]) -> float:
    """Return the speed the rides were ridden at: the median of those that tell theirs, else the one asked for."""
    if not speeds:
        return parts.asked("ask.usual_speed")
    name = f"Usual speed of {len(speeds)} rides"
    return given(Given(name, fresh(median(speeds)), "m/s", "speed", known="measured"))


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


def _curves(parts: RangeParts) -> tuple[tuple[float, tuple[tuple[float, float], ...]], ...]:
    with unrecorded():
        return tuple((grade, points) for grade in GRADES if len(points := _curve(parts, grade)) > 1)


def _curve(parts: RangeParts, grade: float) -> tuple[tuple[float, float], ...]:
    points = []
    try:
        road = replace(parts.road, grade=grade)
        for speed in SPEEDS:
            per_distance = parts.per_distance_at(road, speed)
            points.append((speed, range_distance(energy=parts.usable_now, per_distance=per_distance)))
    except (Missing, InputError):
        # The drive does not reach the next speed on this climb, or a value is missing: the curve ends here.
        return tuple(points)
    return tuple(points)
