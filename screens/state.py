"""What the screens show and change: the board in use, the trial over it, the person's settings, and the log."""

from collections.abc import Callable
from dataclasses import asdict, dataclass, replace
from datetime import datetime
from operator import is_
from typing import Any
from uuid import uuid4

from kivy.clock import Clock as Frames
from kivy.event import EventDispatcher
from kivy.properties import NumericProperty, ObjectProperty

from logic import read_back
from logic.answers.checks import for_board
from logic.board import Board, Value, field_of, to_dict
from logic.checks.lists import Checklist, checklist, checklists
from logic.checks.own import copy_of, list_to_dict
from logic.errors import InputError
from logic.exchange import demo_boards
from logic.ledger import History, Ledger
from logic.log import BoardChanged, Change, Entry
from logic.person import Person, person_to_dict
from logic.store import Clock, Record, Store
from logic.upkeep import Due, upkeep
from screens.world import SCRATCH, TakeBack, World

SOON = 0.2
"""Seconds after a change until what is due is looked up again."""

EXAMPLE_RIDER = Value(80.0, "guess", typed_unit="kg", note="example")
"""Rider of the example boards, until the person gives a mass of their own."""


@dataclass(frozen=True)
class Undo:
    """One step that can be taken back: what was done, and how. `word` names the way back; some stay until closed."""

    text: str
    act: Callable[[], None]
    word: str = "Undo"
    stays: bool = False


