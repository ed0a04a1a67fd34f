"""Numbers of a belt that are typed and forgotten, and the values a belt is asked for before it can be read."""

from dataclasses import replace

from screens.acts.entering import Ask, Forget, Retype
from screens.belt_values import open_values
from screens.update import does, update
from screens.update.entering import noted, stored
from screens.update.moving import ARRIVALS
from screens.world import TakeBack, World


@does(Forget)
def forget(world: World, act: Forget) -> World:
    """Take the texts back, with a way to have them again."""
    texts = {key: world.typed[key] for key in act.keys if world.typed.get(key)}
    for key in texts:
        world = noted(world, key, "")
    if not act.undo or not texts:
        return world
    return replace(world, undo=TakeBack(act.undo, Retype(texts), world.saved.id))


@does(Retype)
def retype(world: World, act: Retype) -> World:
    """Put the texts back."""
    return stored(replace(world, typed={**world.typed, **act.texts}))


def begin(world: World) -> World:
    """Ask for the first value that a belt lacks where no board is saved."""
    keys = open_values(world)
    return update(world, Ask(keys[0])) if keys and world.asking is None else world


for page in ("bench.belt", "ride.tension"):
    ARRIVALS[page] = begin
