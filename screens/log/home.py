"""Log: what is due, then everything recorded, newest first, a page at a time; and what was taken out of it."""

from collections.abc import Iterator
from functools import cached_property

from logic.frozen import frozen
from logic.store import Record
from screens.acts import Go, Turn
from screens.blocks import Block, Button, Choice, Field, Line, Option, Section, Words
from screens.log.due import due_tile
from screens.log_book import LogBook
from screens.page import Foot, Page
from screens.search_tool import search_tools
from screens.showing import fold
from screens.tongue import _
from screens.ways import leads_to, signs_line, ways_from
from screens.words import Style
from screens.words.log import KINDS, entry_words
from screens.world import World

SHOWN = 20
"""Entries on a page."""
REACH = 1000
"""Rows of the log that the first look goes through for a word: a long log costs no more than a short one."""
WIDER, WIDEST = 4, 50_000
"""How much wider each further look is, up to this many rows."""
SEARCH = "log"
"""Key under which the words of the search are typed."""
LISTED = 40
"""Entries that stand on the page at first, and that each tap on the last row adds."""


def log_page(world: World) -> Page:
    """Return the entries of this board or of all boards, of one kind or all, with a word in them or not."""
    look = _Look(world)
    return Page(
        title=_("Log"),
        crown=None if look.past else due_tile(world),
        blocks=tuple(_listed(look)),
        foot=Foot(
            main=Button(_("+ Add a ride"), Go("log.ride")),
            beside=(Button(_("+ Add a note"), Go("log.note")),),
        ),
        back=look.newer() if look.past else None,
        card=str(look.past),
        chip=True,
        tools=search_tools(),
    )


@frozen
class Found:
    """Entries of one look, and the row below which the next one begins; 0 where the log ends."""

    records: tuple[Record, ...]
    onward: int


def find(log: LogBook, board: str, kind: str, before: int, text: str, reach: int) -> Found:  # noqa: PLR0913  (its filters)
    """Return a page of entries below a row (0 for the newest); `board` and `kind` are "" for all.

    A word is looked for in so many rows.
    """
    top = before or log.store.newest()[0] + 1
    after = max(0, top - 1 - reach) if text else 0
    found = log.store.page(board or None, kind or None, top, limit=SHOWN + 1, text=text, after=after)
    if len(found) > SHOWN:
        return Found(tuple(found[:SHOWN]), found[SHOWN - 1].id)
    return Found(tuple(found), after + 1 if after else 0)


class _Look:
    """What of the log is looked at: filters, the words looked for, and how far back."""

    def __init__(self, world: World) -> None:
        """Read the filters."""
        self.world = world
        self.kind = str(world.args.get("kind", ""))
        self.all = world.args.get("whose") == "all"
        self.text = world.typed.get(SEARCH, "").strip()
        self.past: tuple[int, ...] = tuple(world.args.get("_past", ()))

    @cached_property
    def found(self) -> Found:
        """Return the entries in front."""
        board = "" if self.all else self.world.saved.id
        before = self.past[-1] if self.past else 0
        reach = min(REACH * WIDER ** len(self.past), WIDEST)
        return self.world.kept(find, self.world.log, board, self.kind, before, self.text, reach)

    def older(self) -> Turn:
        """Return the act that turns to older entries."""
        return Turn({"_past": (*self.past, self.found.onward)})

    def newer(self) -> Turn:
        """Return the act that turns back to newer ones."""
        return Turn({"_past": self.past[:-1] or None})

    @property
    def filters(self) -> str:
        """Return what the filters are set to."""
        kind = KINDS[self.kind] if self.kind else _("All kinds")
        whose = _("all boards") if self.all else _("this board")
        said = f', "{self.text}"' if self.text else ""
        return f"{kind}, {whose}{said}"


def _listed(look: _Look) -> Iterator[Block]:
    yield from fold(look.world, "filter", _("Filter and search"), lambda: _filter(look), look.filters)
    yield from _entries(look)
    found = look.found
    if not found.records:
        yield Words("empty", _empty(look))
    if found.onward:
        text = _("Older entries") if len(found.records) == SHOWN else _("Look further back")
        yield Line("older", text, icon="open", act=look.older())
    if look.past:
        yield Line("newer", _("Newer entries"), icon="shut", act=look.newer())
        return
    rules = len(look.world.upcoming)
    yield Section("more", _("More"))
    count = _("1 rule") if rules == 1 else _("{count} rules").format(count=rules)
    yield leads_to("log.due", "log.due", _("All upkeep"), count, icon="due")
    yield from ways_from("log")
    yield signs_line()


def _filter(look: _Look) -> tuple[Block, ...]:
    whose = (
        Option(_("This board"), Turn({"whose": None, "_past": None}), not look.all),
        Option(_("All boards"), Turn({"whose": "all", "_past": None}), look.all),
    )
    kinds = tuple(
        Option(text, Turn({"kind": kind or None, "_past": None}), kind == look.kind)
        for kind, text in KINDS.items()
    )
    said = look.world.typed.get(SEARCH, "")
    return (
        Field(SEARCH, _("Search the log"), said),
        Choice("whose", _("Board"), whose),
        Choice("kind", _("Kind"), kinds),
    )


def _entries(look: _Look) -> Iterator[Block]:
    """Yield the entries under their days."""
    world = look.world
    names = {one.id: one.name for one in world.boards()} if look.all else {}
    today, last = f"{world.now:%Y-%m-%d}", ""
    for record in look.found.records:
        day = f"{record.at:%Y-%m-%d}"
        if day != last:
            last = day
            yield Section(f"day {record.id}", _("Today") if day == today else day)
        whose = f"{names.get(record.board, _('Another board'))}. " if look.all else ""
        yield entry_line(record, world.style, whose)


def entry_line(record: Record, style: Style, before: str = "") -> Line:
    """Return the row of an entry; `before` is told of it first."""
    title, detail, icon = entry_words(record, style)
    act = Go("log.entry", {"number": record.id})
    return Line(f"entry {record.id}", title, before + detail, icon=icon, act=act)


def _empty(look: _Look) -> str:
    if look.found.onward:
        return _("Nothing in the newest part of the log fits.")
    if look.kind or look.text or look.past:
        return _("Nothing in the log fits this filter.")
    return _("Rides, checks and work on this board appear here. Finish a check to start.")


def bin_page(world: World) -> Page:
    """Return the hidden entries of the board in use, newest first."""
    return Page(title=_("Taken out of the log"), blocks=tuple(_binned(world)), places=False)


def _binned(world: World) -> Iterator[Block]:
    records = world.kept(_hidden, world.log)
    if not records:
        yield Words("empty", _("Nothing has been taken out of this board's log."))
        return
    yield Words("how", _("Tap an entry to see it or bring it back."), tone="second")
    shown = world.args.get("_shown", LISTED)
    yield from (entry_line(record, world.style) for record in records[:shown])
    if len(records) > shown:
        yield Line("more", _("Older entries"), icon="open", act=Turn({"_shown": shown + LISTED}))


def _hidden(log: LogBook) -> list[Record]:
    return log.store.voided(log.board)
