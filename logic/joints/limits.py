"""What gives way in one joint, each with the torque that brings it there at the lowest friction."""

from itertools import chain

from logic.errors import InputError, Missing
from logic.frozen import frozen
from logic.joints.bearing import sinking_force
from logic.joints.materials import crushing, family, hole_strips_at
from logic.joints.rules import rule
from logic.joints.strength import (
    assembly_preload,
    shear_from_tensile,
    strength,
    stress_diameter,
    torsional_strength,
)
from logic.joints.stripping import (
    allowed_preload,
    effective_engagement,
    screw_shear_area,
    strip_force,
)
from logic.joints.threads import Thread, minor_diameter, thread, thread_pitch_diameter
from logic.joints.torque import friction_from_nut_factor, torque_short
from logic.si import Metre, Newton, NewtonMetre, One
from logic.tables import matching, pick

WET = "locker wet"
NUTS = ("nut", "insert nut")
"""What a screw goes into that is at least as strong as the screw, so that it sets no limit."""


@frozen(kw_only=True)
class Joint:
    """One kind of screw on the board.

    `into` is "nut", "insert nut", "brass insert" or a material of materials.toml; a tapped material needs
    `engagement`. `locker` tells that threadlocker goes on, whatever the state of the threads before.
    `member` is the material below the head or washer, None when it is not known. `running` is the measured
    torque of an insert nut. `kind` is a row of joint_kinds.toml; `solid_stack` tells an axle whose rings,
    bearings and exact spacers stand solid.
    """

    thread: str
    strength: str = "8.8"
    condition: str = "locker wet"
    locker: bool = False
    into: str = "nut"
    engagement: Metre | None = None
    head: str = "socket"
    member: str | None = None
    washer: bool = False
    running: NewtonMetre | None = None
    kind: str = "screw"
    solid_stack: bool = False


@frozen
class Limit:
    """One thing that gives way.

    `name` is "screw strength", "screw twists off", "hole strips", "screw strips", "head sinks in", "insert
    spins", "bearing stack" or "wood crushes"; `preload` is None where a torque is printed.
    """

    name: str
    torque: NewtonMetre
    preload: Newton | None = None


def friction_ends(joint: Joint) -> tuple[One, One]:
    """Return the lowest and the highest nut factor that could be there.

    Locker that goes on is wet while the screw turns. The figures of stainless on stainless hold for nothing
    else: a stainless screw in another material counts as not known.

    >>> friction_ends(Joint(thread="M6", condition="zinc dry", locker=True))
    (0.12, 0.35)
    """
    before = "unknown" if lone_stainless(joint) else joint.condition
    states = [pick("friction", condition=state) for state in (before, state_of(joint))]
    return (
        min(state.number("nut_factor_low") for state in states),
        max(state.number("nut_factor_high") for state in states),
    )


def state_of(joint: Joint) -> str:
    """Return the usual state of the threads while the screw turns: wet where locker goes on.

    >>> state_of(Joint(thread="M6", condition="zinc dry", locker=True))
    'locker wet'
    """
    if joint.locker:
        return WET
    return "unknown" if lone_stainless(joint) else joint.condition


def lone_stainless(joint: Joint) -> bool:
    """Tell whether threads are called stainless on stainless while what the screw goes into is not."""
    if joint.condition != "stainless dry" or joint.into in NUTS:
        return False
    return joint.into == "brass insert" or family(joint.into) != "stainless"


def limits_of(joint: Joint) -> tuple[Limit, ...]:
    """Return everything that can give way in a joint that is tightened by torque.

    Raises InputError for what the tables do not have, Missing when a tapped material has no engagement.

    >>> [limit.name for limit in limits_of(Joint(thread="M4"))]
    ['screw strength', 'screw twists off']
    """
    screw, (low, _) = thread(joint.thread), friction_ends(joint)
    return tuple(
        chain(_of_screw(joint, screw, low), _of_hole(joint, screw, low), _of_head(joint, screw, low))
    )


def _limit(name: str, preload: Newton, screw: Thread, low: One) -> Limit:
    """Return a limit whose torque is the one that reaches its preload at the lowest friction."""
    torque = torque_short(nut_factor=low, nominal_diameter=screw.nominal_diameter, preload=preload)
    return Limit(name, torque, preload)


def _of_screw(joint: Joint, screw: Thread, low: One) -> tuple[Limit, ...]:
    metal, diameter, pitch = strength(joint.strength), screw.nominal_diameter, screw.pitch
    middle = thread_pitch_diameter(nominal_diameter=diameter, pitch=pitch)
    minor = minor_diameter(nominal_diameter=diameter, pitch=pitch)
    preload = assembly_preload(
        yield_share=rule("yield share"),
        yield_stress=metal.number("yield"),
        stress_area=screw.stress_area,
        pitch=pitch,
        pitch_diameter=middle,
        stress_diameter=stress_diameter(pitch_diameter=middle, minor_diameter=minor),
        thread_friction=friction_from_nut_factor(nut_factor=low),
    )
    found = [_limit("screw strength", preload, screw, low)]
    ratio = next(matching("twist", strength=joint.strength), None)
    if ratio is not None and "screw_minor_min" in screw.limits:
        twisted = torsional_strength(
            twist_ratio=ratio.number("twist_ratio"),
            tensile_stress=metal.number("tensile"),
            core_diameter=screw.limit("screw_minor_min"),
        )
        found.append(Limit("screw twists off", twisted))
    return tuple(found)


def _of_hole(joint: Joint, screw: Thread, low: One) -> tuple[Limit, ...]:
    if joint.into in NUTS:
        return ()
    if joint.into == "brass insert":
        insert = pick("brass_inserts", thread=screw.designation)
        return (Limit("insert spins", insert.number("torque")),)
    if joint.engagement is None:
        raise Missing("engagement")
    hole = hole_strips_at(screw, engagement=joint.engagement, material=joint.into)
    shank = screw_shear_area(
        engagement=effective_engagement(engagement=joint.engagement, pitch=screw.pitch),
        pitch=screw.pitch,
        hole_minor_max=screw.limit("hole_minor_max"),
        screw_pitch_min=screw.limit("screw_pitch_min"),
    )
    plastic = "plastic" in family(joint.into)
    safety = rule("plastic safety") if plastic else rule("strip safety")
    scatter = rule("plastic scatter") if plastic else rule("strip scatter")
    own = shear_from_tensile(
        share=rule("shear share"), tensile_stress=strength(joint.strength).number("tensile")
    )
    return tuple(
        _limit(
            name,
            allowed_preload(strip_force=force, safety=safety, scatter=scatter),
            screw,
            low,
        )
        for name, force in (
            ("hole strips", hole),
            ("screw strips", strip_force(shear_area=shank, shear_strength=own)),
        )
    )


def _of_head(joint: Joint, screw: Thread, low: One) -> tuple[Limit, ...]:
    if joint.member is None:
        return ()
    force = sinking_force(screw, head="washer" if joint.washer else joint.head, member=joint.member)
    return () if force is None else (_limit("head sinks in", force, screw, low),)


def wood_limit(joint: Joint) -> tuple[Limit, ...]:
    """Return the estimate for the working of a deck bolt; nothing when no washer of its size is known."""
    try:
        force, torque = crushing(joint.thread)
    except InputError:
        return ()
    return (Limit("wood crushes", torque, force),)
