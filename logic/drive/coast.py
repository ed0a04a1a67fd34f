"""Rolling coefficient from one coast to standstill on the level: by its distance or by its time."""

from math import atan, exp, sqrt
from typing import Annotated

from logic.errors import InputError, NoFigure, positive
from logic.roots import bracketed
from logic.si import (
    Kilogram,
    KilogramPerCubicMetre,
    Metre,
    MetrePerSecond,
    MetrePerSecondSquared,
    One,
    Second,
    SquareMetre,
)
from logic.workings import Root, cited, solved

LARGEST_ROLLING = 0.5
"""Where the search for a rolling coefficient ends: sand, not a road."""


@cited(
    "0.5 * air_density * drag_area * speed**2 / (mass * gravity * (exp(air_density * drag_area * distance / mass) - 1))",
    source="derived way of coasting against rolling and air, turned round",
    standing="derived",
)
def rolling_from_distance(  # noqa: PLR0913  (what a coast depends on)
    *,
    air_density: KilogramPerCubicMetre,
    drag_area: SquareMetre,
    speed: MetrePerSecond,
    distance: Metre,
    mass: Kilogram,
    gravity: MetrePerSecondSquared,
) -> One:
    """Return the rolling coefficient of a coast to standstill on the level, no wind.

    Turning wheels are left out: their share of the motion is a few per cent. Raises InputError unless all are
    positive.

    >>> round(
    ...     rolling_from_distance(
    ...         air_density=1.225, drag_area=0.6, speed=5.0, distance=60.0, mass=90.0, gravity=9.80665
    ...     ),
    ...     4,
    ... )
    0.0165
    """
    positive(
        air_density=air_density,
        drag_area=drag_area,
        speed=speed,
        distance=distance,
        mass=mass,
        gravity=gravity,
    )
    growth = exp(air_density * drag_area * distance / mass) - 1.0
    return 0.5 * air_density * drag_area * speed**2 / (mass * gravity * growth)


def coasting_time(  # noqa: PLR0913  (what a coast depends on)
    *,
    rolling: One,
    air_density: KilogramPerCubicMetre,
    drag_area: SquareMetre,
    speed: MetrePerSecond,
    end: MetrePerSecond,
    mass: Kilogram,
    gravity: MetrePerSecondSquared,
) -> Second:
    """Return how long a coast takes from one speed to a lower one on the level, no wind.

    >>> round(
    ...     coasting_time(
    ...         rolling=0.015, air_density=1.225, drag_area=0.6, speed=5.0, end=0.0, mass=90.0, gravity=9.80665
    ...     ),
    ...     1,
    ... )
    28.3
    """
    air = 0.5 * air_density * drag_area / mass
    ground = rolling * gravity
    scale = sqrt(air / ground)
    return (atan(speed * scale) - atan(end * scale)) / sqrt(air * ground)


@solved(
    "(atan(speed * sqrt(air_density * drag_area / (2 * mass * rolling_from_time * gravity)))"
    " - atan(end * sqrt(air_density * drag_area / (2 * mass * rolling_from_time * gravity))))"
    " / sqrt(air_density * drag_area * rolling_from_time * gravity / (2 * mass)) - time",
    source="derived coasting against rolling and air",
)
def rolling_from_time(  # noqa: PLR0913  (what a coast depends on)
    *,
    air_density: KilogramPerCubicMetre,
    drag_area: SquareMetre,
    speed: MetrePerSecond,
    end: MetrePerSecond,
    time: Second,
    mass: Kilogram,
    gravity: MetrePerSecondSquared,
) -> Annotated[Root, "1"]:
    """Return the rolling coefficient of a coast that took a time from one speed to a lower one.

    Raises InputError unless all but the end are positive, unless the end is below the start, and when the air
    alone would have slowed it sooner ("rolls on"): the drag area is then too large, or it went downhill.
    """
    positive(air_density=air_density, drag_area=drag_area, speed=speed, time=time, mass=mass, gravity=gravity)
    if not 0.0 <= end < speed:
        raise InputError("ask.coast_end", end, "range", low=0.0, high=speed, quantity="speed")

    def miss(rolling: float) -> float:
        taken = coasting_time(
            rolling=rolling,
            air_density=air_density,
            drag_area=drag_area,
            speed=speed,
            end=end,
            mass=mass,
            gravity=gravity,
        )
        return taken - time

    least = 1e-6
    if miss(least) < 0.0:
        raise NoFigure("rolling", time, "rolls on")
    if miss(LARGEST_ROLLING) > 0.0:
        raise InputError("rolling", time, "range", low=0.0, high=LARGEST_ROLLING)
    return bracketed(miss, least, LARGEST_ROLLING, name="rolling")
