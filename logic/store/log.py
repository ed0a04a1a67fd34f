"""The log: rows are only ever added. A correction and a void are rows that act on an earlier one.

An entry is any row of another kind. Its body is that of its latest correction; a void hides it; voiding the
void shows it again. A correction can be voided too. A void's void cannot: hide the entry by another void.
"""

import sqlite3
from contextlib import closing
from datetime import datetime, timedelta, timezone
from functools import cached_property
from typing import Any, Final, cast

from logic.frozen import frozen
from logic.log import KINDS, Entry, Unread, json_text, read, text_of
from logic.store.errors import BadReplacement, UnknownEntry, UnknownKind
from logic.store.file import LONG_AGO, File, offset_minutes, utc_text

ENTRY_KINDS: Final = frozenset(KINDS)

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
_SHOWN: Final = _RESOLVED + " WHERE entry.id < :before AND entry.id > :after AND entry.voided_by IS NULL"
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
    "SELECT log.id, log.board, log.at, log.offset, log.version, log.body FROM log"
    " WHERE log.id = :number OR (log.replaces = :number AND log.kind = 'correction'"
    " AND NOT EXISTS (SELECT 1 FROM live_void WHERE replaces = log.id)) ORDER BY log.id"
)
_COUNT: Final = "SELECT count(*) FROM entry WHERE entry.voided_by IS NULL"


@frozen
class Record:
    """One entry of the log, corrections applied.

    `at` is in the offset of its place and day, `offset` is in minutes. `text` is what the row holds, as written by
    `version` of its kind; `body` is what it says. `corrected_by` and `voided_by` are the rows that act on it now, if
    any: voiding that row takes the correction back, or shows the entry again.
    """

    id: int
    board: str
    kind: str
    at: datetime
    offset: int
    version: int
    text: str
    corrected_by: int | None = None
    voided_by: int | None = None
    fault: str = ""
    """What is wrong with the row itself."""

    @cached_property
    def body(self) -> Any:  # noqa: ANN401  (the class of its kind: kinds are looked up by name)
        """Return what the entry says: the class of its kind, or `Unread`."""
        return Unread(why=self.fault) if self.fault else read(self.kind, self.version, self.text)

    @property
    def readable(self) -> bool:
        """Tell whether this version can read the entry."""
        return not isinstance(self.body, Unread)


