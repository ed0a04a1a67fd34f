"""A search over everything: pages, screws, faults, words of the trade, and the log."""

from collections.abc import Iterator

from screens.blocks import Block, Field, Words
from screens.page import Page
from screens.search_tool import SEARCH
from screens.tongue import _
from screens.ways import ways_from
from screens.world import World


def search_page(world: World) -> Page:
    """Return what fits the words typed, by kind."""
    wanted = world.typed.get(SEARCH, "")
    label = _("Page, screw, fault, word or log")
    return Page(
        title=_("Search"),
        blocks=(
            Field(SEARCH, label, wanted, hint=_("belt, M4, hot, Kv")),
            *_below(world, wanted.strip()),
        ),
    )


def _below(world: World, wanted: str) -> Iterator[Block]:
    if wanted:
        from screens.found import found  # noqa: PLC0415  (loaded at the first letter)

        blocks = tuple(found(world, wanted))
        yield from blocks
        if blocks:
            return
        yield Words("none", _("Nothing fits. Try fewer letters, or another word for it."), bold=True)
    yield from ways_from("search")
