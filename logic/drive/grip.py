"""What the tyres hold: one driven or braked axle, with the weight shifted on to it or off it."""

from math import cos

from logic.errors import InputError, positive
from logic.si import Kilogram, Metre, MetrePerSecondSquared, Newton, One, Radian
from logic.workings import cited


@cited(
    "friction * mass * gravity * cos(slope) * distance / (wheelbase + friction * height)",
    source="derived moments about the other axle: the force lifts its own axle",
    standing="derived",
)
def grip_of_lightened_axle(  # noqa: PLR0913  (weight, slope and three lengths)
    *,
    friction: One,
    mass: Kilogram,
    gravity: MetrePerSecondSquared,
    slope: Radian,
    distance: Metre,
    wheelbase: Metre,
    height: Metre,
) -> Newton:
    """Return the most force of an axle that the force itself lightens: braking behind, driving in front.

    `distance` is from the other axle to the middle of all mass, along the board, `height` from the ground to it.
    Raises InputError unless all but the slope are positive and the distance is within the wheelbase.

    >>> round(
    ...     grip_of_lightened_axle(
    ...         friction=0.4, mass=1.0, gravity=9.80665, slope=0.0, distance=0.375, wheelbase=0.75, height=1.0
    ...     ),
    ...     2,
    ... )
    1.28
    """
    _check(friction, mass, gravity, distance, wheelbase, height)
    return friction * mass * gravity * cos(slope) * distance / (wheelbase + friction * height)


@cited(
    "mass * gravity * cos(slope) * min(friction * distance / max(wheelbase - friction * height, 1e-9 * wheelbase),"
    " (wheelbase - distance) / height, friction)",
    source="derived moments about both axles, up to where the other one lifts",
    standing="derived",
)
def grip_of_loaded_axle(  # noqa: PLR0913  (weight, slope and three lengths)
    *,
    friction: One,
    mass: Kilogram,
    gravity: MetrePerSecondSquared,
    slope: Radian,
    distance: Metre,
    wheelbase: Metre,
    height: Metre,
) -> Newton:
    """Return the most force of an axle that the force itself loads: driving behind, braking in front.

    `distance` is from the other axle to the middle of all mass. It ends where the other axle lifts off (a rigid
    rider tips over), or where the whole weight grips. Raises InputError as `grip_of_lightened_axle` does.

    >>> round(
    ...     grip_of_loaded_axle(
    ...         friction=0.6, mass=1.0, gravity=9.80665, slope=0.0, distance=0.375, wheelbase=0.75, height=1.0
    ...     ),
    ...     2,
    ... )
    3.68
    """
    _check(friction, mass, gravity, distance, wheelbase, height)
    left = max(wheelbase - friction * height, 1e-9 * wheelbase)
    share = min(friction * distance / left, (wheelbase - distance) / height, friction)
    return mass * gravity * cos(slope) * share


def _check(  # noqa: PLR0913  (as the formulas)
    friction: float, mass: float, gravity: float, distance: float, wheelbase: float, height: float
) -> None:
    positive(
        friction=friction,
        mass=mass,
        gravity=gravity,
        distance=distance,
        wheelbase=wheelbase,
        height=height,
    )
    if distance > wheelbase:
        raise InputError("distance", distance, "range", low=0.0, high=wheelbase, quantity="length")