class Log(File):
    """The log's part of the store."""

    def append(self, board: str, entry: Entry, at: datetime | None = None) -> int:
        """Add an entry and return its id once it is on the disk. `at` is now unless given.

        Raises UnknownKind for one that could not be read, NoTimeZone.
        """
        with self._writing() as connection:
            return self._append(connection, board, entry, at)

    def correct(self, number: int, entry: Entry) -> int:
        """Give an entry another body, whole. Return the row of the correction.

        The time of an entry stays: to change it, void the entry and add another. Raises UnknownEntry, BadReplacement
        for an entry of another kind.
        """
        with self._writing() as connection:
            board, kind = self._row(number)
            if kind != entry.KIND:
                raise BadReplacement(
                    f"row {number} is a {kind}; a {entry.KIND or 'what is not read'} corrects none"
                )
            return self._insert(
                connection, (board, "correction", *self._moment(None), entry.VERSION, number, text_of(entry))
            )

    def void(self, row: int) -> int:
        """Hide an entry, take a correction back or, given a void, show what it hid. Return the new row.

        Raises UnknownEntry, BadReplacement for a row that is void already.
        """
        with self._writing() as connection:
            board, kind = self._row(row)
            further, hidden = connection.execute(
                "SELECT further.kind, EXISTS (SELECT 1 FROM live_void WHERE replaces = target.id)"
                " FROM log AS target LEFT JOIN log AS further ON further.id = target.replaces WHERE target.id = ?",
                (row,),
            ).fetchone()
            if hidden or (kind == "void" and further == "void"):
                raise BadReplacement(f"row {row} is void already or shows a row again; void the entry itself")
            return self._insert(connection, (board, "void", *self._moment(None), 1, row, "{}"))

    def page(  # noqa: PLR0913  (each narrows it further)
        self,
        board: str | None = None,
        kind: str | None = None,
        before: int | None = None,
        limit: int = 200,
        *,
        text: str = "",
        after: int = 0,
    ) -> list[Record]:
        """Return at most `limit` entries that are not voided, newest first, with ids below `before` and above `after`.

        With a `text` only entries that hold it in body, kind or date (UTC, 2026-11-25). Some may be `Unread`.
        """
        query, values = self._query(board, kind, before, text, after)
        return [_record(row) for row in self._connection.execute(query, values | {"limit": limit})]

    def latest(self, board: str, kind: str, /, **match: object) -> Record | None:
        """Return the newest entry of this kind that can be read and says all of `match`: belt="left"."""
        query, values = self._query(board, kind, None)
        with closing(self._connection.execute(query, values | {"limit": -1})) as rows:
            for record in map(_record, rows):
                if record.readable and all(getattr(record.body, key) == said for key, said in match.items()):
                    return record
        return None

    def entries(self, board: str, kind: str, limit: int = 200) -> list[Record]:
        """Return those of the newest `limit` entries of a kind that can be read, newest first."""
        return [record for record in self.page(board, kind, limit=limit) if record.readable]

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
        return [_record((*row[:2], kind, *row[2:5], None, None, row[5])) for row in rows]

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
        self, board: str | None, kind: str | None, before: int | None, text: str = "", after: int = 0
    ) -> tuple[str, dict[str, str | int | None]]:
        found = _FOUND if text else ""
        query = _SHOWN + _filter(board, kind) + found + " ORDER BY entry.id DESC LIMIT :limit"
        return query, {
            "board": board,
            "kind": kind,
            "before": _NEWEST if before is None else before,
            "after": after,
            "text": _pattern(text),
        }

    def _append(
        self, connection: sqlite3.Connection, board: str, entry: Entry, at: datetime | None = None
    ) -> int:
        if entry.KIND not in KINDS:
            raise UnknownKind(f"{type(entry).__name__} is not a kind of log entry")
        return self._insert(
            connection, (board, entry.KIND, *self._moment(at), entry.VERSION, None, text_of(entry))
        )

    def _moment(self, at: datetime | None) -> tuple[str, int]:
        moment = self._clock() if at is None else at
        return utc_text(moment), offset_minutes(moment)

    def _row(self, number: int) -> tuple[str, str]:
        """Return the board and the kind of any row. Raises UnknownEntry."""
        row = self._connection.execute("SELECT board, kind FROM log WHERE id = ?", (number,)).fetchone()
        if row is None:
            raise UnknownEntry(f"the log has no row {number}")
        return cast("tuple[str, str]", row)

    @staticmethod
    def _insert(connection: sqlite3.Connection, row: tuple[str, str, str, int, int, int | None, str]) -> int:
        added = connection.execute(
            "INSERT INTO log (board, kind, at, offset, version, replaces, body) VALUES (?, ?, ?, ?, ?, ?, ?)",
            row,
        )
        return cast("int", added.lastrowid)


def _pattern(text: str) -> str:
    """Return what LIKE looks for: the text as JSON writes it, its own wildcards taken literally."""
    written = json_text(text)[1:-1]
    for mark in "!%_":
        written = written.replace(mark, f"!{mark}")
    return f"%{written}%"


def _filter(board: str | None, kind: str | None) -> str:
    if kind is not None and kind not in ENTRY_KINDS:
        raise UnknownKind(f"{kind!r} is not a kind of log entry")
    return _FILTERS[board is not None, kind is not None]


def _record(row: tuple[int, str, str, str, int, int, int | None, int | None, str]) -> Record:
    number, board, kind, at, offset, version, corrected_by, voided_by, body = row
    fault = ""
    try:
        moment = datetime.fromisoformat(at).astimezone(timezone(timedelta(minutes=offset)))
    except (ValueError, TypeError, OverflowError):
        moment, offset, fault = LONG_AGO, 0, f"a row of the time {at!r}, offset {offset!r}"
    return Record(
        id=number,
        board=board,
        kind=kind,
        at=moment,
        offset=offset,
        version=version,
        text=body,
        corrected_by=corrected_by,
        voided_by=voided_by,
        fault=fault,
    )
