"""The card of one joint: how tight, what gives way, the pull that makes it, the locker, and what can go wrong."""

from collections.abc import Callable
from dataclasses import dataclass, field
from datetime import timedelta
from typing import TypeVar

from logic.answers.joint_parts import JointParts, family_of
from logic.answers.reading import Item, Open, Reading, Result, attempt
from logic.answers.run import answer
from logic.board import Board, BoardJoint
from logic.board_joints import joint_places
from logic.errors import InputError, Missing
from logic.joints.insert_nut import Reuse, drag_band, least_drag
from logic.joints.limits import lone_stainless
from logic.joints.lookup import engagement_needed, tools
from logic.joints.reach import engagement_in_diameters
from logic.joints.rules import rule, shown_ceiling
from logic.joints.threadlocker import Locker, locking
from logic.joints.threads import lookalikes, thread
from logic.joints.torque import pull_on_arm, reading_error
from logic.person import Person
from logic.tables import Row, pick
from logic.workings import Recorder, recording

LIGHT = "light alloy"
STRONG = ("10.9", "12.9", "A574", "grade 8")
"""Classes that are stronger than any thread in aluminium."""
OF_THE_METAL = ("hole strips", "head sinks in")
"""Limits that a stronger screw does not lift."""
OILY = ("oiled", "phosphate oiled", "anti-seize")
"""States of the threads that locker does not hold on."""


@dataclass(frozen=True)
class JointCard:
    """What a card shows.

    `limit` governs the ceiling, `feel` says why there is no torque. `drag_missing` tells that the drag of an
    insert nut, which is not measured, comes on top of it. `notice` is a signal word and the key of
    its sentence, two empty texts for none. `assumed` has, by name, what stands for values that were not set and
    for a guess at metal or class, nothing for a joint set by feel; `notes` are keys of sentences. `holds` tells
    whether what carries the torque of a motor pulley carries this motor.
    """

    key: str
    kind: Row
    joint: BoardJoint
    items: dict[str, Item]
    limit: str = ""
    feel: str = ""
    locker: Locker | None = None
    surfaces: tuple[str, ...] = ()
    tools: Row | None = None
    alike: tuple[tuple[str, str], ...] = ()
    assumed: dict[str, str] = field(default_factory=dict)
    notes: tuple[str, ...] = ()
    notice: tuple[str, str] = ("", "")
    reused: Reuse | None = None
    holds: bool | None = None
    drag_missing: bool = False

    @property
    def torque(self) -> float | None:
        """Return the torque to set on the wrench, None for a joint that is set by feel or not known yet."""
        item = self.items.get("wrench")
        return item.value if isinstance(item, Result) else None


def kind_of(key: str) -> Row:
    """Return the row of joint_kinds.toml of a joint of a board. Raises InputError for a key it does not have."""
    if key not in joint_places():
        raise InputError("joint", key, "unknown joint")
    return pick("joint_kinds", kind=joint_places()[key].kind)


@answer(key="motor_face")
def joint_card(
    board: Board, key: str, person: Person, kind: Row | None = None, *, in_full: bool = True
) -> JointCard:
    """Return the card of one joint, `in_full` or as a list needs it.

    `kind` is given for a look-up, whose key is not one of the board's.
    """
    row = kind or kind_of(key)
    with recording() as recorder:
        parts = JointParts(Reading(board), key, row, person)
        items = _items(recorder, parts, in_full=in_full)
        feel = _feel(parts, items)
        return JointCard(
            key,
            row,
            board.joint(key),
            items,
            limit=_limit(parts),
            feel=feel,
            locker=_or_none(lambda: parts.locker),
            surfaces=_or_none(lambda: parts.surfaces) or (),
            tools=_or_none(lambda: tools(parts.thread)),
            alike=_or_none(lambda: lookalikes(thread(parts.thread).designation)) or (),
            assumed={} if feel else parts.assumed,
            notes=tuple(_notes(parts)),
            notice=_notice(parts, items),
            reused=_or_none(lambda: parts.reused),
            holds=_holds(items, parts),
            drag_missing=bool(_or_none(lambda: parts.drag_missing)),
        )


@answer()
def joints_of(board: Board, person: Person) -> tuple[JointCard, ...]:
    """Return the cards of all joints of a board, in the order of building."""
    return tuple(joint_card(board, key, person, in_full=False) for key in joint_places())


