"""World: one frozen snapshot of all that a page may know. A page reads it; only `screens.update` makes the next one.

What is derived is worked out when it is first read and kept while what it rests on is the same, so that a key press works out
only what the page in front reads.
"""

from collections.abc import Mapping
from dataclasses import field, replace
from datetime import datetime
from functools import cached_property
from typing import TYPE_CHECKING, Any, NamedTuple

from logic import read_back
from logic.answers.fitted import for_board
from logic.board import Board, Value
from logic.checks.lists import Checklist, checklist, checklists
from logic.frozen import frozen
from logic.history import History
from logic.log.rides import LoggedRide
from logic.person import Person
from logic.store import Clock, Store
from logic.store import Record as Entered
from logic.store.stand_in import stand_in_id
from logic.upkeep import Due, upkeep
from screens.acts import Act
from screens.asked import answers, logged_rides
from screens.log_book import LogBook
from screens.memo import Memo
from screens.tongue import _
from screens.words import Style

if TYPE_CHECKING:
    from logic.checks.session import Session

CLOSE = _("Close")
"""Word of a bar that only says something: it stays until it is closed."""

HOME = "ride"
"""The place the app opens at; Back from another place leads here."""


class Step(NamedTuple):
    """A page on the way, and its parameters. Those whose name begins with "_" do not outlive a restart."""

    page: str
    args: Mapping[str, Any]


@frozen
class Asking:
    """What is being entered: its key, and the value and text there were before the typing began."""

    key: str
    before: Value | None
    text: str = ""


@frozen
class TakeBack:
    """What was done, the act that takes it back, and the board it belongs to. `word` names the way back.

    "" is for what belongs to no board in front: a row of the log is taken back whatever board is in use.
    """

    text: str
    act: Act
    board: str
    word: str = "Undo"


@frozen
class World:
    """What pages know: the board and what is tried over it, the person, what is typed, the way here, the log, the time."""

    store: Store = field(compare=False)
    clock: Clock = field(compare=False)
    saved: Board
    log: LogBook
    person: Person = field(default_factory=Person)
    is_scratch: bool = False
    """Whether no saved board is in use: the values of the one that stands in live in a trial only."""
    trial: Mapping[str, Value] = field(default_factory=dict)
    typed: Mapping[str, str] = field(default_factory=dict)
    units: Mapping[str, str] = field(default_factory=dict)
    """The unit that was chosen for a field on the keypad."""
    trail: tuple[Step, ...] = (Step(HOME, {}),)
    asking: Asking | None = None
    undo: TakeBack | None = None
    out: tuple[Act, ...] = ()
    """What the phone is to do: say, share."""
    kept: Memo = field(default_factory=Memo, compare=False)
    """world.kept(function, board, ...) is function(board, ...), from memory where it was asked the same."""

    # Where one is

    @property
    def args(self) -> Mapping[str, Any]:
        """Return the parameters of the page in front."""
        return self.trail[-1].args

    def turned(self, **changes: Any) -> "World":  # noqa: ANN401  (each page names its own)
        """Return the world with parameters of the page in front changed; None takes one away."""
        args = {name: value for name, value in (dict(self.args) | changes).items() if value is not None}
        return replace(self, trail=(*self.trail[:-1], Step(self.trail[-1].page, args)))

    @cached_property
    def now(self) -> datetime:
        """Return the time of this snapshot."""
        return self.clock()

    @cached_property
    def style(self) -> Style:
        """Return how numbers are written for the person."""
        return self.kept(Style, self.person.system, self.person.mark)

    # The board

    @cached_property
    def board(self) -> Board:
        """Return the board with the trial's values over it."""
        return self.kept(_overlaid, self.saved, self.trial)

    @cached_property
    def answers(self) -> dict[str, Value]:
        """Return the answers to questions for the board in use."""
        return self.kept.same("answers", answers(self))

    @cached_property
    def rides(self) -> tuple[LoggedRide, ...]:
        """Return the newest rides of the board in use, as the range reads them."""
        return self.kept.same("rides", logged_rides(self))

    def side_of(self, board: Board) -> str:
        """Return the belt the page in front is about; the first one where the board has none on that side any more."""
        side = str(self.args.get("side", ""))
        return side if side in board.sides else board.sides[0]

    def boards(self) -> list[Board]:
        """Return the saved boards by name: the same ones until one is saved otherwise."""
        stored = self.store.boards()
        return self.kept.unless("boards", tuple(stored), lambda: read_back.readable(stored))

    # The log and the lists

    def last(self, kind: str, **match: object) -> Entered | None:
        """Return the newest log entry of the board in use that matches."""
        return self.log.last(kind, **match)

    def entries(self, kind: str, limit: int = 200) -> list[Entered]:
        """Return the newest log entries of the board in use, of one kind, that can be read."""
        return self.store.entries(self.saved.id, kind, limit)

    def history(self) -> History:
        """Return what the log of the board in use holds."""
        return self.log.history(self.now)

    @cached_property
    def upcoming(self) -> tuple[Due, ...]:
        """Return what is due and what comes next, most urgent first."""
        return () if self.is_scratch else tuple(upkeep(self.history(), self.saved.sides, self.now))

    @property
    def due(self) -> tuple[Due, ...]:
        """Return what is due now."""
        return tuple(one for one in self.upcoming if one.due)

    def own_lists(self) -> dict[str, Checklist]:
        """Return the lists of one's own."""
        return read_back.own_lists(self.store)

    def lists(self) -> dict[str, Checklist]:
        """Return every list, ours first."""
        return {**checklists(), **self.own_lists()}

    def checklist(self, key: str) -> Checklist:
        """Return a list of ours or of one's own, with the items that apply to the board in use."""
        return for_board(self.own_lists().get(key) or checklist(key), self.saved)

    @cached_property
    def _sessions(self) -> "dict[str, Session]":
        return {}

    def session(self, key: str) -> "Session":
        """Return a list's run on the board in use, as it stands. Pages only read it; its steps are taken by acts."""
        from logic.checks.session import Session  # noqa: PLC0415  (not wanted for the first frame)

        if key not in self._sessions:
            self._sessions[key] = Session(self.store, self.saved.id, self.checklist(key), self.clock)
        return self._sessions[key]


def open_world(store: Store, clock: Clock, board: str = "") -> World:
    """Return the world as the store holds it, the board in use last in front."""
    found = read_back.board(store, board or store.get("board", ""))
    saved = found or Board(stand_in_id(store), "Scratch board")
    trial, typed = read_back.trial(store, saved.id)
    log, person = LogBook(store, saved.id), read_back.person(store)
    return World(store, clock, saved, log, person, found is None, trial, typed)


def _overlaid(saved: Board, trial: Mapping[str, Value]) -> Board:
    board = saved
    for key, value in trial.items():
        board = board.with_value(key, value)
    return board
