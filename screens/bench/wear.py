"""What a belt's wear tells: from what one sees to its cause and what to do."""

from logic.tables import rows
from screens.blocks import Section, Words
from screens.page import Page
from screens.tongue import _
from screens.ways import leads_to
from screens.words.sources import source_text
from screens.world import World


def wear_page(_world: World) -> Page:
    """Return the signs; a tap shows one."""
    return Page(
        title=_("Wear of a belt"),
        blocks=(
            Words(key="question", text=_("What do you see, hear or feel?"), bold=True),
            *(
                leads_to(
                    f"sign {number}", "bench.wear_sign", line.text("sign"), line.text("look"), number=number
                )
                for number, line in enumerate(rows("belt_wear"))
            ),
        ),
    )


def sign_page(world: World) -> Page:
    """Return one sign of the table by its `number`, what to do first."""
    line = rows("belt_wear")[world.args["number"]]
    return Page(
        title=_("Wear of a belt"),
        blocks=(
            Words(key="sign", text=line.text("sign"), role="title", bold=True),
            Words(key="look", text=line.text("look")),
            Section(key="do head", title=_("What to do")),
            Words(key="do", text=line.text("do"), role="lead", bold=True),
            Section(key="causes head", title=_("Usual causes")),
            Words(key="causes", text=line.text("causes")),
            Words(key="source", text=source_text(line.source, line.where), role="small", tone="second"),
        ),
    )
