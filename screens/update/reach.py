"""Lengths of a screw's reach were once one setting for all boards; the first visit makes them answers of the board in use."""

from logic.answers.asked import questions
from logic.answers.reach import NAMES, asked_key
from logic.board import Value, value_from
from screens.acts.entering import Put
from screens.update.entering import put
from screens.update.moving import ARRIVALS
from screens.world import World

BEFORE = "reach"


def arrive(world: World) -> World:
    """Carry over what was kept before."""
    before = world.store.get(BEFORE)
    if before is None:
        return world
    values = {name: value_from(body) for name, body in before["lengths"].items() if name in NAMES}
    values |= {
        name: Value(before[was])
        for name, was in (("thread", "size"), ("metal", "metal"), ("behind", "behind"))
    }
    for name, value in values.items():
        field = questions()[asked_key(name)].field
        if field.kind != "choice" or any(value.si == option.key for option in field.options):
            world = put(world, Put(asked_key(name), value, "question"))
    world.store.put(BEFORE, None)
    return world


ARRIVALS["bench.reach"] = arrive
