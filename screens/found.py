"""What a search over everything finds, by kind. Loaded at the first letter: it knows joints, faults, words and the log."""

from collections.abc import Iterator

from logic.answers.joint_guide import find_joints
from logic.checks.faults import faults
from logic.search import Thing, search
from logic.tables import Row
from screens.acts import Act, Both, Go, Place
from screens.acts.entering import Write
from screens.bench.faults import SEARCH as FAULTS
from screens.bench.joint_card import board_of
from screens.bench.lookup import SEARCH as SCREWS
from screens.bench.lookup import joint_of, look_up
from screens.blocks import Block, Line, Section
from screens.glossary import SEARCH as GLOSSARY
from screens.glossary import line as word_line
from screens.glossary import things as all_words
from screens.log.home import REACH, entry_line, find
from screens.log.home import SEARCH as LOG
from screens.tongue import _, texts
from screens.ways import leads_to
from screens.world import World

SHOWN = 4
"""Rows of each kind that are shown; the rest is one row further."""


def found(world: World, wanted: str) -> Iterator[Block]:
    """Yield what fits, a heading for each kind; nothing where nothing does."""
    groups = (
        (_("Pages"), _pages(wanted), None),
        (_("Screws"), _screws(world, wanted), Both((Write(SCREWS, wanted), Go("bench.joints")))),
        (_("Faults"), _faults(wanted), Both((Write(FAULTS, wanted), Go("bench.faults")))),
        (_("Words"), _words(wanted), Both((Write(GLOSSARY, wanted), Go("glossary")))),
        (_("Log"), _log(world, wanted), Both((Write(LOG, wanted), Place("log")))),
    )
    for title, lines, more in groups:
        if lines:
            yield from _group(title, lines, more)


def _group(title: str, lines: list[Line], more: Act | None) -> Iterator[Block]:
    """Yield a heading with its first rows; `more` opens the rest where they are at home."""
    yield Section(title, title)
    shown = SHOWN if more is not None else 2 * SHOWN
    yield from lines[:shown]
    if more is not None and len(lines) > shown:
        yield Line(f"more {title}", _("{count} more").format(count=len(lines) - shown), icon="open", act=more)


def _pages(wanted: str) -> list[Line]:
    also = texts("pages")["also"]
    things = (
        Thing("page", page, title, tuple(also[page].split()))
        for page, title in texts("pages")["titles"].items()
    )
    return [leads_to(f"page {one.key}", one.key, one.title) for one in search(wanted, things)]


def _screws(world: World, wanted: str) -> list[Line]:
    return [_screw(world, kind) for kind in find_joints(wanted).kinds if kind.text("kind") != "screw"]


def _screw(world: World, kind: Row) -> Line:
    """Return a joint of the board where it is described, else the look-up of its kind."""
    key = joint_of(kind)
    own = bool(key) and board_of(world).joint(key).thread is not None
    act = Go("bench.joint", {"joint": key}) if own else look_up(world, kind)
    return Line(f"screw {kind.text('kind')}", kind.text("name"), icon="driver", act=act)


def _faults(wanted: str) -> list[Line]:
    things = (Thing("fault", one.key, one.title, one.words) for one in faults())
    return [
        leads_to(f"fault {one.key}", "bench.fault", one.title, fault=one.key)
        for one in search(wanted, things)
    ]


def _words(wanted: str) -> list[Line]:
    return [word_line(one.key) for one in search(wanted, all_words())]


def _log(world: World, wanted: str) -> list[Line]:
    """Return what the newest part of the log holds, of all boards."""
    records = world.kept(find, world.log, "", "", 0, wanted, REACH).records
    return [entry_line(record, world.style) for record in records]
