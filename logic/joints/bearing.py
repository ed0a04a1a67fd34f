"""The face below a head, a nut or a washer: when it sinks into metal, plastic or wood."""

from math import pi

from logic.errors import InputError, positive
from logic.joints.threads import Thread
from logic.si import Metre, Newton, Pascal, SquareMetre
from logic.tables import Row, matching
from logic.workings import cited


@cited("pi / 4 * (bearing_diameter**2 - hole**2)", source="vdi-2230 bearing area below the head")
def bearing_area(*, bearing_diameter: Metre, hole: Metre) -> SquareMetre:
    """Ring between the hole and the edge of the head or washer.

    Raises InputError when the hole is not the smaller.

    >>> round(bearing_area(bearing_diameter=0.00653, hole=0.0045) * 1e6, 2)
    17.59
    """
    positive(bearing_diameter=bearing_diameter, hole=hole)
    if hole >= bearing_diameter:
        raise InputError("hole", hole, "head falls through", low=0.0, high=bearing_diameter)
    return pi / 4.0 * (bearing_diameter**2 - hole**2)


@cited("bearing_area * pressure", source="vdi-2230 limiting surface pressure")
def bearing_force(*, bearing_area: SquareMetre, pressure: Pascal) -> Newton:
    """Clamp force at which the member gives way below the head.

    >>> round(bearing_force(bearing_area=17.59e-6, pressure=260e6))
    4573
    """
    positive(bearing_area=bearing_area, pressure=pressure)
    return bearing_area * pressure


def face(thread: Thread, *, head: str) -> Row | None:
    """Return the row of a "hexagon" or "socket" head or a "washer" on a thread; None where none is known."""
    diameter = float(thread.row.cells["nominal_diameter"])
    return next(matching("heads", head=head, thread_diameter=diameter), None)


def sinking_force(thread: Thread, *, head: str, member: str) -> Newton | None:
    """Return the clamp force at which a head sinks into a member; None where a table lacks head or member."""
    ring = face(thread, head=head)
    material = next(matching("bearing_pressures", material=member), None)
    if ring is None or material is None:
        return None
    area = bearing_area(bearing_diameter=ring.number("bearing_diameter"), hole=ring.number("hole"))
    return bearing_force(bearing_area=area, pressure=material.number("pressure"))
