"""Entries taken out of the log: each can be brought back, however long ago it was."""

from collections.abc import Iterator

from logic.store import Record
from screens.acts import Turn
from screens.blocks import Block, Line, Words
from screens.log.home import entry_line
from screens.log_book import LogBook
from screens.page import Page
from screens.tongue import _
from screens.world import World

LISTED = 40
"""Entries that stand on the page at first, and that each tap on the last row adds."""


def bin_page(world: World) -> Page:
    """Return the hidden entries of the board in use, newest first."""
    return Page(title=_("Taken out of the log"), blocks=tuple(_blocks(world)), places=False)


def _blocks(world: World) -> Iterator[Block]:
    records = world.kept(_hidden, world.log)
    if not records:
        yield Words(key="empty", text=_("Nothing has been taken out of this board's log."))
        return
    yield Words(key="how", text=_("Tap an entry to see it or bring it back."), tone="second")
    shown = world.args.get("_shown", LISTED)
    yield from (entry_line(record, world.style) for record in records[:shown])
    if len(records) > shown:
        yield Line(key="more", title=_("Older entries"), icon="open", act=Turn({"_shown": shown + LISTED}))


def _hidden(log: LogBook) -> list[Record]:
    return log.store.voided(log.board)
