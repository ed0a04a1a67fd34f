"""Range: modelled at a speed and a climb, or learnt from rides; and how cold, speed and hills take it."""

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import field, replace
from functools import cached_property
from statistics import median

from logic.answers.asked import Asked, Asking
from logic.answers.pack_parts import PackParts
from logic.answers.reading import Item, Reading, Result
from logic.answers.riding import FREEZING, RidingParts, with_spread
from logic.answers.run import Compute, Figures, Middle, Points, Run, answer
from logic.board import Board, Value, faults
from logic.drive.road import Road
from logic.errors import InputError, Missing, NoFigure, positive
from logic.frozen import frozen
from logic.log.rides import LoggedRide
from logic.pack.range import (
    FEWEST,
    Learnt,
    RiddenEnergy,
    energy_from_voltages,
    learnt,
    range_band,
    range_distance,
)
from logic.si import JoulePerMetre
from logic.workings import Given, cited, given, unrecorded

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


@frozen
class RangeAnswer:
    """Results by name, rides that counted and that did not, and curves, which are worked out when they are read.

    `learnt` tells whether the head rests on rides.
    """

    items: Mapping[str, Item]
    modelled: Item
    learnt: bool
    counted: int
    left_out: int
    faults: tuple[InputError, ...]
    run: Run["RangeParts"] = field(compare=False, repr=False)

    @cached_property
    def drawn(self) -> bool:
        """Tell whether there are curves."""
        return self.run.view(
            lambda parts: any(_curve(parts, grade, SPEEDS[:2]) for grade in GRADES), otherwise=False
        )

    @cached_property
    def _taken(self) -> dict[float, Points]:
        return self.run.view(lambda parts: {grade: _curve(parts, grade) for grade in GRADES}, {})

    @cached_property
    def curves(self) -> tuple[tuple[float, Points], ...]:
        """Return the range over speed by grade; a curve that the drive cannot ride is left out."""
        return self.run.view(lambda parts: tuple(_ranges(parts, self._taken)), ())

    @property
    def spent(self) -> Points:
        """Return the energy of each metre over speed on the level."""
        return self._taken.get(0.0, ())


class RangeParts(RidingParts):
    """The packs, the drive and the road at the speed and the climb asked about, and what rides tell."""

    def __init__(
        self, reading: Reading, asked: Asked, rides: Sequence[RiddenEnergy] = (), speeds: Sequence[float] = ()
    ) -> None:
        """Take board and question, the rides that tell an energy, and the usual speeds of those that tell one."""
        super().__init__(reading, asked)
        self.rides, self.speeds = rides, speeds

    @cached_property
    def speed(self) -> float:
        """Speed asked about."""
        return self.asked("ask.range_speed")

    @cached_property
    def climbing(self) -> Road:
        """The road at the climb asked about."""
        return replace(self.road, grade=self.asked("ask.range_grade"))

    @cached_property
    def ridden(self) -> Learnt:
        """What the rides tell of the energy of each metre. Raises InputError ("too few rides")."""
        if len(self.rides) < FEWEST:
            raise NoFigure("rides", len(self.rides), "too few rides")
        found = learnt(self.rides)

        def number(value: float, name: str) -> float:
            text = f"{name} of {found.rides} rides"
            return given(Given(text, float(value), "J/m", "energy_per_distance", known="measured"))

        return Learnt(
            number(found.low, "Least"),
            number(found.usual, "Median"),
            number(found.high, "Most"),
            found.rides,
        )

    @cached_property
    def taught(self) -> Learnt:
        """What they tell of the speed and climb asked about; as it is where they were ridden so."""
        band, usual = self.ridden, self.usual_speed
        if self.speed == usual and self.asked("ask.range_grade") == 0.0:
            return band
        modelled = self.per_distance_at(self.road, usual)
        low, middle, high = (
            carried_over(learnt=learnt, asked=self.per_distance, usual=modelled)
            for learnt in (band.low, band.usual, band.high)
        )
        return Learnt(low, middle, high, band.rides)

    @cached_property
    def usual_speed(self) -> float:
        """Speed the rides were ridden at: the median of those that tell theirs, else the one asked for."""
        if not self.speeds:
            return self.asked("ask.usual_speed")
        name = f"Usual speed of {len(self.speeds)} rides"
        return given(Given(name, median(self.speeds), "m/s", "speed", known="measured"))

    def learnt_range(self) -> Middle:
        """Return the range that the rides teach, with its band."""
        found = range_band(energy=self.usable_now, per_distance=self.taught)
        return Middle(found.usual, (found.low, found.high))

    def cold(self) -> float:
        """Return the range at freezing, by the rides where they tell it."""
        try:
            per_distance = self.taught.usual
        except (Missing, InputError):
            per_distance = self.per_distance
        return range_distance(energy=self.usable(FREEZING), per_distance=per_distance)


