"""The log: rows are only ever added. A correction and a void are rows that act on an earlier one.

An entry is any row of another kind. Its body is that of its latest correction; a void hides it; voiding the
void shows it again. A correction can be voided too. A void's void cannot: hide the entry by another void.
"""

import json
import sqlite3
from collections.abc import Callable, Mapping
from contextlib import closing
from dataclasses import dataclass, replace
from datetime import datetime, timedelta, timezone
from typing import Final, cast

from logic.store.errors import BadReplacement, NewerFile, UnknownEntry, UnknownKind
from logic.store.file import Body, File, json_text, object_text, offset_minutes, utc_text

ENTRY_KINDS: Final = frozenset(
    {"belt_fitted", "tension", "tightening", "check", "ride", "work", "note", "board_changed", "snooze"}
)
ACTING_KINDS: Final = frozenset({"correction", "void"})

# From (kind, version) to what turns a body of that version into one of the next.
UPGRADES: Final[dict[tuple[str, int], Callable[[Body], Body]]] = {}

_NEWEST: Final = 2**63 - 1  # No row has a higher id.

# The optional filters are left out of the text rather than made always true, so that each has its index.
_FILTERS: Final = {
    (False, False): "",
    (True, False): " AND entry.board = :board",
    (False, True): " AND entry.kind = :kind",
    (True, True): " AND entry.board = :board AND entry.kind = :kind",
}
_RESOLVED: Final = (
    "SELECT entry.id, entry.board, entry.kind, entry.at, entry.offset,"
    " coalesce(newer.version, entry.version), entry.corrected_by, entry.voided_by,"
    " coalesce(newer.body, entry.body)"
    " FROM entry LEFT JOIN log AS newer ON newer.id = entry.corrected_by"
)
_SHOWN: Final = _RESOLVED + " WHERE entry.id < :before AND entry.voided_by IS NULL"
_HIDDEN: Final = (
    _RESOLVED  # noqa: S608  (joins only constants of this file)
    + " WHERE entry.id IN (SELECT replaces FROM live_void) AND entry.board = :board ORDER BY entry.id DESC"
)
# A word is looked for in what is kept, as text: bodies hold their words in plain letters. Letters of other
# alphabets must match in case, which is SQLite's limit.
_FOUND: Final = (
    " AND (coalesce(newer.body, entry.body) LIKE :text ESCAPE '!' OR entry.kind LIKE :text ESCAPE '!'"
    " OR entry.at LIKE :text ESCAPE '!')"
)
_VERSIONS: Final = (
    "SELECT log.id, log.board, log.kind, log.at, log.offset, log.version, log.replaces, log.body FROM log"
    " WHERE log.id = :number OR (log.replaces = :number AND log.kind = 'correction'"
    " AND NOT EXISTS (SELECT 1 FROM live_void WHERE replaces = log.id)) ORDER BY log.id"
)
_COUNT: Final = "SELECT count(*) FROM entry WHERE entry.voided_by IS NULL"


@dataclass(frozen=True)
class Record:
    """One entry of the log, corrections applied.

    `at` is in the offset of its place and day, `offset` is in minutes. `body` is upgraded to `version`.
    `replaces` is None for an entry. `corrected_by` and `voided_by` are the rows that act on it now, if any:
    voiding that row takes the correction back, or shows the entry again.
    """

    id: int
    board: str
    kind: str
    at: datetime
    offset: int
    version: int
    replaces: int | None
    body: Body
    corrected_by: int | None = None
    voided_by: int | None = None


