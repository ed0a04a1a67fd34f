"""What stands around the page that is open: its board and its place, and beside it in a wide window the list of the place."""

from collections.abc import Iterator
from dataclasses import replace
from typing import Any

from screens.acts import Both, Go, Home
from screens.blocks import Block, Line, Section
from screens.register import page_function
from screens.tongue import _
from screens.world import World

LISTS = ("bench", "numbers", "log")
"""Places that are a list. Ride shows a state: what is done from there has the window to itself."""


def around(world: World) -> dict[str, Any]:
    """Return what the header, the places and the bar over them show."""
    notes = [_("Example")] if world.saved.example else []
    notes += [_("trial open")] if world.trial and not world.is_scratch else []
    # What is typed without any board is kept by no board yet.
    without = _("Not saved yet") if world.trial else _("No board yet")
    return {
        "back": len(world.trail) > 1,
        "place": world.trail[0].page,
        "board": without if world.is_scratch else world.saved.name,
        "note": ", ".join(notes),
        "bar": world.undo,
    }


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
