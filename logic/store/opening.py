"""Opening the file so that it always ends in an open store or one of the project's own errors.

A file of ours that is damaged is put beside, with its date, and what can be read of it goes row by row into a new one.
"""

import os
import sqlite3
from collections.abc import Iterator
from contextlib import closing
from datetime import datetime
from pathlib import Path
from typing import Final

from logic.frozen import frozen
from logic.store import Store
from logic.store.errors import CannotStore, Damaged, NoFolder, NoRight, NotSaved
from logic.store.file import Clock
from logic.store.guarded import connect

NAME: Final = "deckhand.db"
CHECK: Final = "check-at-next-start"
"""A file of this name asks for a look at the whole file when it is opened next: a read has failed."""
_BESIDE: Final = ("", "-wal", "-shm")
_TABLES: Final = ("board", "log", "trial", "run", "setting", "aside")
_POWERS: Final = 40
_MOST_TRIES: Final = 5_000
"""Queries after which the rows between two damaged places are given up."""

Row = tuple[object, ...]


@frozen
class Salvage:
    """What became of a damaged file: where it is kept, when, and how many rows of each table were read."""

    kept: str
    at: datetime
    rows: dict[str, int]


def open_store(folder: Path, clock: Clock) -> Store:
    """Return the open store of a folder, both made if need be. Raises NotAStore, NewerFile, CannotStore.

    What had to be salvaged stands in the setting "salvaged".
    """
    make_folder(folder)
    path = folder / NAME
    asked = folder / CHECK
    try:
        store = Store(path, clock)
        try:
            _look(store, whole=asked.exists())
        except BaseException:
            store.close()
            raise
    except Damaged:
        salvage = _salvage(path, clock)
        store = Store(path, clock)
        store.put("salvaged", {"kept": salvage.kept, "at": salvage.at.isoformat(), "rows": salvage.rows})
    asked.unlink(missing_ok=True)
    return store


def look_next_time(folder: Path) -> None:
    """Ask for a look at the whole file when it is opened next; for a read that failed as Damaged."""
    with _os_errors():
        (folder / CHECK).touch()


def make_folder(folder: Path) -> None:
    """Make the folder of the data, for its owner only where the system knows owners. Raises CannotStore."""
    with _os_errors():
        folder.mkdir(mode=0o700, parents=True, exist_ok=True)
        if not os.access(folder, os.R_OK | os.W_OK | os.X_OK):
            raise NoRight(f"{folder} may not be written to")


class _os_errors:  # noqa: N801  (reads as a statement)
    def __enter__(self) -> None:
        pass

    def __exit__(self, kind: object, problem: BaseException | None, trace: object) -> None:
        if isinstance(problem, PermissionError):
            raise NoRight(str(problem)) from problem
        if isinstance(problem, FileExistsError | NotADirectoryError | FileNotFoundError | IsADirectoryError):
            raise NoFolder(str(problem)) from problem
        if isinstance(problem, OSError):
            raise (NoRight if problem.errno == 30 else NotSaved)(str(problem)) from problem  # noqa: PLR2004  (EROFS)


def _look(store: Store, *, whole: bool) -> None:
    """Read what a start reads, or the whole file. Raises Damaged."""
    connection = store._connection  # noqa: SLF001  (a room of the same house)
    if whole:
        (said,) = connection.execute("PRAGMA quick_check(1)").fetchone()
        if said != "ok":
            raise Damaged(said)
        return
    store.boards()
    store.newest()
    for table in ("setting", "trial", "run"):
        connection.execute(f"SELECT * FROM {table}").fetchall()  # noqa: S608  (names of this file)


def _salvage(path: Path, clock: Clock) -> Salvage:
    """Put a damaged file beside, and a new one with what could be read in its place."""
    at = clock()
    fresh = path.with_name("deckhand-salvage.db")
    for end in _BESIDE:
        fresh.with_name(fresh.name + end).unlink(missing_ok=True)
    with closing(connect(str(path))) as damaged, Store(fresh, clock) as store:
        rows = {table: _copy(damaged, store, table) for table in _TABLES}
    kept = _free_name(path.with_name(f"deckhand-damaged-{at:%Y-%m-%d}.db"))
    with _os_errors():
        for end in _BESIDE:
            old = path.with_name(path.name + end)
            if old.exists():
                old.rename(kept.with_name(kept.name + end))
        fresh.rename(path)
    return Salvage(kept.name, at, rows)


def _free_name(path: Path) -> Path:
    names = (path.with_stem(f"{path.stem}-{number}") for number in range(2, 1000))
    return path if not path.exists() else next(name for name in names if not name.exists())


def _copy(damaged: sqlite3.Connection, store: Store, table: str) -> int:
    """Put the readable rows of a table into the new file; return how many there were."""
    connection = store._connection  # noqa: SLF001  (a room of the same house)
    try:
        columns = [row[1] for row in damaged.execute(f"PRAGMA table_info({table})")]
    except CannotStore:
        columns = []
    if not columns:
        return 0
    marks = ", ".join("?" * len(columns))
    put = f"INSERT OR IGNORE INTO {table} ({', '.join(columns)}) VALUES ({marks})"  # noqa: S608  (names of this file)
    count = 0
    # A row may act on one that is lost.
    connection.execute("PRAGMA foreign_keys = OFF")
    connection.execute("BEGIN IMMEDIATE")
    for row in _readable(damaged, table):
        try:
            count += connection.execute(put, row).rowcount
        except (CannotStore, sqlite3.Error) as problem:
            if isinstance(problem, CannotStore):
                connection.execute("ROLLBACK")
                raise
    connection.execute("COMMIT")
    return count


def _readable(damaged: sqlite3.Connection, table: str) -> Iterator[Row]:
    """Yield the rows that can be read, going round damaged places from both sides."""
    # SQLite numbers rows from 1. Low numbers come first: beyond the last row a damaged last page answers for all.
    gaps = [(2**power, 2 ** (power + 1) - 1) for power in reversed(range(_POWERS))]
    for _ in range(_MOST_TRIES):
        if not gaps:
            return
        low, high = gaps.pop()
        below, above = low - 1, high + 1
        whole = True
        for number, *row in _until_fault(damaged, table, low, high, "ASC"):
            if number is None:
                whole = False
            else:
                below = number
                yield tuple(row)
        if whole:
            continue
        whole = True
        for number, *row in _until_fault(damaged, table, below + 1, high, "DESC"):
            if number is None:
                whole = False
            else:
                above = number
                yield tuple(row)
        if not whole and above - below > 2:  # noqa: PLR2004  (a gap of one row is the damage)
            middle = (above + below) // 2
            gaps += [(middle + 1, above - 1), (below + 1, middle)]


def _until_fault(
    damaged: sqlite3.Connection, table: str, low: int, high: int, order: str
) -> Iterator[tuple[int | None, *Row]]:
    """Yield row number and columns; a row without a number stands for a fault, and is the last."""
    query = f"SELECT rowid, * FROM {table} NOT INDEXED WHERE rowid BETWEEN ? AND ? ORDER BY rowid {order}"  # noqa: S608
    try:
        yield from damaged.execute(query, (low, high))
    except CannotStore:
        yield (None,)
