"""What the road asks: air, rolling and grade, for a board that moves forward."""

from collections.abc import Callable
from math import atan, cos, isfinite, sin

from logic.errors import InputError, not_negative, positive
from logic.frozen import frozen
from logic.si import (
    Kilogram,
    KilogramPerCubicMetre,
    MetrePerSecond,
    MetrePerSecondSquared,
    Newton,
    One,
    Radian,
    SquareMetre,
)
from logic.tables import rows
from logic.workings import cited


@frozen(kw_only=True)
class Road:
    """All that makes the load. `grade` is rise over run, `wind` the headwind; both may be negative."""

    mass: Kilogram
    grade: One
    wind: MetrePerSecond
    air_density: KilogramPerCubicMetre
    gravity: MetrePerSecondSquared
    rolling_coefficient: One
    drag_area: SquareMetre

    def __post_init__(self) -> None:
        """Refuse what no road has."""
        positive(mass=self.mass, air_density=self.air_density, gravity=self.gravity)
        not_negative(rolling_coefficient=self.rolling_coefficient, drag_area=self.drag_area)
        for name in ("grade", "wind"):
            if not isfinite(vars(self)[name]):
                raise InputError(name, vars(self)[name], "not a number")


def standard(figure: str) -> float:
    """Return a figure of the road table in SI and record its row.

    `figure` is "air_density", "gravity", or what is assumed until the board says otherwise:
    "rolling_coefficient", "drag_area", "efficiency", "duty". Raises InputError for another.

    >>> standard("air_density")
    1.225
    """
    for row in rows("road"):
        if figure in row:
            return row.number(figure)
    raise InputError("road", figure, "not in the table")


@cited("atan(grade)", source="martin-1998 grade as rise over run")
def slope_angle(*, grade: One) -> Radian:
    """Return the angle of a slope from its grade, rise over run; downhill is negative.

    >>> slope_angle(grade=0.0)
    0.0
    """
    return atan(grade)


@cited(
    "0.5 * air_density * drag_area * (speed + wind) * abs(speed + wind)",
    source="martin-1998 aerodynamic term, with the spokes' area left out",
)
def air_drag(
    *,
    air_density: KilogramPerCubicMetre,
    drag_area: SquareMetre,
    speed: MetrePerSecond,
    wind: MetrePerSecond,
) -> Newton:
    """Return the push of the air against the rider. `wind` is the headwind; a tailwind is negative.

    A tailwind faster than the board pushes: the drag is then negative. Side wind is left out. Raises
    InputError unless the density is positive and the drag area not negative.

    >>> round(air_drag(air_density=1.225, drag_area=0.6, speed=8.0, wind=2.0), 2)
    36.75
    """
    positive(air_density=air_density)
    not_negative(drag_area=drag_area)
    through_air = speed + wind
    return 0.5 * air_density * drag_area * through_air * abs(through_air)


@cited("rolling_coefficient * mass * gravity * cos(slope)", source="martin-1998 rolling term")
def rolling_resistance(
    *, rolling_coefficient: One, mass: Kilogram, gravity: MetrePerSecondSquared, slope: Radian
) -> Newton:
    """Return the rolling resistance of all wheels. It is taken as the same at every speed, and as it starts.

    For urethane wheels no measured coefficient was found. Raises InputError unless mass and gravity are
    positive and the coefficient not negative.

    >>> round(rolling_resistance(rolling_coefficient=0.015, mass=100.0, gravity=10.0, slope=0.0), 9)
    15.0
    """
    positive(mass=mass, gravity=gravity)
    not_negative(rolling_coefficient=rolling_coefficient)
    return rolling_coefficient * mass * gravity * cos(slope)


@cited("mass * gravity * sin(slope)", source="martin-1998 potential energy term")
def grade_resistance(*, mass: Kilogram, gravity: MetrePerSecondSquared, slope: Radian) -> Newton:
    """Return the weight's part along the road; downhill is negative.

    Raises InputError unless mass and gravity are positive.

    >>> grade_resistance(mass=100.0, gravity=10.0, slope=0.0)
    0.0
    """
    positive(mass=mass, gravity=gravity)
    return mass * gravity * sin(slope)


@cited(
    "air_drag + rolling_resistance + grade_resistance",
    source="martin-1998 sum of the terms, with wheel bearings left out",
)
def road_load(*, air_drag: Newton, rolling_resistance: Newton, grade_resistance: Newton) -> Newton:
    """Return the push at the wheels that holds the speed; negative where the board must be braked.

    Wheel bearings are left out (0.86 W of 395 W in the example that the tests work through).

    >>> road_load(air_drag=20.0, rolling_resistance=15.0, grade_resistance=-5.0)
    30.0
    """
    return air_drag + rolling_resistance + grade_resistance


def load_curve(road: Road) -> Callable[[float], float]:
    """Return the road load as a function of the road speed."""
    slope = slope_angle(grade=road.grade)
    rolling = rolling_resistance(
        rolling_coefficient=road.rolling_coefficient, mass=road.mass, gravity=road.gravity, slope=slope
    )
    grade = grade_resistance(mass=road.mass, gravity=road.gravity, slope=slope)

    def load(speed: MetrePerSecond) -> Newton:
        return road_load(
            air_drag=air_drag_at(road, speed), rolling_resistance=rolling, grade_resistance=grade
        )

    return load


def air_drag_at(road: Road, speed: MetrePerSecond) -> Newton:
    """Return the air drag of a road at a speed."""
    return air_drag(air_density=road.air_density, drag_area=road.drag_area, speed=speed, wind=road.wind)
