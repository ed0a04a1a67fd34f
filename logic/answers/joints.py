"""The card of one joint: how tight, what gives way, the pull that makes it, the locker, and what can go wrong."""

from dataclasses import field
from datetime import timedelta
from functools import partial

from logic.answers.joint_parts import JointParts, family_of, told
from logic.answers.reading import Item, Open, Reading, Result
from logic.answers.run import Figures, Run, answer
from logic.board import Board, BoardJoint
from logic.board_joints import joint_places
from logic.errors import InputError
from logic.frozen import frozen
from logic.joints.insert_nut import Reuse, drag_band, least_drag
from logic.joints.limits import lone_stainless
from logic.joints.lookup import engagement_needed, tools
from logic.joints.reach import engagement_in_diameters
from logic.joints.rules import rule
from logic.joints.threadlocker import Locker, locking
from logic.joints.threads import lookalikes, thread
from logic.person import Person
from logic.tables import Row, pick

LIGHT = "light alloy"
STRONG = ("10.9", "12.9", "A574", "grade 8")
"""Classes that are stronger than any thread in aluminium."""
OF_THE_METAL = ("hole strips", "head sinks in")
"""Limits that a stronger screw does not lift."""
OILY = ("oiled", "phosphate oiled", "anti-seize")
"""States of the threads that locker does not hold on."""


