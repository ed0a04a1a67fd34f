"""Which threadlocker, by strength grade, or none: where it must not go, what cures it, how long."""

from math import log

from logic.errors import InputError, NoFigure, positive
from logic.frozen import frozen
from logic.joints.threads import thread
from logic.si import Kelvin, Metre, NewtonMetre, Second
from logic.tables import Row, matching, pick, rows
from logic.workings import cited

SURFACES = {"light alloy": "aluminium", "steel": "steel", "stainless": "stainless", "brass": "brass"}
"""Surface of a hole by its material's family; the others are plastic."""


@frozen
class Locker:
    """A grade, or none and the place that forbids it.

    `label` is how the bottle reads; `activator` is wanted when no surface starts the cure; `cautions` are
    keys: "smaller grade" (the wanted one could twist the screw or round its hex), "inactive surface"
    (slower, weaker).
    """

    grade: str
    label: str
    reason: str
    activator: bool
    cautions: tuple[str, ...]


@frozen
class Cure:
    """How long to leave a joint: `time` is None when it is too cold; `activator` tells that one is wanted."""

    time: Second | None
    activator: bool
    reason: str


@cited(
    "typical * (nominal_diameter / reference_diameter)**2.585",
    source="trade-blog twice the size, six times the torque",
    standing="estimate",
)
def locking_torque(
    *, typical: NewtonMetre, nominal_diameter: Metre, reference_diameter: Metre
) -> NewtonMetre:
    """Breakaway torque of a grade on a thread, from its torque on the M10 test screw; good to half its value.

    >>> round(locking_torque(typical=20.0, nominal_diameter=0.004, reference_diameter=0.010), 1)
    1.9
    """
    positive(typical=typical, nominal_diameter=nominal_diameter, reference_diameter=reference_diameter)
    return float(typical * (nominal_diameter / reference_diameter) ** 2.585)


@cited(
    "(oven_temperature - room_temperature) * log(2) / log(room_time / oven_time)",
    source="derived two printed cures, halving per interval",
    standing="estimate",
)
def halving_interval(
    *, room_temperature: Kelvin, oven_temperature: Kelvin, room_time: Second, oven_time: Second
) -> Kelvin:
    """Rise of temperature that halves the cure.

    >>> oven = {"oven_temperature": 393.0, "oven_time": 1800.0}
    >>> round(halving_interval(room_temperature=295.0, room_time=86400.0, **oven), 1)
    17.5
    """
    positive(room_temperature=room_temperature, room_time=room_time, oven_time=oven_time)
    if oven_temperature <= room_temperature or oven_time >= room_time:
        raise InputError("oven_time", oven_time, "hotter must be quicker", high=room_time)
    return (oven_temperature - room_temperature) * log(2.0) / log(room_time / oven_time)


@cited(
    "max(room_time, room_time * 2**((room_temperature - temperature) / halving_interval))",
    source="derived slower in the cold, never shorter than at room temperature",
    standing="estimate",
)
def cure_time(
    *, temperature: Kelvin, room_temperature: Kelvin, room_time: Second, halving_interval: Kelvin
) -> Second:
    """Time to full cure on active metal.

    >>> room = {"room_temperature": 295.15, "room_time": 86400.0}
    >>> round(cure_time(temperature=283.15, halving_interval=17.5, **room) / 3600, 1)
    38.6
    """
    positive(temperature=temperature, room_temperature=room_temperature)
    positive(room_time=room_time, halving_interval=halving_interval)
    steps = (room_temperature - temperature) / halving_interval
    if steps > 20.0:  # noqa: PLR2004  (a million days)
        raise NoFigure("temperature", temperature, "too cold")
    return float(max(room_time, room_time * 2.0**steps))


def grades() -> tuple[Row, ...]:
    """Return the strength grades, weakest first, "penetrating" last."""
    return rows("threadlocker_grades")


def steps(of: str) -> tuple[str, ...]:
    """Return the steps to "put on" or to "take off", in order."""
    return tuple(line.text("step") for line in matching("threadlocker_steps", of=of))


