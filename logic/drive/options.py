"""Pairs of pulleys: what each does to one board, and which of them meet a wish."""

from collections.abc import Sequence
from dataclasses import replace
from functools import cached_property, lru_cache
from typing import NamedTuple

from logic.drive.brake import Brake
from logic.drive.flow import at_full_remote, at_steady_speed
from logic.drive.gearing import motor_angular_speed, ratio, rolling_circumference
from logic.drive.limits import Limit
from logic.drive.performance import Outcome, Steady, steady_between, steepest_grade
from logic.drive.push import Drivetrain
from logic.drive.quick import quick_brake, quick_load, quick_push, quick_top
from logic.drive.road import Road, air_drag_at
from logic.drive.stopping import braking_distance
from logic.errors import InputError
from logic.frozen import frozen
from logic.si import Metre, MetrePerSecond, Newton, One, RadianPerSecond, Watt

HAIR = 0.002
"""A shortfall below this share is none: no reading on the road tells it."""


@frozen(kw_only=True)
class Terms:
    """What all pairs of one board are worked out with: its drive, its roads, and its brake when that is known."""

    drive: Drivetrain
    road: Road
    reference: Road
    reference_speed: MetrePerSecond
    brake: Brake | None
    constant_spread: One


@frozen(kw_only=True)
class PairOption:
    """One pair and what it does. None where there is no number; the outcomes say why.

    Speed, push and climb are worked out at once, since every table is ordered by them; the rest when it is first read.
    """

    motor_teeth: int
    wheel_teeth: int
    drive: Drivetrain
    terms: Terms
    unloaded: MetrePerSecond
    loaded: MetrePerSecond | None
    outcome: Outcome
    push: Newton
    climb: One | None

    @property
    def ratio(self) -> One:
        """Turns of the motor for one of the wheel."""
        return self.drive.ratio

    @cached_property
    def spread(self) -> tuple[MetrePerSecond, MetrePerSecond] | None:
        """Loaded speeds at both ends of what a printed speed constant leaves open; None for a measured one."""
        if self.loaded is None or not self.terms.constant_spread:
            return None
        load = quick_load(self.terms.road)
        # The board as it is stands among the ends: with a limit of the pack's in force neither end need be the fastest.
        reach = [self.loaded]
        for share in (-self.terms.constant_spread, self.terms.constant_spread):
            other = replace(self.drive, speed_constant=self.drive.speed_constant * (1.0 + share))
            end = steady_between(quick_push(other), load, quick_top(other)).speed
            if end is None:
                return None
            reach.append(end)
        return min(reach), max(reach)

    @cached_property
    def limit(self) -> Limit | None:
        """What rules at the loaded speed."""
        return None if self.loaded is None else at_full_remote(self.drive, self.loaded).limit

    @property
    def angular_speed(self) -> RadianPerSecond:
        """The motor at the loaded speed, or unloaded where there is none."""
        return motor_angular_speed(
            speed=self.unloaded if self.loaded is None else self.loaded,
            circumference=rolling_circumference(wheel_diameter=self.drive.wheel_diameter),
            ratio=self.ratio,
        )

    @cached_property
    def heat(self) -> Watt | None:
        """Heat of one motor's winding on the reference climb; None where the drive does not hold its speed."""
        try:
            return at_steady_speed(self.drive, self.terms.reference, self.terms.reference_speed).winding_heat
        except InputError:
            return None

    @cached_property
    def stop(self) -> Metre | None:
        """Braking way from the loaded speed; None without brake limits, and where it does not stop."""
        brake, road = self.terms.brake, self.terms.road
        if brake is None or self.loaded is None:
            return None
        try:
            return braking_distance(
                braking_force=quick_brake(replace(brake, drive=replace(brake.drive, ratio=self.ratio))),
                road_load=quick_load(road),
                mass=road.mass,
                speed=self.loaded,
            )
        except InputError:
            return None


