"""From page to page and back, and to the words of the trade that stand on one."""

from collections.abc import Callable
from dataclasses import replace

from logic.glossary import words_in
from screens.acts import Arrive, Back, Explain, Go, Home, Place, Swap, Turn
from screens.register import page_function
from screens.update import does, update
from screens.update.entering import left
from screens.world import HOME, Step, World

ARRIVALS: dict[str, Callable[[World], World]] = {}
"""What must be done before a page can be read, by its name: a run is begun, a lapsed one is logged."""


@does(Go)
def go(world: World, act: Go) -> World:
    """Put a page on top."""
    world = left(world)
    return replace(world, trail=(*world.trail, Step(act.page, dict(act.args))))


@does(Swap)
def swap(world: World, act: Swap) -> World:
    """Put a page in place of the one in front."""
    world = left(world)
    here = world.args
    gathered = {name: [here[one] for one in of if one in here] for name, of in act.gather.items()}
    return replace(world, trail=(*world.trail[:-1], Step(act.page, {**act.args, **gathered})))


@does(Place)
def place(world: World, act: Place) -> World:
    """Begin the way anew at a place."""
    return replace(left(world), trail=(Step(act.page, {}),))


@does(Home)
def home(world: World, _act: Home) -> World:
    """Leave every page but the first."""
    return replace(left(world), trail=world.trail[:1])


@does(Back)
def back(world: World, _act: Back) -> World:
    """Close what is entered; else leave the page; else go to the first place. At the end of the way nothing changes."""
    if world.asking is not None:
        return left(world)
    if len(world.trail) > 1:
        return replace(world, trail=world.trail[:-1])
    return world if world.trail[0].page == HOME else replace(world, trail=(Step(HOME, {}),))


@does(Turn)
def turn(world: World, act: Turn) -> World:
    """Change parameters of the page in front."""
    return world.turned(**act.changes)


@does(Arrive)
def arrive(world: World, _act: Arrive) -> World:
    """Do what a page needs before it can be read."""
    of = ARRIVALS.get(world.trail[-1].page)
    return world if of is None else of(world)


@does(Explain)
def explain(world: World, _act: Explain) -> World:
    """Open the words of the page in front; all of them where it has none."""
    page = page_function(world.trail[-1].page)(world)
    keys = [word.key for word in words_in(". ".join((page.title, *(block.said() for block in page.matter))))]
    return update(world, Go("glossary", {"keys": keys} if keys else {}))
