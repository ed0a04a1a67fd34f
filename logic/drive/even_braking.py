"""Even braking: the way of a stop by one deceleration, for a board whose drive is not known yet."""

from math import sin

from logic.errors import NoFigure, positive
from logic.si import Metre, MetrePerSecond, MetrePerSecondSquared, Radian
from logic.workings import cited


@cited(
    "deceleration + gravity * sin(slope)",
    source="derived the weight along the slope helps uphill and pushes downhill",
    standing="derived",
)
def slowed_on_slope(
    *, deceleration: MetrePerSecondSquared, gravity: MetrePerSecondSquared, slope: Radian
) -> MetrePerSecondSquared:
    """Return what a brake slows by on a slope, uphill positive, that slows by so much on the level.

    >>> slowed_on_slope(deceleration=2.0, gravity=9.80665, slope=0.0)
    2.0
    """
    return deceleration + gravity * sin(slope)


@cited("speed**2 / (2 * deceleration)", source="derived even braking to standstill", standing="derived")
def even_braking_distance(*, speed: MetrePerSecond, deceleration: MetrePerSecondSquared) -> Metre:
    """Return the way from a speed to standstill.

    Raises InputError unless the speed is positive, NoFigure where nothing slows.

    >>> even_braking_distance(speed=30.0, deceleration=5.0)
    90.0
    """
    positive(speed=speed)
    if deceleration <= 0.0:
        raise NoFigure("braking", None, "does not stop")
    return speed**2 / (2 * deceleration)
