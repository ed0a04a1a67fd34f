"""Lists of one's own: copied, changed, taken out. Each change can be taken back, whatever board is in use."""

from dataclasses import replace

from logic.checks.lists import Checklist
from logic.checks.own import copy_of, list_to_dict
from screens.acts import Go
from screens.acts.runs import CopyList, DropList, KeepList, PutList
from screens.tongue import _
from screens.update import does, update
from screens.world import HOME, Step, TakeBack, World


@does(CopyList)
def copy_list(world: World, act: CopyList) -> World:
    """Make a list of one's own from another one and open it."""
    number = world.store.get("own_number", 0) + 1
    world.store.put("own_number", number)
    made = copy_of(world.lists()[act.key], number)
    return update(keep_list(world, KeepList(made)), Go("settings.list", {"key": made.key}))


@does(KeepList)
def keep_list(world: World, act: KeepList) -> World:
    """Keep a list, new or changed."""
    return _put(world, act.list.key, act.list, _("{title}: kept").format(title=act.list.title))


@does(DropList)
def drop_list(world: World, act: DropList) -> World:
    """Put a list away."""
    return _put(world, act.key, None, _("List taken out"))


@does(PutList)
def put_list(world: World, act: PutList) -> World:
    """Put a list back as it was."""
    return _put(world, act.key, act.list, "")


def _put(world: World, key: str, new: Checklist | None, said: str) -> World:
    """Return the world with one list changed. One that cannot be read stays in the file as it stands."""
    before, stored = world.own_lists().get(key), world.store.get("own_lists", {})
    rest = {name: body for name, body in stored.items() if name != key}
    world.store.put("own_lists", rest if new is None else {**stored, key: list_to_dict(new)})
    way = world.trail if new is not None else _without(world.trail, key)
    return replace(world, trail=way, undo=TakeBack(said, PutList(key, before), ""))


def _without(trail: tuple[Step, ...], key: str) -> tuple[Step, ...]:
    """Return the way without the pages of a list that has gone."""
    rest = tuple(step for step in trail if key not in (step.args.get("key"), step.args.get("list")))
    return rest or (Step(HOME, {}),)
