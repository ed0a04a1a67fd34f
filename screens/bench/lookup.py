"""Finding a screw by what one sees: a kind of joint, a size, or a word."""

from collections.abc import Iterator
from typing import Any

from logic.answers.joint_guide import find_joints, kind_named
from logic.answers.joint_options import thread_label, usual_joint
from logic.board import to_dict
from logic.board_joints import BoardJoint, joint_places
from logic.tables import Row
from screens.acts import Go
from screens.bench.joint_card import board_of
from screens.blocks import Block, Field, Line, Section, Words
from screens.page import Page
from screens.tongue import _
from screens.world import World

MOST_THREADS = 6
"""Threads listed for what is typed; more would hide the joints."""
SEARCH = "lookup"
"""Key under which the words of the search are typed."""


def lookup_page(world: World) -> Page:
    """Return kinds of joint, and threads, that what is typed can mean."""
    return Page(title=_("Look up a screw"), blocks=tuple(blocks(world, world.typed.get(SEARCH, ""))))


def blocks(world: World, text: str) -> Iterator[Block]:
    """Yield the search, then what it found."""
    hint = _("What you see, or a size: grub, axle, 5/16, M4.")
    yield Field(key=SEARCH, label=_("Search"), text=text, hint=hint)
    found = find_joints(text)
    if not found.kinds and not found.threads:
        none = _("Nothing by this name. Try a size, or: grub, axle, lid.")
        yield Words(key="none", text=none, bold=True)
    for kind in found.kinds:
        if kind.text("kind") != "screw":
            yield _line(world, kind.text("name"), ", ".join(kind.cells["sizes"]), kind)
    screw = kind_named("screw")
    if found.threads:
        yield Section(key="sizes", title=_("By size"))
    for thread in found.threads[:MOST_THREADS]:
        title = _("Any screw {thread}").format(thread=thread_label(thread))
        yield _line(world, title, "", screw, thread.designation)
    if not text.strip() or screw in found.kinds:
        yield _line(world, screw.text("name"), _("M2 to M12, #4 to 3/8"), screw)


def _line(world: World, title: str, detail: str, kind: Row, thread: str = "") -> Line:
    name = kind.text("kind")
    act = Go("bench.lookup_card", {"kind": name, "values": _values(world, kind, thread)})
    return Line(key=f"{name} {thread}", title=title, detail=detail, act=act)


def _values(world: World, kind: Row, thread: str) -> dict[str, Any]:
    """Return what the look-up begins with: this board's own joint of the kind, else the usual one."""
    values = plain(usual_joint(kind))
    key = next((key for key, place in joint_places().items() if place.kind == kind.text("kind")), "")
    own = world.kept(to_dict, board_of(world)).get("joints", {}).get(key, {})
    if "thread" in own:
        values = {name: value for name, value in own.items() if name != "count"}
    if thread:
        values["thread"] = {"si": thread, "known": "guess"}
    return values


def plain(joint: BoardJoint) -> dict[str, Any]:
    """Return the values of a joint by name, as a page keeps them."""
    return {name: {"si": value.si, "known": value.known} for name, value in joint.values()}
