"""The grade of a hill from how a phone lies on the deck, its long edge along the road."""

from math import hypot


def grade_of(gravity: tuple[float, float, float]) -> float:
    """Return rise over run along the long edge, up or down alike, from gravity along short edge, long edge and screen in m/s2.

    The tangent of the angle between the long edge and the level: across the road the phone may lean as it likes. Source:
    plane trigonometry; the axes are those of Android's sensors.

    >>> grade_of((0.0, 0.0, 9.81))
    0.0
    >>> round(grade_of((0.0, 1.0, 10.0)), 6)
    0.1
    """
    across, along, out = gravity
    level = hypot(across, out)
    return abs(along) / level if level else float("inf")
