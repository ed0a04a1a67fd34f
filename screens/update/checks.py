"""A run of a checklist: every answer is on the disk before the next item is shown."""

from dataclasses import replace

from logic.answers.checks import snapshot
from screens.acts import Answer, BackOne, Rerun, Swap
from screens.update import does, update
from screens.update.entering import noted
from screens.update.keeping import logged
from screens.update.moving import ARRIVALS
from screens.words.checks import broke_off
from screens.world import World

RUN, OVER = "ride.run", "ride.run_over"


def typed_key(run: str, item: str) -> str:
    """Return the key under which the value of an item is typed."""
    return f"check/{run}/{item}"


def arrive(world: World) -> World:
    """Begin a run, go on with it, or leave it to the person which of the two. One that lapsed is logged."""
    key, seen = world.args["list"], world.args.get("_seen")
    session = world.session(key)
    if session.age == "none" or not (session.under_way.answers or seen):
        session.begin()
        world = world.turned(_seen=True, _broken=None)
    elif seen or world.args.get("going_on"):
        world = world.turned(_seen=True)
    elif session.age == "lapsed":
        run = session.under_way
        problem = broke_off(run.place, len(run.order), session.minutes_away())
        session.give_up(snapshot(world.saved))
        session.begin()
        world = logged(world).turned(
            _seen=True,
            _problem=f"{problem} That run lapsed and is in the log as not finished. This is a new one.",
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


@does(Answer)
def answer(world: World, act: Answer) -> World:
    """Answer the item in front and go on to the next."""
    key = world.args["list"]
    session = world.session(key)
    item = session.under_way.at
    session.answer(item, act.state, act.note, act.value)
    return _on(noted(world.turned(_problem=None, open_why=None), typed_key(key, item), ""))


@does(BackOne)
def back_one(world: World, _act: BackOne) -> World:
    """Put the item before in front."""
    world.session(world.args["list"]).back()
    return _on(world.turned(_problem=None, open_why=None))


@does(Rerun)
def rerun(world: World, act: Rerun) -> World:
    """Go on where it was left, or log what was answered as not finished and begin anew."""
    session = world.session(world.args["list"])
    if act.again:
        session.give_up(snapshot(world.saved))
        session.begin()
        world = logged(world)
    else:
        session.resume()
    return _on(world.turned(_broken=None))
