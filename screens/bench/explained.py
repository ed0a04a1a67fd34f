"""Drawings that explain a step, by the name under which the tables of joints and of checks ask for them."""

from collections.abc import Callable

from logic.answers.checks import figures
from logic.answers.reading import Result
from logic.answers.tension import belt_plan
from logic.answers.wiring import first_power
from logic.board import Board
from screens.blocks import Block, Picture, Words
from screens.pictures.belts import belt_print
from screens.pictures.hanger import hanger
from screens.pictures.power import polarity, precharge
from screens.pictures.span import span_picture
from screens.pictures.strokes import Picture as Strokes
from screens.pictures.tightening import bearing_order, cross_pattern, set_screw_on_flat
from screens.tongue import _, texts
from screens.world import World

USUAL, LEAST, MOST = 4, 3, 6
"""Screws of a pattern where the board does not tell, and how many are drawn."""
BY_HAND = 2.0
"""Seconds that the resistor is held on by hand at least, as the steps say: common practice, no source."""
Draws = Callable[[], Strokes]
NUMBERED = ("bearings",)
"""Drawings whose numbers mean nothing without their words."""


def explained(world: World, board: Board, name: str, joint: str = "") -> tuple[Block, ...]:
    """Return the drawing of a name, and what its marks mean where the page does not say so; nothing for another name."""
    made: dict[str, Draws] = {
        "cross": lambda: cross_pattern(pattern(board, joint)),
        "set screw": set_screw_on_flat,
        "bearings": bearing_order,
        "polarity": lambda: polarity(_volts(world, board)),
        "precharge": lambda: precharge(_hold(world, board)),
        "hanger": lambda: hanger(board.sides),
        "belt print": belt_print,
        "span": lambda: _span(world, board),
    }
    if name not in made:
        return ()
    text = texts("explained")["drawings"][name]
    picture = Picture(name, made[name](), text)
    return (picture, Words("legend", text, tone="second")) if name in NUMBERED else (picture,)


def _span(world: World, board: Board) -> Strokes:
    """Return the span of this board with its depth, where they are known."""
    return span_picture(world.kept(belt_plan, board, world.person), world.style, world.person.scale_unit)


def _volts(world: World, board: Board) -> str:
    """Return what the meter may show, "" where the pack is not known."""
    low, high = figures(("empty_voltage", "full_voltage"), board, world.person).values()
    if not isinstance(low, Result) or not isinstance(high, Result):
        return ""
    ends = (world.style.number(one.value, one.quantity) for one in (low, high))
    return _("{low} to {high}").format(low=next(ends), high=next(ends))


def _hold(world: World, board: Board) -> str:
    """Return how long the resistor is held on, "" where it is not known."""
    hold = world.kept(first_power, board, world.answers).items["precharge_time"]
    if not isinstance(hold, Result):
        return ""
    return world.style.number(max(hold.value, BY_HAND), hold.quantity)


def pattern(board: Board, joint: str) -> int:
    """Return how many screws one pattern has: those of the joint, or half of them where both sides have their own."""
    value = board.joint(joint).count if joint else None
    count = 0 if value is None else int(float(value.si))
    halves = (count, count // 2 if count % 2 == 0 else 0)
    return next((one for one in halves if LEAST <= one <= MOST), USUAL)
