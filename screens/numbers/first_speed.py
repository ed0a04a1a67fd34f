"""The best top speed so far, while a board lacks what the full answer needs."""

from logic.answers.first_push import HILLS
from logic.answers.first_speed import FIRST, LIMITS, WEIGHT, FirstSpeed
from logic.answers.reading import Result
from screens.blocks import Block, Figure
from screens.numbers.nearer import Rounds, nearer, so_far, taken
from screens.showing import figure, spanned
from screens.tongue import _
from screens.world import World

ROUNDS: Rounds = {
    FIRST: _("Give them one by one"),
    WEIGHT: _("More exact: the weights"),
    LIMITS: _("More exact: limits of controller and pack"),
    HILLS: _("Push and hills"),
}
LABELS = {
    "nothing": _("Top speed"),
    "without load": _("Top speed without load, about"),
    "with weight": _("Top speed, loaded, about"),
    "with limits": _("Top speed, loaded, about"),
}


def speed_crown(world: World, first: FirstSpeed, *, grey: bool) -> Figure:
    """Return the best speed so far; before there is one, how many values give it."""
    return so_far(world, first.item, LABELS[first.level], _detail(world, first), grey=grey)


def _detail(world: World, first: FirstSpeed) -> str:
    """Return what the speed holds for."""
    if first.level == "without load" and isinstance(first.road, Result):
        low, high = (world.style.number(end, "share") for end in first.share)
        said = _("On the road {low} to {high} of it: {speed}.")
        return said.format(low=low, high=high, speed=spanned(first.road, world.style))
    if first.level == "with weight":
        return _("Level road, no wind. No limit is entered yet.")
    return _("Level road, no wind.")


def nearer_speed(world: World, first: FirstSpeed) -> tuple[Block, ...]:
    """Return what is left on the road, what would bring the speed nearer, and what is taken as usual."""
    on_road = (figure(world, first.road, _("On the road")),) if first.level == "without load" else ()
    return (*on_road, *nearer(world, ROUNDS), *taken(world, first.assumed))
