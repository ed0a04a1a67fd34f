"""A few words for the log: a note, work done, a new belt, the note of an entry; or why something is put off."""

from collections.abc import Iterator
from dataclasses import replace

from logic.log import BeltFitted, Note, Snooze, Work
from logic.store import Record as Entered
from screens.acts import Act, Back, Both, Go
from screens.acts.entering import Write
from screens.acts.keeping import Correct, Record
from screens.asking import page_choice
from screens.blocks import Block, Button, Field, Verdict, Words
from screens.page import Foot, Page
from screens.tongue import _, texts
from screens.words.tension import belt_name
from screens.world import World

WORDS = texts("note")
BELTS = tuple((side, belt_name(side)) for side in ("left", "right"))


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
        blocks=tuple(_blocks(world, fresh=fresh)),
        foot=Foot(main=Button(_("Save"), act, why)),
        places=False,
    )


def correct_note(world: World, record: Entered) -> Act:
    """Return the act that opens the words of an entry to be corrected, with what they are as if they had been typed."""
    key, go = f"note/{record.id}", Go("log.note", {"number": record.id})
    return go if key in world.typed else Both((Write(key, record.body.note), go))


def _kind(world: World) -> str:
    return str(world.args.get("kind", "note"))


def _blocks(world: World, *, fresh: bool) -> Iterator[Block]:
    kind = _kind(world)
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
    number, kind = world.args.get("number"), _kind(world)
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
