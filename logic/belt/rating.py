"""Catalogue rating of a belt: torque at an angular speed, with the factors for width, length and teeth in mesh.

A life rating of some thousand hours, not a limit of breaking. Small boards normally run beyond it.
"""

from logic.errors import InputError, positive
from logic.si import Metre, NewtonMetre, One, RadianPerSecond
from logic.tables import Row, matching
from logic.workings import cited


@cited(
    "low_torque + (high_torque - low_torque) * (angular_speed - low_angular_speed) / (high_angular_speed - low_angular_speed)",
    source="derived on the straight line between two printed columns",
    standing="derived",
)
def between_columns(
    *,
    angular_speed: RadianPerSecond,
    low_angular_speed: RadianPerSecond,
    high_angular_speed: RadianPerSecond,
    low_torque: NewtonMetre,
    high_torque: NewtonMetre,
) -> NewtonMetre:
    """Torque between two printed angular speeds. Raises InputError unless the angular speed lies between them.

    >>> between_columns(
    ...     angular_speed=150.0, low_angular_speed=100.0, high_angular_speed=200.0, low_torque=2.0, high_torque=1.0)
    1.5
    """
    if (
        not low_angular_speed < high_angular_speed
        or not low_angular_speed <= angular_speed <= high_angular_speed
    ):
        raise InputError(
            "angular_speed", angular_speed, "range", low=low_angular_speed, high=high_angular_speed
        )
    return low_torque + (high_torque - low_torque) * (angular_speed - low_angular_speed) / (
        high_angular_speed - low_angular_speed
    )


@cited(
    "printed * width_factor * length_factor * mesh_factor",
    source="sdpsi-2017 p. T-77",
)
def rated_torque(
    *, printed: NewtonMetre, width_factor: One, length_factor: One, mesh_factor: One
) -> NewtonMetre:
    """Torque a belt is rated for on its smaller pulley. Raises InputError unless all are positive.

    >>> rated_torque(printed=2.0, width_factor=1.5, length_factor=0.5, mesh_factor=1.0)
    1.5
    """
    positive(printed=printed, width_factor=width_factor, length_factor=length_factor, mesh_factor=mesh_factor)
    return printed * width_factor * length_factor * mesh_factor


def printed_torque(*, profile: str, teeth: One, angular_speed: RadianPerSecond) -> NewtonMetre:
    """Return the printed torque of a pulley at an angular speed, and record the rows it came from.

    A tooth count between two printed ones takes the smaller, one above them the largest: both on the safe
    side. Below the first column its torque holds. Raises InputError where nothing is printed: another
    profile, fewer teeth, a higher angular speed.

    >>> round(printed_torque(profile="HTD 5M", teeth=16.0, angular_speed=523.6), 2)
    1.15
    """
    positive(angular_speed=angular_speed)
    # Of all that are printed for the profile one or two are read: only these say what they were found by.
    printed = sorted(
        matching("belt_ratings", profile=str(profile)), key=lambda row: row.cells["angular_speed"]
    )
    counts = sorted({float(row.cells["teeth"]) for row in printed})
    if not counts:
        raise InputError("profile", profile, "no rating printed")
    if teeth < counts[0]:
        raise InputError("teeth", teeth, "range", low=counts[0])
    count = max(number for number in counts if number <= teeth)
    line = [row for row in printed if row.cells["teeth"] == count]
    if angular_speed > line[-1].cells["angular_speed"]:
        fastest = line[-1].cells["angular_speed"]
        raise InputError("angular_speed", angular_speed, "range", high=fastest, quantity="angular_speed")
    above = next(index for index, row in enumerate(line) if angular_speed <= row.cells["angular_speed"])
    high = line[above].found_by(profile)
    if above == 0:
        return _torque(high)
    low = line[above - 1].found_by(profile)
    return between_columns(
        angular_speed=angular_speed,
        low_angular_speed=low.number("angular_speed"),
        high_angular_speed=high.number("angular_speed"),
        low_torque=_torque(low),
        high_torque=_torque(high),
    )


def _torque(row: Row) -> float:
    return row.number("torque" if "torque" in row else "gt_torque")


def width_factor(*, profile: str, width: Metre) -> One:
    """Return the factor of a belt's width, and record the row; between two rows the narrower one's.

    >>> width_factor(profile="HTD 5M", width=0.015)
    1.87
    """
    return _from_below("belt_width_factors", "width", profile, width)


def length_factor(*, profile: str, length: Metre) -> One:
    """Return the factor of a belt's length, and record the row.

    >>> length_factor(profile="HTD 5M", length=0.265)
    0.75
    """
    return _from_below("belt_length_factors", "from", profile, length)


def _from_below(table: str, column: str, profile: str, value: float) -> float:
    reached = [row for row in matching(table, profile=profile) if row.cells[column] <= value * (1 + 1e-9)]
    if not reached:
        raise InputError(column, value, "no rating printed")
    return reached[-1].number("factor")


def smallest_suggested(*, profile: str, angular_speed: RadianPerSecond) -> One:
    """Return the fewest teeth suggested for a life at an angular speed, and record the row.

    Above the last row its count stands. Raises InputError for an unknown profile.

    >>> smallest_suggested(profile="HTD 5M", angular_speed=100.0)
    22.0
    """
    printed = list(matching("belt_smallest", profile=profile))
    if not printed:
        raise InputError("profile", profile, "not in the table")
    row = next((row for row in printed if angular_speed <= row.cells["angular_speed"]), printed[-1])
    return row.number("teeth")
