"""Rows of the log that act on earlier ones: an entry is hidden or given another body, and each of it can be taken back."""

from dataclasses import replace

from logic.store.errors import BadReplacement, UnknownEntry
from screens.acts import Both
from screens.acts.keeping import Correct, Void
from screens.update import does, update
from screens.update.keeping import gone, logged
from screens.world import TakeBack, World


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
