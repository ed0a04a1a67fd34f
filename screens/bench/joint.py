"""Screws: each joint of the board with its answer; one of them: how tight, how, with what, and that it was done."""

from collections.abc import Iterator
from datetime import timedelta

from logic.answers.joint_entry import tightening
from logic.answers.joint_guide import find_joints
from logic.answers.joints import JointCard, joint_card, joints_of, kind_of
from logic.answers.reading import Open
from logic.board_joints import joint_places
from logic.fields import joint_fields
from screens.acts import Go
from screens.acts.keeping import Record
from screens.bench.joint_card import CardBlocks, board_of, joint_value_line, rides_since
from screens.bench.lookup import SEARCH, any_screw, found, look_up
from screens.blocks import Block, Button, Field, Line, Section, Words
from screens.page import Foot, Page
from screens.tongue import _, texts
from screens.ways import leads_to, way_from, ways_from
from screens.words import KNOWN
from screens.words.joints import GRADES, again_text, answer_text, is_due, summary, tightened_text, value_text
from screens.world import World


def joints_page(world: World) -> Page:
    """Return the search, then what it found; with nothing typed every joint of a board and the rest about screws."""
    text = world.typed.get(SEARCH, "")
    hint = _("grub, axle, 5/16, M4")
    return Page(
        title=_("Screws"),
        blocks=(
            Field(SEARCH, _("What you see, or a size"), text, hint=hint),
            *(found(world, text) if text.strip() else _all(world)),
        ),
    )


def _all(world: World) -> Iterator[Block]:
    """Yield the joints, those with a torque first; then any other screw."""
    order = [kind.text("kind") for kind in find_joints("").kinds]
    cards = world.kept(joints_of, board_of(world), world.person)
    for card in sorted(cards, key=lambda card: order.index(card.kind.text("kind"))):
        yield _described(world, card) if card.joint.thread is not None else _usual(world, card)
    yield Section("others", _("Any other screw"))
    yield any_screw(world)
    yield from ways_from("bench.joints")


def _described(world: World, card: JointCard) -> Line:
    """Return a joint that is described, with its answer."""
    record = world.last("tightening", joint=card.key)
    due = is_due(record, world.now, rides_since(world, record))
    said = _("Look at it again now.") if due else tightened_text(record, world.now, world.style)
    warned = card.notice[0] == "warning"
    return Line(
        card.key,
        card.kind.text("name"),
        f"{summary(card.joint, world.style)}. {said}",
        value=answer_text(card, world.style),
        icon="cross" if warned else "due" if due else "tick" if record else "",
        act=Go("bench.joint", {"joint": card.key}),
        leads=True,
    )


def _usual(world: World, card: JointCard) -> Line:
    """Return a joint nobody described: it is answered from the usual screw."""
    sizes = ", ".join(card.kind.cells["sizes"])
    return Line(card.key, card.kind.text("name"), sizes, act=look_up(world, card.kind))


def joint_page(world: World) -> Page:
    """Return the answer of the joint `joint`, what it rests on, how to do it, and the bar that records it."""
    key = world.args["joint"]
    show = CardBlocks(world, world.kept(joint_card, board_of(world), key, world.person))
    folds = tuple(show.folds())
    return Page(
        title=kind_of(key).text("name"),
        crown=show.crown(),
        blocks=(
            *show.hazard(),
            *_inputs(show),
            *show.told(),
            *_record(show),
            *folds,
            *show.alike(),
        ),
        foot=Foot(main=_done(show), tall=True),
        aside=frozenset(block.key for block in folds),
        places=False,
    )


def _inputs(show: CardBlocks) -> Iterator[Line]:
    card, joint = show.card, show.world.args["joint"]
    known = card.joint.known
    yield leads_to(
        "joint",
        "bench.joint_edit",
        summary(card.joint, show.world.style),
        _("Partly a guess. Tap to change.")
        if known == "guess"
        else _("Tap to change.")
        if known
        else _("Tap to describe this joint"),
        icon="edit",
        joint=joint,
    )
    item = card.items["wrench"]
    if isinstance(item, Open) and item.missing:
        yield Line("add", _("Add it"), icon="plus", act=Go("bench.joint_value", {"key": item.missing[0]}))


def _record(show: CardBlocks) -> Iterator[Block]:
    world, card, joint = show.world, show.card, show.world.args["joint"]
    record = world.last("tightening", joint=joint)
    rides = rides_since(world, record)
    due = is_due(record, world.now, rides)
    yield Section("record head", _("Record"))
    yield Words("tightened", tightened_text(record, world.now, world.style), bold=True)
    again = again_text(card, record, world.now, rides)
    yield Words("again", again, tone="trial" if due else "text", bold=due)
    if card.torque or card.feel:
        grade = "none" if card.locker is None else card.locker.grade
        said = _("Done writes it into the log, {grade} locker.").format(
            grade=_("no") if grade == "none" else GRADES[grade]
        )
        yield Words("writes", said, tone="second")
    yield way_from("bench.joint", "other", joint=joint)


JUST_DONE = timedelta(minutes=1)
"""For so long the bar says that it would write a second entry."""


def _done(show: CardBlocks) -> Button:
    """Return the bar that writes into the log what it says: one tap, with undo.

    Other words come right after it: the bar hears nothing for a moment then, and a trembling glove writes no second entry.
    """
    world, card = show.world, show.card
    if not (card.torque or card.feel):
        return Button(_("Not known yet"), why=_("Describe this joint first."))
    tool: str = world.store.get("joint_tool", "torque wrench") if card.torque else "by feel"
    by = f", {texts('joints')['tools'].get(tool, tool).lower()}" if card.torque else ""
    entry = tightening(card, torque=card.torque, tool=tool)
    before = world.last("tightening", joint=world.args["joint"])
    again = before is not None and abs(world.now - before.at) < JUST_DONE
    said = _("Done again: {answer}{by}") if again else _("Done: {answer}{by}")
    text = said.format(answer=answer_text(card, world.style), by=by)
    return Button(text, Record(entry, undo=_("Recorded")))


def joint_edit_page(world: World) -> Page:
    """Return the values that are asked of the joint `joint`; each opens a page of its own."""
    key = world.args["joint"]
    said = _("Saved with the board. How sure each value is goes into the answer.")
    return Page(
        title=kind_of(key).text("name"),
        blocks=(
            Words("said", said, tone="second"),
            *(_line(world, key, name) for name in joint_places()[key].asks),
        ),
        places=False,
    )


def _line(world: World, joint: str, name: str) -> Line:
    value, path = board_of(world).joint(joint).value(name), f"joints.{joint}.{name}"
    shown, known = value_text(name, value, world.style), "" if value is None else KNOWN[value.known]
    return joint_value_line(name, world, joint_fields()[name], path, shown, known)
