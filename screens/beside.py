"""The list of a place beside the page that is open: on a wide window the next page is one touch away."""

from collections.abc import Iterator
from dataclasses import replace

from screens.acts import Both, Go, Home
from screens.blocks import Block, Line, Section
from screens.register import page_function
from screens.world import World

LISTS = ("bench", "numbers", "log")
"""Places that are a list. Ride shows a state: what is done from there has the window to itself."""


def beside(world: World) -> tuple[Block, ...]:
    """Return the rows of the place that lead on, the one that is open marked; none on the place itself."""
    if len(world.trail) < 2 or world.trail[0].page not in LISTS:  # noqa: PLR2004  (said above)
        return ()
    place, opened = world.trail[:2]
    page = page_function(place.page)(replace(world, trail=(place,), asking=None))
    rows = [_row(one, opened.page, opened.args) for one in page.blocks]
    title = Section("list title", page.title)
    return (title, *_with_rows([row for row in rows if row is not None]))


def _row(block: Block, page: str, args: object) -> Block | None:
    if isinstance(block, Section):
        return replace(block, key=f"list {block.key}", note="")
    if isinstance(block, Line) and isinstance(block.act, Go):
        chosen = (block.act.page, dict(block.act.args)) == (page, args)
        act = Both((Home(), block.act))
        return replace(block, key=f"list {block.key}", act=act, chosen=chosen, value="", strokes=None)
    return None


def _with_rows(blocks: list[Block]) -> Iterator[Block]:
    """Leave out the headings under which nothing is left."""
    for place, block in enumerate(blocks):
        below = blocks[place + 1 : place + 2]
        if not isinstance(block, Section) or (below and not isinstance(below[0], Section)):
            yield block
