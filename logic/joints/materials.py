"""What a screw goes into or clamps: metals and plastics with their strength, and soft members set by feel."""

from logic.errors import InputError
from logic.joints.bearing import sinking_force
from logic.joints.rules import rule
from logic.joints.strength import shear_from_tensile
from logic.joints.stripping import effective_engagement, hole_shear_area, strip_force
from logic.joints.threads import Thread, thread
from logic.joints.torque import torque_short
from logic.si import Metre, Newton, NewtonMetre, Pascal
from logic.tables import pick, rows


def materials() -> tuple[tuple[str, str], ...]:
    """Return key and name of every material."""
    return tuple((line.text("material"), line.text("name")) for line in rows("materials"))


def family(material: str) -> str:
    """Return "light alloy", "steel", "stainless", "brass", "plastic", "cracking plastic" or "soft".

    Raises InputError for an unknown material.
    """
    return pick("materials", material=material).text("family")


def shear_of(material: str) -> Pascal:
    """Return the shear strength of a material: a share of its least tensile strength, or the least one printed.

    Raises InputError for a soft material, which has no such figure.

    >>> [round(shear_of(metal) / 1e6) for metal in ("aluminium unknown", "6082-T6", "6061-T6", "steel")]
    [102, 174, 186, 204]
    """
    line = pick("materials", material=material)
    if "shear" in line:
        return line.number("shear")
    if "tensile" not in line:
        raise InputError("material", material, "soft")
    return shear_from_tensile(share=rule("shear share"), tensile_stress=line.number("tensile"))


def hole_strips_at(screw: Thread, *, engagement: Metre, material: str) -> Newton:
    """Return the tension at which a tapped hole strips; one pitch of its thread does not count.

    Raises InputError for less than one pitch and for a material that holds no thread.

    >>> round(hole_strips_at(thread("M4"), engagement=0.005, material="6061-T6"))
    6219
    """
    area = hole_shear_area(
        engagement=effective_engagement(engagement=engagement, pitch=screw.pitch),
        pitch=screw.pitch,
        screw_major_min=screw.limit("screw_major_min"),
        hole_pitch_max=screw.limit("hole_pitch_max"),
    )
    return strip_force(shear_area=area, shear_strength=shear_of(material))


def feel_reason(material: str) -> str:
    """Return why a material gets no torque figure ("wood", "soft hub"), or "" when it gets one.

    >>> feel_reason("wood"), feel_reason("6061-T6")
    ('wood', '')
    """
    line = pick("materials", material=material)
    return line.text("feel") if "feel" in line else ""


def crushing(
    designation: str, *, wood: str = "birch", condition: str = "zinc dry"
) -> tuple[Newton, NewtonMetre]:
    """Return clamp force and torque at which a washer sinks into wood: an estimate, not a setting.

    `wood` is "birch", "maple dry" or "maple green". The nut's running torque comes on top. Raises
    InputError for a thread whose washer is not in the tables.

    >>> force, torque = crushing("10-32")
    >>> round(force), round(torque, 2)
    (684, 0.66)
    """
    screw = thread(designation)
    force = sinking_force(screw, head="washer", member=wood)
    if force is None:
        raise InputError("thread", designation, "not in the table")
    factor = pick("friction", condition=condition).number("nut_factor")
    return force, torque_short(nut_factor=factor, nominal_diameter=screw.nominal_diameter, preload=force)
