"""What the tables print for a belt: its profile, and the figures that go with its width."""

from logic.errors import InputError, positive
from logic.frozen import frozen
from logic.si import KilogramPerMetre, Metre, Newton, One
from logic.tables import Row, matching, pick
from logic.workings import cited

NARROWEST = 2 / 3
WIDEST = 1.2
"""How far below the narrowest and above the widest printed width the proportion is trusted (our own limits).

For the 5 mm profiles that is 6 mm to 30 mm, the widths for which optibelt-rubber p. 56 prints width factors.
"""


@frozen
class Belt:
    """Figures of one profile and width; `mass_factor` is for the speed term only, not the belt's mass."""

    profile: str
    width: Metre
    pitch: Metre
    differential: Metre
    mass_factor: KilogramPerMetre
    stretch: Newton
    least_tension: Newton
    working_tension: Newton
    stiffness: Newton


@cited("printed_force * width / printed_width", source="sdpsi-2017 p. T-23")
def force_for_width(*, printed_force: Newton, width: Metre, printed_width: Metre) -> Newton:
    """Tension or stretch factor of a width between the printed ones, in proportion to the width.

    Raises InputError unless all are positive.

    >>> round(force_for_width(printed_force=454.0, width=0.015, printed_width=0.0254))
    268
    """
    positive(printed_force=printed_force, width=width, printed_width=printed_width)
    return printed_force * width / printed_width


@cited("printed_mass_factor * width / printed_width", source="sdpsi-2017 p. T-23")
def mass_factor_for_width(
    *, printed_mass_factor: KilogramPerMetre, width: Metre, printed_width: Metre
) -> KilogramPerMetre:
    """Mass factor of a width between the printed ones, in proportion to the width.

    Raises InputError unless all are positive.

    >>> round(mass_factor_for_width(printed_mass_factor=0.046, width=0.012, printed_width=0.015), 4)
    0.0368
    """
    positive(printed_mass_factor=printed_mass_factor, width=width, printed_width=printed_width)
    return printed_mass_factor * width / printed_width


@cited(
    "2048 * stretch",
    source="derived the published pull force is the force on a stretched span at a deflection of span / 64",
    standing="derived",
)
def belt_stiffness(*, stretch: Newton) -> Newton:
    """Force per unit strain of the whole belt width, from the printed stretch factor Y.

    Raises InputError unless it is positive.

    >>> belt_stiffness(stretch=100.0)
    204800.0
    """
    positive(stretch=stretch)
    return 2048 * stretch


def belt(*, profile: str, width: Metre) -> Belt:
    """Return the figures of a belt and record the rows they were read from.

    A width that is not printed is in proportion to the next wider printed one (or the widest). A wider row
    has the larger least tension per millimetre, or one less than 1 % smaller: the doubt falls on the safe
    side. Raises InputError for an unknown profile, or for a width beyond `NARROWEST` and `WIDEST`.

    >>> round(belt(profile="HTD 5M", width=0.012).least_tension, 1)
    42.7
    """
    kind = pick("belt_profiles", profile=profile)
    positive(width=width)
    row = _row_for(profile, width)
    working = pick("belt_working", profile=profile)
    stretch = _force(row, "stretch", width)
    return Belt(
        profile,
        width,
        pitch=kind.number("pitch"),
        differential=kind.number("differential"),
        mass_factor=_mass_factor(row, width),
        stretch=stretch,
        least_tension=_force(row, "least_tension", width),
        working_tension=_force(working, "working_tension", width),
        stiffness=belt_stiffness(stretch=stretch),
    )


def catalogue_teeth(profile: str) -> tuple[int, ...]:
    """Return the tooth counts that a catalogue lists for a profile; empty where no catalogue was read.

    >>> catalogue_teeth("HTD 5M")[:4]
    (12, 14, 15, 16)
    """
    return tuple(round(row.cells["teeth"]) for row in matching("pulleys", profile=profile))


def stiffness_fraction() -> One:
    """Return the fraction to which a belt's stiffness is taken to be known, and record the row: an estimate.

    >>> stiffness_fraction()
    0.2
    """
    return pick("belt_practice", name="stiffness error").number("fraction")


def _row_for(profile: str, width: float) -> Row:
    printed = sorted(matching("belt_tension", profile=profile), key=lambda row: row.cells["width"])
    low, high = printed[0].cells["width"] * NARROWEST, printed[-1].cells["width"] * WIDEST
    if not low * (1 - 1e-9) <= width <= high * (1 + 1e-9):
        raise InputError("belt width", width, "range", low=low, high=high)
    wider = [row for row in printed if row.cells["width"] >= width * (1 - 1e-9)]
    return wider[0] if wider else printed[-1]


def _is_printed(row: Row, width: float) -> bool:
    return abs(float(row.cells["width"]) - width) <= 1e-6 * width


def _force(row: Row, column: str, width: float) -> float:
    printed = row.number(column)
    if _is_printed(row, width):
        return printed
    return force_for_width(printed_force=printed, width=width, printed_width=row.number("width"))


def _mass_factor(row: Row, width: float) -> float:
    printed = row.number("mass_factor")
    if _is_printed(row, width):
        return printed
    return mass_factor_for_width(printed_mass_factor=printed, width=width, printed_width=row.number("width"))
