"""What to set in the controller: one card, worked out from the saved board."""

from collections.abc import Iterator

from logic.answers.braking import FROM_SPEED
from logic.answers.controller_card import ControllerCard, controller_card
from screens.blocks import Block, Section, Words
from screens.figure_page import Figures, figure_page
from screens.page import Page
from screens.saved_board import board_ask, board_line, trial_note, untried
from screens.tongue import _, texts
from screens.world import World

HEAD = "limit_drive_each"


def controller_page(world: World) -> Page:
    """Return what each controller is set to first, then volts, temperatures and settings in words."""
    still = untried(world)
    card = world.kept(controller_card, still.board, world.person.rider, world.answers)
    speed = world.style.number(FROM_SPEED, "speed")
    labels = {name: label.format(speed=speed) for name, label in texts("packs")["card"].items()}
    figures = Figures(still, card.items, labels, details=_details(card), ask=board_ask, head=HEAD)
    return figure_page(
        still,
        "bench.controller",
        crown=figures.crown(),
        hazards=card.hazards,
        note=trial_note(world),
        figures=figures,
        advice=tuple(_rest(world, card)),
        line=board_line,
    )


def _details(card: ControllerCard) -> dict[str, str]:
    """Say which part holds a current down."""
    braking = texts("packs")["braking"]
    found = texts("packs")["card_details"] | {
        "slows_for_long": braking["at worst"],
        "stop_for_long": braking["after reaction"],
    }
    for name in card.items:
        part = card.held_by.get(name.removesuffix("_each"), "")
        if part:
            found[name] = _("Held by {part}.").format(part=texts("packs")["parts"][part])
    return found


def _rest(world: World, card: ControllerCard) -> Iterator[Block]:
    """Yield temperatures and settings."""
    yield Section(key="temperatures", title=_("Temperatures"))
    for row in card.temperatures:
        start, end = (world.style.number(float(row.cells[name]), "temperature") for name in ("start", "end"))
        text = _("{part}: hold back from {start}, stop at {end}.").format(
            part=texts("packs")["temperatures"][row.text("name")], start=start, end=end
        )
        yield Words(key=f"temperature {row.text('name')}", text=text)
    yield Section(key="settings", title=_("Settings"))
    for row in card.words:
        yield Words(key=f"setting {row.text('name')}", text=row.text("text"))
