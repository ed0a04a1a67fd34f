"""What holds for every joint: finding one by what is seen, threadlocker by size and need, and how it is put on."""

from logic.frozen import frozen
from logic.joints.limits import NUTS
from logic.joints.lookup import Found, find, kinds
from logic.joints.threadlocker import Locker, choose, cure, grades, steps
from logic.joints.threads import thread
from logic.si import Kelvin, Metre, NewtonMetre, Second
from logic.tables import Row, rows


@frozen
class Grade:
    """A strength grade: its breakaway torque on M10 steel, from memory, and how it comes off."""

    name: str
    low: NewtonMetre
    high: NewtonMetre
    removal: str


def find_joints(text: str) -> Found:
    """Return the kinds of joint and the threads that typed text names."""
    return find(text)


def kind_named(kind: str) -> Row:
    """Return one kind of joint; "screw" is any screw.

    >>> kind_named("screw").text("name")
    'Any screw, by size'
    """
    return next(row for row in kinds() if row.text("kind") == kind)


def holds_a_thread(into: str) -> bool:
    """Tell whether what a screw goes into is tapped, so that the engaged length counts.

    >>> holds_a_thread("6061-T6"), holds_a_thread("insert nut")
    (True, False)
    """
    return into not in (*NUTS, "brass insert", "")


def diameter_of(designation: str) -> Metre:
    """Return the nominal diameter of a thread.

    >>> diameter_of("M4")
    0.004
    """
    return float(thread(designation).row.cells["nominal_diameter"])


def locker_needs() -> tuple[str, ...]:
    """Return what a joint can need of its threadlocker, the weakest first."""
    return tuple(row.text("need") for row in grades())


def choose_locker(designation: str, *, need: str) -> Locker:
    """Return the grade for a thread and a need."""
    return choose(designation, need=need)


def locker_grades() -> tuple[Grade, ...]:
    """Return the strength grades, weakest first."""
    return tuple(
        Grade(
            row.text("grade"),
            float(row.cells["breakaway_low"]),
            float(row.cells["breakaway_high"]),
            row.text("removal"),
        )
        for row in grades()
    )


def locker_steps(of: str) -> tuple[str, ...]:
    """Return the steps to "put on" or to "take off"."""
    return steps(of)


def locker_places() -> tuple[tuple[str, str], ...]:
    """Return where threadlocker must not go, and why."""
    return tuple((row.text("name"), row.text("why")) for row in rows("threadlocker_places"))


def locker_surfaces(active: str) -> tuple[str, ...]:
    """Return the surfaces that start the cure ("yes"), hardly do ("no") or "never" do."""
    return tuple(row.text("name") for row in rows("threadlocker_surfaces") if row.text("active") == active)


def cure_hours(day: Kelvin) -> Second | None:
    """Return the time of a full cure on steel at a temperature, None when it is too cold.

    >>> cure_hours(295.15) / 3600
    24.0
    """
    return cure(temperature=day, surfaces=("steel",)).time
