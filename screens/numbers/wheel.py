"""Wheel wear and size: measured across or rolled out, and what it does against another diameter."""

from collections.abc import Mapping

from logic.answers.reading import Item, Result
from logic.answers.wheel import measured, wheel
from logic.board import Value, board_fields
from logic.errors import InputError
from logic.tables import pick
from screens.acts.entering import Put
from screens.blocks import Block, Button, Words
from screens.figure_page import Figures, answered, figure_page
from screens.page import Page
from screens.showing import sentences
from screens.tongue import _, texts
from screens.words import refusal
from screens.world import World

WORDS = texts("wheel")
KEY = "drive.wheel_diameter"
HEAD = "today"


def wheel_page(world: World) -> Page:
    """Return the diameter of today, what it does, and how to measure it; a measured one can be laid over the board."""
    items, before = answered(world, wheel, world.person.rider, world.answers)
    figures = Figures(world, items, WORDS["labels"], before, head=HEAD)
    offer, refused = _offer(world, items)
    return figure_page(
        world,
        "numbers.wheel",
        crown=figures.crown(),
        picture=(*refused, *_low(items)),
        figures=figures,
        advice=tuple(sentences("how", WORDS["how"].values(), tone="second")),
        offer=offer,
    )


def _low(items: Mapping[str, Item]) -> tuple[Block, ...]:
    """Say that the wheel has grown too small."""
    clearance = items["clearance"]
    least = pick("pair_rules", name="ground clearance").cells["length"]
    low = isinstance(clearance, Result) and clearance.value < least
    return (Words(key="low", text=WORDS["said"]["low"], tone="bad", bold=True),) if low else ()


def _offer(world: World, items: Mapping[str, Item]) -> tuple[Button | None, tuple[Block, ...]]:
    """Return the bar that tries the measured diameter, unless the board has it or cannot have it."""
    today, present = items[HEAD], world.board.value(KEY)
    if not isinstance(today, Result) or not measured(world.answers):
        return None, ()
    if present is not None and present.si == today.value:
        return None, ()
    try:
        board_fields()[KEY].check(today.value)
    except InputError as problem:
        return None, (Words(key="refused", text=refusal(problem, world.style), tone="bad", bold=True),)
    text = _("Try {diameter} on the board").format(diameter=world.style.number(today.value, "length"))
    return Button(text, Put(KEY, Value(float(today.value), "measured"))), ()
