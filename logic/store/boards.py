"""Boards, the trial and the checklist run that may be open on each, and settings. Bodies are the caller's."""

import sqlite3
from collections.abc import Mapping
from contextlib import suppress
from datetime import datetime, timedelta
from typing import Any

from logic.frozen import frozen
from logic.log import json_text, json_value
from logic.store.errors import NotSaved, UnknownBoard
from logic.store.file import LONG_AGO, Body, File, object_text, utc_text

TRIAL_KEPT_FOR = timedelta(hours=24)


@frozen
class StoredBoard:
    """A board as saved. `binned_at` is None unless it is in the bin."""

    id: str
    name: str
    body: Body
    binned_at: datetime | None


@frozen
class StoredRun:
    """A checklist that was begun and not finished. `at` is when it was last saved."""

    board: str
    checklist: str
    body: Body
    at: datetime


@frozen
class Aside:
    """A thing that could not be read: what it was, its name in the file, and its text as it stood there."""

    what: str
    key: str
    text: str
    at: datetime


class Boards(File):
    """The part of the store that is overwritten: what is true now, beside the log of what was."""

    def save_board(self, board: str, name: str, body: Mapping[str, object]) -> None:
        """Save a board under its id, new or not. A board in the bin stays there."""
        with self._writing() as connection:
            self._save_board(connection, board, name, body)

    def board(self, board: str) -> StoredBoard | None:
        """Return the board with this id, in the bin or not; None when there is none."""
        row = self._connection.execute(
            "SELECT id, name, body, binned_at FROM board WHERE id = ?", (board,)
        ).fetchone()
        return None if row is None else _board(row)

    def board_text(self, board: str) -> str:
        """Return the body of a board as it stands in the file; "" for none."""
        row = self._connection.execute("SELECT body FROM board WHERE id = ?", (board,)).fetchone()
        return "" if row is None else _shown(row[0])

    def boards(self) -> list[StoredBoard]:
        """List the boards that are not in the bin, by name."""
        rows = self._connection.execute(
            "SELECT id, name, body, binned_at FROM board WHERE binned_at IS NULL"
            " ORDER BY name COLLATE NOCASE, id"
        )
        return [_board(row) for row in rows]

    def binned_boards(self) -> list[StoredBoard]:
        """List the boards in the bin, the last one binned first."""
        rows = self._connection.execute(
            "SELECT id, name, body, binned_at FROM board WHERE binned_at IS NOT NULL"
            " ORDER BY binned_at DESC, id"
        )
        return [_board(row) for row in rows]

    def holds(self, board: str) -> bool:
        """Tell whether anything is kept under an id beside a board: an entry of the log, a trial, a run, a setting."""
        row = self._connection.execute(
            "SELECT EXISTS (SELECT 1 FROM log WHERE board = :board)"
            " OR EXISTS (SELECT 1 FROM trial WHERE board = :board)"
            " OR EXISTS (SELECT 1 FROM run WHERE board = :board)"
            " OR EXISTS (SELECT 1 FROM setting WHERE key LIKE '%/' || :board)",
            {"board": board},
        ).fetchone()
        return bool(row[0])

    def bin_board(self, board: str) -> None:
        """Put a board in the bin; one that is there keeps its date. Raises UnknownBoard."""
        with self._writing() as connection:
            changed = connection.execute(
                "UPDATE board SET binned_at = coalesce(binned_at, ?) WHERE id = ?", (self._now(), board)
            )
            _require_one(changed, board)

    def restore_board(self, board: str) -> None:
        """Take a board out of the bin. Raises UnknownBoard."""
        with self._writing() as connection:
            changed = connection.execute("UPDATE board SET binned_at = NULL WHERE id = ?", (board,))
            _require_one(changed, board)

    def save_trial(self, board: str, body: Mapping[str, object]) -> None:
        """Save the trial of a board, in place of the one before. The board itself need not be saved yet.

        Written at each key: it does not wait for the disk.
        """
        with self._writing_soon() as connection:
            self._save_trial(connection, board, body)

    def trial(self, board: str) -> Body | None:
        """Return the trial of a board; None when there is none or it was last saved more than 24 h ago."""
        row = self._connection.execute(
            "SELECT body FROM trial WHERE board = ? AND at >= ?",
            (board, utc_text(self._clock() - TRIAL_KEPT_FOR)),
        ).fetchone()
        return None if row is None else _read(row[0])

    def trial_text(self, board: str) -> str:
        """Return the trial of a board as it stands in the file, however old; "" for none."""
        row = self._connection.execute("SELECT body FROM trial WHERE board = ?", (board,)).fetchone()
        return "" if row is None else _shown(row[0])

    def drop_trial(self, board: str) -> None:
        """Forget the trial of a board, if there is one."""
        with self._writing() as connection:
            self._drop_trial(connection, board)

    def save_run(self, board: str, checklist: str, body: Mapping[str, object]) -> None:
        """Save a checklist in progress, in place of the one before."""
        with self._writing() as connection:
            connection.execute(
                "INSERT INTO run (board, checklist, body, at) VALUES (?, ?, ?, ?)"
                " ON CONFLICT (board, checklist) DO UPDATE SET body = excluded.body, at = excluded.at",
                (board, checklist, object_text(body), self._now()),
            )

    def run(self, board: str, checklist: str) -> StoredRun | None:
        """Return the checklist in progress, however old; None when there is none."""
        row = self._connection.execute(
            "SELECT body, at FROM run WHERE board = ? AND checklist = ?", (board, checklist)
        ).fetchone()
        return None if row is None else StoredRun(board, checklist, _read(row[0]), _time(row[1]))

    def run_text(self, board: str, checklist: str) -> str:
        """Return a checklist in progress as it stands in the file; "" for none."""
        row = self._connection.execute(
            "SELECT body FROM run WHERE board = ? AND checklist = ?", (board, checklist)
        ).fetchone()
        return "" if row is None else _shown(row[0])

    def drop_run(self, board: str, checklist: str) -> None:
        """Forget a checklist in progress, if there is one."""
        with self._writing() as connection:
            self._drop_run(connection, board, checklist)

    def put(self, key: str, value: object) -> None:
        """Save a setting: anything that JSON can hold. Raises ValueError or TypeError for what it cannot."""
        with self._writing() as connection:
            self._put(connection, key, value)

    def get(self, key: str, default: object = None) -> Any:  # noqa: ANN401  (what JSON held is the caller's to know)
        """Return the setting as saved, `default` when it never was.

        One that cannot be read, or is of another type than the default, is set aside and the default returned.
        """
        row = self._connection.execute("SELECT value FROM setting WHERE key = ?", (key,)).fetchone()
        if row is None:
            return default
        try:
            said = json_value(row[0])
            if said is None or default is None or _alike(said, default):
                return default if said is None else said
        except (ValueError, TypeError, RecursionError):
            pass
        self.set_aside("setting", key, row[0])
        return default

    def set_aside(self, what: str, key: str, text: object) -> None:
        """Keep a copy of what could not be read, before it is written over. A storage that is full keeps none."""
        with suppress(NotSaved), self._writing() as connection:
            connection.execute(
                "INSERT OR IGNORE INTO aside (what, key, text, at) VALUES (?, ?, ?, ?)",
                (what, key, text, self._now()),
            )

    def aside(self) -> list[Aside]:
        """List what was set aside, the newest first."""
        rows = self._connection.execute("SELECT what, key, text, at FROM aside ORDER BY rowid DESC")
        return [Aside(what, key, _shown(text), _time(at)) for what, key, text, at in rows]

    def _save_board(
        self, connection: sqlite3.Connection, board: str, name: str, body: Mapping[str, object]
    ) -> None:
        connection.execute(
            "INSERT INTO board (id, name, body, saved_at) VALUES (?, ?, ?, ?) ON CONFLICT (id) DO UPDATE"
            " SET name = excluded.name, body = excluded.body, saved_at = excluded.saved_at",
            (board, name, object_text(body), self._now()),
        )

    def _put(self, connection: sqlite3.Connection, key: str, value: object) -> None:
        connection.execute(
            "INSERT INTO setting (key, value) VALUES (?, ?)"
            " ON CONFLICT (key) DO UPDATE SET value = excluded.value",
            (key, json_text(value)),
        )

    def _save_trial(self, connection: sqlite3.Connection, board: str, body: Mapping[str, object]) -> None:
        connection.execute(
            "INSERT INTO trial (board, body, at) VALUES (?, ?, ?)"
            " ON CONFLICT (board) DO UPDATE SET body = excluded.body, at = excluded.at",
            (board, object_text(body), self._now()),
        )

    def _drop_trial(self, connection: sqlite3.Connection, board: str) -> None:
        connection.execute("DELETE FROM trial WHERE board = ?", (board,))

    def _drop_run(self, connection: sqlite3.Connection, board: str, checklist: str) -> None:
        connection.execute("DELETE FROM run WHERE board = ? AND checklist = ?", (board, checklist))


def _board(row: tuple[str, str, str, str | None]) -> StoredBoard:
    number, name, body, binned_at = row
    return StoredBoard(number, name, _read(body), None if binned_at is None else _time(binned_at))


def _alike(said: object, default: object) -> bool:
    number = (int, float)
    return type(said) is type(default) or (type(said) in number and type(default) in number)


def _shown(text: object) -> str:
    return text.decode("utf-8", "replace") if isinstance(text, bytes) else str(text)


def _read(text: str) -> Body:
    """Return the object a text holds; an empty one for what is none, which every reader refuses or makes do with."""
    try:
        body = json_value(text)
    except (ValueError, TypeError, RecursionError):
        return {}
    return body if isinstance(body, dict) else {}


def _time(text: str) -> datetime:
    """Return a time; one that cannot be read was long ago."""
    try:
        return datetime.fromisoformat(text)
    except (ValueError, TypeError):
        return LONG_AGO


def _require_one(changed: sqlite3.Cursor, board: str) -> None:
    if changed.rowcount != 1:
        raise UnknownBoard(f"there is no board {board!r}")
