"""Bench view: one thing in letters that can be read from a metre away, with dirty hands."""

from screens.blocks import Figure
from screens.page import Page
from screens.showing import sentences
from screens.world import World


def view_page(world: World) -> Page:
    """Return `big` and under it `lines`; the screen stays on."""
    big, lines = world.args["big"], world.args["lines"]
    return Page(
        title=world.args["title"],
        crown=Figure(key="big", label="", number=big) if big else None,
        blocks=tuple(sentences("line", lines, role="title")),
        places=False,
        awake=True,
    )
