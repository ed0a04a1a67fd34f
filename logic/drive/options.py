"""Pairs of pulleys: what each does to one board, and which of them meet a wish."""

from collections.abc import Sequence
from dataclasses import dataclass, replace
from typing import Literal

from logic.drive.flow import at_full_remote, at_steady_speed
from logic.drive.gearing import motor_angular_speed, ratio, rolling_circumference
from logic.drive.limits import Limit
from logic.drive.performance import Outcome, steady_between, steepest_grade
from logic.drive.push import Drivetrain
from logic.drive.quick import quick_brake, quick_load, quick_push, quick_top
from logic.drive.road import Road, air_drag_at
from logic.drive.stopping import Brake, braking_distance
from logic.errors import InputError
from logic.si import Metre, MetrePerSecond, Newton, One, RadianPerSecond, Watt

Climb = Literal["", "cannot start", "not reached", "beyond the weight", "needs the brake"]
"""Why a climb has no number, "" when it has one."""


HAIR = 0.002
"""A shortfall below this share is none: no reading on the road tells it."""


@dataclass(frozen=True, kw_only=True)
class PairOption:
    """One pair and what it does. None where there is no number; the outcomes say why.

    `heat` is of one motor's winding on the reference climb. `stop` is the braking way from `loaded`, None without
    brake limits. `limit` is what rules at `loaded`. `spread` are the loaded speeds at both ends of what a printed
    speed constant leaves open.
    """

    motor_teeth: int
    wheel_teeth: int
    ratio: One
    unloaded: MetrePerSecond
    loaded: MetrePerSecond | None
    outcome: Outcome
    spread: tuple[MetrePerSecond, MetrePerSecond] | None
    push: Newton
    climb: One | None
    heat: Watt | None
    climb_outcome: Climb
    stop: Metre | None
    stop_outcome: str
    limit: Limit | None
    angular_speed: RadianPerSecond


@dataclass(frozen=True, kw_only=True)
class Terms:
    """What all pairs of one board are worked out with: its drive, its roads, and its brake when that is known."""

    drive: Drivetrain
    road: Road
    reference: Road
    reference_speed: MetrePerSecond
    brake: Brake | None
    constant_spread: One


def option(terms: Terms, motor_teeth: int, wheel_teeth: int) -> PairOption:
    """Return what a pair does. Raises InputError unless both counts are positive."""
    drive = replace(terms.drive, ratio=ratio(wheel_teeth=float(wheel_teeth), motor_teeth=float(motor_teeth)))
    push = quick_push(drive)
    steady = steady_between(push, quick_load(terms.road), quick_top(drive))
    heat, climb_outcome = _climb(drive, terms)
    stop, stop_outcome = _stop(drive, terms, steady.speed)
    return PairOption(
        motor_teeth=motor_teeth,
        wheel_teeth=wheel_teeth,
        ratio=drive.ratio,
        unloaded=steady.unloaded,
        loaded=steady.speed,
        outcome=steady.outcome,
        spread=_spread(drive, terms, steady.speed),
        push=push(0.0),
        climb=_steepest(push(0.0), terms.road),
        heat=heat,
        climb_outcome=climb_outcome,
        stop=stop,
        stop_outcome=stop_outcome,
        limit=None if steady.speed is None else at_full_remote(drive, steady.speed).limit,
        angular_speed=motor_angular_speed(
            speed=steady.unloaded if steady.speed is None else steady.speed,
            circumference=rolling_circumference(wheel_diameter=drive.wheel_diameter),
            ratio=drive.ratio,
        ),
    )


def _spread(
    drive: Drivetrain, terms: Terms, loaded: MetrePerSecond | None
) -> tuple[MetrePerSecond, MetrePerSecond] | None:
    if loaded is None or not terms.constant_spread:
        return None
    load = quick_load(terms.road)
    # The board as it is stands among the ends: with a limit of the pack's in force neither end need be the fastest.
    reach = [loaded]
    for share in (-terms.constant_spread, terms.constant_spread):
        other = replace(drive, speed_constant=drive.speed_constant * (1.0 + share))
        end = steady_between(quick_push(other), load, quick_top(other)).speed
        if end is None:
            return None
        reach.append(end)
    return min(reach), max(reach)


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


def _climb(drive: Drivetrain, terms: Terms) -> tuple[Watt | None, Climb]:
    try:
        return at_steady_speed(drive, terms.reference, terms.reference_speed).winding_heat, ""
    except InputError as problem:
        return None, "needs the brake" if problem.reason == "needs the brake" else "not reached"


def _stop(drive: Drivetrain, terms: Terms, loaded: MetrePerSecond | None) -> tuple[Metre | None, str]:
    if terms.brake is None or loaded is None:
        return None, "" if terms.brake is None else "no speed"
    try:
        way = braking_distance(
            braking_force=quick_brake(
                replace(terms.brake, drive=replace(terms.brake.drive, ratio=drive.ratio))
            ),
            road_load=quick_load(terms.road),
            mass=terms.road.mass,
            speed=loaded,
        )
    except InputError as problem:
        return None, problem.reason
    return way, ""


@dataclass(frozen=True, kw_only=True)
class Wish:
    """What a pair should do: hold a speed on the level, start on a grade. None is not asked for."""

    speed: MetrePerSecond | None = None
    grade: One | None = None


@dataclass(frozen=True, kw_only=True)
class WishFit:
    """How a pair stands to a wish: shares above (or below) what was asked for, None where nothing was."""

    option: PairOption
    speed_margin: One | None
    grade_margin: One | None

    @property
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
