"""The joints of this board, in the order of building, each with its present answer."""

from logic.answers.joints import JointCard, joints_of
from screens.acts import Go
from screens.bench.joint_card import board_of, rides_since
from screens.blocks import Line, Section
from screens.page import Page
from screens.tongue import _
from screens.words.joints import answer_text, is_due, summary, tightened_text
from screens.world import World

OTHERS = (
    ("bench.lookup", "search", _("Look up a screw"), _("By kind, size or what you see.")),
    ("bench.reach", "ruler", _("Screw reach"), _("Does it engage enough, does it reach the windings?")),
    ("bench.locker", "driver", _("Threadlocker"), _("Which grade, where not, on and off again.")),
)


def joints_page(world: World) -> Page:
    """Return what each joint is set to, and when it was; then the way to any other screw."""
    return Page(
        title=_("Joints"),
        blocks=(
            *(_line(world, card) for card in world.kept(joints_of, board_of(world), world.person)),
            Section(key="others", title=_("Any other screw")),
            *(
                Line(key=page, title=title, detail=detail, icon=icon, act=Go(page))
                for page, icon, title, detail in OTHERS
            ),
        ),
    )


def _line(world: World, card: JointCard) -> Line:
    record = world.last("tightening", joint=card.key)
    due = is_due(record, world.now, rides_since(world, record))
    said = _("Look at it again now.") if due else tightened_text(record, world.now, world.style)
    warned = card.notice[0] == "warning"
    return Line(
        key=card.key,
        title=card.kind.text("name"),
        value=answer_text(card, world.style),
        detail=f"{summary(card.joint, world.style)}. {said}",
        icon="cross" if warned else "due" if due else "tick" if record else "",
        act=Go("bench.joint", {"joint": card.key}),
    )
