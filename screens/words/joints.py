"""Words of the joints: limits, hazards, the two torques in both units, and a joint in one line."""

from datetime import datetime
from math import floor

from logic.answers.joint_options import HOLDERS, option_label
from logic.answers.joints import JointCard, look_again
from logic.answers.reading import Result
from logic.board import BoardJoint, Value
from logic.fields import joint_fields
from logic.store import Record
from logic.units import show_in
from screens.tongue import _, texts
from screens.words import Style, begun
from screens.words.tension import ago

GRADES = texts("joints")["grades"]
"""Strengths of threadlocker as they stand in a sentence."""
HELD = tuple(one.key for one in HOLDERS)
"""What a screw goes into that is no material: a nut or an insert."""
WRENCH = ("wrench", "wrench_ceiling")
"""Results that a wrench is set by and that it never passes."""
ABOVE_DRAG = _(" over the nut's drag")


def torque_text(torque: float, style: Style, *, inch: bool) -> str:
    """Return a torque, in lbf·in never rounded up: a ceiling must stay one.

    >>> torque_text(1.6, Style(), inch=True).replace(chr(160), " ")
    '14.1 lbf·in'
    """
    if not inch:
        return str(show_in(torque, "torque", "N·m", mark=style.mark, digits=3))
    pounds = show_in(torque, "torque", "lbf·in", mark=".", digits=9)
    tenths = floor(float(pounds.number.replace("\u202f", "")) * 10.0 + 1e-6) / 10.0
    return f"{style.plain(tenths, 4)}\u00a0lbf·in"


def wrench_texts(card: JointCard, style: Style, *, inch: bool) -> list[str]:
    """Return the torque to set and its ceiling, as far as they are known."""
    items = (card.items[name] for name in WRENCH)
    return [torque_text(item.value, style, inch=inch) for item in items if isinstance(item, Result)]


def set_text(card: JointCard, style: Style, *, inch: bool) -> str:
    """Return the sentence of a joint with a torque in one unit."""
    setting, ceiling = wrench_texts(card, style, inch=inch)
    return _("Set {setting}, never over {ceiling}{drag}.").format(
        setting=setting, ceiling=ceiling, drag=ABOVE_DRAG if card.drag_missing else ""
    )


def drag_text(card: JointCard, style: Style) -> str:
    """Return the line that says how the drag of an insert nut is in the torque; "" where there is none."""
    inch = style.system == "inch"
    setting, running = card.items["setting"], card.joint.running
    if card.drag_missing:
        most = card.items.get("drag_most")
        known = ""
        if isinstance(most, Result):
            known = _(": a new one drags up to {torque}").format(
                torque=torque_text(most.value, style, inch=inch)
            )
        return _("The nut's drag comes on top{known}. Measure it on the loose nut.").format(known=known)
    if running is None or not isinstance(setting, Result):
        return ""
    drag = torque_text(float(running.si), style, inch=inch)
    clamp = torque_text(setting.value, style, inch=inch)
    return _("{clamp} for the clamp and {drag} for the nut's drag.").format(clamp=clamp, drag=drag)


def reuse_text(card: JointCard) -> str:
    """Return whether this nut may be used again; only a drag that was measured lets it pass."""
    if card.reused is None:
        return ""
    if card.reused.verdict != "pass":
        return _(" This one does not.")
    measured = card.joint.running is not None and card.joint.running.known == "measured"
    return _(" This one passes.") if measured else _(" Measure this one's drag first.")


def by_spanner(card: JointCard) -> bool:
    """Tell whether a joint is turned by a spanner, for its hexagon head, and not by a hex key."""
    if card.tools is None or card.kind.text("way") == "set screw":
        return False
    return card.joint.head is not None and str(card.joint.head.si) == "hexagon"


def answer_text(card: JointCard, style: Style) -> str:
    """Return the answer of a joint for a list: its torque, how it is set, or that it is not known."""
    if card.torque is not None:
        shown = torque_text(card.torque, style, inch=style.system == "inch")
        return _("{torque} + drag").format(torque=shown) if card.drag_missing else shown
    return _("by feel") if card.feel else _("not known")


def value_text(name: str, value: Value | None, style: Style) -> str:
    """Return one value of a joint as it is shown."""
    if value is None:
        return _("not set")
    field = joint_fields()[name]
    if field.kind in ("choice", "named"):
        return option_label(field, str(value.si))
    return style.typed(float(value.si), field.quantity, value.typed_unit)


