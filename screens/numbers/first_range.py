"""The best range so far, while a board lacks what the full answer needs."""

from logic.answers.first_range import PACK, RIDING, FirstRange
from screens.blocks import Block, Figure
from screens.numbers.nearer import Rounds, nearer, so_far, taken
from screens.tongue import _
from screens.world import World

ROUNDS: Rounds = {
    PACK: _("Give them one by one"),
    RIDING: _("More exact: weights, motor and gears"),
}


def range_crown(world: World, first: FirstRange) -> Figure:
    """Return the best range so far; before there is one, how many values give it."""
    packs = _("One pack.") if world.board.pack.packs is None else ""
    rests = (
        _("By what boards usually take on the way, at 15 to 30 km/h.")
        if first.level == "by usual"
        else _("Steady speed, no wind, no stops.")
    )
    return so_far(world, first.item, _("Range, about"), f"{packs} {rests}".strip())


def nearer_range(world: World, first: FirstRange) -> tuple[Block, ...]:
    """Return what would bring the range nearer, and what is taken as usual."""
    return (*nearer(world, ROUNDS), *taken(world, first.assumed))
