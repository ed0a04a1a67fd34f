"""What one joint of the board consists of, value by value."""

from logic.answers.joints import kind_of
from logic.board_joints import joint_places
from logic.fields import joint_fields
from screens.bench.joint_card import board_of, joint_value_line
from screens.blocks import Line, Words
from screens.page import Page
from screens.tongue import _
from screens.words.joints import value_text
from screens.world import World


def joint_edit_page(world: World) -> Page:
    """Return the values that are asked of the joint `joint`; each opens a page of its own."""
    key = world.args["joint"]
    said = _("Saved with the board. How sure each value is goes into the answer.")
    return Page(
        title=kind_of(key).text("name"),
        blocks=(
            Words(key="said", text=said, tone="second"),
            *(_line(world, key, name) for name in joint_places()[key].asks),
        ),
        places=False,
    )


def _line(world: World, joint: str, name: str) -> Line:
    value, path = board_of(world).joint(joint).value(name), f"joints.{joint}.{name}"
    shown, known = value_text(name, value, world.style), "" if value is None else value.known
    return joint_value_line(name, world, joint_fields()[name], path, shown, known)
