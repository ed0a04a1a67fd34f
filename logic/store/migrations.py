"""The tables, as ordered named steps. A step that has been released is never edited: a change is a new step.

Bodies are JSON and are upgraded when read (`logic.log`); steps never touch them. An older Deckhand keeps a body of a
later version as it is and says so; only a step makes it refuse the whole file.
"""

import sqlite3
from collections.abc import Iterable
from contextlib import closing
from pathlib import Path

from logic.frozen import frozen
from logic.store.errors import Damaged, NewerFile, NoFolder, NoRight, NotAStore, NotSaved
from logic.store.guarded import connect

_HEADER = b"SQLite format 3\0"
_FIRST = 65_536
"""Bytes in which the statements that made the tables are looked for: the largest first page that a file can have."""
_MARKS = (b"\1\1\0\x40\x20\x20", b"\2\2\0\x40\x20\x20")
"""What stands in bytes 18 to 23 of a file, without and with a log beside it: sqlite.org/fileformat2.html, table 1."""


@frozen
class Step:
    """One migration: its name in the file and its statements, run in one transaction with its record."""

    name: str
    statements: tuple[str, ...]


STEPS = (
    Step(
        "1 boards",
        (
            "CREATE TABLE migration (name TEXT PRIMARY KEY, at TEXT NOT NULL)",
            "CREATE TABLE board (id TEXT PRIMARY KEY, name TEXT NOT NULL, body TEXT NOT NULL,"
            " saved_at TEXT NOT NULL, binned_at TEXT)",
        ),
    ),
    Step(
        "2 log",
        (
            "CREATE TABLE log (id INTEGER PRIMARY KEY, board TEXT NOT NULL, kind TEXT NOT NULL,"
            " at TEXT NOT NULL, offset INTEGER NOT NULL, version INTEGER NOT NULL,"
            " replaces INTEGER REFERENCES log (id), body TEXT NOT NULL)",
            # An index of SQLite ends in the row's id, so each of these also keeps the newest-first order.
            "CREATE INDEX log_by_board ON log (board)",
            "CREATE INDEX log_by_kind ON log (kind)",
            "CREATE INDEX log_by_board_and_kind ON log (board, kind)",
            "CREATE INDEX log_by_replaced ON log (replaces) WHERE replaces IS NOT NULL",
            "CREATE TRIGGER log_keeps_rows BEFORE DELETE ON log"
            " BEGIN SELECT RAISE(ABORT, 'the log is never deleted from'); END",
            "CREATE TRIGGER log_keeps_text BEFORE UPDATE ON log"
            " BEGIN SELECT RAISE(ABORT, 'the log is never changed'); END",
            # REPLACE would delete the old row without asking the trigger above.
            "CREATE TRIGGER log_keeps_numbers BEFORE INSERT ON log"
            " WHEN EXISTS (SELECT 1 FROM log WHERE id = new.id)"
            " BEGIN SELECT RAISE(ABORT, 'the log is never replaced'); END",
            # A void that is itself voided hides nothing. Only voids may act on a void, and only one deep.
            "CREATE VIEW live_void AS SELECT id, replaces FROM log AS void WHERE kind = 'void'"
            " AND NOT EXISTS (SELECT 1 FROM log WHERE replaces = void.id)",
            "CREATE VIEW entry AS SELECT id, board, kind, at, offset, version, replaces, body,"
            " (SELECT max(id) FROM live_void WHERE replaces = log.id) AS voided_by,"
            " (SELECT max(id) FROM log AS newer WHERE newer.replaces = log.id AND newer.kind = 'correction'"
            " AND NOT EXISTS (SELECT 1 FROM live_void WHERE replaces = newer.id)) AS corrected_by"
            " FROM log WHERE kind NOT IN ('correction', 'void')",
        ),
    ),
    Step(
        "3 trials and runs",
        (
            "CREATE TABLE trial (board TEXT PRIMARY KEY, body TEXT NOT NULL, at TEXT NOT NULL)",
            "CREATE TABLE run (board TEXT NOT NULL, checklist TEXT NOT NULL, body TEXT NOT NULL,"
            " at TEXT NOT NULL, PRIMARY KEY (board, checklist))",
        ),
    ),
    Step(
        "4 settings",
        ("CREATE TABLE setting (key TEXT PRIMARY KEY, value TEXT NOT NULL)",),
    ),
    Step(
        "5 set aside",
        (
            "CREATE TABLE aside (what TEXT NOT NULL, key TEXT NOT NULL, text BLOB, at TEXT NOT NULL,"
            " UNIQUE (what, key, text))",
        ),
    ),
)


