"""One joint of the board: how tight, how, with what, and that it was done; what it consists of, value by value."""

from collections.abc import Iterator

from logic.answers.joint_entry import tightening
from logic.answers.joints import joint_card, kind_of
from logic.answers.reading import Open
from logic.board_joints import joint_places
from logic.fields import joint_fields
from screens.acts import Go
from screens.acts.keeping import Record
from screens.bench.joint_card import CardBlocks, board_of, joint_value_line, rides_since
from screens.blocks import Block, Button, Line, Section, Words
from screens.page import Foot, Page
from screens.tongue import _, texts
from screens.ways import leads_to, way_from
from screens.words.joints import again_text, answer_text, is_due, summary, tightened_text, value_text
from screens.world import World


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
            grade=_("no") if grade == "none" else grade
        )
        yield Words("writes", said, tone="second")
    yield way_from("bench.joint", "other", joint=joint)


def _done(show: CardBlocks) -> Button:
    """Return the bar that writes into the log what it says: one tap, with undo."""
    card = show.card
    if not (card.torque or card.feel):
        return Button(_("Not known yet"), why=_("Describe this joint first."))
    tool: str = show.world.store.get("joint_tool", "torque wrench") if card.torque else "by feel"
    by = f", {texts('joints')['tools'].get(tool, tool).lower()}" if card.torque else ""
    entry = tightening(card, torque=card.torque, tool=tool)
    text = _("Done: {answer}{by}").format(answer=answer_text(card, show.world.style), by=by)
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
    shown, known = value_text(name, value, world.style), "" if value is None else value.known
    return joint_value_line(name, world, joint_fields()[name], path, shown, known)
