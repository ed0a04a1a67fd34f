"""The SQLite file itself: opened once, written in transactions that are on the disk when a call returns.

What is being typed and tried is written at each key: it is in the file when the call returns, the disk follows.
"""

import sqlite3
from collections.abc import Callable, Iterator, Mapping
from contextlib import closing, contextmanager
from datetime import UTC, datetime, timedelta
from pathlib import Path
from typing import Any, TypeAlias

from logic.log import json_text
from logic.store.errors import NoTimeZone, NotSaved
from logic.store.guarded import connect, told
from logic.store.migrations import migrate, pending

Body: TypeAlias = dict[str, Any]  # A JSON object, as read back.
Clock: TypeAlias = Callable[[], datetime]

LONG_AGO = datetime(1970, 1, 1, tzinfo=UTC)
"""When something was whose time cannot be read."""
PATIENCE = 5000  # Milliseconds to wait for another connection's write.


class File:
    """One connection to the store's file, for the thread that opened it.

    `clock` returns the time now with its offset from UTC.
    """

    def __init__(self, path: Path, clock: Clock) -> None:
        """Open the file at `path`, made if it is not there, and bring its tables up to date.

        Raises NotAStore, NewerFile and CannotStore, with the file untouched.
        """
        self.path = path
        missing = pending(path)
        self._clock = clock
        self._connection = connect(str(path))
        try:
            self._connection.execute(f"PRAGMA busy_timeout = {PATIENCE:d}")
            self._connection.execute("PRAGMA journal_mode = WAL")
            # FULL: a commit is on the disk when it returns, not only safe from a crash of the app. What is typed does not wait.
            self._connection.execute("PRAGMA synchronous = FULL")
            self._connection.execute("PRAGMA foreign_keys = ON")
            if missing:
                migrate(self._connection, missing, self._now())
        except BaseException:
            self.close()
            raise

    def close(self) -> None:
        """Close the file. Everything saved is in it already."""
        self._connection.close()

    def copy_to(self, path: Path) -> None:
        """Write one whole file with everything saved so far to `path`, which must not exist yet. Raises CannotStore.

        The way to make a copy: the file alone may lack what is still in the write-ahead log beside it.
        """
        if path.exists():
            raise NotSaved(f"{path.name} is there already")
        with closing(connect(str(path))) as copy:
            _all_of(self._connection, copy)
            # One file, without a log beside it.
            copy.execute("PRAGMA journal_mode = DELETE")

    def become(self, other: "File") -> None:
        """Hold what another file holds, in the place of everything: all or nothing. Raises CannotStore."""
        _all_of(other._connection, self._connection)  # noqa: SLF001  (one of its own kind)
        self._connection.execute("PRAGMA journal_mode = WAL")

    @contextmanager
    def _writing_soon(self) -> Iterator[sqlite3.Connection]:
        # As `_writing`, but it does not wait for the disk, which on a phone takes longer than a frame. A crash of the app loses
        # nothing of it; without power the last of it may be lost, and nothing that was saved before.
        self._connection.execute("PRAGMA synchronous = NORMAL")
        try:
            with self._writing() as connection:
                yield connection
        finally:
            self._connection.execute("PRAGMA synchronous = FULL")

    @contextmanager
    def _writing(self) -> Iterator[sqlite3.Connection]:
        # All of the block is in the file afterwards, or, if it raises, none of it.
        self._connection.execute("BEGIN IMMEDIATE")
        try:
            yield self._connection
            self._connection.execute("COMMIT")
        except BaseException:
            if self._connection.in_transaction:
                self._connection.execute("ROLLBACK")
            raise

    def _now(self) -> str:
        return utc_text(self._clock())


def _all_of(source: sqlite3.Connection, target: sqlite3.Connection) -> None:
    try:
        source.backup(target)
    except sqlite3.Error as problem:
        raise told(problem) from problem


def utc_text(moment: datetime) -> str:
    """UTC text of fixed width, so that it sorts by time. Raises NoTimeZone for a time without an offset.

    >>> from datetime import timezone
    >>> utc_text(datetime(2026, 11, 25, 9, 30, tzinfo=timezone(timedelta(hours=1))))
    '2026-11-25T08:30:00.000000+00:00'
    """
    offset_minutes(moment)
    return moment.astimezone(UTC).isoformat(timespec="microseconds")


def offset_minutes(moment: datetime) -> int:
    """Minutes by which the clock on the wall was ahead of UTC. Raises NoTimeZone without an offset."""
    offset = moment.utcoffset()
    if offset is None:
        raise NoTimeZone(f"{moment.isoformat()} has no offset from UTC")
    return offset // timedelta(minutes=1)


def object_text(body: Mapping[str, object]) -> str:
    """JSON text of `body`, an object with string keys."""
    return json_text(dict(body))