def option(terms: Terms, motor_teeth: int, wheel_teeth: int) -> PairOption:
    """Return what a pair does. Raises InputError unless both counts are positive."""
    met = _meetings(terms.drive, terms.road)[motor_teeth, wheel_teeth]
    return PairOption(
        motor_teeth=motor_teeth,
        wheel_teeth=wheel_teeth,
        drive=met.drive,
        terms=terms,
        unloaded=met.steady.unloaded,
        loaded=met.steady.speed,
        outcome=met.steady.outcome,
        push=met.push,
        climb=met.climb,
    )


class _Met(NamedTuple):
    """What every table is ordered by: where push and load of a pair meet, its push at standstill and the climb that takes."""

    drive: Drivetrain
    steady: Steady
    push: Newton
    climb: One | None


class _Meetings(dict[tuple[int, int], _Met]):
    """The pairs on one drive and one road by motor and wheel teeth, each worked out when it is first asked for."""

    def __init__(self, drive: Drivetrain, road: Road) -> None:
        super().__init__()
        self.drive, self.road = drive, road

    def __missing__(self, teeth: tuple[int, int]) -> _Met:
        motor, wheel = map(float, teeth)
        drive = replace(self.drive, ratio=ratio(wheel_teeth=wheel, motor_teeth=motor))
        push = quick_push(drive)
        steady = steady_between(push, quick_load(self.road), quick_top(drive))
        self[teeth] = _Met(drive, steady, push(0.0), _steepest(push(0.0), self.road))
        return self[teeth]


# Most values that are typed beside a table change neither drive nor road: its pairs are kept.
_meetings = lru_cache(2)(_Meetings)


def _steepest(push: Newton, road: Road) -> One | None:
    try:
        return steepest_grade(
            tractive_force=push,
            air_drag=air_drag_at(road, 0.0),
            mass=road.mass,
            gravity=road.gravity,
            rolling_coefficient=road.rolling_coefficient,
        )
    except InputError:
        return None


@frozen(kw_only=True)
class Wish:
    """What a pair should do: hold a speed on the level, start on a grade. None is not asked for."""

    speed: MetrePerSecond | None = None
    grade: One | None = None


@frozen(kw_only=True)
class WishFit:
    """How a pair stands to a wish: shares above (or below) what was asked for, None where nothing was."""

    option: PairOption
    speed_margin: One | None
    grade_margin: One | None

    @cached_property
    def short(self) -> float:
        """Return by how much it falls short in all; 0 when it does what was asked for, to a hair."""
        margins = (self.speed_margin, self.grade_margin)
        return sum(-margin for margin in margins if margin is not None and margin < -HAIR)

    @property
    def beyond(self) -> float:
        """Return by how much it goes beyond the wish: in speed, or in the hill where no speed was wished for.

        With a speed wished for, more climb costs nothing and does not count.
        """
        margin = self.grade_margin if self.speed_margin is None else self.speed_margin
        return max(0.0, margin or 0.0)


def fit(option: PairOption, wish: Wish) -> WishFit:
    """Return how a pair stands to a wish."""
    speed_margin = grade_margin = None
    if wish.speed:
        speed_margin = (option.loaded or 0.0) / wish.speed - 1.0
    if wish.grade:
        grade_margin = (option.climb or 0.0) / wish.grade - 1.0
    return WishFit(option=option, speed_margin=speed_margin, grade_margin=grade_margin)


def sensible_pairs(
    teeth: Sequence[int], *, largest_wheel_teeth: float, present: tuple[int, int] | None
) -> list[tuple[int, int]]:
    """Return pairs of catalogue pulleys with at least as many teeth on the wheel, the present pair always among them.

    `largest_wheel_teeth` is what clears wheel and ground.

    >>> sensible_pairs((12, 14, 30), largest_wheel_teeth=20.0, present=(13, 44))
    [(12, 12), (12, 14), (13, 44), (14, 14)]
    """
    pairs = {(motor, wheel) for motor in teeth for wheel in teeth if motor <= wheel <= largest_wheel_teeth}
    if present is not None:
        pairs.add(present)
    return sorted(pairs)
