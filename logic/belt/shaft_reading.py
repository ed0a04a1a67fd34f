"""The tension that pulling the motor along the line of centres tells, with its error."""

from math import cos, sqrt

from logic.errors import not_negative, positive
from logic.si import Newton, One, Radian
from logic.workings import cited


@cited(
    "tension * sqrt((scale_error / pull)**2 + friction**2 + (1 - cos(angle))**2)",
    source="derived scale step, friction of the slots and pull askew, independent of each other",
    standing="derived",
)
def shaft_tension_error(
    *, tension: Newton, pull: Newton, scale_error: Newton, friction: One, angle: Radian
) -> Newton:
    """Error of the tension found by pulling the motor, a limit like those put in.

    `friction` is the share of the pull that the slots may take or give. Raises InputError unless tension and
    pull are positive and the rest is not below zero.

    >>> round(shaft_tension_error(tension=100.0, pull=190.0, scale_error=1.0, friction=0.15, angle=0.2), 1)
    15.1
    """
    positive(tension=tension, pull=pull)
    not_negative(scale_error=scale_error, friction=friction, angle=angle)
    return tension * sqrt((scale_error / pull) ** 2 + friction**2 + (1 - cos(angle)) ** 2)
