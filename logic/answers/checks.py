"""The numbers that belong to an item of a checklist."""

from collections.abc import Iterable
from functools import partial

from logic.answers.parts import CHARGES, Parts, chosen
from logic.answers.reading import Item as Answer
from logic.answers.reading import Reading, Result
from logic.answers.run import Figures, Run, answer
from logic.answers.tension import PLAN, belt_plan
from logic.board import Board
from logic.checks.lists import Item
from logic.pack.cells import pack_energy, pack_voltage
from logic.pack.limits import low_voltage
from logic.person import Person


def _energy(parts: Parts) -> float:
    return pack_energy(
        cell_voltage=parts.chemistry.nominal,
        cell_capacity=parts.read("pack.cell_capacity"),
        series=parts.series,
        parallel=parts.read("pack.parallel"),
        packs=chosen("Packs", 1.0, "1", "count"),
    )


def _low_start(parts: Parts) -> float:
    return pack_voltage(cell_voltage=low_voltage(parts.chemistry.name)[0], series=parts.series)


FIGURES: Figures[Parts] = {
    **{f"{charge}_voltage": ("voltage", partial(Parts.voltage, charge=charge)) for charge in CHARGES},
    "pack_energy": ("energy", _energy),
    "low_start": ("voltage", _low_start),
}
"""Quantity and computation of the figures that are not the belt's."""


@answer(names=("target", "pull_target", "depth", "full_voltage"))
def figures(names: Iterable[str], board: Board, person: Person) -> dict[str, Answer]:
    """Return the results that an item shows, by name; names with a point are board values and left out.

    The person's tools choose the depth of a pull.
    """
    wanted = [name for name in names if "." not in name]
    found: dict[str, Answer] = {}
    if any(name in PLAN for name in wanted):
        plan = belt_plan(board, person)
        found = {name: plan.items[name] for name in wanted if name in PLAN}
    run = Run(lambda: Parts(Reading(board)))
    found |= {name: run.figure(name, *FIGURES[name]) for name in wanted if name in FIGURES}
    return {name: found[name] for name in wanted}


def volts_fault(item: Item, volts: float, board: Board) -> str:
    """Return "above full" or "below empty" for volts that no pack of this board has, "" otherwise.

    A pack at rest below empty or a hundredth above full is not the pack that the board describes.
    """
    if item.ask != "volts":
        return ""
    found = figures(("full_voltage", "empty_voltage"), board, Person())
    full, empty = (getattr(found[name], "value", None) for name in ("full_voltage", "empty_voltage"))
    if full is not None and volts > full * ROUNDING_UP:
        return "above full"
    return "below empty" if empty is not None and volts < empty else ""


def nearly_empty(item: Item, volts: float, board: Board) -> bool:
    """Tell whether a pack is so low that the controller already holds back, on an item that shows where."""
    found = figures(("low_start",), board, Person())["low_start"] if "low_start" in item.figures else None
    return isinstance(found, Result) and volts < found.value


ROUNDING_UP = 1.01
"""A meter and a charger may each be half a percent off."""
