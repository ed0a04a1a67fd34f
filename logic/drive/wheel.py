"""A worn wheel: its diameter from a roll-out, and what wear does."""

from math import pi

from logic.errors import positive
from logic.si import Metre, One
from logic.workings import cited


@cited("circumference / pi", source="derived circle", standing="derived")
def diameter_of(*, circumference: Metre) -> Metre:
    """Return the diameter of a circumference. Raises InputError unless it is positive.

    >>> round(diameter_of(circumference=0.3142), 4)
    0.1
    """
    positive(circumference=circumference)
    return circumference / pi


@cited(
    "diameter / other - 1", source="derived speed goes with the diameter, push against it", standing="derived"
)
def share_of_change(*, diameter: Metre, other: Metre) -> One:
    """Return how a figure that goes with the diameter changes from the other wheel to this one.

    Raises InputError unless both are positive.

    >>> round(share_of_change(diameter=0.085, other=0.090), 3)
    -0.056
    """
    positive(diameter=diameter, other=other)
    return diameter / other - 1.0
