"""One board as a file of its own, with or without its log: JSON, described in assets/formats/board-file.md.

What this version does not know is kept and written again, in the board and in each entry.
"""

import json
from collections.abc import Iterable
from datetime import UTC, datetime, timedelta, timezone
from typing import Any, Final, NoReturn

from logic.board import Board
from logic.board_saved import from_dict, to_dict
from logic.errors import UNREADABLE, NewerVersion
from logic.exchange.code import unpacked
from logic.exchange.errors import Broken, Foreign, Later, TooDeep, TooLarge
from logic.frozen import frozen
from logic.log import json_text
from logic.store import Record
from logic.store.file import offset_minutes

FORMAT: Final = "deckhand board"
VERSION: Final = 1
LARGEST: Final = 64 * 2**20
"""Bytes of the largest file that is read: far more than the app ever writes."""
DEEPEST: Final = 64
_ENTRY: Final = {"kind": str, "version": int, "at": str, "offset": int, "body": dict}


@frozen
class LoggedLine:
    """An entry of the log as it stands in a file: `text` is its body, `offset` in minutes."""

    kind: str
    version: int
    at: datetime
    offset: int
    text: str


@frozen
class BoardFile:
    """A board and what its log says, oldest entry first."""

    board: Board
    entries: tuple[LoggedLine, ...] = ()


def board_text(board: Board, records: Iterable[Record] = (), *, at: datetime) -> str:
    """Return the file of a board, with the entries of its log that can be passed on, oldest first.

    An entry whose row is damaged is left out: its body is no JSON.
    """
    entries = []
    for record in sorted(records, key=lambda record: record.id):
        body = _object(record.text)
        if body is not None and not record.fault:
            stamp = record.at.astimezone(UTC).isoformat(timespec="microseconds")
            entries.append(
                {
                    "kind": record.kind,
                    "version": record.version,
                    "at": stamp,
                    "offset": record.offset,
                    "body": body,
                }
            )
    written = at.astimezone(UTC).isoformat(timespec="seconds")
    page = {"format": FORMAT, "version": VERSION, "written": written, "board": to_dict(board), "log": entries}
    return json.dumps(page, ensure_ascii=False, allow_nan=False, indent=1) + "\n"


def read_board_file(data: bytes | str) -> BoardFile:
    """Return what a file, or the line of a code, holds. Raises NotTaken, each cause by its class."""
    text = unpacked(_text(data))
    try:
        page = json.loads(text, parse_constant=_no_number)
    except RecursionError as problem:
        raise TooDeep("lists within lists") from problem
    except ValueError as problem:
        raise Broken(str(problem)) from problem
    if _depth(page) > DEEPEST:
        raise TooDeep(f"more than {DEEPEST} lists within lists")
    if not isinstance(page, dict) or page.get("format") != FORMAT:
        raise Foreign("the file does not say that it is a board of Deckhand")
    version = page.get("version")
    if not isinstance(version, int) or isinstance(version, bool) or version < 1:
        raise Foreign(f"version {version!r}")
    if version > VERSION:
        raise Later(f"version {version}")
    return BoardFile(_board(page.get("board")), tuple(_lines(page.get("log", []))))


def _text(data: bytes | str) -> str:
    if len(data) > LARGEST:
        raise TooLarge(f"{len(data)} bytes, {LARGEST} are read")
    if isinstance(data, str):
        return data
    try:
        return data.decode("utf-8-sig")
    except UnicodeDecodeError as problem:
        raise Broken(str(problem)) from problem


def _no_number(word: str) -> NoReturn:
    raise ValueError(f"{word} is no number of JSON")


def _depth(page: object) -> int:
    deep, layer = 0, [page]
    while layer and deep <= DEEPEST:
        inner: list[object] = []
        for one in layer:
            if isinstance(one, dict):
                inner += one.values()
            elif isinstance(one, list):
                inner += one
        deep, layer = deep + 1, [one for one in inner if isinstance(one, dict | list)]
    return deep


def _board(body: object) -> Board:
    if not isinstance(body, dict):
        raise Foreign("no board in it")
    try:
        return from_dict(body)
    except NewerVersion as problem:
        raise Later(str(problem)) from problem
    except UNREADABLE as problem:
        raise Foreign(str(problem)) from problem


def _lines(log: object) -> Iterable[LoggedLine]:
    if not isinstance(log, list):
        raise Foreign("its log is no list")
    for place, line in enumerate(log, 1):
        if not isinstance(line, dict) or any(
            not isinstance(line.get(key), kind) or isinstance(line.get(key), bool)
            for key, kind in _ENTRY.items()
        ):
            raise Foreign(f"entry {place} of its log")
        try:
            at = datetime.fromisoformat(line["at"])
            offset_minutes(at)
            at = at.astimezone(timezone(timedelta(minutes=line["offset"])))
            text = json_text(line["body"])
        except (ValueError, OverflowError) as problem:
            raise Foreign(f"entry {place} of its log: {problem}") from problem
        yield LoggedLine(line["kind"], line["version"], at, line["offset"], text)


def _object(text: str) -> dict[str, Any] | None:
    try:
        body = json.loads(text, parse_constant=_no_number)
    except (ValueError, TypeError, RecursionError):
        return None
    return body if isinstance(body, dict) and _depth(body) < DEEPEST - 2 else None
