"""What the walks do without touching: through acts where a person could, past the pages where only time could."""

from collections.abc import Mapping
from datetime import datetime
from typing import Any

from logic.board import Board, Value
from logic.checks.lists import Checklist
from logic.log import Entry
from logic.person import Person
from logic.store import Record as Entered
from logic.store import Store
from logic.upkeep import Due
from screens.acts import Act
from screens.acts.boards import Choose, Unbin
from screens.acts.entering import Put, Write
from screens.acts.keeping import Correct, Drop, Record, Remember, Set, Settle, Void
from screens.acts.runs import CopyList
from screens.driver import Driver
from screens.world import World


class Held:
    """The world that a driver's app shows, and what can be done to it by name."""

    def __init__(self, driver: Driver) -> None:
        """Hold an app."""
        self.front: Any = driver.app.front

    @property
    def world(self) -> World:
        """Return the world as it is now."""
        world: World = self.front.world
        return world

    @property
    def saved(self) -> Board:
        """Return the board in use, as stored."""
        return self.world.saved

    @property
    def board(self) -> Board:
        """Return the board with what is tried."""
        return self.world.board

    @property
    def trial(self) -> Mapping[str, Value]:
        """Return what is tried."""
        return self.world.trial

    @property
    def typed(self) -> Mapping[str, str]:
        """Return what is typed."""
        return self.world.typed

    @property
    def person(self) -> Person:
        """Return the person's settings."""
        return self.world.person

    @property
    def store(self) -> Store:
        """Return the file."""
        return self.world.store

    @property
    def due(self) -> tuple[Due, ...]:
        """Return what is due now."""
        self.changed()
        return self.world.due

    def clock(self) -> datetime:
        """Return the time of the app."""
        return self.world.clock()

    def boards(self) -> list[Board]:
        """Return the saved boards."""
        return self.world.boards()

    def own_lists(self) -> dict[str, Checklist]:
        """Return the lists of one's own."""
        return self.world.own_lists()

    def checklist(self, key: str) -> Checklist:
        """Return a list as it stands for the board in use."""
        return self.world.checklist(key)

    def last(self, kind: str, **match: object) -> Entered | None:
        """Return the newest entry of the log that matches."""
        return self.store.latest(self.saved.id, kind, **match)

    def newest(self, kind: str, **match: object) -> Entered:
        """Return it of a log that has one."""
        found = self.last(kind, **match)
        if found is None:
            raise LookupError(kind)
        return found

    # What is done

    def do(self, act: Act) -> None:
        """Carry an act out."""
        self.front.perform(act)

    def changed(self) -> None:
        """Show what was put into the file past the pages."""
        self.front.reread()

    def record(self, entry: Entry, at: datetime | None = None) -> int:
        """Write into the log, at another time where one is given; return the number of the entry."""
        if at is None:
            self.do(Record(entry))
            found = self.last(entry.KIND)
            assert found is not None  # noqa: S101  (it was just written)
            return found.id
        number = self.store.append(self.saved.id, entry, at)
        self.changed()
        return number

    def correct(self, number: int, entry: Entry) -> None:
        """Give an entry another body."""
        self.do(Correct(number, entry))

    def take_back(self, number: int) -> None:
        """Hide an entry."""
        self.do(Void(number))

    def choose(self, board: str) -> None:
        """Put a board in use, by its id."""
        self.do(Choose(board))

    def choose_named(self, name: str) -> None:
        """Put a board in use, by its name."""
        self.choose(next(board.id for board in self.boards() if board.name == name))

    def set_person(self, **changes: object) -> None:
        """Change settings."""
        self.do(Settle(changes))

    def set_value(self, key: str, value: Value | None) -> None:
        """Write a value of the saved board."""
        self.do(Set({key: value}))

    def try_value(self, key: str, value: Value) -> None:
        """Try a value."""
        self.do(Put(key, value))

    def answer(self, key: str, value: Value) -> None:
        """Answer a question."""
        self.do(Put(key, value, "question"))

    def note_typed(self, key: str, text: str) -> None:
        """Write free text."""
        self.do(Write(key, text))

    def remember(self, key: str, value: object) -> None:
        """Keep a setting."""
        self.do(Remember(key, value))

    def forget_answers(self) -> None:
        """Take every answer for the board in use back."""
        self.remember(f"answers/{self.saved.id}", {})

    def copy_list(self, key: str) -> None:
        """Make a list of one's own from another one."""
        self.do(CopyList(key))

    def begin_anew(self) -> None:
        """Empty the bin, put the first example board in use and drop what is tried."""
        for stored in self.store.binned_boards():
            self.do(Unbin(stored.id))
        self.choose_named("Towpath 36")
        self.do(Drop())
        self.forget_answers()
