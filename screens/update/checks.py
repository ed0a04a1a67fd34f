"""Acts of checklists: a run of one, and lists of one's own, each change of which can be taken back."""

from dataclasses import replace

from logic.answers.fitted import snapshot
from logic.checks.lists import Checklist
from logic.checks.own import copy_of, list_to_dict
from logic.checks.run import FAILED
from screens.acts import Back, Go, Swap, runs
from screens.holds import due_stops, forbids, open_elsewhere, pack_held, put_off
from screens.tongue import _
from screens.update import does, update
from screens.update.entering import noted
from screens.update.keeping import logged
from screens.update.moving import ARRIVALS
from screens.words.checks import broke_off
from screens.world import HOME, Step, TakeBack, World

RUN, OVER = "ride.run", "ride.run_over"


def typed_key(run: str, item: str) -> str:
    """Return the key under which the value of an item is typed."""
    return f"check/{run}/{item}"


def note_key(run: str, item: str) -> str:
    """Return the key under which it is typed what is not right with an item."""
    return f"note/{run}/{item}"


def arrive(world: World) -> World:
    """Begin a run, go on with it, or leave it to the person which of the two. One that lapsed is logged."""
    key, seen = world.args["list"], world.args.get("_seen")
    session = world.session(key)
    if session.age == "none" or not (session.under_way.answers or seen):
        session.begin(world.history().faults)
        world = world.turned(_seen=True, _broken=None)
    elif seen or world.args.get("_going_on"):
        world = world.turned(_seen=True)
    elif session.age == "lapsed":
        run = session.under_way
        problem = broke_off(run.place, len(run.order), session.minutes_away())
        session.give_up(snapshot(world.saved))
        session.begin(world.history().faults)
        world = logged(world).turned(
            _seen=True,
            _problem=_(
                "{problem} That run lapsed and is in the log as not finished. This is a new one."
            ).format(problem=problem),
        )
    else:
        world = world.turned(_seen=True, _broken=True)
    return _on(world)


ARRIVALS[RUN] = arrive


def _on(world: World) -> World:
    """Show the item in front; with none left, what came of the run."""
    key = world.args["list"]
    # What is read of the run from here on is what stands in the store now.
    world = replace(world)
    if not world.args.get("_broken") and not world.session(key).under_way.at:
        return update(world, Swap(OVER, {"list": key}))
    return world


@does(runs.Answer)
def answer(world: World, act: runs.Answer) -> World:
    """Answer the item in front and go on to the next."""
    key = world.args["list"]
    session = world.session(key)
    if session.run is None:
        return replace(world)
    if world.trail[-1].page == RUN and session.under_way.answers and session.age != "fresh":
        # The page lay open meanwhile: what was right then is asked about as if the run had been left.
        return arrive(world.turned(_seen=None, _going_on=None))
    item = session.under_way.at
    session.answer(item, act.state, act.note, act.value, act.sign)
    world = noted(noted(world, typed_key(key, item), ""), note_key(key, item), "")
    return _on(world.turned(_problem=None, open_why=None))


@does(runs.BackOne)
def back_one(world: World, _act: runs.BackOne) -> World:
    """Put the item before in front."""
    world.session(world.args["list"]).back()
    return _on(world.turned(_problem=None, open_why=None))


@does(runs.Rerun)
def rerun(world: World, act: runs.Rerun) -> World:
    """Go on where it was left, or log what was answered as not finished and begin anew."""
    session = world.session(world.args["list"])
    if act.again:
        session.give_up(snapshot(world.saved))
        session.begin(world.history().faults)
        world = logged(world)
    else:
        session.resume()
    return _on(world.turned(_broken=None))


@does(runs.PutInFront)
def put_in_front(world: World, act: runs.PutInFront) -> World:
    """Put an item in front; nothing where no list is: the same line touched twice goes back twice."""
    if "list" not in world.args:
        return world
    world.session(world.args["list"]).go_to(act.item)
    return _on(world.turned(_problem=None, open_why=None))


@does(runs.Halt)
def halt(world: World, act: runs.Halt) -> World:
    """End the run here; the log keeps why, and Ride shows it until a check finds the item right."""
    key = world.args["list"]
    session = world.session(key)
    if session.run is None:
        return replace(world)
    item = session.of.item(session.under_way.at)
    session.answer(item.key, FAILED, act.note, sign=act.sign)
    row = session.finish(snapshot(world.saved))
    world = noted(logged(world), note_key(key, item.key), "")
    about_pack = item.opens == "ride.pack_signs"
    return update(world, Swap(OVER, {"list": key, "row": row, "about_pack": about_pack}))


@does(runs.Finish)
def finish(world: World, _act: runs.Finish) -> World:
    """Write the log entry, then go on to what belongs to the list, or back. What is due first stands in the way."""
    session = world.session(world.args["list"])
    of = session.of
    if not pack_held(world) and due_stops(world, of):
        return replace(world)
    session.finish(snapshot(world.saved), forbids(world, of), put_off(world, of), open_elsewhere(world, of))
    return update(logged(world), Swap(of.next) if of.next else Back())


@does(runs.CopyList)
def copy_list(world: World, act: runs.CopyList) -> World:
    """Make a list of one's own from another one and open it."""
    number = world.store.get("own_number", 0) + 1
    world.store.put("own_number", number)
    made = copy_of(world.lists()[act.key], number)
    return update(keep_list(world, runs.KeepList(made)), Go("settings.list", {"key": made.key}))


@does(runs.KeepList)
def keep_list(world: World, act: runs.KeepList) -> World:
    """Keep a list, new or changed."""
    return _put(world, act.list.key, act.list, _("{title}: kept").format(title=act.list.title))


@does(runs.DropList)
def drop_list(world: World, act: runs.DropList) -> World:
    """Put a list away."""
    return _put(world, act.key, None, _("List taken out"))


@does(runs.PutList)
def put_list(world: World, act: runs.PutList) -> World:
    """Put a list back as it was."""
    return _put(world, act.key, act.list, "")


def _put(world: World, key: str, new: Checklist | None, said: str) -> World:
    """Return the world with one list changed. One that cannot be read stays in the file as it stands."""
    before, stored = world.own_lists().get(key), world.store.get("own_lists", {})
    rest = {name: body for name, body in stored.items() if name != key}
    world.store.put("own_lists", rest if new is None else {**stored, key: list_to_dict(new)})
    way = world.trail if new is not None else _without(world.trail, key)
    return replace(world, trail=way, undo=TakeBack(said, runs.PutList(key, before), ""))


def _without(trail: tuple[Step, ...], key: str) -> tuple[Step, ...]:
    """Return the way without the pages of a list that has gone."""
    rest = tuple(step for step in trail if key not in (step.args.get("key"), step.args.get("list")))
    return rest or (Step(HOME, {}),)
