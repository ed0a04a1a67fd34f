"""Finding a joint by what one sees, its tools, and what a printed torque table would say about it."""

from logic.errors import InputError
from logic.frozen import frozen
from logic.joints.bearing import face
from logic.joints.materials import shear_of
from logic.joints.rules import rule
from logic.joints.strength import (
    assembly_preload,
    preload_at_share,
    proof_load,
    strength,
    stress_diameter,
    tensile_load,
)
from logic.joints.stripping import (
    engagement_for_force,
    engagement_for_screw_thread,
    hole_shear_area,
    with_lead_in,
)
from logic.joints.threadlocker import Locker, choose
from logic.joints.threads import Thread, candidates, minor_diameter, thread, thread_pitch_diameter
from logic.joints.torque import mean_bearing_diameter, torque_long, torque_short
from logic.si import Metre, Newton, NewtonMetre, One
from logic.tables import Row, pick, rows


@frozen
class Found:
    """What a search found: rows of joint_kinds.toml, best first, and threads."""

    kinds: tuple[Row, ...]
    threads: tuple[Thread, ...]


@frozen
class Book:
    """What a printed table says for one friction: preload and torque at 90 % of yield in strong metal."""

    preload: Newton
    torque: NewtonMetre


@frozen
class ProofTorques:
    """Preload at a share of the proof load, and the torque for it at low, usual and high friction."""

    preload: Newton
    lowest: NewtonMetre
    usual: NewtonMetre
    highest: NewtonMetre


def kinds() -> tuple[Row, ...]:
    """Return every kind of joint of a board, in the order of building, "screw" last."""
    return rows("joint_kinds")


def find(text: str) -> Found:
    """Return the joints and threads that typed text names: "grub", "axle", "5/16", "M4".

    A joint is found by any word of its names that starts with a typed one, or by a thread it often has; of
    several words, each must be found. Those found by name come first.

    >>> [row.text("kind") for row in find("grub").kinds]
    ['pulley set screw']
    >>> [row.text("kind") for row in find("5/16").kinds]
    ['axle nut', 'bearing stack']
    >>> [row.text("kind") for row in find("m3 motor screw").kinds]
    ['motor face', 'pulley set screw']
    """
    whole = candidates(text)
    typed = [text] if whole else text.casefold().split()
    if not typed:
        return Found(kinds(), ())
    found = {screw.designation: screw for word in typed for screw in candidates(word)}
    hits = []
    for row in kinds():
        by_name = [any(own.startswith(word.casefold()) for own in _words(row)) for word in typed]
        by_size = [
            any(screw.designation in row.cells["sizes"] for screw in candidates(word)) for word in typed
        ]
        if all(name or size for name, size in zip(by_name, by_size, strict=True)):
            hits.append((sum(by_name), row))
    ranked = sorted(hits, key=lambda hit: -hit[0])
    return Found(tuple(row for _, row in ranked), tuple(found.values()))


def _words(row: Row) -> tuple[str, ...]:
    return tuple(
        part.casefold() for phrase in (row.text("name"), *row.cells["words"]) for part in phrase.split()
    )


def tools(designation: str) -> Row:
    """Return the tool sizes of a thread as text: columns `socket`, `set_screw`, `button`, `nut`.

    All from memory: the tool is tried first. Raises InputError for a size that is not in the table.

    >>> tools("M4").text("socket"), tools("5/16-24").text("nut")
    ('3 mm', '1/2 in')
    """
    return pick("tools", size=thread(designation).size)


def locker_for(
    kind: str, designation: str, *, places: tuple[str, ...] = (), surfaces: tuple[str, ...] = ()
) -> Locker:
    """Return the threadlocker of a joint of the board, or none and why.

    >>> locker_for("motor face", "M4", surfaces=("steel", "aluminium")).grade
    'medium'
    """
    row = pick("joint_kinds", kind=kind)
    if row.text("grade") == "none":
        return Locker("none", "", row.text("no_locker"), activator=False, cautions=())
    need = pick("threadlocker_grades", grade=row.text("grade")).text("need")
    set_screw = row.text("way") == "set screw"
    return choose(designation, need=need, places=places, surfaces=surfaces, set_screw=set_screw)


