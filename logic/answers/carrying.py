"""Carrying packs by air: what may fly, and the card to show at a counter. The rules are dated data."""

from dataclasses import dataclass
from functools import cached_property

from logic.answers.asked import Asked, Asking
from logic.answers.pack_parts import PackParts
from logic.answers.reading import Item, Reading, Result, attempt
from logic.answers.run import answer
from logic.board import Board
from logic.errors import InputError, Missing
from logic.pack.travel import Edition, Verdict, edition, energy_of_packs, rules, verdict
from logic.tables import Row, pick
from logic.workings import recording, unrecorded

UNKNOWN = "not known"


@dataclass(frozen=True)
class PackCard:
    """One pack of the counter card, SI: the energy on its label, and volts and amp-hours of its cells."""

    number: int
    energy: float
    voltage: float
    capacity: float


QUESTIONS = ("ask.carried", "ask.loose")
"""What must be answered before anything is said of more than one pack."""


@dataclass(frozen=True)
class Flight:
    """What may fly. `verdict` is None while a value is missing; `differs` tells that case and cells disagree.

    `asks` are the questions of several packs that wait for an answer; `loose` is None while it was not asked.
    `cards` is empty unless there is something to show at a counter.
    """

    energy: Item
    all_joined: Item
    verdict: Verdict | None
    problem: InputError | None
    marked: str
    tested: str
    packs: int | None
    loose: int | None
    joined: bool
    asks: tuple[str, ...]
    differs: bool
    cards: tuple[PackCard, ...]
    edition: Edition
    rules: tuple[Row, ...]


class FlightParts(PackParts):
    """The packs as an airline looks at them."""

    @cached_property
    def each(self) -> float:
        """Energy of one pack: what its label says, else volts times amp-hours where no label is claimed.

        Raises Missing for a pack said to be marked whose figure was not entered: the cells' is another one.
        """
        if self.read.board.pack.marked_energy is not None:
            return self.read("pack.marked_energy")
        if self.marked == "yes":
            raise Missing("pack.marked_energy")
        return self.energy(self.one)

    @property
    def marked(self) -> str:
        """Whether the figure is on the case: answered, or plain from the figure itself."""
        otherwise = "yes" if self.read.board.pack.marked_energy is not None else UNKNOWN
        return self.read.choice("pack.marked", otherwise)


@answer()
def flight(board: Board, asking: Asking, *, damaged: bool = False) -> Flight:
    """Return what may fly of the packs of a board. `damaged` is a pack that was taken out of use."""
    with recording() as recorder:
        parts = FlightParts(Reading(board), Asked(asking))
        each = attempt(recorder, "each", "energy", lambda: parts.each)
        joined_energy = attempt(
            recorder,
            "all_joined",
            "energy",
            lambda: energy_of_packs(energy_each=parts.each, packs=parts.packs),
        )
    marked, tested = parts.marked, parts.read.choice("pack.tested", UNKNOWN)
    packs = None if board.pack.packs is None else int(float(board.pack.packs.si))
    many = packs is not None and packs > 1
    asks = tuple(key for key in QUESTIONS if many and not parts.asked.has(key))
    joined = many and parts.asked.has("ask.carried") and parts.asked.choice("ask.carried") == "joined"
    with unrecorded():
        loose = int(parts.asked("ask.loose")) if parts.asked.has("ask.loose") else None
        found, problem = None, None
        if isinstance(each, Result) and packs is not None:
            try:
                found = verdict(
                    energies=(each.value,) * packs,
                    joined=joined,
                    marked=marked,
                    tested=tested,
                    spares=min(loose or 0, packs),
                    damaged=damaged,
                )
            except InputError as refused:
                problem = refused
        # What no answer could mend is said at once; a flight is granted only when all is answered.
        if found is not None and found.card and asks:
            found = None
        cards = _cards(parts, packs or 0) if found is not None and found.card else ()
        differs = _differs(parts)
    return Flight(
        each,
        joined_energy,
        found,
        problem,
        marked,
        tested,
        packs,
        loose,
        joined,
        asks,
        differs,
        cards,
        edition(),
        rules(),
    )


def _cards(parts: FlightParts, packs: int) -> tuple[PackCard, ...]:
    try:
        voltage, capacity = parts.voltage("nominal"), parts.capacity(parts.one)
    except (Missing, InputError):
        voltage = capacity = 0.0
    return tuple(PackCard(number + 1, parts.each, voltage, capacity) for number in range(packs))


def _differs(parts: FlightParts) -> bool:
    """Tell whether the watt-hours on the case and those of the cells are apart."""
    try:
        each, computed = parts.each, parts.energy(parts.one)
    except (Missing, InputError):
        return False
    share = pick("pack_practice", name="marked apart").number("share")
    return abs(each - computed) > share * computed
