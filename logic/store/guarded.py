"""A connection whose faults are the project's own: every call that reads or writes the file goes through here."""

import sqlite3
from collections.abc import Callable
from typing import Any, Final, ParamSpec, TypeVar

from logic.store.errors import Busy, CannotStore, Damaged, Full, NoRight, NotSaved

P = ParamSpec("P")
T = TypeVar("T")

_KINDS: Final = {
    sqlite3.SQLITE_FULL: Full,
    sqlite3.SQLITE_IOERR_SHMSIZE: Full,
    sqlite3.SQLITE_BUSY: Busy,
    sqlite3.SQLITE_LOCKED: Busy,
    sqlite3.SQLITE_READONLY: NoRight,
    sqlite3.SQLITE_PERM: NoRight,
    sqlite3.SQLITE_AUTH: NoRight,
    sqlite3.SQLITE_CANTOPEN: NoRight,
    sqlite3.SQLITE_CORRUPT: Damaged,
    sqlite3.SQLITE_NOTADB: Damaged,
}
"""What SQLite's primary result codes mean here, and the extended one of a full volume (sqlite.org/rescode.html)."""
_PRIMARY: Final = 0xFF
"""The primary code is the low byte of an extended one (sqlite.org/rescode.html, section 2)."""


_OF_THE_TABLES: Final = ("no such", "already exists", "has no column", "unsupported file format", "malformed")
"""In what SQLite says of a file whose list of tables is not ours any more; it has no code of its own for them."""


def told(problem: Exception) -> Exception:
    """Return the project's error for one of SQLite's; a fault of our own SQL comes back as it is."""
    if isinstance(problem, UnicodeDecodeError):
        # What SQLite says holds names out of the file: they are garbled.
        return Damaged(str(problem))
    if type(problem) not in (sqlite3.OperationalError, sqlite3.DatabaseError):
        return problem
    extended = getattr(problem, "sqlite_errorcode", sqlite3.SQLITE_ERROR)
    code = extended & _PRIMARY
    kind: type[CannotStore] = _KINDS.get(extended, _KINDS.get(code, NotSaved))
    if code == sqlite3.SQLITE_ERROR and any(sign in str(problem) for sign in _OF_THE_TABLES):
        kind = Damaged
    return kind(str(problem))


def _guarded(call: Callable[P, T]) -> Callable[P, T]:
    def guarded(*args: P.args, **kwargs: P.kwargs) -> T:
        try:
            return call(*args, **kwargs)
        except (sqlite3.Error, UnicodeDecodeError) as problem:
            # One that is its own cause would go in a circle, and keep what it met, and the file, open.
            if told(problem) is problem:
                raise
            raise told(problem) from problem

    return guarded


class GuardedCursor(sqlite3.Cursor):
    """A cursor that raises the project's own errors."""

    execute = _guarded(sqlite3.Cursor.execute)
    fetchone = _guarded(sqlite3.Cursor.fetchone)
    fetchall = _guarded(sqlite3.Cursor.fetchall)

    def __next__(self) -> Any:  # noqa: ANN401  (as sqlite3.Cursor)
        """Return the next row."""
        try:
            return super().__next__()
        except (sqlite3.Error, UnicodeDecodeError) as problem:
            # One that is its own cause would go in a circle, and keep what it met, and the file, open.
            if told(problem) is problem:
                raise
            raise told(problem) from problem


class GuardedConnection(sqlite3.Connection):
    """A connection whose cursors are guarded."""

    def execute(self, *args: Any) -> sqlite3.Cursor:  # noqa: ANN401  (as sqlite3.Connection)
        """Run one statement on a cursor of its own."""
        # Not made directly: only `cursor` forgets those that are gone, and each is remembered.
        return self.cursor(GuardedCursor).execute(*args)


def connect(address: str, *, uri: bool = False) -> sqlite3.Connection:
    """Return an open autocommit connection. Raises CannotStore."""
    try:
        connection = sqlite3.connect(address, isolation_level=None, factory=GuardedConnection, uri=uri)
    except sqlite3.Error as problem:
        raise told(problem) from problem
    # A text that was damaged in the file is still shown, as far as it goes.
    connection.text_factory = lambda kept: kept.decode("utf-8", "replace")
    return connection
