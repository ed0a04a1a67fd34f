"""Headlines of pages while the board lacks values: a figure, what it holds for, and what makes it more exact."""

from collections.abc import Callable, Mapping
from dataclasses import replace
from typing import Any

from logic.answers.first_hold import NEEDED as HELD
from logic.answers.first_push import HILLS
from logic.answers.first_range import PACK, RIDING
from logic.answers.first_speed import FIRST, LIMITS, WEIGHT, FirstSpeed
from logic.answers.first_stop import BRAKES
from logic.answers.reading import Open, Result
from screens.blocks import Block, Figure
from screens.figure_page import Figures
from screens.nearer import Near, Rounds, lacks_values, nearer, so_far, taken
from screens.showing import figure, spanned
from screens.tongue import _, texts
from screens.world import World

WORDS = texts("first")
BEGIN = _("Give them one by one")
WEIGHTS = _("More exact: the weights")
SPEED: Rounds = {
    FIRST: BEGIN,
    WEIGHT: WEIGHTS,
    LIMITS: _("More exact: limits of controller and pack"),
    HILLS: _("Push and hills"),
}
RANGE: Rounds = {PACK: BEGIN, RIDING: _("More exact: weights, motor and gears")}
STOP: Rounds = {
    FIRST: _("More exact: the drive"),
    WEIGHT: WEIGHTS,
    BRAKES: _("More exact: limits of the brake"),
}
HOLD: Rounds = {HELD: BEGIN}
DESCENT: Rounds = {PACK: BEGIN, WEIGHT: WEIGHTS}


def near(  # noqa: PLR0913  (what a headline is made of)
    figures: Figures,
    rounds: Rounds,
    work_out: Callable[..., Any],
    said: Mapping[str, str] | None = None,
    label: str = "",
    before: str = "",
) -> tuple[Near, Any]:
    """Return the first figure of a page whose headline lacks values, with the answer it is of; else only the rounds.

    `said` is what it holds for, by how far the values go, and `before` is said first.
    """
    world, head = figures.world, figures.head
    if figures.faults or not lacks_values(figures.items[head]):
        return Near(rounds), None
    first = world.kept(work_out, world.board, world.person.rider, world.answers)
    holds = "" if said is None else said.get(first.level, said["else"])
    detail = f"{before} {holds}".strip()
    crown = told_outcome(so_far(world, first.item, label or figures.labels[head], detail), first.item)
    return Near(rounds, crown, first.assumed), first


def told_outcome(crown: Figure, item: object) -> Figure:
    """Return a headline with a word in place of the dash, where the outcome is the answer."""
    word = WORDS["instead"].get(item.outcome, "") if isinstance(item, Open) else ""
    return replace(crown, number=word) if word else crown


def speed_crown(world: World, first: FirstSpeed, *, grey: bool) -> Figure:
    """Return the best speed so far; before there is one, how many values give it."""
    return so_far(world, first.item, WORDS["speed"][first.level], _speed_detail(world, first), grey=grey)


def _speed_detail(world: World, first: FirstSpeed) -> str:
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
    return (*on_road, *nearer(world, SPEED), *taken(world, first.assumed))
