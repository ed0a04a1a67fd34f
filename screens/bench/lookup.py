"""Any screw: found by what one sees or by its size, looked up with the answer at every tap. Nothing is saved."""

import json
from collections.abc import Iterator, Mapping
from dataclasses import replace
from typing import Any

from logic.answers.joint_guide import find_joints, holds_a_thread, kind_named
from logic.answers.joint_options import LOOK_UP, option_label, thread_label, usual, usual_joint
from logic.answers.joints import JointCard, joint_card
from logic.board import Board, value_from
from logic.board_joints import BoardJoint, joint_places
from logic.board_saved import to_dict
from logic.fields import joint_fields
from logic.person import Person
from logic.tables import Row
from screens.acts import Both, Go, Swap, Turn
from screens.acts.entering import Write
from screens.acts.keeping import Set
from screens.bench.joint_card import CardBlocks, board_of, joint_value_line
from screens.blocks import Block, Choice, Line, Option, Section, Words
from screens.page import Page
from screens.showing import fold
from screens.tongue import _, texts
from screens.words.joints import summary, value_text
from screens.world import World

MOST_THREADS = 6
"""Threads listed for what is typed; more would hide the joints."""
SEARCH = "lookup"
"""Key under which the words of the search are typed."""
INTO = ("aluminium unknown", "6061-T6", "steel", "insert nut")
PICKED = ("thread", "into", "engagement")
"""What is asked first, each with its usual values."""
MORE = {
    "set screw": ("carries", "shaft", "screws", "key_width", "key_height", "key_length"),
    "torque": ("strength", "condition", "head", "member", "washer", "running"),
    "feel": ("head", "stack", "running"),
}


def found(world: World, text: str) -> Iterator[Block]:
    """Yield kinds of joint, and threads, that what is typed can mean."""
    names = find_joints(text)
    if not names.kinds and not names.threads:
        yield Words("none", _("Nothing by this name. Try a size, or: grub, axle, lid."), bold=True)
    screw = kind_named("screw")
    yield from (
        _line(world, kind.text("name"), ", ".join(kind.cells["sizes"]), kind)
        for kind in names.kinds
        if kind.text("kind") != "screw"
    )
    if names.threads:
        yield Section("sizes", _("By size"))
    for thread in names.threads[:MOST_THREADS]:
        title = _("Any screw {thread}").format(thread=thread_label(thread))
        yield _line(world, title, "", screw, thread.designation)
    if screw in names.kinds:
        yield any_screw(world)
    yield Line("all", _("Show all screws"), icon="undo", act=Write(SEARCH, ""))


def any_screw(world: World) -> Line:
    """Return the row of a screw that is no joint of a board."""
    screw = kind_named("screw")
    return _line(world, screw.text("name"), _("M2 to M12, #4 to 3/8"), screw)


def _line(world: World, title: str, detail: str, kind: Row, thread: str = "") -> Line:
    return Line(f"{kind.text('kind')} {thread}", title, detail, act=look_up(world, kind, thread))


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


def lookup_card_page(world: World) -> Page:
    """Return a joint of a `kind` with `values` by name, which are kept with the page and not with a board."""
    kind, values = world.args["kind"], json.dumps(world.args["values"], sort_keys=True)
    card = world.kept(looked_up, board_of(world), kind, values, world.person)
    show = CardBlocks(world, card)
    folds = tuple(show.folds())
    return Page(
        title=card.kind.text("name"),
        crown=show.crown(),
        blocks=(
            *show.hazard(),
            *_picks(world, card),
            Words("said", f"{summary(card.joint, world.style)}.", bold=True),
            *show.told(said_already=("aluminium unknown",)),
            *show.alike(),
            *folds,
            *fold(world, "more", _("Other sizes, class, head"), lambda: tuple(_more(world, card))),
            *_keep(card),
        ),
        aside=frozenset(block.key for block in folds),
        places=False,
    )


