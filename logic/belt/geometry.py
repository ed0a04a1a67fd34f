"""Two pulleys and an open belt: diameters, length, centre distance, span, wrap and teeth in mesh.

`large` and `small` are pitch diameters. A wheel pulley may have fewer teeth than the motor pulley, so a
caller sorts the two first (`small, large = sorted((motor_pulley, wheel_pulley))`); a `small` above `large` is
refused here.
"""

from math import acos, asin, cos, floor, pi, sqrt
from typing import Annotated

from logic.errors import InputError, positive
from logic.roots import bracketed
from logic.si import Metre, One, Radian
from logic.tables import rows
from logic.workings import Root, cited, solved


def _check(large: float, small: float) -> None:
    positive(large=large, small=small)
    if small > large:
        raise InputError("small", small, "larger than the large pulley", high=large)


def _check_drive(centre: float, large: float, small: float) -> None:
    _check(large, small)
    positive(centre=centre)
    if centre < (large + small) / 2:
        raise InputError("centre", centre, "pulleys overlap", low=(large + small) / 2)


@cited("pitch * teeth / pi", source="sdpsi-2017 p. T-16 eq. 8-1")
def pitch_diameter(*, pitch: Metre, teeth: One) -> Metre:
    """Diameter of the circle on which the belt's cords run. Raises InputError unless both are positive.

    >>> round(pitch_diameter(pitch=0.005, teeth=16.0), 5)
    0.02546
    """
    positive(pitch=pitch, teeth=teeth)
    return pitch * teeth / pi


@cited("pitch_diameter - 2 * differential", source="sdpsi-2017 p. T-16 eq. 8-2")
def outside_diameter(*, pitch_diameter: Metre, differential: Metre) -> Metre:
    """Diameter over the tips of a pulley's teeth, what a calliper reads, less than the pitch diameter.

    Raises InputError unless both are positive and the differential is less than the radius.

    >>> round(outside_diameter(pitch_diameter=0.02546, differential=0.0005715), 5)
    0.02432
    """
    positive(pitch_diameter=pitch_diameter, differential=differential)
    if 2 * differential >= pitch_diameter:
        raise InputError("differential", differential, "range", high=pitch_diameter / 2)
    return pitch_diameter - 2 * differential


@cited("pitch * teeth", source="derived one tooth a pitch", standing="derived")
def length_of_teeth(*, pitch: Metre, teeth: One) -> Metre:
    """Pitch length of a belt with so many teeth. Raises InputError unless both are positive.

    >>> length_of_teeth(pitch=0.005, teeth=53.0)
    0.265
    """
    positive(pitch=pitch, teeth=teeth)
    return pitch * teeth


@cited(
    "2 * centre * cos(asin((large - small) / (2 * centre))) + pi * (large + small) / 2"
    " + (large - small) * asin((large - small) / (2 * centre))",
    source="gates-17195 p. 177 formula 3",
)
def belt_length(*, centre: Metre, large: Metre, small: Metre) -> Metre:
    """Pitch length of a belt that just fits the drive, exact.

    Raises InputError when `small` exceeds `large` or the pitch circles would overlap.

    >>> round(belt_length(centre=0.0655580, large=0.0572958, small=0.0254648), 5)
    0.265
    """
    _check_drive(centre, large, small)
    angle = asin((large - small) / (2 * centre))
    return 2 * centre * cos(angle) + pi * (large + small) / 2 + (large - small) * angle


@solved(
    "2 * centre_distance * cos(asin((large - small) / (2 * centre_distance))) + pi * (large + small) / 2"
    " + (large - small) * asin((large - small) / (2 * centre_distance)) - length",
    source="gates-17195 p. 177 formula 3",
    standing="published",
)
def centre_distance(*, length: Metre, large: Metre, small: Metre) -> Annotated[Root, "m"]:
    """Distance of the shafts at which a belt of that pitch length just fits, exact.

    Searched between the distance at which the pitch circles touch and half the belt length. Raises InputError
    when `small` exceeds `large`, or when the belt is too short to go round both pulleys side by side (`low`
    is the least length).

    >>> round(centre_distance(length=0.265, large=0.0572958, small=0.0254648), 5)
    0.06556
    """
    _check(large, small)
    positive(length=length)
    touching = (large + small) / 2
    least = belt_length(centre=touching, large=large, small=small)
    if length < least:
        raise InputError("length", length, "belt too short for the pulleys", low=least)
    return bracketed(
        lambda centre: belt_length(centre=centre, large=large, small=small) - length,
        touching,
        length / 2,
        name="centre distance",
    )


@cited("sqrt(centre**2 - ((large - small) / 2)**2)", source="sdpsi-2017 p. T-31 eq. 10-3")
def span_length(*, centre: Metre, large: Metre, small: Metre) -> Metre:
    """Free length of belt between the pulleys, from where it leaves one to where it meets the other.

    Raises InputError as `belt_length` does.

    >>> round(span_length(centre=0.41522, large=0.14260, small=0.09167), 5)
    0.41444
    """
    _check_drive(centre, large, small)
    return sqrt(centre**2 - ((large - small) / 2) ** 2)


@cited(
    "2 * acos((large - small) / (2 * centre))",
    source="derived the belt leaves each pulley square to its radius",
    standing="derived",
)
def wrap_angle(*, centre: Metre, large: Metre, small: Metre) -> Radian:
    """Angle over which the belt lies on the small pulley; the large one has the rest of a turn.

    Raises InputError as `belt_length` does.

    >>> round(wrap_angle(centre=0.0655580, large=0.0572958, small=0.0254648), 3)
    2.651
    """
    _check_drive(centre, large, small)
    return 2 * acos((large - small) / (2 * centre))


@cited("wrap / (2 * pi) * teeth", source="sdpsi-2017 p. T-66")
def teeth_in_mesh(*, wrap: Radian, teeth: One) -> One:
    """Teeth of the small pulley under the belt, with the fraction; `teeth` is the small pulley's count.

    Raises InputError unless both are positive and the wrap is at most half a turn.

    >>> teeth_in_mesh(wrap=3.141592653589793, teeth=16.0)
    8.0
    """
    positive(wrap=wrap, teeth=teeth)
    if wrap > pi:
        raise InputError("wrap", wrap, "range", low=0.0, high=pi)
    return wrap / (2 * pi) * teeth


@cited("floor(teeth * (0.5 - (large - small) / (6 * centre)))", source="sdpsi-2017 p. T-66 eq. 24-9")
def whole_teeth_in_mesh(*, centre: Metre, large: Metre, small: Metre, teeth: One) -> One:
    """Whole teeth in mesh on the small pulley as handbooks count: approximate wrap, the fraction dropped.

    Raises InputError as `belt_length` does.

    >>> whole_teeth_in_mesh(centre=0.41522, large=0.14260, small=0.09167, teeth=36.0)
    17.0
    """
    _check_drive(centre, large, small)
    positive(teeth=teeth)
    return float(floor(teeth * (0.5 - (large - small) / (6 * centre))))


def mesh_factor(*, whole_teeth: One) -> One:
    """Return what is left of the belt's rating with so many whole teeth in mesh, and record the row.

    Raises InputError below two teeth, for which nothing is printed.

    >>> mesh_factor(whole_teeth=5.0)
    0.8
    """
    reached = [row for row in rows("belt_mesh") if row.cells["teeth_in_mesh"] <= whole_teeth]
    if not reached:
        raise InputError(
            "teeth in mesh", whole_teeth, "too few", low=rows("belt_mesh")[0].cells["teeth_in_mesh"]
        )
    return reached[-1].number("factor")
