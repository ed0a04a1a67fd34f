"""What the board can do: loaded speed, steepest grade, acceleration, and what turns and flows at a speed."""

from math import asin, atan, sqrt, tan
from typing import Annotated, Literal

from logic.drive.push import Drivetrain, push_curve, top_unloaded_speed
from logic.drive.quick import plain, quick_load, quick_push, searched
from logic.drive.road import Road, air_drag_at, load_curve
from logic.errors import NoFigure, not_negative, positive
from logic.frozen import frozen
from logic.roots import bracketed
from logic.si import ForceCurve, Kilogram, MetrePerSecond, MetrePerSecondSquared, Newton, One
from logic.workings import Root, cited, solved, unrecorded

Outcome = Literal["meets", "cannot start", "runs past"]
"""How push and road load meet: at a speed, not even at standstill, or only above the unloaded speed."""


@solved("tractive_force - road_load", source="derived push = load, both by the speed")
def loaded_speed(
    *, tractive_force: ForceCurve, road_load: ForceCurve, unloaded_speed: MetrePerSecond
) -> Annotated[Root, "m/s"]:
    """Return the speed between standstill and the unloaded speed at which push and load are equal.

    Push never grows with speed and load never falls, so there is one at most. Raises InputError when there is
    none; `steady_speed` tells which way.
    """
    return bracketed(
        lambda speed: tractive_force(speed) - road_load(speed), 0.0, unloaded_speed, name="loaded_speed"
    )


@cited(
    "tan(asin((tractive_force - air_drag) / (mass * gravity * sqrt(1 + rolling_coefficient**2)))"
    " - atan(rolling_coefficient))",
    source="derived push = air + rolling + grade, solved for the angle",
    standing="derived",
)
def steepest_grade(
    *,
    tractive_force: Newton,
    air_drag: Newton,
    mass: Kilogram,
    gravity: MetrePerSecondSquared,
    rolling_coefficient: One,
) -> One:
    """Return the grade, rise over run, at which a push just holds the speed; negative if only downhill.

    Grip of the driven wheels is not asked. Raises InputError unless mass and gravity are positive and the
    rolling coefficient is not negative, and for a push beyond the weight either way, which no grade answers.

    >>> round(
    ...     steepest_grade(
    ...         tractive_force=110.0, air_drag=10.0, mass=100.0, gravity=10.0, rolling_coefficient=0.0
    ...     ),
    ...     4,
    ... )
    0.1005
    """
    positive(mass=mass, gravity=gravity)
    not_negative(rolling_coefficient=rolling_coefficient)
    weight = mass * gravity
    most = weight * sqrt(1.0 + rolling_coefficient**2)
    left = tractive_force - air_drag
    if not -weight < left <= most:
        raise NoFigure(
            "tractive_force", tractive_force, "beyond the weight", air_drag - weight, air_drag + most
        )
    return tan(asin(left / most) - atan(rolling_coefficient))


@cited("(tractive_force - road_load) / mass", source="derived force over mass", standing="derived")
def acceleration(*, tractive_force: Newton, road_load: Newton, mass: Kilogram) -> MetrePerSecondSquared:
    """Return what the push beyond the load does to the speed; negative when it slows.

    Turning wheels and rotors are left out, so it reads a little high. Raises InputError unless the mass is
    positive.

    >>> acceleration(tractive_force=180.0, road_load=30.0, mass=100.0)
    1.5
    """
    positive(mass=mass)
    return (tractive_force - road_load) / mass


@frozen(kw_only=True)
class Steady:
    """Where push and load meet. `speed` is None unless they do.

    `at` is the speed of the meeting, standstill ("cannot start") or unloaded ("runs past").
    """

    outcome: Outcome
    speed: MetrePerSecond | None
    at: MetrePerSecond
    unloaded: MetrePerSecond
    pushes: ForceCurve
    loads: ForceCurve

    @property
    def push(self) -> Newton:
        """Return the push there."""
        return self.pushes(self.at)

    @property
    def load(self) -> Newton:
        """Return the load there."""
        return self.loads(self.at)


def steady_speed(drive: Drivetrain, road: Road) -> Steady:
    """Return the loaded speed at full remote, or the key of the sentence that says why there is none."""
    push = searched(push_curve(drive), lambda: quick_push(plain(drive)))
    load = searched(load_curve(road), lambda: quick_load(plain(road)))
    return steady_between(push, load, top_unloaded_speed(drive))


def steady_between(push: ForceCurve, load: ForceCurve, top: MetrePerSecond) -> Steady:
    """Return where a push and a load meet below the unloaded speed, or why they do not."""

    def steady(outcome: Outcome, speed: MetrePerSecond | None, at: MetrePerSecond) -> Steady:
        return Steady(outcome=outcome, speed=speed, at=at, unloaded=top, pushes=push, loads=load)

    with unrecorded():
        starts, ends = push(0.0) > load(0.0), push(top) <= load(top)
    if not starts:
        return steady("cannot start", None, 0.0)
    if not ends:
        return steady("runs past", None, top)
    meeting = loaded_speed(tractive_force=push, road_load=load, unloaded_speed=top)
    return steady("meets", meeting, meeting)


def climb_at(push: Newton, road: Road, speed: MetrePerSecond) -> One:
    """Return the steepest grade on which a push holds a speed; the grade of `road` is not used.

    Raises InputError when the push is beyond the weight.
    """
    return steepest_grade(
        tractive_force=push,
        air_drag=air_drag_at(road, speed),
        mass=road.mass,
        gravity=road.gravity,
        rolling_coefficient=road.rolling_coefficient,
    )


def acceleration_at(push: Newton, road: Road, speed: MetrePerSecond) -> MetrePerSecondSquared:
    """Return the acceleration by a push at a speed."""
    return acceleration(tractive_force=push, road_load=load_curve(road)(speed), mass=road.mass)