def pending(path: Path) -> tuple[Step, ...]:
    """List the steps that the file at `path` has not had yet, in order; all of them when there is no file.

    Writes nothing, and does not make the file. Raises NotAStore, NewerFile, CannotStore.

    >>> [step.name for step in pending(Path("no such file"))]
    ['1 boards', '2 log', '3 trials and runs', '4 settings', '5 set aside']
    """
    try:
        if not path.exists() or path.stat().st_size == 0:
            return STEPS
        with path.open("rb") as file:
            start = file.read(_FIRST)
    except PermissionError as problem:
        raise NoRight(str(problem)) from problem
    except IsADirectoryError as problem:
        raise NoFolder(str(problem)) from problem
    except OSError as problem:
        raise NotSaved(str(problem)) from problem
    ours = any(statement.encode() in start for step in STEPS for statement in step.statements)
    if not start.startswith(_HEADER):
        raise (Damaged if ours else NotAStore)(f"{path.name} is not a SQLite file")
    if ours and start[18:24] not in _MARKS:
        raise Damaged(f"{path.name}: its head is not as SQLite writes it")
    try:
        recorded = _recorded(path)
    except NotAStore as problem:
        raise (Damaged if ours else NotAStore)(str(problem)) from problem
    if not all(isinstance(name, str) for name in recorded):
        raise Damaged(f"{path.name}: a step has no name")
    unknown = recorded - {step.name for step in STEPS}
    if unknown:
        raise NewerFile(f"{path.name} was written by a newer Deckhand: {', '.join(sorted(unknown))}")
    return tuple(step for step in STEPS if step.name not in recorded)


def migrate(connection: sqlite3.Connection, steps: Iterable[Step], at: str) -> None:
    """Run `steps` in order on an autocommit connection, each in one transaction with its record.

    A step that fails leaves the file as the step before it did. Never by executescript: that commits.
    """
    for step in steps:
        connection.execute("BEGIN IMMEDIATE")
        try:
            for statement in step.statements:
                connection.execute(statement)
            connection.execute("INSERT INTO migration (name, at) VALUES (?, ?)", (step.name, at))
            connection.execute("COMMIT")
        except BaseException:
            if connection.in_transaction:
                connection.execute("ROLLBACK")
            raise


def _recorded(path: Path) -> set[str]:
    # A read-only connection leaves alone the write-ahead log that a crash left. Where there is none the
    # file is whole by itself, and "immutable" keeps SQLite from making files beside it.
    log = path.with_name(path.name + "-wal")
    alone = not log.exists() or log.stat().st_size == 0
    address = path.resolve().as_uri() + ("?mode=ro&immutable=1" if alone else "?mode=ro")
    tables: set[str] = set()
    try:
        with closing(connect(address, uri=True)) as connection:
            tables = {name for (name,) in connection.execute("SELECT name FROM sqlite_master")}
            if "migration" in tables:
                return {name for (name,) in connection.execute("SELECT name FROM migration")}
    except Damaged as problem:
        if "migration" in tables:
            raise
        # Whose it is shows its text, to whoever asked.
        raise NotAStore(f"{path.name} cannot be read: {problem}") from problem
    if tables:
        raise NotAStore(f"{path.name} holds tables that are not Deckhand's")
    return set()