def _between(band: Learnt) -> Middle:
    return Middle(band.usual, (band.low, band.high))


CARRIED: tuple[str, Compute[RangeParts]] = ("energy_per_distance", lambda parts: _between(parts.taught))

RESULTS: Figures[RangeParts] = {
    "usable": ("energy", lambda parts: parts.usable_now),
    "per_distance": ("energy_per_distance", lambda parts: parts.per_distance),
    "range_cold": ("distance", RangeParts.cold),
    "per_distance_learnt": ("energy_per_distance", lambda parts: _between(parts.ridden)),
    "steady_power": ("power", lambda parts: parts.flow.battery_power),
    "steady_battery": ("current", lambda parts: parts.flow.battery_current),
    "steady_heat": ("power", lambda parts: parts.flow.winding_heat),
}
"""Quantity and computation of what stands beside the range."""


@answer()
def range_answer(
    board: Board, rider: Value | None, asking: Asking, rides: Sequence[LoggedRide] = ()
) -> RangeAnswer:
    """Return the range of a board: learnt when three rides or more tell it, modelled besides."""
    known, left_out = _rides(board, rides)
    speeds = [ride.speed for ride in rides if ride.speed]
    run = Run(lambda: RangeParts(Reading(board, rider), Asked(asking), known, speeds))
    modelled = with_spread(
        run.figure("range_modelled", "distance", lambda parts: parts.modelled_range), run.plain
    )
    learnt_range = run.figure("range", "distance", RangeParts.learnt_range)
    is_learnt = isinstance(learnt_range, Result)
    known_items: dict[str, Item] = {"range": learnt_range if is_learnt else replace(modelled, name="range")}
    if is_learnt and run.view(lambda parts: parts.taught is not parts.ridden, otherwise=False):
        known_items["per_distance_carried"] = run.figure("per_distance_carried", *CARRIED)
    if is_learnt:
        known_items["range_modelled"] = modelled
    items = run.when_read(RESULTS, **known_items)
    return RangeAnswer(items, modelled, is_learnt, len(known), left_out, faults(board), run)


@answer()
def range_alone(board: Board, rider: Value | None, asking: Asking, rides: Sequence[LoggedRide] = ()) -> Item:
    """Return the range only: the learnt one where there is one."""
    return range_answer(board, rider, asking, rides).items["range"]


def _rides(board: Board, rides: Sequence[LoggedRide]) -> tuple[list[RiddenEnergy], int]:
    """Return the rides that tell an energy, and how many do not."""
    known = []
    for ride in rides:
        energy = _energy(board, ride)
        if energy is not None and ride.distance is not None and ride.distance > 0.0:
            known.append(RiddenEnergy(ride.distance, energy))
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


def _ranges(parts: RangeParts, taken: Mapping[float, Points]) -> Iterator[tuple[float, Points]]:
    for grade, points in taken.items():
        if points:
            yield (
                grade,
                tuple(
                    (speed, range_distance(energy=parts.usable_now, per_distance=each))
                    for speed, each in points
                ),
            )


def _curve(parts: RangeParts, grade: float, speeds: Sequence[float] = SPEEDS) -> Points:
    """Return the energy of each metre over speed; nothing where that is a single point."""
    road, points = replace(parts.road, grade=grade), []
    for speed in speeds:
        try:
            per_distance = parts.per_distance_at(road, speed)
        except InputError:
            break  # the drive does not reach this speed on this climb: the curve ends here
        points.append((speed, per_distance))
    return tuple(points) if len(points) > 1 else ()