def look_again(*, since: timedelta, rides: int) -> bool:
    """Tell whether a joint that was tightened so long ago wants to be looked at.

    >>> look_again(since=timedelta(hours=2), rides=0), look_again(since=timedelta(hours=2), rides=1)
    (False, True)
    """
    row = pick("look_again", of="tightening")
    return since.total_seconds() >= float(row.cells["after"]) or rides >= int(row.cells["rides"])


T = TypeVar("T")


def _or_none(find: Callable[[], T]) -> T | None:
    try:
        return find()
    except (Missing, InputError):
        return None


Compute = Callable[[JointParts], "float | None"]


def _shown(torque: float | None) -> float | None:
    return None if torque is None else shown_ceiling(torque)


TORQUE: dict[str, tuple[str, Compute]] = {
    "setting": ("torque", lambda parts: parts.advice.setting),
    "ceiling": ("torque", lambda parts: parts.advice.shown_ceiling),
    "wrench": ("torque", lambda parts: parts.advice.wrench),
    "wrench_ceiling": ("torque", lambda parts: _shown(parts.advice.wrench_ceiling)),
    "lower_preload": ("force", lambda parts: parts.advice.lower_preload),
    "upper_preload": ("force", lambda parts: parts.advice.upper_preload),
}
SET_SCREW: dict[str, tuple[str, Compute]] = {
    "setting": ("torque", lambda parts: parts.seating.setting or None),
    "ceiling": ("torque", lambda parts: parts.seating.shown_ceiling),
    "wrench": ("torque", lambda parts: parts.seating.setting or None),
    "wrench_ceiling": ("torque", lambda parts: parts.seating.shown_ceiling),
    "hole strips": ("torque", lambda parts: parts.seating.strips),
    "drive_torque": ("torque", lambda parts: parts.drive_torque),
    "carried": ("torque", lambda parts: parts.carried),
    "slip": ("torque", lambda parts: parts.holding.slip),
    "bare_most": ("torque", lambda parts: parts.holding.most),
    "bare_least": ("torque", lambda parts: parts.holding.least),
}
"""Quantity and computation of each result by the way a joint is set."""


def _items(recorder: Recorder, parts: JointParts, *, in_full: bool) -> dict[str, Item]:
    way = SET_SCREW if parts.kind.text("way") == "set screw" else TORQUE
    found = {name: _item(recorder, parts, name, *entry) for name, entry in way.items()}
    wrench = found["wrench"]
    if not in_full:
        return found
    if isinstance(wrench, Result):
        found |= _by_scale(recorder, parts, wrench.value)
    if way is TORQUE and isinstance(wrench, Result) and not isinstance(found["setting"], Open):
        found |= _of_screw(recorder, parts)
    if way is TORQUE and _or_none(lambda: parts.advice) is not None:
        for limit in parts.advice.limits:
            found[limit.name] = Result(limit.name, limit.torque, "torque")
    if _or_none(lambda: parts.locker.grade) not in (None, "none"):
        found["cure"] = _item(recorder, parts, "cure", "long_time", lambda of: of.cure.time, "too cold")
        found["locking"] = _item(
            recorder, parts, "locking", "torque", lambda of: locking(of.thread, grade=of.locker.grade)
        )
    if _or_none(lambda: parts.joint.into) == "insert nut" and way is TORQUE:
        drags: dict[str, Compute] = {
            "drag_least": lambda of: drag_band(of.thread)[0],
            "drag_most": lambda of: drag_band(of.thread)[1],
            "drag_reuse": lambda of: least_drag(thread(of.thread).designation),
        }
        tried = {name: _item(recorder, parts, name, "torque", drag) for name, drag in drags.items()}
        # The tables have no drag for inch nuts, only the least for using one again.
        found |= {name: item for name, item in tried.items() if isinstance(item, Result)}
    return found


def _by_scale(recorder: Recorder, parts: JointParts, torque: float) -> dict[str, Item]:
    """Return the pull on the key's arm that makes a torque, and how far the scale can be off in it."""
    pull = attempt(recorder, "pull", "force", lambda: pull_on_arm(torque=torque, arm=parts.arm))
    if isinstance(pull, Open):
        return {"pull": pull}
    error = pick("measuring_tools", name=parts.person.scale).number("scale_error")
    off = attempt(recorder, "pull_error", "share", lambda: reading_error(scale_error=error, pull=pull.value))
    return {"pull": pull, "pull_error": off}


