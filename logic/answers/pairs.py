"""Pairs of pulleys for one board: every sensible one with its figures and its belt."""

from dataclasses import replace
from functools import cached_property, lru_cache
from math import floor, pi

from logic.answers.asked import Asked, Asking
from logic.answers.belt_parts import FEWEST_IN_MESH, BeltParts
from logic.answers.braking import brake_of
from logic.answers.first_push import HILLS
from logic.answers.first_speed import WEIGHT
from logic.answers.reading import RIDER, Open, Reading
from logic.answers.rough import RoughParts, RoughReading, taken_as_usual
from logic.answers.run import Run
from logic.belt.catalogue import catalogue_teeth
from logic.belt.geometry import belt_length, centre_distance, pitch_diameter, whole_teeth_in_mesh
from logic.belt.stock import Stock, stock
from logic.belt.tension import effective_pull
from logic.board import Board, Value
from logic.drive.gearing import electrical_angular_speed, unloaded_angular_speed
from logic.drive.options import PairOption, Terms, option, sensible_pairs
from logic.errors import InputError
from logic.frozen import frozen
from logic.tables import pick


@frozen
class PairBelt:
    """A belt in stock that fits the mount, over pulleys of two pitch diameters. Where it puts the shafts is found when read."""

    teeth: int
    length: float
    sure: bool
    small: float
    large: float
    small_teeth: int

    @cached_property
    def centre(self) -> float:
        """The centre distance it asks for."""
        return centre_distance(length=self.length, large=self.large, small=self.small)

    @cached_property
    def in_mesh(self) -> int:
        """Whole teeth in mesh on the small pulley."""
        found = whole_teeth_in_mesh(
            centre=self.centre, large=self.large, small=self.small, teeth=float(self.small_teeth)
        )
        return round(found)

    @property
    def few(self) -> bool:
        """Tell whether there are too few teeth in mesh for the full rating."""
        return self.in_mesh < FEWEST_IN_MESH


@frozen
class Pair:
    """One pair as a row: what it does, its belt, and what is left of limits. None where there is no number.

    `belt_load` is the pull at the motor current limit as a share of the belt's working tension. `erpm_margin` is
    what is left under the controller's limit of electrical rpm, unloaded on a full pack.
    """

    option: PairOption
    belt: PairBelt | None
    belt_load: float | None
    electrical: float | None
    erpm_margin: float | None
    present: bool


@frozen
class PairTable:
    """All rows, or what stands in the way. `travel` is the mount's, `travel_known` how it is known.

    `usual` are the values for which something usual stands in: the rows are rough then.
    """

    pairs: tuple[Pair, ...] = ()
    missing: tuple[str, ...] = ()
    also_missing: tuple[str, ...] = ()
    problem: InputError | None = None
    travel: tuple[float, float] | None = None
    travel_known: bool = False
    largest_wheel: int = 0
    usual: tuple[str, ...] = ()


class PairTableParts(BeltParts):
    """The parts of a board that pairs rest on, its own pulleys aside."""

    def __init__(self, reading: Reading, asked: Asked) -> None:
        """Take the board from a reading and the question beside it."""
        super().__init__(reading)
        self.asked = asked

    @cached_property
    def ratio(self) -> float:
        """A ratio of one: each pair brings its own."""
        return 1.0

    @cached_property
    def travel(self) -> tuple[float, float, bool]:
        """Least and most centre distance, and whether the mount's own travel is entered."""
        mount = self.read.board.mount
        if mount.centre_least is not None and mount.centre_most is not None:
            low, high = sorted((self.read("mount.centre_least"), self.read("mount.centre_most")))
            return low, high, True
        present = super().computed_centre if self.read.board.drive.centre is None else self.centre
        travel = pick("pair_rules", name="slot travel").number("length")
        return present - travel, present + travel, False

    @cached_property
    def largest_wheel_teeth(self) -> int:
        """Most teeth of a wheel pulley that clears the ground with its flange or its belt's back."""
        room = (
            self.wheel_diameter / 2.0
            - pick("pair_rules", name="ground clearance").number("length")
            - pick("pair_rules", name="flange").number("length")
        )
        return max(0, floor(2.0 * pi * (room + self.differential) / self.pitch))


