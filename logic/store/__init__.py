"""What Deckhand remembers, in one SQLite file: boards, trials, checklist runs, settings and the log.

The store knows boards as JSON objects, and entries of the log as their classes in `logic.log`. Every call that
writes returns after the commit: saved means saved.
"""

from collections.abc import Iterable, Mapping
from types import TracebackType
from typing import Self, TypeAlias

from logic.log import BoardChanged, Check
from logic.store.boards import Boards, StoredBoard, StoredRun
from logic.store.errors import (
    BadReplacement,
    NewerFile,
    NotAStore,
    NoTimeZone,
    NotSaved,
    UnknownBoard,
    UnknownEntry,
    UnknownKind,
)
from logic.store.file import Body, Clock
from logic.store.log import Log, Record

__all__ = [
    "BadReplacement",
    "Body",
    "Clock",
    "NewerFile",
    "NoTimeZone",
    "NotAStore",
    "NotSaved",
    "Record",
    "Store",
    "StoredBoard",
    "StoredRun",
    "UnknownBoard",
    "UnknownEntry",
    "UnknownKind",
]


ArrivedRow: TypeAlias = tuple[str, str, int, int, str]
"""Kind, time in UTC, offset in minutes, version and body of an entry that comes from elsewhere."""


class Store(Log, Boards):
    """The whole file: the log, what stands beside it, and the transactions that touch both.

    >>> from datetime import UTC, datetime
    >>> from logic.log import Ride
    >>> from pathlib import Path
    >>> from tempfile import TemporaryDirectory
    >>> with TemporaryDirectory() as folder:
    ...     with Store(Path(folder) / "deckhand.db", lambda: datetime.now(UTC)) as store:
    ...         number = store.append("weir", Ride(distance=4200.0))
    ...         print(number, store.entry(number).body.distance)
    1 4200.0
    """

    def __enter__(self) -> Self:
        """Give the open store."""
        return self

    def __exit__(
        self,
        kind: type[BaseException] | None,
        problem: BaseException | None,
        trace: TracebackType | None,
    ) -> None:
        """Close the file."""
        self.close()

    def keep_trial(self, board: str, name: str, body: Mapping[str, object], change: BoardChanged) -> int:
        """Save the board as `body`, forget its trial, log `change`: all or nothing. Return the entry's id."""
        with self._writing() as connection:
            self._save_board(connection, board, name, body)
            self._drop_trial(connection, board)
            return self._append(connection, board, change)

    def keep_trial_as(
        self,
        board: str,
        name: str,
        body: Mapping[str, object],
        left: Mapping[str, object],
        settings: Mapping[str, object],
    ) -> None:
        """Save a board that was a trial only, put what is left of the trial in its place, and settings: all or nothing."""
        with self._writing() as connection:
            self._save_board(connection, board, name, body)
            self._drop_trial(connection, board)
            if left:
                self._save_trial(connection, board, left)
            for key, value in settings.items():
                self._put(connection, key, value)

    def finish_run(self, board: str, checklist: str, check: Check) -> int:
        """Forget a checklist in progress and log what came of it: all or nothing. Return the entry's id."""
        with self._writing() as connection:
            self._drop_run(connection, board, checklist)
            return self._append(connection, board, check)

    def take_in(self, board: str, name: str, body: Mapping[str, object], rows: Iterable[ArrivedRow]) -> None:
        """Save a board and add rows to its log that were written elsewhere: all or nothing.

        A row is kind, time in UTC, offset in minutes, version and body, as the log holds them.
        """
        with self._writing() as connection:
            self._save_board(connection, board, name, body)
            for kind, at, offset, version, text in rows:
                self._insert(connection, (board, kind, at, offset, version, None, text))