def _item(  # noqa: PLR0913  (an attempt, and what stands for nothing)
    recorder: Recorder,
    parts: JointParts,
    name: str,
    quantity: str,
    compute: Compute,
    nothing: str = "by feel",
) -> Item:
    """Return the result of a computation; an outcome when it has no number."""

    def value() -> float:
        found = compute(parts)
        if found is None:
            raise _NothingError
        return found

    try:
        return attempt(recorder, name, quantity, value)
    except _NothingError:
        return Open(name, outcome=nothing)


class _NothingError(Exception):
    """A joint that has no such number."""


def _of_screw(recorder: Recorder, parts: JointParts) -> dict[str, Item]:
    """Return what a printed table says, the torques at a share of proof, and the engagement that is wanted."""
    rows: dict[str, tuple[str, Compute]] = {
        "book": ("torque", lambda of: of.book.torque),
        "proof_lowest": ("torque", lambda of: of.proof.lowest),
        "proof_usual": ("torque", lambda of: of.proof.usual),
        "proof_highest": ("torque", lambda of: of.proof.highest),
    }
    if parts.joint.engagement is not None:
        rows["needed"] = (
            "length",
            lambda of: engagement_needed(of.thread, strength_name=of.joint.strength, material=of.joint.into),
        )
    found = {name: _item(recorder, parts, name, *entry) for name, entry in rows.items()}
    # A table that does not have this head, or a metal without a proof stress, is no fault of the person's.
    return {name: item for name, item in found.items() if isinstance(item, Result)}


def _limit(parts: JointParts) -> str:
    if parts.kind.text("way") == "set screw":
        seated = _or_none(lambda: parts.seating)
        return "" if seated is None else seated.limit
    advice = _or_none(lambda: parts.advice)
    return "" if advice is None else advice.limit


def _feel(parts: JointParts, items: dict[str, Item]) -> str:
    if isinstance(items["setting"], Result):
        return ""
    if parts.kind.text("way") == "set screw":
        return "too small for a wrench" if items["setting"] == Open("setting", outcome="by feel") else ""
    advice = _or_none(lambda: parts.advice)
    return "" if advice is None else advice.feel


def _holds(items: dict[str, Item], parts: JointParts) -> bool | None:
    """Tell whether the drive torque stays under what is carried; None when it cannot be told."""
    carried, asked = items.get("carried"), items.get("drive_torque")
    way = _or_none(lambda: parts.text("carries"))
    if way == "bare":
        return False
    if way == "clamp":
        return None
    if isinstance(carried, Result) and isinstance(asked, Result):
        return asked.value <= carried.value
    return None


def _notice(parts: JointParts, items: dict[str, Item]) -> tuple[str, str]:
    """Return the one hazard of this joint that most deserves a signal word."""
    if _holds(items, parts) is False:
        return "warning", f"pulley slips {parts.text('carries')}"
    used = _or_none(lambda: parts.reused)
    if used is not None and used.verdict == "discard":
        return "warning", "nut is worn"
    if _or_none(lambda: _short(parts)):
        return "notice", "too few threads"
    return "", ""


def _short(parts: JointParts) -> bool:
    """Tell whether less of the thread is engaged than one diameter."""
    engaged = parts.joint.engagement
    if engaged is None:
        return False
    least = engagement_in_diameters(
        diameters=rule("engagement least"), nominal_diameter=thread(parts.thread).nominal_diameter
    )
    return engaged < least


def _notes(parts: JointParts) -> list[str]:
    joint = _or_none(lambda: parts.joint)
    advice = _or_none(lambda: parts.advice)
    if joint is None or advice is None or advice.feel:
        return []
    stainless = joint.strength[:2] in ("A2", "A4")
    notes = {
        "add the drag": parts.drag_missing,
        "hard washer": advice.limit == "head sinks in" and not joint.washer,
        "class gains nothing": joint.strength in STRONG
        and advice.limit in OF_THE_METAL
        and family_of(joint.into) == LIGHT,
        "head not checked": advice.limit != "bearing stack" and "head sinks in" in advice.not_checked,
        "degrease first": joint.locker and joint.condition in OILY,
        "not stainless": lone_stainless(joint),
        "seizes": stainless and not lone_stainless(joint) and joint.condition == "stainless dry",
    }
    return [note for note, holds in notes.items() if holds]
