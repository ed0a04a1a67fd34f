"""Finding a screw by what one sees or by its size, and what a look-up of it begins with."""

from collections.abc import Iterator
from typing import Any

from logic.answers.joint_guide import find_joints, kind_named
from logic.answers.joint_options import thread_label, usual_joint
from logic.board import to_dict
from logic.board_joints import BoardJoint, joint_places
from logic.tables import Row
from screens.acts import Go
from screens.acts.entering import Write
from screens.bench.joint_card import board_of
from screens.blocks import Block, Line, Section, Words
from screens.tongue import _
from screens.world import World

MOST_THREADS = 6
"""Threads listed for what is typed; more would hide the joints."""
SEARCH = "lookup"
"""Key under which the words of the search are typed."""


def found(world: World, text: str) -> Iterator[Block]:
    """Yield kinds of joint, and threads, that what is typed can mean."""
    names = find_joints(text)
    if not names.kinds and not names.threads:
        none = _("Nothing by this name. Try a size, or: grub, axle, lid.")
        yield Words(key="none", text=none, bold=True)
    screw = kind_named("screw")
    yield from (
        _line(world, kind.text("name"), ", ".join(kind.cells["sizes"]), kind)
        for kind in names.kinds
        if kind.text("kind") != "screw"
    )
    if names.threads:
        yield Section(key="sizes", title=_("By size"))
    for thread in names.threads[:MOST_THREADS]:
        title = _("Any screw {thread}").format(thread=thread_label(thread))
        yield _line(world, title, "", screw, thread.designation)
    if screw in names.kinds:
        yield any_screw(world)
    yield Line(key="all", title=_("Show all screws"), icon="undo", act=Write(SEARCH, ""))


def any_screw(world: World) -> Line:
    """Return the row of a screw that is no joint of a board."""
    screw = kind_named("screw")
    return _line(world, screw.text("name"), _("M2 to M12, #4 to 3/8"), screw)


def _line(world: World, title: str, detail: str, kind: Row, thread: str = "") -> Line:
    return Line(
        key=f"{kind.text('kind')} {thread}", title=title, detail=detail, act=look_up(world, kind, thread)
    )


def look_up(world: World, kind: Row, thread: str = "") -> Go:
    """Return the act that looks a kind of joint up: as this board's own is, else as the usual one."""
    values = plain(usual_joint(kind))
    key = joint_of(kind)
    own = world.kept(to_dict, board_of(world)).get("joints", {}).get(key, {})
    if "thread" in own:
        values = {name: value for name, value in own.items() if name != "count"}
    if thread:
        values["thread"] = {"si": thread, "known": "guess"}
    return Go("bench.lookup_card", {"kind": kind.text("kind"), "values": values})


def joint_of(kind: Row) -> str:
    """Return the joint of a board that is of a kind, "" for none."""
    return next((key for key, place in joint_places().items() if place.kind == kind.text("kind")), "")


def plain(joint: BoardJoint) -> dict[str, Any]:
    """Return the values of a joint by name, as a page keeps them."""
    return {name: {"si": value.si, "known": value.known} for name, value in joint.values()}
