"""What is typed or asked when a page is opened, and numbers of a belt that are typed and forgotten."""

from dataclasses import replace

from screens.acts.entering import Ask, Forget, Retype
from screens.belt_values import open_values
from screens.board.naming import free_name, typed_name
from screens.tongue import _
from screens.update import does, update
from screens.update.entering import noted, stored
from screens.update.moving import ARRIVALS
from screens.world import TakeBack, World

PARTS = ("action", "good")
"""What an item of one's own list is written in: what to do, what good looks like."""


def typed_part(world: World, part: str) -> str:
    """Return the key under which a part of the item in front is typed."""
    return f"list/{world.args['key']}/{world.args['item']}/{part}"


def begin_name(world: World) -> World:
    """Offer a name."""
    purpose, name = world.args["purpose"], world.saved.name
    if purpose == "copy":
        name = free_name(world, _("{name} copy").format(name=name)[:40])
    elif purpose != "rename":
        name = free_name(world, _("My board"))
    return _typed(world, {typed_name(world): name})


def begin_item(world: World) -> World:
    """Begin with the words as they are."""
    of, key = world.own_lists().get(world.args["key"]), world.args["item"]
    item = next((item for item in of.items if item.key == key), None) if of is not None else None
    words = ("", "") if item is None else (item.action, item.state)
    return _typed(world, {typed_part(world, part): text for part, text in zip(PARTS, words, strict=True)})


def _typed(world: World, texts: dict[str, str]) -> World:
    """Type what there is to begin with, once; what was typed before is there again."""
    if world.args.get("_seen"):
        return world
    for key, text in texts.items():
        world = noted(world, key, world.typed.get(key, text))
    return world.turned(_seen=True)


ARRIVALS["board.name"] = begin_name
ARRIVALS["settings.item"] = begin_item


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