def choose(
    designation: str,
    *,
    need: str,
    places: tuple[str, ...] = (),
    surfaces: tuple[str, ...] = (),
    set_screw: bool = False,
) -> Locker:
    """Return the grade for a thread and a need, or none when a place it would reach forbids it.

    `need` is "comes apart often", "comes apart for service", "never comes apart" or "already together";
    `places` and `surfaces` are keys of their tables. A thread too small for the wanted grade gets the
    strongest that suits it. Raises InputError for an unknown need, place or surface.

    >>> choose("M4", need="comes apart for service", surfaces=("steel", "aluminium")).grade
    'medium'
    >>> choose("M4", need="comes apart for service", set_screw=True).grade
    'low'
    >>> choose("M8", need="comes apart for service", places=("insert nut",)).grade
    'none'
    """
    wanted = pick("threadlocker_grades", need=need)
    bans = [pick("threadlocker_places", place=place) for place in places]
    active = [pick("threadlocker_surfaces", surface=name).text("active") == "yes" for name in surfaces]
    if bans:
        return Locker("none", "", bans[0].text("why"), activator=False, cautions=())
    smallest = "set_screw_low" if set_screw else "size_low"
    diameter = thread(designation).nominal_diameter
    # The first two rows are the weaker grades of the same kind, so the walk down ends at low.
    chosen = next(
        line
        for line in (wanted, *reversed(grades()[: grades().index(wanted)]))
        if line.cells[smallest] <= diameter or line.text("grade") == "low"
    )
    cautions = (
        *(["smaller grade"] if chosen is not wanted else []),
        *(["inactive surface"] if False in active else []),
    )
    return Locker(
        chosen.text("grade"),
        chosen.text("label"),
        chosen.text("need"),
        activator=bool(active) and not any(active),
        cautions=cautions,
    )


def cure(*, temperature: Kelvin, surfaces: tuple[str, ...] = ()) -> Cure:
    """Return how long to leave a joint at the day's temperature. Too cold: no time, warm the parts first.

    An activator is wanted when no surface is active. Raises InputError above 40 degrees Celsius.

    >>> cure(temperature=295.15, surfaces=("steel",)).time / 3600
    24.0
    """
    positive(temperature=temperature)
    hottest = pick("threadlocker_cure", point="hottest day").number("temperature")
    if temperature > hottest:
        raise InputError("temperature", temperature, "oven cure", high=hottest)
    active = [pick("threadlocker_surfaces", surface=name).text("active") == "yes" for name in surfaces]
    wants = bool(active) and not any(active)
    if temperature < pick("threadlocker_cure", point="stall").number("temperature"):
        return Cure(None, wants, "too cold")
    room, oven = pick("threadlocker_cure", point="room"), pick("threadlocker_cure", point="oven")
    room_temperature, room_time = room.number("temperature"), room.number("time")
    interval = halving_interval(
        room_temperature=room_temperature,
        oven_temperature=oven.number("temperature"),
        room_time=room_time,
        oven_time=oven.number("time"),
    )
    time = cure_time(
        temperature=temperature,
        room_temperature=room_temperature,
        room_time=room_time,
        halving_interval=interval,
    )
    return Cure(time, wants, "activator" if wants else "")


def locking(designation: str, *, grade: str) -> NewtonMetre:
    """Return the breakaway torque to expect on a thread once cured, an estimate.

    >>> round(locking("M4", grade="medium"), 1)
    1.9
    """
    return locking_torque(
        typical=pick("threadlocker_grades", grade=grade).number("typical"),
        nominal_diameter=thread(designation).nominal_diameter,
        reference_diameter=thread("M10").nominal_diameter,
    )


def screw_surface(strength: str, condition: str) -> str:
    """Return the row of threadlocker_surfaces.toml that a screw of this class and state has.

    >>> screw_surface("A2-70", "oiled"), screw_surface("8.8", "zinc dry")
    ('stainless', 'zinc')
    """
    if strength[:2] in ("A2", "A4"):
        return "stainless"
    if strength in ("titanium", "aluminium", "brass"):
        return strength
    return "zinc" if condition.startswith("zinc") else "steel"
