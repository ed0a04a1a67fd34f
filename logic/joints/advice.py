"""The answer for one joint: a setting, the ceiling, what limits it; or "by feel" and why."""

from logic.errors import InputError
from logic.frozen import frozen
from logic.joints.insert_nut import wrench_torque
from logic.joints.limits import NUTS, Joint, Limit, friction_ends, limits_of, wood_limit
from logic.joints.materials import feel_reason
from logic.joints.rules import rounded_down, setting_for, shown_ceiling, step_for
from logic.joints.threads import thread
from logic.joints.torque import preload_from_torque
from logic.si import Newton, NewtonMetre
from logic.tables import matching, pick


@frozen
class Advice:
    """How tight.

    With a torque: `setting`, `ceiling` (exact), `shown_ceiling` (rounded down), `limit` that governs, clamp
    left at the highest friction (`lower_preload`) and reached at the lowest (`upper_preload`); `wrench` and
    `wrench_ceiling` have the measured running torque of an insert nut on top. By feel: `feel` is the reason
    ("wood", "soft hub", "bearing play", "bushing setting", "too small for a wrench") and the torques are
    None. `limits` are all that were worked out; `not_checked` names those that could not be.
    """

    feel: str = ""
    setting: NewtonMetre | None = None
    ceiling: NewtonMetre | None = None
    shown_ceiling: NewtonMetre | None = None
    limit: str = ""
    lower_preload: Newton | None = None
    upper_preload: Newton | None = None
    wrench: NewtonMetre | None = None
    wrench_ceiling: NewtonMetre | None = None
    limits: tuple[Limit, ...] = ()
    not_checked: tuple[str, ...] = ()


def advise(joint: Joint) -> Advice:
    """Return how tight one joint goes.

    Raises InputError for what the tables do not have and for a set screw, which has `set_screw.seating`;
    Missing when a tapped material has no engagement.

    >>> screw = Joint(thread="M4", into="6061-T6", engagement=0.005, member="6061-T6")
    >>> answer = advise(screw)
    >>> round(answer.setting, 2), round(answer.shown_ceiling, 2), answer.limit
    (1.3, 1.45, 'hole strips')
    >>> advise(Joint(thread="10-32", kind="deck bolt", member="wood")).feel
    'wood'
    """
    kind = pick("joint_kinds", kind=joint.kind)
    if kind.text("way") == "set screw":
        raise InputError("kind", joint.kind, "set screw")
    reason = _feel(joint, kind.text("feel") if "feel" in kind else "")
    if reason == "bearing play" and joint.solid_stack:
        return _stack(joint)
    if reason:
        return Advice(feel=reason, limits=tuple(wood_limit(joint)) if reason == "wood" else ())
    limits = limits_of(joint)
    weakest = min(limits, key=lambda limit: limit.torque)
    not_checked = () if any(limit.name == "head sinks in" for limit in limits) else ("head sinks in",)
    setting = setting_for(weakest.torque)
    if setting <= 0.0:
        return Advice(feel="too small for a wrench", limits=limits, not_checked=not_checked)
    low, high = friction_ends(joint)
    diameter = thread(joint.thread).nominal_diameter
    return Advice(
        setting=setting,
        ceiling=weakest.torque,
        shown_ceiling=shown_ceiling(weakest.torque),
        limit=weakest.name,
        lower_preload=preload_from_torque(torque=setting, nut_factor=high, nominal_diameter=diameter),
        upper_preload=preload_from_torque(torque=setting, nut_factor=low, nominal_diameter=diameter),
        wrench=_with_running(setting, joint),
        wrench_ceiling=_with_running(weakest.torque, joint),
        limits=limits,
        not_checked=not_checked,
    )


def _feel(joint: Joint, of_kind: str) -> str:
    """Return why a joint is set by feel: its kind, what it clamps, or what it goes into."""
    soft = [
        feel_reason(name)
        for name in (joint.member, joint.into)
        if name and name not in (*NUTS, "brass insert")
    ]
    return next((reason for reason in (of_kind, *soft) if reason), "")


def _with_running(torque: NewtonMetre, joint: Joint) -> NewtonMetre:
    if joint.running is None or joint.into != "insert nut":
        return torque
    return wrench_torque(seating=torque, running=joint.running)


def _stack(joint: Joint) -> Advice:
    """Return the usual torque of a nut on a solid stack; by feel where none is printed for its thread."""
    printed = next(matching("aviation_nuts", thread=thread(joint.thread).designation), None)
    if printed is None:
        return Advice(feel="bearing play")
    low, high = printed.number("low"), printed.number("high")
    setting = rounded_down(torque=low, step=step_for(low, of="setting"))
    return Advice(
        setting=setting,
        ceiling=high,
        shown_ceiling=shown_ceiling(high),
        limit="bearing stack",
        wrench=_with_running(setting, joint),
        wrench_ceiling=_with_running(high, joint),
        limits=(Limit("bearing stack", high),),
        not_checked=("head sinks in",),
    )
