"""Screws: each joint of the board with its present answer, any other screw by name or size, reach and threadlocker."""

from collections.abc import Iterator

from logic.answers.joint_guide import find_joints
from logic.answers.joints import JointCard, joints_of
from screens.acts import Go
from screens.bench.joint_card import board_of, rides_since
from screens.bench.lookup import SEARCH, any_screw, found, look_up
from screens.blocks import Block, Field, Line, Section
from screens.page import Page
from screens.tongue import _
from screens.ways import ways_from
from screens.words.joints import answer_text, is_due, summary, tightened_text
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
        yield _line(world, card) if card.joint.thread is not None else _usual(world, card)
    yield Section("others", _("Any other screw"))
    yield any_screw(world)
    yield from ways_from("bench.joints")


def _line(world: World, card: JointCard) -> Line:
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
    )


def _usual(world: World, card: JointCard) -> Line:
    """Return a joint nobody described: it is answered from the usual screw."""
    sizes = ", ".join(card.kind.cells["sizes"])
    return Line(card.key, card.kind.text("name"), sizes, act=look_up(world, card.kind))
