"""A search over everything: pages, screws, faults, words of the trade, and the log."""

from collections.abc import Callable, Iterator

from logic.answers.joint_guide import find_joints
from logic.checks.faults import faults
from logic.search import Thing, search
from logic.tables import Row
from screens.acts import Act, Both, Go, Place, Write
from screens.bench.faults import SEARCH as FAULTS
from screens.bench.joint_card import board_of
from screens.bench.lookup import SEARCH as SCREWS
from screens.bench.lookup import joint_of, look_up
from screens.blocks import Block, Field, Line, Section, Words
from screens.glossary import SEARCH as GLOSSARY
from screens.glossary import line as word_line
from screens.glossary import things as all_words
from screens.log.home import REACH, find
from screens.log.home import SEARCH as LOG
from screens.page import Page
from screens.tongue import _
from screens.words.log import entry_words
from screens.words.pages import FOUND
from screens.world import World

SEARCH = "search"
"""Key under which the words of the search are typed."""
SHOWN = 4
"""Rows of each kind that are shown; the rest is one row further."""
BEGIN = (
    ("ride.pack_signs", _("Pack hot or swollen?"), "warning"),
    ("bench.faults", _("Something is wrong"), "search"),
    ("glossary", _("What does a word mean?"), "question"),
)
"""Ways on while nothing is typed."""


def search_page(world: World) -> Page:
    """Return what fits the words typed, by kind."""
    wanted = world.typed.get(SEARCH, "")
    label = _("Page, screw, fault, word or log")
    return Page(
        title=_("Search"),
        blocks=(
            Field(key=SEARCH, label=label, text=wanted, hint=_("belt, M4, hot, Kv")),
            *(_found(world, wanted.strip()) if wanted.strip() else _begin()),
        ),
    )


def _begin() -> Iterator[Block]:
    for page, title, icon in BEGIN:
        yield Line(key=page, title=title, icon=icon, act=Go(page))


def _found(world: World, wanted: str) -> Iterator[Block]:
    groups = (
        (_("Pages"), _pages(wanted), None),
        (_("Screws"), _screws(world, wanted), Both((Write(SCREWS, wanted), Go("bench.joints")))),
        (_("Faults"), _faults(wanted), Both((Write(FAULTS, wanted), Go("bench.faults")))),
        (_("Words"), _words(wanted), Both((Write(GLOSSARY, wanted), Go("glossary")))),
        (_("Log"), _log(world, wanted), Both((Write(LOG, wanted), Place("log")))),
    )
    nothing = True
    for title, lines, more in groups:
        if lines:
            nothing = False
            yield from _group(title, lines, more)
    if nothing:
        text = _("Nothing fits. Try fewer letters, or another word for it.")
        yield Words(key="none", text=text, bold=True)
        yield from _begin()


def _group(title: str, lines: list[Callable[[], Line]], more: Act | None) -> Iterator[Block]:
    """Yield a heading with its first rows; each is made only where it is shown."""
    yield Section(key=title, title=title)
    shown = SHOWN if more is not None else 2 * SHOWN
    yield from (make() for make in lines[:shown])
    if more is not None and len(lines) > shown:
        said = _("{count} more").format(count=len(lines) - shown)
        yield Line(key=f"more {title}", title=said, icon="open", act=more)


def _pages(wanted: str) -> list[Callable[[], Line]]:
    things = (Thing("page", page, title, tuple(also.split())) for page, title, also in FOUND)
    return [
        lambda one=one: Line(key=f"page {one.key}", title=one.title, act=Go(one.key))  # type: ignore[misc]
        for one in search(wanted, things)
    ]


def _screws(world: World, wanted: str) -> list[Callable[[], Line]]:
    return [
        lambda kind=kind: _screw(world, kind)  # type: ignore[misc]
        for kind in find_joints(wanted).kinds
        if kind.text("kind") != "screw"
    ]


def _screw(world: World, kind: Row) -> Line:
    """Return a joint of the board where it is described, else the look-up of its kind."""
    key = joint_of(kind)
    own = bool(key) and board_of(world).joint(key).thread is not None
    act = Go("bench.joint", {"joint": key}) if own else look_up(world, kind)
    return Line(key=f"screw {kind.text('kind')}", title=kind.text("name"), icon="driver", act=act)


def _faults(wanted: str) -> list[Callable[[], Line]]:
    things = (Thing("fault", one.key, one.title, one.words) for one in faults())
    return [
        lambda one=one: Line(  # type: ignore[misc]
            key=f"fault {one.key}", title=one.title, act=Go("bench.fault", {"fault": one.key})
        )
        for one in search(wanted, things)
    ]


def _words(wanted: str) -> list[Callable[[], Line]]:
    return [lambda one=one: word_line(one.key) for one in search(wanted, all_words())]  # type: ignore[misc]


def _log(world: World, wanted: str) -> list[Callable[[], Line]]:
    """Return what the newest part of the log holds, of all boards."""
    found = world.kept(find, world.log, "", "", 0, wanted, REACH)

    def make(number: int) -> Line:
        record = found.records[number]
        title, detail, icon = entry_words(record, world.style)
        act = Go("log.entry", {"number": record.id})
        return Line(key=f"entry {record.id}", title=title, detail=detail, icon=icon, act=act)

    return [lambda number=number: make(number) for number in range(len(found.records))]  # type: ignore[misc]
