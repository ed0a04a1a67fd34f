"""Nylon-insert nuts: the torque of the insert, what it adds to a setting, whether it may be used again."""

from logic.errors import InputError, not_negative, positive
from logic.frozen import frozen
from logic.si import NewtonMetre
from logic.tables import matching
from logic.workings import cited


@frozen
class Reuse:
    """Verdict on a used insert nut, "pass" or "discard": its `drag` against the `least` asked for."""

    drag: NewtonMetre
    least: NewtonMetre
    verdict: str


@cited("seating + running", source="army-tm total torque, seating and running torque added")
def wrench_torque(*, seating: NewtonMetre, running: NewtonMetre) -> NewtonMetre:
    """Torque on the wrench when the joint has its seating torque and the nut drags.

    `running` is measured on the nut as it turns before it touches. Raises InputError unless both are
    positive.

    >>> wrench_torque(seating=7.5, running=1.0)
    8.5
    """
    positive(seating=seating, running=running)
    return seating + running


def drag_band(designation: str, *, nut_class: str = "8") -> tuple[NewtonMetre, NewtonMetre]:
    """Return the torque an insert alone makes: least on the fifth taking off, most on the first screwing on.

    Raises InputError for a size that is not in the table (no inch values are held, only the least for reuse).

    >>> drag_band("M8")
    (0.6, 6.0)
    """
    for line in matching("insert_nuts", thread=designation, nut_class=nut_class):
        return line.number("fifth_off_min"), line.number("first_on_max")
    raise InputError("thread", designation, "not in the table")


def least_drag(designation: str, *, nut_class: str = "8") -> NewtonMetre:
    """Return the torque that must still be needed to turn a used nut with no load on it.

    Metric: the fifth taking off. Inch: the higher of two lists that differ. Raises InputError for other
    sizes.

    >>> least_drag("M8"), round(least_drag("5/16-24"), 2)
    (0.6, 0.73)
    """
    found = [line.number("reuse_min") for line in matching("insert_nuts_inch", thread=designation)]
    return max(found) if found else drag_band(designation, nut_class=nut_class)[0]


def reuse(designation: str, *, drag: NewtonMetre, nut_class: str = "8") -> Reuse:
    """Return whether a used nut that drags this much may be used again.

    Thread it on until two threads stand out, with nothing touching, and read the torque that starts it again.

    >>> reuse("M8", drag=0.5).verdict
    'discard'
    """
    not_negative(drag=drag)
    least = least_drag(designation, nut_class=nut_class)
    return Reuse(drag, least, "pass" if drag >= least else "discard")
