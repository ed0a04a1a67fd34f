"""What to set in the controller: currents, voltage, temperature, worked out from the board."""

from functools import partial

from logic.answers.asked import Asked, Asking
from logic.answers.braking import BrakeParts
from logic.answers.energy import hazards_of_limits, weakest_current
from logic.answers.hazards import Hazard, by_severity
from logic.answers.pack_parts import BRAKE, BURST, DRIVE, FIELDS
from logic.answers.reading import Item, Reading
from logic.answers.run import Figures, Run, answer
from logic.board import Board, Value
from logic.frozen import frozen
from logic.pack.cells import pack_voltage
from logic.pack.limits import low_voltage, weakest
from logic.tables import Row, rows


@frozen
class ControllerCard:
    """The card: figures by name, the part that holds a current down, temperatures, settings in words, hazards.

    Limits are of the whole board, with "_each" of one controller. Braking is set to what holds for as long as one
    likes; what holds for about ten seconds stands apart, where it is known.
    """

    items: dict[str, Item]
    held_by: dict[str, str]
    temperatures: tuple[Row, ...]
    words: tuple[Row, ...]
    hazards: tuple[Hazard, ...]


WAYS = {"limit_drive": DRIVE, "limit_brake": BRAKE, "limit_burst": BURST}
"""Way the current flows of each limit on the card."""


@answer()
def controller_card(board: Board, rider: Value | None, asking: Asking) -> ControllerCard:
    """Return what to set in the controller or controllers of a board."""
    ways = {
        name: way for name, way in WAYS.items() if way != BURST or board.pack.cell_brake_current is not None
    }
    run = Run(lambda: BrakeParts(Reading(board, rider), Asked(asking)))
    items = {}
    for name, way in ways.items():
        items[name] = run.figure(name, "current", partial(_set, way=way))
        items[f"{name}_each"] = run.figure(f"{name}_each", "current", partial(_each, way=way))
    items |= run.figures(RESULTS)
    held_by = {name: run.view(partial(_held_by, way=way), "") for name, way in ways.items()}
    hazards = by_severity(run.view(hazards_of_limits, []))
    texts = tuple(row for row in rows("controller_card") if "text" in row)
    if board.drive.motors is not None and board.drive.motors.si == "1":
        texts = tuple(row for row in texts if row.text("name") != "each controller")
    temperatures = tuple(row for row in rows("controller_card") if "start" in row)
    return ControllerCard(items, held_by, temperatures, texts, hazards)


def _set(parts: BrakeParts, way: str) -> float:
    """Return the stated limit, held down to the weakest part that is known."""
    if way == DRIVE:
        parts.read(FIELDS[way][2])
    elif parts.set_current and way == BURST:
        parts.read(FIELDS[way][0])
    return weakest_current(parts.limits(way))


def _each(parts: BrakeParts, way: str) -> float:
    return _set(parts, way) / parts.motors


def _held_by(parts: BrakeParts, way: str) -> str:
    _set(parts, way)
    part = weakest(parts.limits(way)).part
    return "" if part == "controller" else part


def _low(parts: BrakeParts, end: int) -> float:
    return pack_voltage(cell_voltage=low_voltage(parts.chemistry.name)[end], series=parts.series)


RESULTS: Figures[BrakeParts] = {
    "motor_drive": ("current", lambda parts: parts.read("controller.motor_current")),
    "motor_brake": ("current", lambda parts: parts.read("controller.brake_current")),
    "slows_for_long": ("acceleration", lambda parts: parts.slows(_set(parts, BRAKE))),
    "stop_for_long": ("way", lambda parts: parts.stops(_set(parts, BRAKE))),
    "low_start": ("voltage", lambda parts: _low(parts, 0)),
    "low_end": ("voltage", lambda parts: _low(parts, 1)),
    "full": ("voltage", lambda parts: parts.voltage("full")),
}
"""Quantity and computation of each figure."""
