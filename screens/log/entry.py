"""One entry of the log, all of it; the words of one, of a note, work done or a new belt; why something is put off."""

from collections.abc import Iterator
from dataclasses import replace

from logic.log import BeltFitted, Note, Snooze, Work
from logic.store import Record as Entered
from logic.store.errors import UnknownEntry
from screens.acts import Act, Back, Both, Go
from screens.acts.entering import Write
from screens.acts.keeping import Correct, Record, Void
from screens.asking import page_choice
from screens.blocks import Block, Button, Field, Line, Section, Verdict, Words
from screens.log.ride import correct_ride
from screens.page import Foot, Page
from screens.tongue import _, texts
from screens.words.log import KINDS, entry_lines, entry_words
from screens.words.tension import belt_name
from screens.world import World

WORDS = texts("note")
BELTS = tuple((side, belt_name(side)) for side in ("left", "right"))
SHORT = 40
"""Letters of a title that is pinned; a longer one scrolls with its entry."""
BESIDE = 24
"""Letters of a value that stands beside its label."""


def note_key(world: World) -> str:
    """Return the key under which the words of this page are typed."""
    return f"note/{world.args.get('number', 'new')}"


def note_page(world: World) -> Page:
    """Return the words of a new entry, or of entry `number`."""
    words = world.typed.get(note_key(world), "").strip()
    act = _save(world, words)
    why = "" if act else _("Write a few words first.")
    fresh = world.args.get("number") is None
    return Page(
        title=_("Add to the log") if fresh else _("Correct the entry"),
        blocks=tuple(_asked(world, fresh=fresh)),
        foot=Foot(main=Button(_("Save"), act, why)),
        places=False,
    )


def correct_note(world: World, record: Entered) -> Act:
    """Return the act that opens the words of an entry to be corrected, with what they are as if they had been typed."""
    key, go = f"note/{record.id}", Go("log.note", {"number": record.id})
    return go if key in world.typed else Both((Write(key, record.body.note), go))


def _kind_of(world: World) -> str:
    return str(world.args.get("kind", "note"))


def _asked(world: World, *, fresh: bool) -> Iterator[Block]:
    kind = _kind_of(world)
    if fresh:
        yield page_choice("kind", _("What it is"), WORDS["kinds"].items(), kind)
        if kind == "belt_fitted" and len(world.saved.sides) > 1:
            yield page_choice("side", _("Belt"), BELTS, world.side_of(world.saved))
    prompt = WORDS["prompts"][kind] if fresh else _("The words of this entry.")
    yield Words("prompt", prompt, tone="second")
    key = note_key(world)
    yield Field(key, _("A few words"), world.typed.get(key, ""))


def _save(world: World, words: str) -> Act | None:
    """Return the act that writes it into the log; only a new belt needs no words."""
    number, kind = world.args.get("number"), _kind_of(world)
    then = (Write(note_key(world), ""), Back())
    if number is None and kind == "belt_fitted":
        return Record(BeltFitted(belt=world.side_of(world.saved), note=words), then, undo=_("Recorded"))
    if not words:
        return None
    if number is not None:
        return Correct(number, replace(world.store.entry(number).body, note=words), then)
    entry = Work(note=words) if kind == "work" else Note(note=words)
    return Record(entry, then, undo=_("Recorded"))


def snooze_page(world: World) -> Page:
    """Return the page that asks why `rule` is put off."""
    rule, name, stop = world.args["rule"], str(world.args["label"]), bool(world.args["stop"])
    key = f"snooze/{rule}"
    reason = world.typed.get(key, "").strip()
    asks = (
        _("This one stops a ride. Say why it can wait; the log keeps the reason.")
        if stop
        else _("It comes back after the next ride. A reason is optional.")
    )
    record = Record(
        Snooze(rule=rule, name=name, reason=reason, stop=stop),
        (Write(key, ""), Back()),
        undo=_("Put off until the next ride"),
    )
    wanted = stop and not reason
    why = _("A reason is wanted: this one stops a ride.") if wanted else ""
    return Page(
        title=_("Put off"),
        crown=Verdict(name, key="name"),
        blocks=(
            Words("asks", asks, role="lead"),
            Field(key, _("Why it can wait"), world.typed.get(key, "")),
        ),
        foot=Foot(main=Button(_("Put off until the next ride"), None if wanted else record, why)),
        places=False,
    )


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


def _blocks(world: World, record: Entered) -> Iterator[Block]:
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


def _foot(world: World, record: Entered) -> Foot:
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
