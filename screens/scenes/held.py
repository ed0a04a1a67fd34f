"""What the walks do without touching: through acts where a person could, past the pages where only time could."""

from datetime import datetime
from typing import Any

from logic.board import Board
from logic.log import Entry
from logic.store import Record as Entered
from logic.store import Store
from screens.acts import Act
from screens.acts.boards import Choose, Unbin
from screens.acts.keeping import Drop, Record, Remember, Settle
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
    def store(self) -> Store:
        """Return the file."""
        return self.world.store

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

    def choose(self, board: str) -> None:
        """Put a board in use, by its id."""
        self.do(Choose(board))

    def choose_named(self, name: str) -> None:
        """Put a board in use, by its name."""
        self.choose(next(board.id for board in self.world.boards() if board.name == name))

    def set_person(self, **changes: object) -> None:
        """Change settings."""
        self.do(Settle(changes))

    def remember(self, key: str, value: object) -> None:
        """Keep a setting."""
        self.do(Remember(key, value))

    def forget_answers(self) -> None:
        """Take every answer for the board in use back."""
        self.remember(f"answers/{self.saved.id}", {})

    def begin_anew(self) -> None:
        """Empty the bin, put the first example board in use and drop what is tried."""
        for stored in self.store.binned_boards():
            self.do(Unbin(stored.id))
        self.choose_named("Towpath 36")
        self.do(Drop())
        self.forget_answers()