@frozen
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
    run = Run(lambda: JointParts(Reading(board), key, row, person))
    items = run.figures(_asked(row))
    if in_full:
        items |= _in_full(run, row, items)
    holds = _holds(items, run.view(lambda parts: parts.text("carries"), ""))
    feel = _feel(run, row, items)
    return JointCard(
        key,
        row,
        board.joint(key),
        items,
        limit=run.view(lambda parts: (parts.seating if parts.of_set_screw else parts.advice).limit, ""),
        feel=feel,
        locker=run.view(lambda parts: parts.locker, None),
        surfaces=run.view(lambda parts: parts.surfaces, ()),
        tools=run.view(lambda parts: tools(parts.thread), None),
        alike=run.view(lambda parts: lookalikes(thread(parts.thread).designation), ()),
        assumed={} if feel else run.parts.assumed | run.plain.assumed,
        notes=run.view(_notes, ()),
        notice=_notice(run, holds=holds),
        reused=run.view(lambda parts: parts.reused, None),
        holds=holds,
        drag_missing=run.view(lambda parts: parts.drag_missing, otherwise=False),
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


EVERY: Figures[JointParts] = {
    "setting": ("torque", lambda parts: parts.setting),
    "ceiling": ("torque", lambda parts: parts.ceiling),
    "wrench": ("torque", lambda parts: parts.wrench),
    "wrench_ceiling": ("torque", lambda parts: parts.wrench_ceiling),
}
TORQUE: Figures[JointParts] = {
    "lower_preload": ("force", lambda parts: told(parts.advice.lower_preload)),
    "upper_preload": ("force", lambda parts: told(parts.advice.upper_preload)),
}
SET_SCREW: Figures[JointParts] = {
    "hole strips": ("torque", lambda parts: told(parts.seating.strips)),
    "drive_torque": ("torque", lambda parts: parts.drive_torque),
    "carried": ("torque", lambda parts: parts.carried),
    "slip": ("torque", lambda parts: parts.holding.slip),
    "bare_most": ("torque", lambda parts: parts.holding.most),
    "bare_least": ("torque", lambda parts: parts.holding.least),
}
BY_SCALE: Figures[JointParts] = {
    "pull": ("force", lambda parts: parts.pull),
    "pull_error": (
        "share",
        lambda parts: pick("measuring_tools", name=parts.person.scale).number("scale_error") / parts.pull,
    ),
}
LOCKER: Figures[JointParts] = {
    "cure": ("long_time", lambda parts: parts.cure),
    "locking": ("torque", lambda parts: locking(parts.thread, grade=parts.locker.grade)),
}
PRINTED: Figures[JointParts] = {
    "book": ("torque", lambda parts: parts.book.torque),
    "proof_lowest": ("torque", lambda parts: parts.proof.lowest),
    "proof_usual": ("torque", lambda parts: parts.proof.usual),
    "proof_highest": ("torque", lambda parts: parts.proof.highest),
}
NEEDED: Figures[JointParts] = {
    "needed": (
        "length",
        lambda parts: engagement_needed(
            parts.thread, strength_name=parts.joint.strength, material=parts.joint.into
        ),
    )
}
DRAGS: Figures[JointParts] = {
    "drag_least": ("torque", lambda parts: drag_band(parts.thread)[0]),
    "drag_most": ("torque", lambda parts: drag_band(parts.thread)[1]),
    "drag_reuse": ("torque", lambda parts: least_drag(thread(parts.thread).designation)),
}
"""Quantity and computation of each result, by what it belongs to."""


def _asked(row: Row) -> Figures[JointParts]:
    return {**EVERY, **(SET_SCREW if row.text("way") == "set screw" else TORQUE)}


def _in_full(run: Run[JointParts], row: Row, items: dict[str, Item]) -> dict[str, Item]:
    """Return what a whole card shows beside the torques: the pull, the limits, printed figures, locker, drag."""
    found: dict[str, Item] = {}
    if isinstance(items["wrench"], Result):
        found |= run.figures(BY_SCALE)
    if row.text("way") != "set screw":
        if isinstance(items["setting"], Result):
            engaged = run.view(lambda parts: parts.joint.engagement, None)
            found |= _given(run.figures({**PRINTED, **(NEEDED if engaged is not None else {})}))
        limits = run.view(lambda parts: parts.advice.limits, ())
        found |= run.figures(
            {limit.name: ("torque", partial(_limit_torque, at)) for at, limit in enumerate(limits)}
        )
    if run.view(lambda parts: parts.locker.grade, "none") != "none":
        found |= run.figures(LOCKER)
    if row.text("way") != "set screw" and run.view(lambda parts: parts.joint.into, "") == "insert nut":
        found |= _given(run.figures(DRAGS))
    return found


def _given(items: dict[str, Item]) -> dict[str, Item]:
    """Leave out what no table has: an inch nut's drag, a head, a proof stress are no fault of the person's."""
    return {name: item for name, item in items.items() if isinstance(item, Result)}


def _limit_torque(at: int, parts: JointParts) -> float:
    return parts.advice.limits[at].torque


def _feel(run: Run[JointParts], row: Row, items: dict[str, Item]) -> str:
    if isinstance(items["setting"], Result):
        return ""
    if row.text("way") == "set screw":
        return "too small for a wrench" if items["setting"] == Open("setting", outcome="by feel") else ""
    return run.view(lambda parts: parts.advice.feel, "")


def _holds(items: dict[str, Item], way: str) -> bool | None:
    """Tell whether the drive torque stays under what is carried; None when it cannot be told."""
    carried, asked = items.get("carried"), items.get("drive_torque")
    if way == "bare":
        return False
    if way == "clamp":
        return None
    if isinstance(carried, Result) and isinstance(asked, Result):
        return asked.value <= carried.value
    return None


def _notice(run: Run[JointParts], *, holds: bool | None) -> tuple[str, str]:
    """Return the one hazard of this joint that most deserves a signal word."""
    if holds is False:
        return "warning", f"pulley slips {run.view(lambda parts: parts.text('carries'), '')}"
    used = run.view(lambda parts: parts.reused, None)
    if used is not None and used.verdict == "discard":
        return "warning", "nut is worn"
    if run.view(_short, otherwise=False):
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


UNNAMED_STEEL = "steel"
"""Steel that nobody has named: it counts as mild steel."""


def _notes(parts: JointParts) -> tuple[str, ...]:
    if parts.of_set_screw:
        mild = parts.into == UNNAMED_STEEL and parts.seating.limit == "hole strips"
        return ("steel not named",) if mild else ()
    joint, advice = parts.joint, parts.advice
    if advice.feel:
        return ()
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
    return tuple(note for note, holds in notes.items() if holds)
