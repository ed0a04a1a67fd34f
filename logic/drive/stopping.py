"""Stopping: what the motors brake with, what the pack takes back, what the tyre holds, and how far it goes."""

from logic.drive.brake import Brake, brake_curve
from logic.drive.integral import PARTS, integral
from logic.drive.quick import plain, quick_brake, quick_load, searched
from logic.drive.road import Road, load_curve
from logic.errors import NoFigure, positive
from logic.si import (
    ForceCurve,
    Kilogram,
    Metre,
    MetrePerSecond,
    MetrePerSecondSquared,
    Newton,
    Second,
)
from logic.workings import cited, method


@cited("speed * reaction_time", source="derived way gone before the brake acts", standing="derived")
def reaction_distance(*, speed: MetrePerSecond, reaction_time: Second) -> Metre:
    """Return the way gone before anything brakes. Raises InputError unless both are positive.

    >>> reaction_distance(speed=10.0, reaction_time=2.5)
    25.0
    """
    positive(speed=speed, reaction_time=reaction_time)
    return speed * reaction_time


@cited("reaction + braking", source="derived one after the other", standing="derived")
def stop_distance(*, reaction: Metre, braking: Metre) -> Metre:
    """Return the whole way from seeing a reason to standing still.

    >>> stop_distance(reaction=13.9, braking=10.3)
    24.200000000000003
    """
    return reaction + braking


@cited("-1 * force", source="derived a push against the way", standing="derived")
def held_back(*, force: Newton) -> Newton:
    """Return a braking force as a push, for the formulas that take one.

    >>> held_back(force=50.0)
    -50.0
    """
    return -1.0 * force


@cited("(force + road_load) / mass", source="derived force over mass", standing="derived")
def deceleration(*, force: Newton, road_load: Newton, mass: Kilogram) -> MetrePerSecondSquared:
    """Return how fast the speed falls; negative where the slope is stronger than the brake.

    Raises InputError unless the mass is positive.

    >>> deceleration(force=150.0, road_load=30.0, mass=90.0)
    2.0
    """
    positive(mass=mass)
    return (force + road_load) / mass


def deceleration_at(brake: Brake, road: Road, speed: MetrePerSecond) -> MetrePerSecondSquared:
    """Return the deceleration at full brake at a speed."""
    return deceleration(force=brake_curve(brake)(speed), road_load=load_curve(road)(speed), mass=road.mass)


@method(
    "way = integral of mass * speed / (braking force + road load) from standstill up to the speed,"
    " by Simpson's rule with halved steps",
    source="derived force = mass x acceleration, along the way",
    at="speed",
)
def braking_distance(
    *, braking_force: ForceCurve, road_load: ForceCurve, mass: Kilogram, speed: MetrePerSecond
) -> Metre:
    """Return the way of a stop whose force changes with the speed.

    Raises InputError ("does not stop") where the slope is at least as strong as the brake at any speed on the
    way down to standstill, and unless mass and speed are positive.

    >>> round(braking_distance(braking_force=lambda _: 90.0, road_load=lambda _: 0.0, mass=90.0, speed=6.0), 6)
    18.0
    """
    positive(mass=mass, speed=speed)
    return way_between(braking_force, road_load, mass, (0.0, speed))


def way_between(
    braking_force: ForceCurve,
    road_load: ForceCurve,
    mass: Kilogram,
    speeds: tuple[MetrePerSecond, MetrePerSecond],
    *,
    parts: int = PARTS,
) -> Metre:
    """Return the way from the higher of two speeds down to the lower. Raises InputError as `braking_distance` does."""

    def way(at: float) -> tuple[float]:
        force = braking_force(at) + road_load(at)
        if force <= 0.0:
            raise NoFigure("speed", at, "does not stop", quantity="speed")
        return (mass * at / force,)

    return integral(way, *speeds, parts=parts)[0]


def distance_of_stop(brake: Brake, road: Road, speed: MetrePerSecond) -> Metre:
    """Return the braking way from a speed. Raises InputError ("does not stop") where it cannot."""
    return braking_distance(
        braking_force=searched(brake_curve(brake), lambda: quick_brake(plain(brake))),
        road_load=searched(load_curve(road), lambda: quick_load(plain(road))),
        mass=road.mass,
        speed=speed,
    )
