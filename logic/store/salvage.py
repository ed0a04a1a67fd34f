"""What can be read of a damaged file, put row by row into a new one; the damaged one is kept beside, with its date.

It is read as it stands, then with its head put right and its end filled up, then with the first page of a new file before
it: each for the tables that could not be read whole before.
"""

import shutil
import sqlite3
from collections.abc import Iterator
from contextlib import closing
from datetime import datetime
from pathlib import Path
from typing import Final, TypeAlias

from logic.frozen import frozen
from logic.store import Store
from logic.store.errors import CannotStore, os_errors
from logic.store.file import Clock
from logic.store.guarded import connect

_BESIDE: Final = ("", "-wal", "-shm")
_TABLES: Final = ("board", "log", "trial", "run", "setting", "aside")
_POWERS: Final = 40
_MOST_TRIES: Final = 5_000
"""Queries after which the rows between two damaged places are given up."""
_HEAD: Final = 100
"""Bytes of the head of a file: sqlite.org/fileformat2.html, section 1.3. Numbers in it begin with the highest byte."""

Row: TypeAlias = tuple[object, ...]


@frozen
class Salvage:
    """What became of a damaged file: where it is kept, when, and how many rows of each table were read."""

    kept: str
    at: datetime
    rows: dict[str, int]


def salvage(path: Path, clock: Clock) -> Salvage:
    """Put a damaged file beside, and a new one with what could be read in its place. Raises CannotStore."""
    at = clock()
    fresh, patched = path.with_name("deckhand-salvage.db"), path.with_name("deckhand-patched.db")
    for end in _BESIDE:
        for one in (fresh, patched):
            one.with_name(one.name + end).unlink(missing_ok=True)
    Store(fresh, clock).close()
    model = fresh.read_bytes()
    with Store(fresh, clock) as store, os_errors():
        left = _copy_all(path, store, _TABLES)
        for first_page in (False, True) if left else ():
            shutil.copyfile(path, patched)
            if _patch(patched, model, first_page=first_page):
                left = _copy_all(patched, store, left)
        patched.unlink(missing_ok=True)
        rows = {table: _count(store, table) for table in _TABLES}
    kept = _free_name(path.with_name(f"deckhand-damaged-{at:%Y-%m-%d}.db"))
    with os_errors():
        for end in _BESIDE:
            old = path.with_name(path.name + end)
            if old.exists():
                old.rename(kept.with_name(kept.name + end))
        fresh.rename(path)
    return Salvage(kept.name, at, rows)


def _free_name(path: Path) -> Path:
    names = (path.with_stem(f"{path.stem}-{number}") for number in range(2, 1000))
    return path if not path.exists() else next(name for name in names if not name.exists())


def _patch(path: Path, model: bytes, *, first_page: bool) -> bool:
    """Put the head of a file right by that of a new one, or its whole first page, and its length; tell whether it could be."""
    size = int.from_bytes(model[16:18], "big")
    with path.open("r+b") as file:
        length = file.seek(0, 2)
        pages = -(-length // size)
        file.truncate(pages * size)
        head = bytearray(model[: size if first_page else _HEAD])
        head[28:32] = pages.to_bytes(4, "big")
        # Its count of pages holds while these two agree; of free pages it names none.
        head[92:96] = head[24:28]
        head[32:40] = bytes(8)
        file.seek(0)
        file.write(head)
    return length > _HEAD


def _copy_all(path: Path, store: Store, tables: tuple[str, ...]) -> tuple[str, ...]:
    """Put the readable rows of some tables into the new file; return the tables that were not read whole."""
    with closing(connect(str(path))) as damaged:
        try:
            # What of the list of tables cannot be understood is passed over.
            damaged.execute("PRAGMA writable_schema = ON")
        except CannotStore:
            return tables
        return tuple(table for table in tables if not _copy(damaged, store, table))


def _count(store: Store, table: str) -> int:
    return int(store._connection.execute(f"SELECT count(*) FROM {table}").fetchone()[0])  # noqa: S608, SLF001  (as below)


def _copy(damaged: sqlite3.Connection, store: Store, table: str) -> bool:
    """Put the readable rows of a table into the new file; tell whether all could be read."""
    connection = store._connection  # noqa: SLF001  (a room of the same house)
    told = connection.execute(f"PRAGMA table_info({table})").fetchall()
    columns, needed = [row[1] for row in told], [row[3] for row in told]
    marks = ", ".join("?" * len(columns))
    put = f"INSERT OR IGNORE INTO {table} ({', '.join(columns)}) VALUES ({marks})"  # noqa: S608  (names of this file)
    whole = True
    # A row may act on one that is lost.
    connection.execute("PRAGMA foreign_keys = OFF")
    connection.execute("BEGIN IMMEDIATE")
    try:
        for row in _readable(damaged, table):
            if row is None:
                whole = False
            elif len(row) != len(columns) or any(need and row[at] is None for at, need in enumerate(needed)):
                # It cannot stand in its table any more: what is left of it is shown with what could not be read.
                whole = False
                connection.execute(
                    "INSERT OR IGNORE INTO aside VALUES (?, ?, ?, '')", (table, str(row[:1]), repr(row))
                )
            else:
                _put(connection, put, row)
    except BaseException:
        connection.execute("ROLLBACK")
        raise
    connection.execute("COMMIT")
    return whole


def _put(connection: sqlite3.Connection, statement: str, row: Row) -> None:
    try:
        connection.execute(statement, row)
    except sqlite3.IntegrityError:
        # The log has it from an earlier reading.
        return


def _readable(damaged: sqlite3.Connection, table: str) -> Iterator[Row | None]:
    """Yield the rows that can be read, going round damaged places from both sides; None for each such place."""
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
        yield None
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
        with closing(damaged.execute(query, (low, high))) as rows:
            yield from rows
    except CannotStore:
        yield (None,)
