"""Licences: what others wrote and Deckhand brings along, each with its text."""

from collections.abc import Iterator

from logic.licences import Licence, licences
from screens.blocks import Block, Words
from screens.page import Page
from screens.showing import fold, sentences
from screens.tongue import _
from screens.world import World


def licences_page(world: World) -> Page:
    """Return one heading for each thing; its text is read when it is opened."""
    about = _("Deckhand rests on the work of others. These are their licences.")
    rest = _(
        "Python, SQLite, SDL and what joins them to the phone are not listed: their texts lie in their own sources."
    )
    return Page(
        title=_("Licences"),
        blocks=(
            Words(key="about", text=about),
            *(block for one in enumerate(licences()) for block in _licence(world, *one)),
            Words(key="rest", text=rest, tone="second"),
        ),
        places=False,
    )


def _licence(world: World, number: int, of: Licence) -> tuple[Block, ...]:
    def text() -> Iterator[Block]:
        return sentences(str(number), of.paragraphs(), role="small")

    return fold(world, f"licence {number}", of.name, text, of.licence)
