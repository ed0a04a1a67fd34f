"""Carrying packs by air: what may fly, and the card to show at a counter. The rules are dated data."""

from functools import cached_property

from logic.answers.asked import Asked, Asking
from logic.answers.pack_parts import PackParts
from logic.answers.reading import Item, Open, Reading
from logic.answers.run import Run, answer
from logic.board import Board
from logic.errors import InputError, Missing
from logic.frozen import frozen
from logic.pack.travel import Edition, TravelVerdict, edition, rules, verdict
from logic.tables import Row, pick

UNKNOWN = "not known"


@frozen
class PackCard:
    """One pack of the counter card, SI: the energy on its label, and volts and amp-hours of its cells."""

    number: int
    energy: float
    voltage: float
    capacity: float


QUESTIONS = ("ask.carried", "ask.loose")
"""What must be answered before anything is said of more than one pack."""


@frozen
class Flight:
    """What may fly. `verdict` is None while a value is missing; `differs` tells that case and cells disagree.

    `asks` are the questions of several packs that wait for an answer; `loose` is None while it was not asked.
    `cards` is empty unless there is something to show at a counter. `best` is the verdict if all that was never answered
    turns out well, None without an energy; `hopes` are the keys of what it takes for granted.
    """

    energy: Item
    all_joined: Item
    verdict: TravelVerdict | None
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
    best: TravelVerdict | None
    hopes: tuple[str, ...]


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
    run = Run(lambda: FlightParts(Reading(board), Asked(asking)))
    parts = run.plain
    marked, tested = parts.marked, parts.read.choice("pack.tested", UNKNOWN)
    packs = None if board.pack.packs is None else int(float(board.pack.packs.si))
    many = packs is not None and packs > 1
    asks = tuple(key for key in QUESTIONS if many and not parts.asked.has(key))
    joined = many and parts.asked.has("ask.carried") and parts.asked.choice("ask.carried") == "joined"
    loose = int(parts.asked("ask.loose")) if parts.asked.has("ask.loose") else None
    said = run.or_open(
        "verdict",
        lambda each: verdict(
            energies=(each.each,) * int(each.packs),
            joined=joined,
            marked=marked,
            tested=tested,
            spares=min(loose or 0, int(each.packs)),
            damaged=damaged,
        ),
    )
    found, problem = (None, said.problem) if isinstance(said, Open) else (said, None)
    # What no answer could mend is said at once; a flight is granted only when all is answered.
    if found is not None and found.card and asks:
        found = None
    return Flight(
        run.figure("each", "energy", lambda each: each.each),
        run.figure("all_joined", "energy", _all_joined),
        found,
        problem,
        marked,
        tested,
        packs,
        loose,
        joined,
        asks,
        run.view(_differs, otherwise=False),
        _cards(run) if found is not None and found.card else (),
        edition(),
        rules(),
        run.view(lambda each: _best(each, loose, joined=joined, damaged=damaged), otherwise=None),
        _hopes(parts, asks),
    )


def _best(parts: FlightParts, loose: int | None, *, joined: bool, damaged: bool) -> TravelVerdict:
    """Return the verdict if all that was never answered turns out well; a pack whose count is not known is one."""
    pack = parts.read.board.pack
    count = 1 if pack.packs is None else int(parts.packs)
    return verdict(
        energies=(parts.each,) * count,
        joined=joined,
        marked="yes" if pack.marked is None else parts.marked,
        tested="yes" if pack.tested is None else parts.read.choice("pack.tested", UNKNOWN),
        spares=min(loose or 0, count),
        damaged=damaged,
    )


def _hopes(parts: FlightParts, asks: tuple[str, ...]) -> tuple[str, ...]:
    """Return what was never answered, the most telling first."""
    pack = parts.read.board.pack
    never = (
        ("pack.packs", pack.packs is None),
        ("pack.marked", pack.marked is None and pack.marked_energy is None),
        ("pack.tested", pack.tested is None),
    )
    return (*(key for key, open_ in never if open_), *asks)


def _all_joined(parts: FlightParts) -> float:
    return parts.each * parts.packs


def _cards(run: Run[FlightParts]) -> tuple[PackCard, ...]:
    parts = run.plain
    voltage, capacity = run.view(lambda each: (each.voltage("nominal"), each.capacity(each.one)), (0.0, 0.0))
    return tuple(PackCard(number + 1, parts.each, voltage, capacity) for number in range(int(parts.packs)))


def _differs(parts: FlightParts) -> bool:
    """Tell whether the watt-hours on the case and those of the cells are apart."""
    each, computed = parts.each, parts.energy(parts.one)
    share = pick("pack_practice", name="marked apart").number("share")
    return abs(each - computed) > share * computed
