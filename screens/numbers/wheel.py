"""Wheel wear and size: measured across or rolled out, and what it does against another diameter."""

from collections.abc import Mapping

from logic.answers.reading import Item, Result
from logic.answers.wheel import measured, wheel
from logic.tables import pick
from screens.blocks import Block, Button, Words
from screens.figure_page import figure_page, figures_of
from screens.page import Page
from screens.showing import sentences
from screens.tongue import texts
from screens.trying import try_measured
from screens.world import World

WORDS = texts("wheel")
KEY = "drive.wheel_diameter"


def wheel_page(world: World) -> Page:
    """Return the diameter of today, what it does, and how to measure it; a measured one can be laid over the board."""
    items, figures = figures_of(world, "numbers.wheel", wheel, world.person.rider, world.answers)
    offer, refused = _offer(world, items["today"])
    return figure_page(
        figures,
        picture=(*refused, *_low(items)),
        advice=tuple(sentences("how", WORDS["how"].values(), tone="second")),
        offer=offer,
    )


def _low(items: Mapping[str, Item]) -> tuple[Block, ...]:
    """Say that the wheel has grown too small."""
    clearance = items["clearance"]
    least = pick("pair_rules", name="ground clearance").cells["length"]
    low = isinstance(clearance, Result) and clearance.value < least
    return (Words(key="low", text=WORDS["said"]["low"], tone="bad", bold=True),) if low else ()


def _offer(world: World, today: Item) -> tuple[Button | None, tuple[Words, ...]]:
    """Return the bar that tries the measured diameter, or why the board cannot have it."""
    if not isinstance(today, Result) or not measured(world.answers):
        return None, ()
    return try_measured(world, KEY, today.value, world.style.number(today.value, "length"))
