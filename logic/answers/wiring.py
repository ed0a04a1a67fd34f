"""Wire, fuse and the spark at the plug: sized from the riding current, and first power through a resistor."""

from functools import partial

from logic.answers.asked import Asked, Asking
from logic.answers.hazards import Hazard, by_severity
from logic.answers.reading import Item, Reading
from logic.answers.run import Figures, Run, answer
from logic.answers.wire_parts import INRUSH, LEAD, WireParts
from logic.board import Board
from logic.frozen import frozen
from logic.pack.fuse import FuseChoice
from logic.pack.wiring import (
    Ampacity,
    ampacity,
)
from logic.tables import rows


@frozen
class Wiring:
    """Results by name; what the wire carries and the fuse for it, None while a value is missing; hazards.

    `wire` is "cool", "warm in a closed deck", "too thin" or "". `least_gauge` is the thinnest size that
    stays cool in a closed deck, None when none does.
    """

    items: dict[str, Item]
    carries: Ampacity | None
    fuse: FuseChoice | None
    wire: str
    least_gauge: float | None
    hazards: tuple[Hazard, ...]


WIRING: Figures[WireParts] = {**LEAD, **INRUSH, "fuse": ("current", WireParts.fuse_ends)}
FIRST_POWER: Figures[WireParts] = {
    "precharge_time": INRUSH["precharge_time"],
    "full": ("voltage", lambda parts: parts.voltage("full")),
    "empty": ("voltage", lambda parts: parts.voltage("empty")),
    **{name: line for name, line in INRUSH.items() if name != "precharge_time"},
}
"""Quantity and computation of each result, in the order shown."""


@answer()
def wiring(board: Board, asking: Asking) -> Wiring:
    """Return everything the wiring page shows."""
    run = _run(board, asking)
    carries, riding = run.view(WireParts.carries, None), run.view(lambda parts: parts.riding, None)
    choice = run.view(WireParts.fuse, None)
    wire = _wire(carries, riding)
    hazards = [
        *_wire_hazards(wire, riding),
        *([] if choice is None else run.view(partial(_fuse_hazards, choice=choice), [])),
    ]
    least = None if riding is None else _least_gauge(riding)
    return Wiring(run.figures(WIRING), carries, choice, wire, least, by_severity(hazards))


def _run(board: Board, asking: Asking) -> Run[WireParts]:
    return Run(lambda: WireParts(Reading(board), Asked(asking)))


@frozen
class FirstPower:
    """What the first contact of pack and controller does, and what the meter must show before it."""

    items: dict[str, Item]


@answer()
def first_power(board: Board, asking: Asking) -> FirstPower:
    """Return the figures of first power: the spark without a resistor, and the resistor's time."""
    return FirstPower(_run(board, asking).figures(FIRST_POWER))


def _wire(carries: Ampacity | None, riding: float | None) -> str:
    if carries is None or riding is None:
        return ""
    if riding <= carries.closed_low:
        return "cool"
    return "warm in a closed deck" if riding <= carries.closed_high else "too thin"


def _least_gauge(riding: float) -> float | None:
    """Return the thinnest printed gauge whose careful figure in a closed deck covers the ride."""
    for row in reversed(rows("wire_ampacity")):
        if ampacity(area=float(row.cells["area"])).closed_low >= riding:
            return float(row.cells["gauge"])
    return None


def _wire_hazards(wire: str, riding: float | None) -> list[Hazard]:
    if wire != "too thin" or riding is None:
        return []
    return [Hazard("WARNING", "wire too thin", (("asked", riding, "current"),))]


def _fuse_hazards(parts: WireParts, choice: FuseChoice) -> list[Hazard]:
    found = []
    if not choice.fits:
        numbers = (("low", choice.low, "current"), ("high", choice.high, "current"))
        found.append(Hazard("WARNING", "no fuse fits", numbers))
    fuse = parts.read.board.pack.fuse
    if fuse is None:
        return found
    rating = float(fuse.si)
    if rating <= parts.peak:
        numbers = (("asked", parts.peak, "current"), ("allowed", rating, "current"))
        found.append(Hazard("WARNING", "fuse opens first", numbers))
    elif choice.fits and rating > choice.high:
        numbers = (("asked", rating, "current"), ("allowed", choice.high, "current"))
        found.append(Hazard("WARNING", "fuse above the wire", numbers))
    return found
