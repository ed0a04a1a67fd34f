"""What to set in the controller: one card, worked out from the saved board."""

from collections.abc import Iterator
from dataclasses import replace

from logic.answers.braking import FROM_SPEED
from logic.answers.controller_card import ControllerCard, controller_card
from screens.blocks import Block, Section, Words
from screens.figure_page import figure_page, figures_of
from screens.page import Page
from screens.tongue import _, texts
from screens.trying import board_ask, board_line, trial_note, untried
from screens.world import World


def controller_page(world: World) -> Page:
    """Return what each controller is set to first, then volts, temperatures and settings in words."""
    still = untried(world)
    speed = world.style.number(FROM_SPEED, "speed")
    card, figures = figures_of(
        still, "bench.controller", controller_card, world.person.rider, world.answers, speed=speed
    )
    return figure_page(
        replace(figures, details={**figures.details, **_details(card)}, ask=board_ask),
        note=trial_note(world),
        advice=tuple(_rest(world, card)),
        line=board_line,
    )


def _details(card: ControllerCard) -> dict[str, str]:
    """Say which part holds a current down."""
    braking = texts("packs")["braking"]
    found = {"slows_for_long": braking["slows_as_set"], "stop_for_long": braking["stop_as_set"]}
    for name in card.items:
        part = card.held_by.get(name.removesuffix("_each"), "")
        if part:
            found[name] = _("Held by {part}.").format(part=texts("packs")["parts"][part])
    return found


def _rest(world: World, card: ControllerCard) -> Iterator[Block]:
    """Yield temperatures and settings."""
    yield Section("temperatures", _("Temperatures"))
    for row in card.temperatures:
        start, end = (world.style.number(float(row.cells[name]), "temperature") for name in ("start", "end"))
        text = _("{part}: hold back from {start}, stop at {end}.").format(
            part=texts("packs")["temperatures"][row.text("name")], start=start, end=end
        )
        yield Words(f"temperature {row.text('name')}", text)
    yield Section("settings", _("Settings"))
    for row in card.words:
        yield Words(f"setting {row.text('name')}", row.text("text"))