def looked_up(board: Board, kind: str, values: str, person: Person) -> JointCard:
    """Return the card of a screw whose values are given as JSON text by name."""
    joint = BoardJoint(LOOK_UP, **{name: value_from(body) for name, body in json.loads(values).items()})
    return joint_card(replace(board, joints=(*board.joints, joint)), LOOK_UP, person, kind_named(kind))


def _picks(world: World, card: JointCard) -> Iterator[Choice]:
    """Yield what is asked first: size, what it goes into, how deep."""
    kind, joint = card.kind, card.joint
    own = "" if joint.thread is None else str(joint.thread.si)
    sizes = list(kind.cells["sizes"]) or ["M3", "M4", "M5", "M6", "M8"]
    yield _choice(world, "thread", _("Thread"), {name: name for name in (*sizes, own) if name}, own)
    if kind.text("way") == "feel":
        return
    into, field = "" if joint.into is None else str(joint.into.si), joint_fields()["into"]
    metals = {
        name: texts("joints")["short"].get(name, _short(option_label(field, name)))
        for name in (*INTO, into)
        if name
    }
    goes_into = _choice(world, "into", _("Goes into"), metals, into)
    deep = (_depth(world, card),) if holds_a_thread(into) else ()
    if kind.text("way") != "set screw":
        yield from (goes_into, *deep)
        return
    # The warning of a round shaft takes room: what the headline asks for comes first.
    shaft = "" if joint.carries is None else str(joint.carries.si)
    yield from (
        *deep,
        _choice(world, "carries", _("Shaft under the pulley"), texts("joints")["shafts"], shaft),
        goes_into,
    )


def _depth(world: World, card: JointCard) -> Choice:
    """Return how deep the thread holds: the usual lengths, and the one that was typed."""
    deep = card.joint.engagement
    usual_lengths = usual(card.kind.text("kind")).cells["lengths"]
    lengths = {f"{size / 1000:.4f}": f"{size} mm" for size in usual_lengths}
    length = "" if deep is None else f"{float(deep.si):.4f}"
    if deep is not None and length not in lengths:
        lengths[length] = world.style.typed(float(deep.si), "length", deep.typed_unit)
    return _choice(world, "engagement", _("Thread in the hole"), lengths, length)


def _choice(world: World, name: str, label: str, options: Mapping[str, str], chosen: str) -> Choice:
    """Return the usual values of one field; the others stand further down."""
    values = world.args["values"]

    def put(key: str) -> Turn:
        value: dict[str, Any] = (
            {"si": float(key), "typed_unit": "mm"} if name == "engagement" else {"si": key}
        )
        return Turn({"values": {**values, name: {**value, "known": "chosen"}}})

    return Choice(name, label, tuple(Option(text, put(key), key == chosen) for key, text in options.items()))


def _more(world: World, card: JointCard) -> Iterator[Block]:
    """Yield every value, each with its whole list or the keypad."""
    into = "" if card.joint.into is None else str(card.joint.into.si)
    first = PICKED if card.kind.text("way") != "feel" else PICKED[:1]
    for name in (
        *(one for one in first if one != "engagement" or holds_a_thread(into)),
        *MORE[card.kind.text("way")],
    ):
        shown = value_text(name, card.joint.value(name), world.style)
        path = f"joints.{LOOK_UP}.{name}"
        yield joint_value_line(f"more {name}", world, joint_fields()[name], path, shown, "")


def _keep(card: JointCard) -> Iterator[Line]:
    """Yield the way to make it a joint of the board, to be recorded and looked at again."""
    key = joint_of(card.kind)
    if not key:
        return
    asks = joint_places()[key].asks
    values = {f"joints.{key}.{name}": value for name, value in card.joint.values() if name in asks}
    detail = _("Then it can be recorded and looked at again in time.")
    keep = Both((Set(values), Swap("bench.joint", {"joint": key})))
    yield Line("keep", _("Keep it with the board"), detail, icon="save", act=keep)


def _short(label: str) -> str:
    return label.removeprefix("aluminium ").removeprefix("a ").removesuffix("-T6")