class State(EventDispatcher):
    """The one place that changes things. Screens bind to `revision`, which steps with every change.

    `saved` is the board as stored, `board` the same with the trial's values over it.
    """

    revision = NumericProperty(0)
    saved = ObjectProperty(rebind=False)
    board = ObjectProperty(rebind=False)
    person = ObjectProperty(Person())
    undo = ObjectProperty(None, allownone=True)
    upcoming = ObjectProperty(())
    """What is due and what comes next, most urgent first; looked up a moment after something changed."""

    def __init__(self, store: Store, clock: Clock) -> None:
        """Read what was in use last. `clock` tells the time of what is recorded."""
        super().__init__()
        self.store = store
        self.clock = clock
        self.trial: dict[str, Value] = {}
        self.typed: dict[str, str] = {}
        self._ledger: Ledger | None = None
        self.look = Frames.create_trigger(self._look, SOON)
        self.bind(revision=self.look)
        self.look()
        self.person = read_back.person(store)
        self._open(store.get("board", SCRATCH))

    @property
    def is_scratch(self) -> bool:
        """Tell whether no saved board is in use."""
        return bool(self.saved.id == SCRATCH)

    # Boards

    def boards(self) -> list[Board]:
        """Return the saved boards by name."""
        return read_back.boards(self.store)

    def choose(self, identity: str) -> None:
        """Put another board in use. Its own trial comes back with it; the other's is parked."""
        self.store.put("board", identity)
        self.upcoming = ()
        self._open(identity)
        self._changed()

    def add_board(self, name: str) -> None:
        """Save a new board and put it in use. Raises InputError for a name that is taken or cannot be shown."""
        self._check_name(name)
        self._save(Board(uuid4().hex, name.strip()))

    def add_demo_boards(self) -> None:
        """Save the example boards and put the first in use."""
        boards = demo_boards()
        for board in boards:
            self.store.save_board(board.id, board.name, to_dict(board))
        if self.person.rider is None:
            self.set_person(rider=EXAMPLE_RIDER)
        self.choose(boards[0].id)

    def copy_board(self, name: str) -> None:
        """Save a copy of the board in use under a new name and put it in use."""
        self._check_name(name)
        self._save(replace(self.saved, id=uuid4().hex, name=name.strip(), example=False))

    def rename_board(self, name: str) -> None:
        """Give the board in use another name."""
        if name.strip() != self.saved.name:
            self._check_name(name)
        before = self.saved
        self._save(replace(before, name=name.strip()))
        self.undo = Undo(f"Renamed to {name.strip()}", lambda: self._save(before))

    def bin_board(self) -> None:
        """Put the board in use into the bin and take up the next one."""
        gone = self.saved
        self.store.bin_board(gone.id)
        rest = self.store.boards()
        self.choose(rest[0].id if rest else SCRATCH)
        self.undo = Undo(f"{gone.name} is in the bin", lambda: self.restore_board(gone.id))

    def restore_board(self, identity: str) -> None:
        """Take a board out of the bin and put it in use."""
        self.store.restore_board(identity)
        self.choose(identity)

    def binned(self) -> list[Board]:
        """Return the boards in the bin, the last one first."""
        return read_back.binned(self.store)

    def set_value(self, key: str, value: Value | None) -> None:
        """Write one value of the saved board, with undo. On the scratch board it joins the trial."""
        self.set_values({key: value})

    def set_values(self, values: dict[str, Value | None]) -> None:
        """Write values of the saved board that belong together, with one undo. On the scratch board they join the trial."""
        dated = {key: self._dated(value) for key, value in values.items()}
        if self.is_scratch:
            kept = {key: value for key, value in self.trial.items() if key not in dated}
            self._overlay(kept | {key: value for key, value in dated.items() if value})
            return
        before = board = self.saved
        for key, value in dated.items():
            board = board.with_value(key, value)
        self._save(board)
        self.undo = Undo("Saved", lambda: self._save(before))

    # The trial

    def try_value(self, key: str, value: Value, typed: str = "") -> None:
        """Lay a value over the saved board, with the text it was typed as, if it was: one write for both.

        Raises InputError outside its limits; nothing changes then.
        """
        self.board.with_value(key, value)
        if typed:
            self.typed = {**self.typed, key: typed}
        value = self._dated(_chosen(key, value))
        same = self.saved.value(key)
        if same is not None and same.si == value.si:
            self._overlay(_without(self.trial, key))
        else:
            self._overlay({**self.trial, key: value})

    def untry(self, key: str) -> None:
        """Put the saved value of one field back; nothing is typed for it then."""
        self.typed = _without(self.typed, key)
        self._overlay(_without(self.trial, key))

    def note_typed(self, key: str, text: str) -> None:
        """Remember text that is typed but is not a value yet, so that leaving loses nothing."""
        self.typed = {**self.typed, key: text} if text else _without(self.typed, key)
        self._store_trial()

    def keep(self) -> None:
        """Make the trial's values the board's: one transaction with a record of what changed."""
        before, kept = self.saved, self.board
        changes = {key: Change(before.value(key), value) for key, value in self.trial.items()}
        self.store.keep_trial(kept.id, kept.name, to_dict(kept), BoardChanged(changes=changes))
        self.undo = Undo("Kept on the board", lambda: self._save(before))
        self._open(kept.id)
        self._changed()

    def keep_as(self, name: str) -> None:
        """Save the scratch board's values as a new board."""
        self._check_name(name)
        board = replace(self.board, id=uuid4().hex, name=name.strip())
        self.store.drop_trial(SCRATCH)
        self._save(board)

    def drop(self) -> None:
        """Put the saved values back."""
        trial = dict(self.trial)
        self.typed = {}
        self._overlay({})
        self.undo = Undo("Trial dropped", lambda: self._overlay(trial))

    # The person and the log

    def set_person(self, **changes: Any) -> None:  # noqa: ANN401  (fields of Person)
        """Change settings and store them."""
        self.person = replace(self.person, **changes)
        self.store.put("person", person_to_dict(self.person))
        self._changed()

    def record(self, entry: Entry, at: datetime | None = None) -> int:
        """Add to the log of the board in use; it is on the disk when this returns. `at` is now unless given."""
        number = self.store.append(self.saved.id, entry, at)
        self._changed()
        return number

    def correct(self, number: int, entry: Entry) -> None:
        """Give a log entry, of whatever board, another body."""
        self.store.correct(number, entry)
        self._changed()

    def take_back(self, number: int) -> int:
        """Hide a log entry, take a correction back, or show again what a row hid; return the row that does so."""
        row = self.store.void(number)
        self._changed()
        return row

    def last(self, kind: str, **match: object) -> Record | None:
        """Return the newest log entry of the board in use that can be read and matches."""
        return self.store.latest(self.saved.id, kind, **match)

    def entries(self, kind: str, limit: int = 200) -> list[Record]:
        """Return the newest log entries of the board in use, of one kind, that can be read."""
        return self.store.entries(self.saved.id, kind, limit)

    def remember(self, key: str, value: object) -> None:
        """Keep a setting that no other page shows, such as the tool last used."""
        self.store.put(key, value)

    # Checks and upkeep

    def history(self) -> History:
        """Return what the log of the board in use holds of rides, checks, tensions and joints."""
        if self._ledger is None or self._ledger.board != self.saved.id:
            self._ledger = Ledger(self.store, self.saved.id)
        return self._ledger.read()

    @property
    def due(self) -> tuple[Due, ...]:
        """Return what of the upcoming is due now."""
        return tuple(one for one in self.upcoming if one.due)

    def _look(self, *_: object) -> None:
        # Not at once: the log and the rules are not wanted for the first frame.
        self.upcoming = () if self.is_scratch else upkeep(self.history(), self.saved.sides, self.clock())

    def changed(self) -> None:
        """Tell the screens that something was written past this class: a finished run, a correction."""
        self._changed()

    def checklist(self, key: str) -> Checklist:
        """Return a list of ours or of one's own, with the items that apply to the board in use."""
        own = self.own_lists().get(key)
        return for_board(own or checklist(key), self.saved)

    def lists(self) -> dict[str, Checklist]:
        """Return every list, ours first."""
        return {**checklists(), **self.own_lists()}

    def own_lists(self) -> dict[str, Checklist]:
        """Return the lists of one's own."""
        return read_back.own_lists(self.store)

    def save_own(self, changed: Checklist) -> None:
        """Keep an own list, new or changed."""
        self._put_own({**self.own_lists(), changed.key: changed}, f"{changed.title}: kept")

    def drop_own(self, key: str) -> None:
        """Put an own list away, with undo."""
        self._put_own(_without(self.own_lists(), key), "List taken out")

    def copy_list(self, key: str) -> Checklist:
        """Make an own list from another one and return it."""
        number = self.store.get("own_number", 0) + 1
        self.store.put("own_number", number)
        made = copy_of(self.lists()[key], number)
        self.save_own(made)
        return made

    def _put_own(self, lists: dict[str, Checklist], text: str) -> None:
        before = self.store.get("own_lists", {})
        self.store.put("own_lists", {key: list_to_dict(one) for key, one in lists.items()})
        self.undo = Undo(text, lambda: self._restore_own(before))
        self._changed()

    def _restore_own(self, before: dict[str, Any]) -> None:
        self.store.put("own_lists", before)
        self._changed()

    # The bridge to pages of data

    def adopt(self, world: World, before: World) -> None:
        """Take over what an act changed; it is in the store already."""
        self.typed = dict(world.typed)
        same = (world.log, world.person, world.saved, world.trial)
        if (
            all(map(is_, same, (before.log, before.person, before.saved, before.trial)))
            and world.board is self.board
        ):
            return
        self.person, self.saved = world.person, world.saved
        self.trial, self.board = dict(world.trial), world.board
        self._changed()

    def tell_undo(self, step: TakeBack, act: Callable[[TakeBack], None]) -> None:
        """Offer the way back from what a page of data did."""
        self.undo = Undo(step.text, lambda: act(step), step.word)

    # Inside

    def _check_name(self, name: str) -> None:
        Board("new", name)
        if name.strip().casefold() in {board.name.casefold() for board in self.store.boards()}:
            raise InputError("name", name, "name taken")

    def _dated(self, value: Value | None) -> Value | None:
        return value and replace(value, on=value.on or self.clock().date().isoformat())

    def _save(self, board: Board) -> None:
        self.store.save_board(board.id, board.name, to_dict(board))
        self.choose(board.id)

    def _open(self, identity: str) -> None:
        self.saved = read_back.board(self.store, str(identity)) or Board(SCRATCH, "Scratch board")
        self.trial, self.typed = read_back.trial(self.store, self.saved.id)
        self.board = self._overlaid()

    def _overlay(self, trial: dict[str, Value]) -> None:
        self.trial = trial
        self.board = self._overlaid()
        self._store_trial()
        self._changed()

    def _store_trial(self) -> None:
        if self.trial or self.typed:
            values = {key: asdict(value) for key, value in self.trial.items()}
            self.store.save_trial(self.saved.id, {"values": values, "typed": self.typed})
        else:
            self.store.drop_trial(self.saved.id)

    def _overlaid(self) -> Board:
        board: Board = self.saved
        for key, value in self.trial.items():
            board = board.with_value(key, value)
        return board

    def _changed(self) -> None:
        self.revision += 1


def _chosen(key: str, value: Value) -> Value:
    """Return a count or a choice as chosen: teeth that one tries are no guess at teeth."""
    picked = value.known == "guess" and field_of(key).kind in ("count", "choice", "named")
    return replace(value, known="chosen") if picked else value


def _without(items: dict[str, Any], key: str) -> dict[str, Any]:
    return {name: item for name, item in items.items() if name != key}
