"""Long descents: whether the brake may cut out at once, and how much drop the charge can take back."""

from functools import cached_property

from logic.answers.asked import Asked, Asking
from logic.answers.braking import BrakeParts
from logic.answers.hazards import Hazard
from logic.answers.reading import Item, Reading
from logic.answers.run import Figures, Run, answer
from logic.board import Board, Value
from logic.drive.road import standard
from logic.frozen import frozen
from logic.pack.descent import descent_outcome, drop_taken_back, energy_of_descent, headroom, recovery
from logic.pack.limits import braking_voltage, current_to_full
from logic.si import One, Volt
from logic.workings import cited


@cited(
    "empty_voltage + charge * (full_voltage - empty_voltage)",
    source="derived a straight line from empty to full",
    standing="estimate",
)
def rest_voltage(*, empty_voltage: Volt, full_voltage: Volt, charge: One) -> Volt:
    """Return the volts of a pack at rest, roughly: real cells bend, and LFP is flat almost to the end.

    >>> rest_voltage(empty_voltage=30.0, full_voltage=42.0, charge=0.5)
    36.0
    """
    return empty_voltage + charge * (full_voltage - empty_voltage)


@frozen
class Descent:
    """Results by name, the outcome ("" while a value is missing), and its hazard, if it is one."""

    items: dict[str, Item]
    outcome: str
    hazards: tuple[Hazard, ...]


class DescentParts(BrakeParts):
    """The packs, what moves, and the hill."""

    @cached_property
    def charge(self) -> float:
        """Share of charge at the top."""
        return self.asked("ask.start_charge")

    @cached_property
    def drop(self) -> float:
        """Drop in height."""
        return self.asked("ask.drop")

    @cached_property
    def gravity(self) -> float:
        """Standard gravity."""
        return standard("gravity")

    @cached_property
    def recovery(self) -> float:
        """Part of the height's energy that reaches the pack."""
        return recovery()

    @cached_property
    def rest(self) -> float:
        """Volts at rest at the top."""
        return rest_voltage(
            empty_voltage=self.voltage("empty"), full_voltage=self.voltage("full"), charge=self.charge
        )

    @cached_property
    def room(self) -> float:
        """Energy that the packs still take."""
        return headroom(energy=self.energy_all, charge=self.charge)

    @cached_property
    def comes_back(self) -> float:
        """Energy that braking all the way down brings back."""
        return energy_of_descent(mass=self.mass, gravity=self.gravity, drop=self.drop, recovery=self.recovery)

    def outcome(self) -> str:
        """Return which way it goes."""
        return descent_outcome(
            rest_voltage=self.rest,
            current=self.set_current,
            resistance=self.pack_resistance,
            full_voltage=self.voltage("full"),
            charge=self.charge,
            free_energy=self.room,
            descent_energy=self.comes_back,
        )


def _volts(parts: DescentParts) -> float:
    return braking_voltage(
        rest_voltage=parts.rest, current=parts.set_current, resistance=parts.pack_resistance
    )


RESULTS: Figures[DescentParts] = {
    "drop_back": (
        "way",
        lambda parts: drop_taken_back(
            free_energy=parts.room, mass=parts.mass, gravity=parts.gravity, recovery=parts.recovery
        ),
    ),
    "volts": ("voltage", _volts),
    "full": ("voltage", lambda parts: parts.voltage("full")),
    "to_full": (
        "current",
        lambda parts: current_to_full(
            full_voltage=parts.voltage("full"), rest_voltage=parts.rest, resistance=parts.pack_resistance
        ),
    ),
    "room": ("energy", lambda parts: parts.room),
    "comes_back": ("energy", lambda parts: parts.comes_back),
    "slows_as_set": ("acceleration", lambda parts: parts.slows(parts.set_current)),
    "stop_as_set": ("way", lambda parts: parts.stops(parts.set_current)),
}
"""Quantity and computation of each result, in the order shown."""

SIGNALS = {
    "may cut out at once": "WARNING",
    "full before the bottom": "WARNING",
    "start lower": "",
    "room": None,
}
"""Signal word of each outcome; None is no hazard."""


@answer()
def descent(board: Board, rider: Value | None, asking: Asking) -> Descent:
    """Return everything the page of long descents shows."""
    run = Run(lambda: DescentParts(Reading(board, rider), Asked(asking)))
    items, outcome = run.figures(RESULTS), run.view(DescentParts.outcome, "")
    word = SIGNALS.get(outcome)
    return Descent(items, outcome, () if word is None else (Hazard(word, outcome),))