class Log(File):
    """The log's part of the store."""

    def append(
        self,
        board: str,
        kind: str,
        body: Mapping[str, object],
        at: datetime | None = None,
        replaces: int | None = None,
    ) -> int:
        """Add a row and return its id once it is on the disk. `at` is now unless given.

        A correction names in `replaces` the entry whose whole new body it carries, a void the row it hides.
        The time of an entry stays: to change it, void the entry and add another. Raises UnknownKind,
        BadReplacement, NoTimeZone.
        """
        with self._writing() as connection:
            return self._append(connection, board, kind, body, at=at, replaces=replaces)

    def void(self, row: int) -> int:
        """Hide an entry, take a correction back or, given a void, show what it hid. Return the new row."""
        with self._writing() as connection:
            found = connection.execute("SELECT board FROM log WHERE id = ?", (row,)).fetchone()
            if found is None:
                raise UnknownEntry(f"the log has no row {row}")
            return self._append(connection, found[0], "void", {}, replaces=row)

    def page(
        self,
        board: str | None = None,
        kind: str | None = None,
        before: int | None = None,
        limit: int = 200,
        *,
        text: str = "",
    ) -> list[Record]:
        """Return at most `limit` entries that are not voided, newest first, with ids below `before`.

        With a `text` only entries that hold it in body, kind or date (UTC, 2026-11-25).
        """
        query, values = self._query(board, kind, before, text)
        return [_record(row) for row in self._connection.execute(query, values | {"limit": limit})]

    def latest(self, board: str, kind: str, /, **match: object) -> Record | None:
        """Return the newest entry of this kind with all the values of `match` in its body: belt="left"."""
        query, values = self._query(board, kind, None)
        with closing(self._connection.execute(query, values | {"limit": -1})) as rows:
            for record in map(_record, rows):
                if all(key in record.body and record.body[key] == value for key, value in match.items()):
                    return record
        return None

    def voided(self, board: str) -> list[Record]:
        """List the entries of a board that are hidden, newest first: what the bin shows."""
        rows = self._connection.execute(_HIDDEN, {"board": board})
        return [_record(row) for row in rows]

    def entry(self, number: int) -> Record:
        """Return the entry with this id, voided or not. Raises UnknownEntry."""
        row = self._connection.execute(_RESOLVED + " WHERE entry.id = ?", (number,)).fetchone()
        if row is None:
            raise UnknownEntry(f"the log has no entry {number}")
        return _record(row)

    def versions(self, number: int) -> list[Record]:
        """List an entry as it was first written and as each correction in force rewrote it, oldest first."""
        kind = self.entry(number).kind
        rows = self._connection.execute(_VERSIONS, {"number": number}).fetchall()
        return [replace(_record((*row[:2], kind, *row[3:6], None, None, row[7])), id=row[0]) for row in rows]

    def newest(self) -> tuple[int, int]:
        """Return the highest row of the log and the highest that acts on another, 0 for none.

        While the second stands still, nothing that was read up to the first has changed.
        """
        row = self._connection.execute(
            "SELECT (SELECT max(id) FROM log), (SELECT max(id) FROM log WHERE replaces IS NOT NULL)"
        ).fetchone()
        return (row[0] or 0, row[1] or 0)

    def count(self, board: str | None = None, kind: str | None = None) -> int:
        """How many entries are not voided."""
        query = _COUNT + _filter(board, kind)
        found = self._connection.execute(query, {"board": board, "kind": kind}).fetchone()
        return cast("int", found[0])

    def _query(
        self, board: str | None, kind: str | None, before: int | None, text: str = ""
    ) -> tuple[str, dict[str, str | int | None]]:
        found = _FOUND if text else ""
        query = _SHOWN + _filter(board, kind) + found + " ORDER BY entry.id DESC LIMIT :limit"
        return query, {
            "board": board,
            "kind": kind,
            "before": _NEWEST if before is None else before,
            "text": _pattern(text),
        }

    def _append(  # noqa: PLR0913  (one argument for each column)
        self,
        connection: sqlite3.Connection,
        board: str,
        kind: str,
        body: Mapping[str, object],
        *,
        at: datetime | None = None,
        replaces: int | None = None,
    ) -> int:
        moment = self._clock() if at is None else at
        of_kind = _acted_on(connection, board, kind, replaces)
        added = connection.execute(
            "INSERT INTO log (board, kind, at, offset, version, replaces, body) VALUES (?, ?, ?, ?, ?, ?, ?)",
            (
                board,
                kind,
                utc_text(moment),
                offset_minutes(moment),
                current_version(of_kind),
                replaces,
                object_text(body),
            ),
        )
        return cast("int", added.lastrowid)


def current_version(kind: str) -> int:
    """Tell in which version bodies of this kind are written.

    >>> current_version("tension")
    1
    """
    version = 1
    while (kind, version) in UPGRADES:
        version += 1
    return version


def upgraded(kind: str, version: int, body: Body) -> Body:
    """Bring a body to the current version. Raises NewerFile when it is newer than that."""
    if version > current_version(kind):
        raise NewerFile(f"a {kind} entry of version {version} was written by a newer Deckhand")
    for step in range(version, current_version(kind)):
        body = UPGRADES[kind, step](body)
    return body


def _pattern(text: str) -> str:
    """Return what LIKE looks for: the text as JSON writes it, its own wildcards taken literally."""
    written = json_text(text)[1:-1]
    for mark in "!%_":
        written = written.replace(mark, f"!{mark}")
    return f"%{written}%"


def _acted_on(connection: sqlite3.Connection, board: str, kind: str, replaces: int | None) -> str:
    """Check that the new row may act on `replaces`; return the kind that its body is of."""
    if kind not in ENTRY_KINDS | ACTING_KINDS:
        raise UnknownKind(f"{kind!r} is not a kind of log entry")
    if kind in ENTRY_KINDS:
        if replaces is not None:
            raise BadReplacement(f"a {kind} replaces nothing; a correction does")
        return kind
    row = connection.execute(
        "SELECT target.kind, further.kind, EXISTS (SELECT 1 FROM live_void WHERE replaces = target.id)"
        " FROM log AS target LEFT JOIN log AS further ON further.id = target.replaces"
        " WHERE target.id = ? AND target.board = ?",
        (replaces, board),
    ).fetchone()
    if row is None:
        raise BadReplacement(f"row {replaces} is not in the log of board {board!r}")
    target, further, hidden = row
    if kind == "correction":
        if target not in ENTRY_KINDS:
            raise BadReplacement(f"row {replaces} is a {target}; a correction names the entry itself")
        return cast("str", target)
    if hidden or (target == "void" and further == "void"):
        raise BadReplacement(f"row {replaces} is void already or shows a row again; void the entry itself")
    return kind


def _filter(board: str | None, kind: str | None) -> str:
    if kind is not None and kind not in ENTRY_KINDS:
        raise UnknownKind(f"{kind!r} is not a kind of log entry")
    return _FILTERS[board is not None, kind is not None]


def _record(row: tuple[int, str, str, str, int, int, int | None, int | None, str]) -> Record:
    number, board, kind, at, offset, version, corrected_by, voided_by, body = row
    return Record(
        id=number,
        board=board,
        kind=kind,
        at=datetime.fromisoformat(at).astimezone(timezone(timedelta(minutes=offset))),
        offset=offset,
        version=current_version(kind),
        replaces=None,
        body=upgraded(kind, version, json.loads(body)),
        corrected_by=corrected_by,
        voided_by=voided_by,
    )