class RoughPairTableParts(PairTableParts, RoughParts):
    """The same with what is usual where nothing is entered."""

    read: RoughReading


FIRST = ("drive.profile", "drive.wheel_diameter", "motor.kv", "pack.series", *WEIGHT, *HILLS)
"""Values that give a first table, those one reads off the board first."""


def pair_table(board: Board, rider: Value | None, asking: Asking) -> PairTable:
    """Return every sensible pair of the board with its figures, in the order of motor and wheel teeth.

    Nothing is recorded: the working of a pair is that of the board with its teeth.
    """
    run = Run(lambda: PairTableParts(Reading(board, rider), Asked(asking)))
    table = run.or_open("pairs", lambda _: _table(board, run))
    if not isinstance(table, Open):
        return table
    if not table.missing:
        return PairTable(problem=table.problem)
    lacks = tuple(key for key in FIRST if (rider if key == RIDER.key else board.value(key)) is None)
    if lacks:
        return PairTable(missing=lacks)
    rough: Run[PairTableParts] = Run(lambda: RoughPairTableParts(RoughReading(board, rider), Asked(asking)))
    table = rough.or_open("pairs", lambda _: _table(board, rough))
    if isinstance(table, Open):
        return PairTable(missing=table.missing, problem=table.problem)
    return replace(table, usual=taken_as_usual(board))


def speed_cap(table: PairTable) -> tuple[float, str] | None:
    """Return the top speed of the fastest pair and the limit that rules there; None where gears alone set it."""
    fastest = max(table.pairs, key=lambda pair: pair.option.loaded or 0.0, default=None)
    if fastest is None or fastest.option.loaded is None or fastest.option.limit in (None, "duty"):
        return None
    return fastest.option.loaded, str(fastest.option.limit)


def belts_for(
    profile: str, small: float, large: float, centre_low: float, centre_high: float
) -> tuple[Stock, ...]:
    """Return the belts in stock whose exact centre distance lies within a mount's travel, shortest first.

    `small` and `large` are pitch diameters. Empty when the pulleys would touch at every centre of the travel.
    """
    touching = (small + large) / 2.0
    if centre_high <= touching:
        return ()
    least = belt_length(centre=max(centre_low, touching), large=large, small=small)
    most = belt_length(centre=centre_high, large=large, small=small)
    return tuple(belt for belt in stock(profile) if least <= belt.length <= most)


def _table(board: Board, run: Run[PairTableParts]) -> PairTable:
    parts, profile = run.plain, run.plain.profile
    present = _present(board)
    printed = board.motor.kv is not None and board.motor.kv.known != "measured"
    terms, also_missing = _terms(run, printed=printed)
    rule = pick("pair_rules", name="ratio")
    low, high = rule.number("low"), rule.number("high")
    teeth = catalogue_teeth(profile)
    pairs = [
        (motor, wheel)
        for motor, wheel in sensible_pairs(
            teeth, largest_wheel_teeth=parts.largest_wheel_teeth, present=present
        )
        if (motor, wheel) == present or low <= wheel / motor <= high
    ]
    travel = run.view(lambda each: each.travel, None)
    known = travel is not None and travel[2]
    rows = _Rows(run, terms, travel)
    found = tuple(rows.row(motor, wheel, present=(motor, wheel) == present) for motor, wheel in pairs)
    kept = tuple(row for row in found if row.belt or row.present) if travel is not None else found
    return PairTable(
        pairs=kept,
        also_missing=also_missing,
        travel=None if travel is None else (travel[0], travel[1]),
        travel_known=known,
        largest_wheel=parts.largest_wheel_teeth,
    )


