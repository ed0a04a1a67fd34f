"""What to set in the controller: currents, voltage, temperature, worked out from the board."""

from collections.abc import Callable
from dataclasses import dataclass
from functools import partial

from logic.answers.energy import hazards_of_limits, weakest_current
from logic.answers.hazards import Hazard, by_severity
from logic.answers.pack_braking import BrakeParts
from logic.answers.pack_parts import BRAKE, BURST, DRIVE, FIELDS
from logic.answers.reading import Item, Reading, attempt
from logic.board import Board, Value
from logic.errors import InputError, Missing
from logic.pack.cells import pack_voltage
from logic.pack.limits import low_voltage, weakest
from logic.si import Ampere, One
from logic.tables import Row, rows
from logic.workings import cited, recording, unrecorded


@cited("whole_board / motors", source="derived equal controllers share alike", standing="derived")
def for_each(*, whole_board: Ampere, motors: One) -> Ampere:
    """Return what each controller is set to, one to a motor.

    >>> for_each(whole_board=30.0, motors=2.0)
    15.0
    """
    return whole_board / motors


@cited("min(stated, allowed)", source="derived the smaller of two limits", standing="derived")
def held_down(*, stated: Ampere, allowed: Ampere) -> Ampere:
    """Return a stated limit, held down to what the parts allow.

    >>> held_down(stated=30.0, allowed=25.0)
    25.0
    """
    return min(stated, allowed)


@dataclass(frozen=True)
class ControllerCard:
    """The card: figures by name, the part that holds a current down, temperatures, settings in words, hazards.

    "battery" and "regen" are of the whole board, with "_each" of one controller.
    """

    items: dict[str, Item]
    held_by: dict[str, str]
    temperatures: tuple[Row, ...]
    words: tuple[Row, ...]
    hazards: tuple[Hazard, ...]


def controller_card(board: Board, rider: Value | None) -> ControllerCard:
    """Return what to set in the controller or controllers of a board."""
    brake = _brake_way(board)
    with recording() as recorder:
        parts = BrakeParts(Reading(board, rider))
        items = {}
        for name, way in (("battery", DRIVE), ("regen", brake)):
            items[name] = attempt(recorder, name, "current", partial(_set, parts, way))
            items[f"{name}_each"] = attempt(recorder, f"{name}_each", "current", partial(_each, parts, way))
        for name, (quantity, compute) in RESULTS.items():
            items[name] = attempt(recorder, name, quantity, partial(compute, parts))
    with unrecorded():
        held_by = {"battery": _held_by(parts, DRIVE), "regen": _held_by(parts, brake)}
        hazards = by_severity(hazards_of_limits(parts))
    texts = tuple(row for row in rows("controller_card") if "text" in row)
    if board.drive.motors is not None and board.drive.motors.si == "1":
        texts = tuple(row for row in texts if row.text("name") != "each controller")
    temperatures = tuple(row for row in rows("controller_card") if "start" in row)
    return ControllerCard(items, held_by, temperatures, texts, hazards)


def _brake_way(board: Board) -> str:
    return BURST if board.pack.cell_brake_current is not None else BRAKE


def _set(parts: BrakeParts, way: str) -> float:
    """Return the stated limit, held down to the weakest part that is known."""
    stated = parts.read(FIELDS[way][2])
    others = _others(parts, way)
    return held_down(stated=stated, allowed=weakest_current(others)) if others else stated


def _others(parts: BrakeParts, way: str) -> dict[str, float]:
    limits = parts.limits(way)
    limits.pop("controller", None)
    return limits


def _each(parts: BrakeParts, way: str) -> float:
    return for_each(whole_board=_set(parts, way), motors=parts.motors)


def _held_by(parts: BrakeParts, way: str) -> str:
    try:
        others = _others(parts, way)
        stated = parts.read(FIELDS[way][2])
    except (Missing, InputError):
        return ""
    if not others:
        return ""
    least = weakest(others)
    return least.part if least.current <= stated else ""


def _low(parts: BrakeParts, end: int) -> float:
    return pack_voltage(cell_voltage=low_voltage(parts.chemistry.name)[end], series=parts.series)


def _slows(parts: BrakeParts) -> float:
    return parts.slows(_set(parts, _brake_way(parts.read.board)))


def _stops(parts: BrakeParts) -> float:
    return parts.stops(_set(parts, _brake_way(parts.read.board)))


RESULTS: dict[str, tuple[str, Callable[[BrakeParts], float]]] = {
    "motor_drive": ("current", lambda parts: parts.read("controller.motor_current")),
    "motor_brake": ("current", lambda parts: parts.read("controller.brake_current")),
    "slows": ("acceleration", _slows),
    "stops": ("way", _stops),
    "low_start": ("voltage", lambda parts: _low(parts, 0)),
    "low_end": ("voltage", lambda parts: _low(parts, 1)),
    "full": ("voltage", lambda parts: parts.voltage("full")),
}
"""Quantity and computation of each figure."""
