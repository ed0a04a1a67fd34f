"""What a leaning board does: how far its axles steer, its circle, where the deck meets a wheel; and an edge on the road.

A truck turns about one axis that is tilted up from the deck. While the deck leans the axle stays level, so it must steer.
Bushings, flex and the axle's own shift along the board are left out.
"""

from math import atan, sin, sqrt, tan

from logic.errors import InputError, NoFigure, positive
from logic.si import Metre, MetrePerSecond, MetrePerSecondSquared, One, Radian
from logic.workings import cited


@cited(
    "atan(tan(pivot) * sin(lean))",
    source="derived the axle stays level while the deck leans about the pivot axis",
    standing="derived",
)
def steer_angle(*, pivot: Radian, lean: Radian) -> Radian:
    """Return how far an axle steers; `pivot` is the tilt of its axis above the deck, `lean` that of the deck.

    At 45 degrees of pivot the tangent of the steer is the sine of the lean. Raises InputError unless both are positive.

    >>> from math import pi
    >>> round(steer_angle(pivot=pi / 4, lean=pi / 6), 6) == round(atan(0.5), 6)
    True
    """
    positive(pivot=pivot, lean=lean)
    return atan(tan(pivot) * sin(lean))


@cited(
    "wheelbase / (tan(front) + tan(rear))",
    source="derived both axles point at the middle of the circle",
    standing="derived",
)
def turn_radius(*, wheelbase: Metre, front: Radian, rear: Radian) -> Metre:
    """Return the radius of the circle the middle line of the board rides, axles steered against each other.

    Raises InputError unless the wheelbase and the sum of both steers are positive.

    >>> from math import atan
    >>> round(turn_radius(wheelbase=0.75, front=atan(0.25), rear=atan(0.25)), 6)
    1.5
    """
    positive(wheelbase=wheelbase, steer=front + rear)
    return wheelbase / (tan(front) + tan(rear))


@cited("2 * radius + track", source="derived outer wheel on both sides of the circle", standing="derived")
def turning_circle(*, radius: Metre, track: Metre) -> Metre:
    """Return the width of road that a full turn takes; `track` is from outer edge to outer edge of the wheels.

    >>> turning_circle(radius=1.5, track=0.25)
    3.25
    """
    positive(radius=radius, track=track)
    return 2.0 * radius + track


@cited(
    "sqrt(friction * gravity * radius)",
    source="derived grip is the force towards the middle of the circle",
    standing="derived",
)
def fastest_in_turn(*, friction: One, gravity: MetrePerSecondSquared, radius: Metre) -> MetrePerSecond:
    """Return the speed at which the wheels slide out of a circle on a level road.

    >>> fastest_in_turn(friction=0.4, gravity=10.0, radius=4.0)
    4.0
    """
    positive(friction=friction, gravity=gravity, radius=radius)
    return sqrt(friction * gravity * radius)


@cited(
    "deck_height + riser - wheel_diameter / 2",
    source="derived deck's underside over the top of the wheel",
    standing="derived",
)
def gap_over_wheel(*, deck_height: Metre, riser: Metre, wheel_diameter: Metre) -> Metre:
    """Return the gap between a wheel and the deck, board level; below zero they touch.

    `deck_height` is from the axle to the deck's underside, `riser` what is added to it.

    >>> round(gap_over_wheel(deck_height=0.070, riser=0.006, wheel_diameter=0.100), 4)
    0.026
    """
    positive(deck_height=deck_height, wheel_diameter=wheel_diameter)
    return deck_height + riser - wheel_diameter / 2.0


@cited(
    "deck_height + riser + wheel_diameter / 2",
    source="derived wheel under the axle, deck over it",
    standing="derived",
)
def deck_over_ground(*, deck_height: Metre, riser: Metre, wheel_diameter: Metre) -> Metre:
    """Return how high the deck's underside stands over the ground.

    >>> round(deck_over_ground(deck_height=0.070, riser=0.006, wheel_diameter=0.100), 4)
    0.126
    """
    positive(deck_height=deck_height, wheel_diameter=wheel_diameter)
    return deck_height + riser + wheel_diameter / 2.0


@cited(
    "min(deck_width, track) / 2",
    source="derived where the edge of the deck, or the outer face of the wheel, stands",
    standing="derived",
)
def biting_edge(*, deck_width: Metre, track: Metre, wheel_width: Metre) -> Metre:
    """Return how far from the board's middle line deck and wheel meet first.

    Raises InputError with the outcome where the deck does not reach over the wheels at all.

    >>> biting_edge(deck_width=0.24, track=0.30, wheel_width=0.06)
    0.12
    """
    positive(deck_width=deck_width, track=track, wheel_width=wheel_width)
    if deck_width / 2.0 <= track / 2.0 - wheel_width:
        raise NoFigure("deck_width", deck_width, "clear of the wheels")
    return min(deck_width, track) / 2.0


@cited(
    "atan(gap / edge)",
    source="derived the deck leans about its own middle line",
    standing="estimate",
)
def bite_lean(*, gap: Metre, edge: Metre) -> Radian:
    """Return the lean at which the deck meets a wheel; not above zero where it rests on it already.

    A rider's weight, bushings that give way and a wheel that steers under the edge make it less.

    >>> from math import pi
    >>> round(bite_lean(gap=0.1, edge=0.1) / pi, 4)
    0.25
    """
    positive(edge=edge)
    return atan(gap / edge)


@cited(
    "gap - edge * tan(lean)",
    source="derived the deck leans about its own middle line",
    standing="estimate",
)
def gap_at_lean(*, gap: Metre, edge: Metre, lean: Radian) -> Metre:
    """Return what is left between deck and wheel at a lean; below zero it bites.

    >>> from math import pi
    >>> round(gap_at_lean(gap=0.05, edge=0.1, lean=pi / 4), 6)
    -0.05
    """
    positive(edge=edge, lean=lean)
    return gap - edge * tan(lean)


@cited(
    "sqrt(wheel_diameter * edge - edge**2) / (wheel_diameter / 2 - edge)",
    source="derived moments about the edge",
    standing="derived",
)
def push_over_edge(*, wheel_diameter: Metre, edge: Metre) -> One:
    """Return the push, as a share of what the wheel carries, that rolls it over an edge from standstill.

    The tyre does not give and there is no run-up: it compares wheels. Raises InputError unless the edge is below the axle.

    >>> round(push_over_edge(wheel_diameter=0.10, edge=0.01), 6)
    0.75
    """
    positive(wheel_diameter=wheel_diameter, edge=edge)
    if edge >= wheel_diameter / 2.0:
        raise InputError("ask.edge", edge, "range", 0.0, wheel_diameter / 2.0, "length")
    return sqrt(wheel_diameter * edge - edge**2) / (wheel_diameter / 2.0 - edge)
