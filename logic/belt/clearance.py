"""Whether it all fits: pulley and motor above the ground, under the deck, and side by side on the hanger.

Seen from the side, with the board level and nobody leaning: a leaning deck comes nearer on one side.
"""

from math import sin

from logic.errors import positive
from logic.si import Metre, Radian
from logic.workings import cited


@cited("outside_diameter / 2 + back", source="derived pulley with its belt on", standing="derived")
def belt_back_radius(*, outside_diameter: Metre, back: Metre) -> Metre:
    """Radius of the belt's back on a pulley. Raises InputError unless both are positive.

    >>> belt_back_radius(outside_diameter=0.060, back=0.002)
    0.032
    """
    positive(outside_diameter=outside_diameter, back=back)
    return outside_diameter / 2 + back


@cited("wheel_diameter / 2 - radius", source="derived distance from the axle", standing="derived")
def ground_clearance(*, wheel_diameter: Metre, radius: Metre) -> Metre:
    """Gap between the ground and a round part on the axle; below zero it rubs.

    Raises InputError unless both are positive.

    >>> round(ground_clearance(wheel_diameter=0.100, radius=0.033), 4)
    0.017
    """
    positive(wheel_diameter=wheel_diameter, radius=radius)
    return wheel_diameter / 2 - radius


@cited("wheel_diameter - worn", source="derived wear of the tread", standing="derived")
def worn_wheel(*, wheel_diameter: Metre, worn: Metre) -> Metre:
    """Diameter of a wheel that has lost `worn` of it. Raises InputError unless something is left.

    >>> round(worn_wheel(wheel_diameter=0.100, worn=0.008), 3)
    0.092
    """
    positive(wheel_diameter=wheel_diameter, worn=worn, left=wheel_diameter - worn)
    return wheel_diameter - worn


@cited(
    "wheel_diameter / 2 + centre * sin(angle) - can_diameter / 2",
    source="derived the motor's place seen from the side",
    standing="derived",
)
def can_ground_clearance(
    *, wheel_diameter: Metre, centre: Metre, angle: Radian, can_diameter: Metre
) -> Metre:
    """Gap between the ground and the motor's can; `angle` is above the horizontal through the axle.

    Raises InputError unless the lengths are positive.

    >>> round(can_ground_clearance(wheel_diameter=0.100, centre=0.067, angle=0.0, can_diameter=0.063), 4)
    0.0185
    """
    positive(wheel_diameter=wheel_diameter, centre=centre, can_diameter=can_diameter)
    return wheel_diameter / 2 + centre * sin(angle) - can_diameter / 2


@cited(
    "deck_height - centre * sin(angle) - can_diameter / 2",
    source="derived the motor's place seen from the side",
    standing="derived",
)
def can_deck_clearance(*, deck_height: Metre, centre: Metre, angle: Radian, can_diameter: Metre) -> Metre:
    """Gap between the deck's underside and the motor's can, where the can stands under the deck.

    Raises InputError unless the lengths are positive.

    >>> round(can_deck_clearance(deck_height=0.080, centre=0.067, angle=0.0, can_diameter=0.063), 4)
    0.0485
    """
    positive(deck_height=deck_height, centre=centre, can_diameter=can_diameter)
    return deck_height - centre * sin(angle) - can_diameter / 2


@cited("centre - can_diameter / 2 - hanger_radius", source="derived side view", standing="derived")
def hanger_clearance(*, centre: Metre, can_diameter: Metre, hanger_radius: Metre) -> Metre:
    """Gap between the motor's can and the hanger it stands beside; below zero it touches.

    Raises InputError unless all are positive.

    >>> round(hanger_clearance(centre=0.067, can_diameter=0.063, hanger_radius=0.012), 4)
    0.0235
    """
    positive(centre=centre, can_diameter=can_diameter, hanger_radius=hanger_radius)
    return centre - can_diameter / 2 - hanger_radius


@cited(
    "hanger_length - 2 * (inset + plate + can_length)",
    source="derived two motors end to end on one hanger",
    standing="derived",
)
def gap_between_motors(*, hanger_length: Metre, inset: Metre, plate: Metre, can_length: Metre) -> Metre:
    """Gap between the ends of two motors that point at each other; below zero they do not fit side by side.

    `inset` is from the end of the hanger to the outer face of the mount plate. Raises InputError unless all
    are positive.

    >>> round(gap_between_motors(hanger_length=0.236, inset=0.020, plate=0.010, can_length=0.084), 4)
    0.008
    """
    positive(hanger_length=hanger_length, inset=inset, plate=plate, can_length=can_length)
    return hanger_length - 2 * (inset + plate + can_length)