def assumed_text(card: JointCard, said_already: tuple[str, ...] = ()) -> str:
    """Return what was assumed: "Assumed: class 8.8; head: socket cap."; "" for nothing beside what is said already."""
    fields = joint_fields()
    said = []
    for name, key in card.assumed.items():
        if key in said_already:
            continue
        label = option_label(fields[name], key)
        plain = name in ("into", "strength", "condition")
        said.append(label if plain else f"{fields[name].label.lower()}: {label.lower()}")
    return _("Assumed: {list}.").format(list="; ".join(said)) if said else ""


def summary(joint: BoardJoint, style: Style) -> str:
    """Return a joint in one line: "8 × M4, class 8.8, 6 mm in aluminium 6061-T6"."""
    if joint.thread is None:
        return _("Size not set")
    fields = joint_fields()
    count = "" if joint.count is None else f"{style.plain(float(joint.count.si))} × "
    parts = [f"{count}{joint.thread.si}"]
    if joint.strength is not None:
        parts.append(option_label(fields["strength"], str(joint.strength.si)))
    if joint.carries is not None:
        parts.append(
            _("on {shaft}").format(shaft=option_label(fields["carries"], str(joint.carries.si)).lower())
        )
    if joint.into is not None:
        into = option_label(fields["into"], str(joint.into.si))
        long = joint.engagement
        if long is not None:
            deep = style.typed(float(long.si), "length", long.typed_unit)
            parts.append(_("{deep} in {material}").format(deep=deep, material=into))
        elif str(joint.into.si) in HELD:
            parts.append(_("with {nut}").format(nut=into))
        else:
            parts.append(_("in {material}").format(material=into))
    return ", ".join(parts)


def locker_text(card: JointCard) -> str:
    """Return grade and label of the threadlocker, or none and why."""
    locker = card.locker
    if locker is None:
        return _("Not known until the thread is.")
    if locker.grade == "none":
        none = _("None")
        return locker.reason if locker.reason.startswith(none) else f"{none}: {locker.reason}"
    return _("{grade} strength: {label}.").format(grade=begun(GRADES[locker.grade]), label=locker.label)


def tool_text(card: JointCard) -> str:
    """Return the tools of a joint, by head and nut."""
    row, joint = card.tools, card.joint
    if row is None:
        return ""
    if card.kind.text("way") == "set screw":
        return _("{size} hex key").format(size=row.text("set_screw"))
    head = "socket" if joint.head is None else str(joint.head.si)
    nut = _("{size} spanner").format(size=row.text("nut"))
    own = nut if head == "hexagon" else _("{size} hex key").format(size=row.text(head))
    into = "" if joint.into is None else str(joint.into.si)
    return (
        _("{own}, {nut} on the nut").format(own=own, nut=nut)
        if into in ("nut", "insert nut") and own != nut
        else own
    )


def tightened_text(record: Record | None, now: datetime, style: Style) -> str:
    """Return what the log says of a joint."""
    if record is None:
        return _("Not recorded yet.")
    said = record.body
    when = ago(record.at, now)
    by = _(" by {name}").format(name=said.by) if said.by else ""
    if said.looked:
        return _("Looked at {when}{by}: the paint line was whole.").format(when=when, by=by)
    torque = said.torque
    how = torque_text(torque, style, inch=style.system == "inch") if torque else _("by feel")
    tool = texts("joints")["tools"].get(said.tool, "").lower()
    tool = f", {tool}" if torque and tool else ""
    lock = _(", {grade} locker").format(grade=GRADES[said.locker]) if said.locker not in ("", "none") else ""
    note = f" {said.note}" if said.note else ""
    return _("Tightened {when}{by}: {how}.").format(when=when, by=by, how=f"{how}{tool}{lock}") + note


def again_text(card: JointCard, record: Record | None, now: datetime, rides: int) -> str:
    """Return the line that says when the joint is looked at again, or that it is time."""
    if record is not None and not record.body.looked:
        due = look_again(since=now - record.at, rides=rides)
        if due:
            return _("Look at it again now. {text}").format(text=card.kind.text("again"))
    return card.kind.text("again")


def is_due(record: Record | None, now: datetime, rides: int) -> bool:
    """Tell whether a recorded joint wants to be looked at."""
    return record is not None and not record.body.looked and look_again(since=now - record.at, rides=rides)


def shown_items(card: JointCard) -> tuple[str, ...]:
    """Return the results that stand under "How it is worked out": not those that the card shows above."""
    above = {"wrench", "pull", "cure", "drive_torque", "carried"}
    plain = card.joint.running is None
    return tuple(
        name
        for name, item in card.items.items()
        if isinstance(item, Result) and name not in above and not (plain and name in ("setting", "ceiling"))
    )
