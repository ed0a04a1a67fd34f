"""Headlines of stopping, holding and descents while the board lacks values: a figure, and what makes it more exact."""

from dataclasses import replace

from logic.answers.first_figure import FirstFigure
from logic.answers.first_hold import NEEDED as HELD
from logic.answers.first_hold import FirstHold
from logic.answers.first_range import PACK
from logic.answers.first_speed import FIRST, WEIGHT
from logic.answers.first_stop import BRAKES
from logic.answers.reading import Open
from screens.blocks import Block, Figure
from screens.numbers.nearer import Rounds, nearer, so_far, taken
from screens.tongue import _
from screens.words import Style
from screens.world import World

STOP_ROUNDS: Rounds = {
    FIRST: _("More exact: the drive"),
    WEIGHT: _("More exact: the weights"),
    BRAKES: _("More exact: limits of the brake"),
}
HOLD_ROUNDS: Rounds = {HELD: _("Give them one by one")}
DESCENT_ROUNDS: Rounds = {PACK: _("Give them one by one"), WEIGHT: _("More exact: the weights")}

INSTEAD = {
    "stays below": _("never"),
    "not reached": _("too steep"),
    "too hot at the start": _("at once"),
    "does not stop": _("never"),
}
"""A word in place of the number, where what stands in its way is the answer."""
MINUTE = 60.0


def told_outcome(crown: Figure, item: object) -> Figure:
    """Return a headline with a word in place of the dash, where the outcome is the answer."""
    word = INSTEAD.get(item.outcome, "") if isinstance(item, Open) else ""
    return replace(crown, number=word) if word else crown


def first_crown(world: World, first: FirstFigure, label: str, detail: str) -> Figure:
    """Return the best figure so far; before there is one, how many values give it."""
    return told_outcome(so_far(world, first.item, label, detail), first.item)


def stop_crown(world: World, first: FirstFigure, label: str) -> Figure:
    """Return the first stopping distance."""
    usual = _("By how motors alone usually slow a board.")
    return first_crown(
        world, first, label, usual if first.level == "by usual" else _("Pack nearly empty: the longest way.")
    )


def hold_crown(world: World, first: FirstHold, label: str) -> Figure:
    """Return the first time until the motor is too hot, and both ends of what is usual."""
    crown = first_crown(world, first, label, "")
    if isinstance(first.item, Open):
        return crown
    style, (early, late) = world.style, first.times
    shown = style.shown(first.item.value, "time", 2, time_unit(first.item.value))
    detail = _("By a usual motor. {early} at worst, {late} at best.").format(
        early=time_text(style, early), late=time_text(style, late)
    )
    return replace(crown, number=shown.number, unit=shown.unit, detail=detail)


def time_unit(time: float) -> str:
    """Return the unit in which a time is told: seconds up to two minutes."""
    return "min" if time >= 2.0 * MINUTE else "s"


def time_text(style: Style, time: float | None) -> str:
    """Write a time as one reads it, None for one that never comes."""
    return _("never") if time is None else str(style.shown(time, "time", 2, time_unit(time)))


def descent_crown(world: World, first: FirstFigure, label: str) -> Figure:
    """Return the first drop that the charge takes back."""
    return first_crown(world, first, label, _("A full pack takes nothing back: start lower."))


def more_exact(world: World, rounds: Rounds, first: FirstFigure) -> tuple[Block, ...]:
    """Return what makes the figure more exact, and what stands in."""
    return (*nearer(world, rounds), *taken(world, first.assumed))