def _present(board: Board) -> tuple[int, int] | None:
    motor, wheel = board.drive.motor_teeth, board.drive.wheel_teeth
    if motor is None or wheel is None:
        return None
    return round(float(motor.si)), round(float(wheel.si))


def _terms(run: Run[PairTableParts], *, printed: bool) -> tuple[Terms, tuple[str, ...]]:
    parts = run.plain
    drive, road, asked = parts.nominal, parts.road, parts.asked
    brake = run.or_open("stop", lambda each: brake_of(each, asked))
    if isinstance(brake, Open) and brake.problem is not None:
        raise brake.problem
    terms = Terms(
        drive=drive,
        road=road,
        reference=replace(road, grade=asked("ask.climb_grade")),
        reference_speed=asked("ask.climb_speed"),
        brake=None if isinstance(brake, Open) else brake,
        constant_spread=pick("spreads", name="printed speed constant").number("share") if printed else 0.0,
    )
    return terms, brake.missing if isinstance(brake, Open) else ()


class _Rows:
    """What all rows share, looked up once."""

    def __init__(
        self, run: Run[PairTableParts], terms: Terms, travel: tuple[float, float, bool] | None
    ) -> None:
        parts = run.plain
        self.parts, self.terms, self.travel = parts, terms, travel
        # Flanges must pass each other.
        self.flanges = 2.0 * pick("pair_rules", name="flange").number("length")
        self.torque = run.view(lambda each: each.torque, None)
        self.working = run.view(lambda each: each.belt.working_tension, None)
        self.poles = run.view(lambda each: each.read("motor.pole_pairs"), None)
        self.erpm_limit = run.view(lambda each: each.read("controller.erpm_limit"), None)
        full = unloaded_angular_speed(
            voltage=parts.voltage("full"), duty=parts.duty, speed_constant=parts.speed_constant
        )
        # Unloaded, the motor turns at its own speed whatever the pulleys: they only move it along the road.
        self.electrical = (
            None
            if self.poles is None
            else electrical_angular_speed(angular_speed=full, pole_pairs=self.poles)
        )

    def row(self, motor: int, wheel: int, *, present: bool) -> Pair:
        """Return the row of a pair."""
        pitch = self.parts.pitch
        small = pitch_diameter(pitch=pitch, teeth=float(motor))
        large = pitch_diameter(pitch=pitch, teeth=float(wheel))
        load = None
        if self.torque is not None and self.working is not None:
            load = effective_pull(torque=self.torque, pitch_diameter=small) / self.working
        margin = None
        if self.electrical is not None and self.erpm_limit is not None:
            margin = 1.0 - self.electrical / self.erpm_limit
        return Pair(
            option=option(self.terms, motor, wheel),
            belt=self._belt((min(small, large), max(small, large)), min(motor, wheel)),
            belt_load=load,
            electrical=self.electrical,
            erpm_margin=margin,
            present=present,
        )

    def _belt(self, pulleys: tuple[float, float], teeth: int) -> PairBelt | None:
        if self.travel is None:
            return None
        low, high, _ = self.travel
        apart = sum(pulleys) / 2.0 + self.flanges
        return _belt_within(self.parts.profile, pulleys, teeth, max(low, apart), high)


# Most values that are typed beside a table move no belt: those of its pairs are kept.
@lru_cache(256)
def _belt_within(
    profile: str, pulleys: tuple[float, float], teeth: int, low: float, high: float
) -> PairBelt | None:
    if low > high:
        return None
    small, large = pulleys
    candidates = belts_for(profile, small, large, low, high)
    if not candidates:
        return None
    middle = belt_length(centre=0.5 * (low + high), large=large, small=small)
    best = min(candidates, key=lambda belt: (not belt.sure, abs(belt.length - middle)))
    return _over(best, small, large, teeth)


@lru_cache(256)
def _over(belt: Stock, small: float, large: float, teeth: int) -> PairBelt:
    """Return a belt over two pulleys; where it puts the shafts is found once."""
    return PairBelt(belt.teeth, belt.length, belt.sure, small, large, teeth)
