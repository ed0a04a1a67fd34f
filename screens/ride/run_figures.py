"""The numbers that belong to an item of a run: as rows, and said aloud."""

from collections.abc import Iterator

from logic.answers.checks import figures
from logic.answers.reading import Result
from logic.checks.lists import Item
from screens.blocks import FigureRow
from screens.showing import figure
from screens.tongue import _
from screens.words.checks import FIGURES
from screens.world import World


def figure_rows(item: Item, world: World) -> Iterator[FigureRow]:
    """Yield a row for each figure of an item."""
    for name, found in figures(item.figures, world.saved, world.person).items():
        yield figure(world, found, FIGURES[name], unit=_unit(name, world))  # type: ignore[misc]


def said_of(item: Item, world: World) -> str:
    """Return what is said aloud of an item: first its hazard, then the item, its figures and its tool."""
    parts = [
        f"{item.care_word}. {item.care}" if item.care else "",
        item.spoken or f"{item.action}. {item.state}.",
    ]
    for name, found in figures(item.figures, world.saved, world.person).items():
        if isinstance(found, Result):
            shown = world.style.shown(found.value, found.quantity, unit=_unit(name, world))
            parts.append(f"{FIGURES[name]}: {shown}.")
    parts.append(_("{tool}.").format(tool=item.tool) if item.tool else "")
    return " ".join(part for part in parts if part)


def _unit(name: str, world: World) -> str:
    return world.person.scale_unit if name.startswith("pull") else ""