def book(designation: str, *, strength_name: str, friction: One, head: str = "hexagon") -> Book:
    """Return preload and torque as a printed table has them: 90 % of yield, one friction for thread and head.

    It shows why a screw in aluminium gets less than the tables say. Raises InputError where the head of
    that thread is not known.

    >>> round(book("M4", strength_name="8.8", friction=0.14).torque, 1)
    3.3
    """
    screw = thread(designation)
    ring = face(screw, head=head)
    if ring is None:
        raise InputError("head", head, "not in the table")
    diameter, pitch = screw.nominal_diameter, screw.pitch
    middle = thread_pitch_diameter(nominal_diameter=diameter, pitch=pitch)
    minor = minor_diameter(nominal_diameter=diameter, pitch=pitch)
    preload = assembly_preload(
        yield_share=rule("yield share"),
        yield_stress=strength(strength_name).number("yield"),
        stress_area=screw.stress_area,
        pitch=pitch,
        pitch_diameter=middle,
        stress_diameter=stress_diameter(pitch_diameter=middle, minor_diameter=minor),
        thread_friction=friction,
    )
    torque = torque_long(
        preload=preload,
        pitch=pitch,
        pitch_diameter=middle,
        mean_bearing_diameter=mean_bearing_diameter(
            bearing_diameter=ring.number("bearing_diameter"), hole=ring.number("hole")
        ),
        thread_friction=friction,
        head_friction=friction,
    )
    return Book(preload, torque)


def proof_torques(
    designation: str, *, strength_name: str, frictions: tuple[One, One, One], permanent: bool = False
) -> ProofTorques:
    """Return preload and torques at 75 % of proof, 90 % for a permanent joint.

    `frictions` are the lowest, the usual and the highest nut factor.
    Raises InputError for a material whose proof stress is not printed.

    >>> at = proof_torques("M4", strength_name="8.8", frictions=(0.12, 0.15, 0.20))
    >>> [round(torque, 2) for torque in (at.lowest, at.usual, at.highest)]
    [1.83, 2.29, 3.06]
    """
    screw, metal = thread(designation), strength(strength_name)
    if "proof" not in metal:
        raise InputError("strength", strength_name, "no proof stress printed")
    preload = preload_at_share(
        share=rule("proof share permanent" if permanent else "proof share reusable"),
        proof_load=proof_load(proof_stress=metal.number("proof"), stress_area=screw.stress_area),
    )
    diameter = screw.nominal_diameter
    lowest, usual, highest = (
        torque_short(nut_factor=factor, nominal_diameter=diameter, preload=preload) for factor in frictions
    )
    return ProofTorques(preload, lowest, usual, highest)


def engagement_needed(designation: str, *, strength_name: str, material: str) -> Metre:
    """Return the engagement, lead-in included, at which the screw breaks before hole or screw thread strips.

    >>> round(engagement_needed("M4", strength_name="8.8", material="6061-T6") * 1000, 1)
    5.6
    """
    screw, pitch = thread(designation), thread(designation).pitch
    per_length = hole_shear_area(
        engagement=rule("unit length"),
        pitch=pitch,
        screw_major_min=screw.limit("screw_major_min"),
        hole_pitch_max=screw.limit("hole_pitch_max"),
    )
    area = screw.stress_area
    for_hole = engagement_for_force(
        screw_force=tensile_load(tensile_stress=strength(strength_name).number("tensile"), stress_area=area),
        shear_area_per_length=per_length,
        shear_strength=shear_of(material),
    )
    for_screw = engagement_for_screw_thread(
        stress_area=area,
        pitch=pitch,
        hole_minor_max=screw.limit("hole_minor_max"),
        screw_pitch_min=screw.limit("screw_pitch_min"),
    )
    return with_lead_in(length=max(for_hole, for_screw), pitch=pitch)
