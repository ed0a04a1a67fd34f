"""Acts that keep something: values of the board, entries of its log and rows that act on earlier ones, settings."""

from dataclasses import replace

from logic.answers.reading import RIDER
from logic.board_saved import to_dict
from logic.fields import ARM
from logic.log import BoardChanged, Change
from logic.person import person_to_dict
from logic.store.errors import BadReplacement, UnknownEntry
from screens.acts import Both, Dismiss, Undo
from screens.acts.keeping import Correct, Drop, Keep, Record, Remember, Retry, Save, Settle, Void
from screens.acts.outside import AllowNotes
from screens.log_book import LogBook
from screens.tongue import _
from screens.update import does, update
from screens.update.entering import left, saved_text, stored
from screens.world import CLOSE, TakeBack, World, open_world

ENTERED = {"rider": RIDER.key, "key_arm": ARM.key}
"""Settings that are values: the key under which each is asked for."""


@does(Keep)
def keep(world: World, _act: Keep) -> World:
    """Make the trial's values the board's: one transaction with a record of what changed. Taken back, they are tried again."""
    world = left(world)
    before, kept = world.saved, world.board
    changes = {key: Change(before.value(key), value) for key, value in world.trial.items()}
    row = world.store.keep_trial(kept.id, kept.name, to_dict(kept), BoardChanged(changes=changes))
    back = Both((Void(row), Save(before), Retry(world.trial)))
    return replace(
        logged(world),
        saved=kept,
        trial={},
        typed={},
        undo=TakeBack(_("Kept on the board"), back, before.id),
    )


@does(Drop)
def drop(world: World, _act: Drop) -> World:
    """Put the saved values back."""
    trial = dict(world.trial)
    world = stored(replace(world, trial={}, typed={}, asking=None))
    return replace(world, undo=TakeBack(_("Trial dropped"), Retry(trial), world.saved.id))


@does(Retry)
def retry(world: World, act: Retry) -> World:
    """Open a dropped trial again; what was tried since stays."""
    return stored(replace(world, trial={**act.trial, **world.trial}))


@does(Save)
def save(world: World, act: Save) -> World:
    """Put a whole board back as it was, its trial as it stands."""
    world.store.save_board(act.board.id, act.board.name, to_dict(act.board))
    return replace(world, saved=act.board)


@does(Record)
def record(world: World, act: Record) -> World:
    """Write an entry, then go on: what is said of it afterwards is true."""
    number = world.store.append(world.saved.id, act.entry)
    world = logged(world)
    if act.key:
        world = world.turned(**{act.key: number})
    if act.undo:
        world = replace(world, undo=TakeBack(act.undo, Void(number), ""))
    return update(world, Both(act.then))


@does(Settle)
def settle(world: World, act: Settle) -> World:
    """Change settings and store them. A value that was entered can be taken back; a choice is on its page to be chosen back."""
    before, person = world.person, replace(world.person, **act.changes)
    world.store.put("person", person_to_dict(person))
    asks = person.remind and not before.remind
    undo = world.undo
    for name in act.changes.keys() & ENTERED.keys():
        said = saved_text(ENTERED[name], act.changes[name])
        undo = TakeBack(said, Settle({name: getattr(before, name)}), "")
    return replace(world, person=person, undo=undo, out=(*world.out, AllowNotes()) if asks else world.out)


@does(Remember)
def remember(world: World, act: Remember) -> World:
    """Keep a setting."""
    world.store.put(act.key, act.value)
    return replace(world)


@does(Undo)
def undo(world: World, _act: Undo) -> World:
    """Take the last step back on the board it was done to, which need not come in front for it; say so where it is gone."""
    step = world.undo
    if step is None:
        return world
    world = replace(world, undo=None)
    if step.board in ("", world.saved.id):
        after = update(world, step.act)
        # The way back has no way back of its own; that it led nowhere is said.
        return after if after.undo is None or after.undo.word == CLOSE else replace(after, undo=None)
    other = open_world(world.store, world.clock, step.board)
    if other.saved.id != step.board:
        return gone(world)
    after = update(other, step.act)
    said = _("Taken back on {board}.").format(board=after.saved.name)
    return told(replace(world, person=after.person), said)


@does(Dismiss)
def dismiss(world: World, _act: Dismiss) -> World:
    """Close the bar."""
    return replace(world, undo=None)


def gone(world: World) -> World:
    """Return the world with the word that what was to be taken back is no longer there."""
    return told(world, _("What this would take back is gone. Nothing was changed."))


def told(world: World, text: str) -> World:
    """Return the world with something said in place of the way back."""
    return replace(world, undo=TakeBack(text, Both(()), "", CLOSE))


def logged(world: World) -> World:
    """Return the world with the log as it stands now."""
    return replace(world, log=LogBook(world.store, world.saved.id, world.log.ledger))


@does(Void)
def void(world: World, act: Void) -> World:
    """Hide a row. One that is hidden already, or never was, is left alone, and the bar says so."""
    try:
        row = world.store.void(act.entry)
    except (BadReplacement, UnknownEntry):
        return gone(world)
    world = logged(world)
    return replace(world, undo=TakeBack(act.undo, Void(row), "")) if act.undo else world


@does(Correct)
def correct(world: World, act: Correct) -> World:
    """Give an entry another body."""
    world.store.correct(act.entry, act.body)
    return update(logged(world), Both(act.then))
