"""One entry of the log: all of it, what it was before a correction, and what can be done with it."""

from collections.abc import Iterator

from logic.store import Record
from logic.store.errors import UnknownEntry
from screens.acts import Back, Both
from screens.acts.keeping import Void
from screens.blocks import Block, Button, Line, Section, Verdict, Words
from screens.log.note import correct_note
from screens.log.ride import correct_ride
from screens.page import Foot, Page
from screens.tongue import _
from screens.words.log import KINDS, entry_lines, entry_words
from screens.world import World

SHORT = 40
"""Letters of a title that is pinned; a longer one scrolls with its entry."""
BESIDE = 24
"""Letters of a value that stands beside its label."""


def entry_page(world: World) -> Page:
    """Return entry `number`. Nothing is overwritten: a correction is a new row, and so is taking it out."""
    number = world.args["number"]
    try:
        record = world.store.entry(number)
    except UnknownEntry:
        text = _("The log has no entry {number}.").format(number=number)
        return Page(title=_("Entry"), blocks=(Words("gone", text),), places=False)
    title = entry_words(record, world.style)[0]
    out = record.voided_by is not None
    when = _("{at}, entry {number}").format(at=f"{record.at:%Y-%m-%d %H:%M}", number=record.id)
    if out:
        when = _("Taken out of the log. {when}").format(when=when)
    short = len(title) <= SHORT
    return Page(
        title=KINDS.get(record.kind, _("Entry")),
        crown=Verdict(title, when, key="title") if short else None,
        blocks=(
            *(() if short else (Words("title", title, role="lead", bold=True),)),
            *(() if short else (Words("when", when, tone="second"),)),
            *_blocks(world, record),
        ),
        foot=_foot(world, record),
        places=False,
    )


def _blocks(world: World, record: Record) -> Iterator[Block]:
    board = world.store.board(record.board)
    if board is not None:
        yield Words("whose", _("Board: {name}").format(name=board.name), tone="second")
    for number, (label, value) in enumerate(entry_lines(record, world.style)):
        beside = len(value) <= BESIDE
        yield Line(f"line {number}", label, "" if beside else value, value=value if beside else "")
    before = world.store.versions(record.id)[:-1]
    if before:
        yield Section("before", _("As it was before"))
    for number, old in enumerate(before):
        title, _detail, icon = entry_words(old, world.style)
        yield Line(f"before {number}", title, f"{old.at:%Y-%m-%d %H:%M}", icon=icon)


def _foot(world: World, record: Record) -> Foot:
    if record.voided_by is not None:
        return Foot(main=Button(_("Bring it back"), Void(record.voided_by)))
    out = Void(record.id, _("Taken out of the log"))
    beside = [Button(_("Take it out of the log"), Both((out, Back())), bad=True)]
    if record.corrected_by is not None:
        back = Void(record.corrected_by, _("Correction taken back"))
        beside.append(Button(_("Take the correction back"), back))
    main = None
    if record.readable:
        own = record.kind in ("ride", "note", "work")
        text = _("Correct it") if own else _("Add or change its note")
        main = Button(text, (correct_ride if record.kind == "ride" else correct_note)(world, record))
    return Foot(main=main, beside=tuple(beside))
