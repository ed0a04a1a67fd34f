"""Set screws in a pulley: how tight they go, by their own hex or by the thread they are in."""

from math import pi

from logic.errors import InputError, not_negative, positive
from logic.frozen import frozen
from logic.joints.limits import WET
from logic.joints.materials import family, hole_strips_at
from logic.joints.rules import rule, setting_for, shown_ceiling
from logic.joints.threads import Thread, thread, thread_pitch_diameter
from logic.joints.torque import friction_from_nut_factor
from logic.si import Metre, Newton, NewtonMetre, One
from logic.tables import matching, pick
from logic.workings import cited


@frozen
class Seating:
    """How tight a set screw goes. `setting` is 0 where it is too small for a wrench.

    `floor` is the least a second list asks for, `strips` where the thread of the pulley has had enough; each
    None where it is not known. `limit` is "hex of the screw" or "hole strips".
    """

    setting: NewtonMetre
    ceiling: NewtonMetre
    shown_ceiling: NewtonMetre
    floor: NewtonMetre | None
    strips: NewtonMetre | None
    limit: str


@cited(
    "preload * (pitch / (2 * pi) + 0.577 * pitch_diameter * friction + cup_diameter / 2 * friction)",
    source="iso-16047 torque and preload, the edge of the cup in place of a head",
    standing="derived",
)
def headless_torque(
    *, preload: Newton, pitch: Metre, pitch_diameter: Metre, cup_diameter: Metre, friction: One
) -> NewtonMetre:
    """Torque that presses a set screw on its shaft: stretch, thread and cup rub, there is no head that does.

    >>> screw = {"pitch": 0.0007, "pitch_diameter": 0.003545, "cup_diameter": 0.002}
    >>> round(headless_torque(preload=4146.0, friction=0.0807, **screw), 2)
    1.48
    """
    positive(preload=preload, pitch=pitch, pitch_diameter=pitch_diameter, cup_diameter=cup_diameter)
    not_negative(friction=friction)
    thread_part = pitch / (2.0 * pi) + 0.577 * pitch_diameter * friction
    return preload * (thread_part + cup_diameter / 2.0 * friction)


def strip_torque(screw: Thread, *, engagement: Metre, pulley: str) -> NewtonMetre:
    """Return the torque at which the pulley's thread has had enough, with the locker wet.

    The friction is the lowest that could be there and stands for the scatter of the torque, so that the
    safety alone is taken off: at this torque it is held in full.

    >>> round(strip_torque(thread("M4"), engagement=0.005, pulley="6061-T6"), 2)
    1.48
    """
    safety = rule("plastic safety" if "plastic" in family(pulley) else "strip safety")
    force = hole_strips_at(screw, engagement=engagement, material=pulley) / safety
    low = pick("friction", condition=WET).number("nut_factor_low")
    return headless_torque(
        preload=force,
        pitch=screw.pitch,
        pitch_diameter=thread_pitch_diameter(nominal_diameter=screw.nominal_diameter, pitch=screw.pitch),
        cup_diameter=cup_diameter(screw),
        friction=friction_from_nut_factor(nut_factor=low),
    )


def cup_diameter(screw: Thread) -> Metre:
    """Return the diameter of a set screw's cup. Raises InputError for a size that is not in the table."""
    return pick("set_screw_cups", size=screw.size).number("cup_diameter")


def seating(
    designation: str, *, material: str = "alloy", pulley: str | None = None, engagement: Metre | None = None
) -> Seating:
    """Return how tight a set screw goes. `material` is "alloy" (45H) or "stainless".

    Metric: the lowest of the printed lists and the screw's own test torque is the ceiling, and the list of one
    machine maker, which asks for half of it, the floor. Inch: the higher list, no more than a maker's most, is the
    ceiling and the lower the floor. The lists ask nothing of the
    hub: in a `pulley` the `engagement`, the length of thread in it, can be the ceiling, in mild steel too.
    Raises InputError for a size or a material that is in no list, and for a pulley that holds no thread.

    >>> round(seating("M4").setting, 6), seating("M4").ceiling
    (2.0, 2.16)
    >>> seating("M4", pulley="6061-T6", engagement=0.004).limit
    'hole strips'
    >>> seating("M4", pulley="steel", engagement=0.005).limit, seating("M4", pulley="C45", engagement=0.005).limit
    ('hole strips', 'hex of the screw')
    """
    listed, floor = _listed(designation, material)
    if pulley is None or engagement is None:
        strips = None
    else:
        strips = strip_torque(thread(designation), engagement=engagement, pulley=pulley)
    ceiling = listed if strips is None else min(listed, strips)
    limit = "hex of the screw" if ceiling is listed else "hole strips"
    return Seating(setting_for(ceiling), ceiling, shown_ceiling(ceiling), floor, strips, limit)


def _listed(designation: str, material: str) -> tuple[NewtonMetre, NewtonMetre | None]:
    """Return ceiling and floor of the printed lists."""
    low = [
        line.number("torque")
        for line in matching("set_screws", thread=designation, material=material, part="low")
    ]
    metric = [
        line.number("torque")
        for part in ("seat", "test")
        for line in matching("set_screws", thread=designation, material=material, part=part)
    ]
    if metric:
        return min(metric), min(low, default=None)
    size = thread(designation).size if material == "alloy" else ""
    inch = {
        part: line.number("torque")
        for part in ("seat", "low", "most")
        for line in matching("set_screws_inch", size=size, part=part)
    }
    if not inch:
        raise InputError("thread", designation, "not in the table")
    return min(inch["seat"], inch.get("most", inch["seat"])), inch.get("low")
