"""How far the motor must be able to move: inwards to lay a belt on, outwards to tension it."""

from math import asin, cos

from logic.errors import InputError, not_negative, positive
from logic.si import Metre, Newton
from logic.tables import Row, pick, rows
from logic.workings import cited


@cited("without_flanges + for_flanges", source="gates-17195 p. 182 table 4")
def laying_on_travel(*, without_flanges: Metre, for_flanges: Metre) -> Metre:
    """Way the motor moves in from its working place so that the belt can be laid on.

    Raises InputError for a travel below zero.

    >>> round(laying_on_travel(without_flanges=0.001, for_flanges=0.0135), 4)
    0.0145
    """
    positive(without_flanges=without_flanges)
    not_negative(for_flanges=for_flanges)
    return without_flanges + for_flanges


def inward_travel(*, length: Metre, pitch: Metre, flanged: str) -> Metre:
    """Return the least travel inwards for a belt length, with what the flanges add, and record the rows.

    Raises InputError for a belt longer than the table, or a flange count other than "none", "one" and "both".

    >>> round(inward_travel(length=0.280, pitch=0.005, flanged="one"), 4)
    0.0145
    """
    return laying_on_travel(
        without_flanges=_row("belt_travel", length).number("inward"),
        for_flanges=pick("belt_flange_travel", pitch=pitch, flanged=flanged).number("added"),
    )


def outward_travel(*, length: Metre) -> Metre:
    """Return the least travel outwards to tension a belt, and record the row.

    >>> outward_travel(length=0.280)
    0.0008
    """
    return _row("belt_travel", length).number("outward")


def centre_tolerance(*, length: Metre) -> Metre:
    """Return what a belt's own length tolerance is worth as centre distance, and record the row.

    >>> centre_tolerance(length=0.280)
    0.00023
    """
    return _row("belt_tolerance", length).number("centre")


def _row(table: str, length: float) -> Row:
    positive(length=length)
    for row in rows(table):
        if length <= row.cells["up_to"] * (1 + 1e-9):
            return row.found_by(length)
    raise InputError("length", length, "range", low=0.0, high=rows(table)[-1].cells["up_to"])


@cited(
    "(wanted - tension) * length / (stiffness * 2 * cos(asin((large - small) / (2 * centre))))",
    source="derived slope of belt_length by the centre distance, in a frame that does not give",
    standing="derived",
)
def nudge(  # noqa: PLR0913  (two tensions and the drive)
    *,
    wanted: Newton,
    tension: Newton,
    length: Metre,
    stiffness: Newton,
    large: Metre,
    small: Metre,
    centre: Metre,
) -> Metre:
    """Way to move the motor from the wheel for a wanted tension; below zero is towards it.

    A real frame gives, so the way is the least it can be: nudge, then measure again. Raises InputError unless
    sizes are positive and the pitch circles stand apart.

    >>> round(nudge(
    ...     wanted=116.6, tension=100.0, length=0.265, stiffness=226800.0,
    ...     large=0.0573, small=0.0255, centre=0.0656) * 1e6)
    10
    """
    positive(length=length, stiffness=stiffness, large=large, small=small, centre=centre)
    if small > large or centre < (large + small) / 2:
        raise InputError("centre", centre, "pulleys overlap", low=(large + small) / 2)
    return (wanted - tension) * length / (stiffness * 2 * cos(asin((large - small) / (2 * centre))))


@cited(
    "(before - now) * length / stiffness",
    source="derived lost tension over stiffness, the motor not moved",
    standing="derived",
)
def stretch_since(*, before: Newton, now: Newton, length: Metre, stiffness: Newton) -> Metre:
    """Length a belt has grown by between two tensions if nothing else moved.

    Raises InputError unless length and stiffness are positive.

    >>> round(stretch_since(before=110.0, now=90.0, length=0.28, stiffness=224000.0) * 1e6)
    25
    """
    positive(length=length, stiffness=stiffness)
    return (before - now) * length / stiffness
