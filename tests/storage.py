"""What may be wrong with the storage, case by case: a start ends in an open app or in one of the project's own errors.

Each case spoils a folder that holds the example boards, a trial, a run, settings and an entry of every kind. After the start
each stored thing is there as it was, or what became of it is told: nothing is lost in silence. A case follows from its
name alone, so that it can be played again.
"""

import json
import os
import shutil
import sqlite3
import tempfile
from collections.abc import Callable, Iterator
from contextlib import closing
from dataclasses import replace
from datetime import UTC, datetime
from functools import cache, partial
from itertools import product
from pathlib import Path
from random import Random
from typing import Any, NamedTuple, TypeAlias

from logic import read_back
from logic.board import Value
from logic.board_saved import to_dict
from logic.checks.lists import checklist
from logic.checks.own import copy_of, list_to_dict
from logic.checks.session import Session
from logic.exchange import demo_boards
from logic.log import json_value, read
from logic.person import Person, person_to_dict
from logic.store import NewerFile, NotAStore, Store
from logic.store.errors import CannotStore
from logic.store.migrations import STEPS, migrate
from logic.store.opening import NAME, look_next_time, open_store
from screens.acts import Arrive
from screens.register import page_function
from screens.update import update
from screens.world import Step, World, open_world
from tests.logic.test_log import WRITTEN

AT = datetime(2026, 11, 25, 12, 0, tzinfo=UTC)
BLOCK = 4096
FLIPS = 200
PAGES = ("ride", "bench", "numbers", "numbers.gearing", "log", "board", "settings", "settings.unread")
"""What is looked at after a start: the places, an answer, and what could not be read."""
REFUSED = (CannotStore, NotAStore, NewerFile)

STRANGE = (
    "null",
    "true",
    "-1",
    "0",
    "1e308",
    "1" + "0" * 400,
    "NaN",
    "Infinity",
    "-Infinity",
    '""',
    '"words"',
    '"\\ud800"',
    "[]",
    '[[["deep"]]]',
    "{}",
    '{"si": {"si": 1}}',
)
"""What may stand where another thing should, as JSON is written."""
TIMES = (
    "10000-01-01T00:00:00+00:00",
    "-0044-03-15T00:00:00+00:00",
    "0000-00-00",
    "2026-02-30",
    "noon",
    "2026-11-25",
    "",
)
OFFSETS = (10**18, -(10**9), 1440, 3.5, "x", b"\xff")
TEXTS = (
    ("board", "id", "body"),
    ("log", "id", "body"),
    ("trial", "board", "body"),
    ("run", "board", "body"),
    ("setting", "key", "value"),
    ("aside", "rowid", "text"),
)
IDS = (0, -5, 2**63 - 1)

Spoil: TypeAlias = Callable[[Path], object]


class Case(NamedTuple):
    """One thing that may be wrong: its group and name, and what makes it so."""

    group: str
    name: str
    spoil: Spoil


class Found(NamedTuple):
    """What became of a start: `word` is "open", the error it ended in, or both; `lost` is what is gone and told nowhere."""

    word: str
    lost: tuple[str, ...]


def fill(folder: Path) -> None:
    """Put something of everything that is stored into a folder."""
    with open_store(folder, lambda: AT) as store:
        boards = demo_boards()
        for board in boards:
            store.save_board(board.id, board.name, to_dict(board))
        store.put("board", boards[0].id)
        store.put("person", person_to_dict(Person(theme="sun", mark=",", rider=Value(80.0, "guess"))))
        own = copy_of(checklist("before_ride"), 1)
        store.put("own_lists", {own.key: list_to_dict(own)})
        value = {"si": 15.0, "known": "chosen", "on": "", "typed_unit": "", "note": ""}
        store.save_trial(
            boards[0].id, {"values": {"drive.motor_teeth": value}, "typed": {"drive.centre": "7"}}
        )
        Session(store, boards[0].id, checklist("before_ride"), lambda: AT).begin()
        for kind, body in WRITTEN.items():
            for _ in range(3):
                store.append(boards[0].id, read(kind, 1, body))
        for number in range(60):
            store.append(boards[0].id, read("note", 1, json.dumps({"note": f"{number} " + "x" * 300})))


@cache
def whole() -> dict[str, bytes]:
    """Return the files of a filled folder, by name."""
    with tempfile.TemporaryDirectory() as name:
        fill(Path(name))
        return {file.name: file.read_bytes() for file in Path(name).iterdir()}


@cache
def crashed() -> dict[str, bytes]:
    """Return the files of a folder as a crash leaves them: what was saved last is in the log beside the file."""
    with tempfile.TemporaryDirectory() as name, tempfile.TemporaryDirectory() as copy:
        fill(Path(name))
        with Store(Path(name) / NAME, lambda: AT) as store:
            for _ in range(5):
                store.append("b1", read("ride", 1, WRITTEN["ride"]))
            for end in ("", "-wal", "-shm"):
                shutil.copy(Path(name) / (NAME + end), copy)
        return {file.name: file.read_bytes() for file in Path(copy).iterdir()}


def put(folder: Path, files: dict[str, bytes]) -> None:
    """Write files into a folder."""
    for name, body in files.items():
        (folder / name).write_bytes(body)


def say(folder: Path, statement: str, *values: object) -> None:
    """Run a statement on the file past the app, with nothing that would keep it from it."""
    with closing(sqlite3.connect(folder / NAME, isolation_level=None)) as connection:
        connection.execute("PRAGMA foreign_keys = OFF")
        for trigger in ("log_keeps_rows", "log_keeps_text", "log_keeps_numbers"):
            connection.execute(f"DROP TRIGGER IF EXISTS {trigger}")
        connection.execute(statement, values)


def held(path: Path) -> dict[str, str]:
    """Return what a file holds, each thing under a name of its own; what was set aside as well. {} for no such file."""
    found: dict[str, str] = {}
    if not path.is_file():
        return found
    with closing(sqlite3.connect(path.resolve().as_uri() + "?mode=ro", uri=True)) as connection:
        connection.text_factory = lambda kept: kept.decode("utf-8", "replace")
        for table, key, text in TEXTS:
            try:
                rows = connection.execute(f"SELECT {key}, {text} FROM {table}").fetchall()  # noqa: S608  (names of this file)
            except (sqlite3.Error, UnicodeDecodeError):
                # Damaged: what is read of it after the start is told by the start.
                continue
            found |= {f"{table} {name}": str(body) for name, body in rows}
    return found


def start(folder: Path) -> Found:
    """Start on a folder, look at the pages, save what was read; what is not one of the project's errors goes on up."""
    path = folder / NAME
    before = held(path)
    try:
        store = open_store(folder, lambda: AT)
    except REFUSED as problem:
        return Found(type(problem).__name__, ())
    words = ["open"]
    with store:
        for page in PAGES:
            try:
                look(replace(open_world(store, lambda: AT), trail=(Step(page, {}),)))
            except CannotStore as problem:
                words.append(type(problem).__name__)
        try:
            told = store.get("salvaged") is not None
            names = {f"{one.what} {one.name}" for one in read_back.unread(store)}
            save_again(store)
        except CannotStore as problem:
            words.append(type(problem).__name__)
            told, names = True, set()
    lost = [] if told else list(gone(before, held(path)))
    word = " and ".join(dict.fromkeys(words))
    return Found(word + (", salvaged" if told else ", named" if names else ""), tuple(lost))


def look(world: World) -> None:
    """Open a page and hear what it says."""
    world = update(world, Arrive())
    shown = page_function(world.trail[-1].page)(world)
    assert shown.title
    for block in (*((shown.crown,) if shown.crown else ()), *shown.blocks):
        block.said()


def save_again(store: Store) -> None:
    """Save what was read, as any change of it does."""
    for board in read_back.boards(store):
        store.save_board(board.id, board.name, to_dict(board))
    store.put("person", person_to_dict(read_back.person(store)))


def gone(before: dict[str, str], after: dict[str, str]) -> Iterator[str]:
    """Yield what a file held and holds no more: of a thing that was saved again, each part of it, to the last leaf."""
    kept = set(after.values())
    for name, text in before.items():
        if text in kept:
            continue
        if name not in after:
            yield name
            continue
        parts = dict(leaves(loaded(after[name])))
        yield from (f"{name}: {place}" for place, leaf in leaves(loaded(text)) if parts.get(place) != leaf)


def loaded(text: str) -> Any:
    """Return what a JSON text holds, the text itself where it holds nothing."""
    try:
        return json_value(text)
    except (ValueError, RecursionError):
        return text


def leaves(tree: Any, place: str = "") -> Iterator[tuple[str, str]]:
    """Yield the leaves of a tree with the way to each; an empty branch is a leaf."""
    if isinstance(tree, dict) and tree:
        for key, branch in tree.items():
            yield from leaves(branch, f"{place}/{key}")
    else:
        yield place, json.dumps(tree)


def cases() -> Iterator[Case]:
    """Yield every case."""
    for group in GROUPS:
        for name, spoil in group():
            yield Case(group.__name__, name, spoil)


Cases: TypeAlias = Iterator[tuple[str, Spoil]]


def _filled(spoil: Spoil, files: Callable[[], dict[str, bytes]] = whole) -> Spoil:
    def spoilt(folder: Path) -> None:
        put(folder, files())
        spoil(folder)

    return spoilt


def _file(change: Callable[[bytes], bytes], *, ask: bool = False, end: str = "") -> Spoil:
    def changed(folder: Path) -> None:
        path = folder / (NAME + end)
        path.write_bytes(change(path.read_bytes()))
        if ask:
            look_next_time(folder)

    return _filled(changed, crashed if end else whole)


def places() -> Cases:
    """Something else stands where the folder or the file should be."""

    def away(make: Callable[[Path], object]) -> Spoil:
        def spoilt(folder: Path) -> None:
            folder.rmdir()
            make(folder)

        return spoilt

    yield "a file where the folder should be", away(lambda folder: folder.write_text("a note"))
    yield (
        "a link that leads nowhere",
        away(lambda folder: folder.symlink_to(folder.parent / "nowhere" / "at all")),
    )
    yield "a link to itself", away(lambda folder: folder.symlink_to(folder))
    yield "no folder yet", away(lambda _: None)
    yield "a folder where the file should be", lambda folder: (folder / NAME).mkdir()
    yield (
        "a file that is a link to nowhere",
        lambda folder: (folder / NAME).symlink_to(folder / "no" / "such"),
    )
    yield "a file that is a link to itself", lambda folder: (folder / NAME).symlink_to(folder / NAME)
    yield "a file that never ends", lambda folder: (folder / NAME).symlink_to("/dev/zero")
    yield "a file that is always full", lambda folder: (folder / NAME).symlink_to("/dev/full")
    yield "a file that holds nothing for good", lambda folder: (folder / NAME).symlink_to("/dev/null")
    yield "a pipe in place of the file", lambda folder: os.mkfifo(folder / NAME)
    yield "a folder in place of the log beside", _filled(lambda folder: (folder / f"{NAME}-wal").mkdir())
    yield "a folder in place of the index beside", _filled(lambda folder: (folder / f"{NAME}-shm").mkdir())
    yield "a folder in place of the journal", _filled(lambda folder: (folder / f"{NAME}-journal").mkdir())
    yield "nothing at all", lambda _: None


def older() -> Cases:
    """A file of an earlier version, at each of its steps; of a later one; with its record of steps spoilt."""
    for done in range(len(STEPS) + 1):

        def old(folder: Path, steps: tuple[Any, ...] = STEPS[:done]) -> None:
            with closing(sqlite3.connect(folder / NAME, isolation_level=None)) as connection:
                migrate(connection, steps, AT.isoformat())

        yield f"a file of {done} steps", old
    for name, statement in (
        ("a step of a later version", "INSERT INTO migration VALUES ('99 lights', '2030')"),
        ("no record of any step", "DELETE FROM migration"),
        ("no table of steps", "DROP TABLE migration"),
        ("a first step that is missing", "DELETE FROM migration WHERE name = '1 boards'"),
        ("a last step that is missing", "DELETE FROM migration WHERE name LIKE '5%'"),
        ("a step without a name", "UPDATE migration SET name = NULL WHERE name LIKE '2%'"),
        ("a step that is a number", "UPDATE migration SET name = X'07' WHERE name LIKE '2%'"),
        ("no table of settings", "DROP TABLE setting"),
        ("no table of boards", "DROP TABLE board"),
        ("no view of entries", "DROP VIEW entry"),
        ("no index of entries", "DROP INDEX log_by_board"),
    ):
        yield name, _filled(lambda folder, statement=statement: say(folder, statement))


def beside() -> Cases:
    """What a crash left beside the file: whole, cut, spoilt, empty, of another file, or only one of the two."""
    yield "log and index left by a crash", _filled(lambda _: None, crashed)
    for end in ("-wal", "-shm"):
        yield f"no {end}", _filled(lambda folder, end=end: (folder / (NAME + end)).unlink(), crashed)
        yield f"{end} empty", _file(lambda _: b"", end=end)
        yield f"{end} of nonsense", _file(lambda body: b"\xa5" * len(body), end=end)
        yield f"{end} of one byte", _file(lambda _: b"7", end=end)
        for part in range(1, 8):
            yield (
                f"{end} cut at {part} eighths",
                _file(lambda body, part=part: body[: len(body) * part // 8], end=end),
            )
        for number in range(20):
            yield (
                f"{end} with byte {number} flipped",
                _file(partial(_flipped, name=f"{end} {number}"), end=end),
            )
    yield (
        "a log of another file",
        _filled(lambda folder: (folder / f"{NAME}-wal").write_bytes(crashed()[f"{NAME}-wal"])),
    )
    yield (
        "the file older than the log",
        _filled(lambda folder: (folder / NAME).write_bytes(whole()[NAME]), crashed),
    )


def blocks() -> Cases:
    """The file cut at each block, one block of nonsense or of nothing, and single bytes flipped."""
    size = len(whole()[NAME])
    for ask in (False, True):
        why = ", looked through" if ask else ""
        for at in range(0, size, BLOCK):
            yield f"cut at {at}{why}", _file(lambda body, at=at: body[:at], ask=ask)
            for fill in (b"\xa5", b"\0"):
                yield (
                    f"block at {at} of {fill.hex()}{why}",
                    _file(
                        lambda body, at=at, fill=fill: body[:at] + fill * BLOCK + body[at + BLOCK :], ask=ask
                    ),
                )
        for number in range(FLIPS):
            yield f"flip {number}{why}", _file(partial(_flipped, name=f"flip {number}"), ask=ask)
    for at in range(100):
        yield f"head, byte {at}", _file(lambda body, at=at: body[:at] + b"\xff" + body[at + 1 :])
    yield "longer than it should be", _file(lambda body: body + b"\xa5" * 5000)


def _flipped(body: bytes, name: str) -> bytes:
    dice = Random(name)
    spoilt = bytearray(body)
    for _ in range(dice.choice((1, 1, 4, 40))):
        spoilt[dice.randrange(len(spoilt))] ^= dice.randrange(1, 256)
    return bytes(spoilt)


def fields() -> Cases:
    """A strange thing in each place of a board, of a trial, a run, the settings and a list, in turn."""
    files = whole()
    with tempfile.TemporaryDirectory() as name:
        put(Path(name), files)
        with open_store(Path(name), lambda: AT) as store:
            identity = store.get("board")
        stored = held(Path(name) / NAME)
    for thing in (
        f"board {identity}",
        f"trial {identity}",
        f"run {identity}",
        "setting person",
        "setting own_lists",
    ):
        table, _, key = thing.partition(" ")
        # An example's identity is another one in each process, the name of a case is not.
        said = key if table == "setting" else ""
        for place in branches(json.loads(stored[thing])):
            for strange in STRANGE:
                yield (
                    f"{table} {said} {'/'.join(place) or 'whole'} = {strange[:16]}",
                    _filled(
                        partial(_strange, table=table, key=key, text=_with(stored[thing], place, strange))
                    ),
                )
    for key in (
        "board",
        "place",
        "ask.charge",
        "salvaged",
        "tools",
        "answers",
        f"answers/{identity}",
        "ride speeds",
    ):
        for strange in (*STRANGE, "{", "\0"):
            yield (
                f"setting {key[:12]} = {strange[:16]}",
                _filled(
                    lambda folder, key=key, strange=strange: say(
                        folder, "INSERT OR REPLACE INTO setting VALUES (?, ?)", key, strange
                    )
                ),
            )


def branches(tree: Any, place: tuple[str, ...] = ()) -> Iterator[tuple[str, ...]]:
    """Yield the way to every part of a tree, four deep at most and of like joints the first only."""
    yield place
    if isinstance(tree, dict) and len(place) < 4:
        for number, (key, branch) in enumerate(tree.items()):
            if place != ("joints",) or number == 0:
                yield from branches(branch, (*place, key))


def _with(text: str, place: tuple[str, ...], strange: str) -> str:
    """Return a JSON text with one place of it replaced by text that need not be JSON."""
    tree = json.loads(text)
    if not place:
        return strange
    branch = tree
    for key in place[:-1]:
        branch = branch[key]
    branch[place[-1]] = "@strange@"
    return json.dumps(tree).replace('"@strange@"', strange)


def _strange(folder: Path, table: str, key: str, text: str) -> None:
    column, name = ("value", "key") if table == "setting" else ("body", "id" if table == "board" else "board")
    say(folder, f"UPDATE {table} SET {column} = ? WHERE {name} = ?", text, key)  # noqa: S608  (names of this file)


def _said(statement: str, *values: object) -> Spoil:
    return _filled(lambda folder: say(folder, statement, *values))


COLUMNS: dict[str, tuple[object, ...]] = {
    "at": (*TIMES, 7, -1e99, b"\xff\xfe"),
    "offset": OFFSETS,
    "version": (0, -1, 99, 2**62, 2.5, "new", b"\xff"),
    "kind": ("", "walk", "void", "correction", 7, b"\xff"),
    "board": ("", "nowhere", 7, b"\xff"),
    "replaces": (1, 2, 5, 999, -1, "x", b"\xff"),
    "body": ("", "{", "null", "7", "[" * 5000, "\0", b"\xff", 7, '{"note": "\\ud800"}', '{"pull": NaN}'),
}
"""What may stand in a column of the log."""


def rows() -> Cases:
    """A strange thing in each column of a row of the log: times that are none, numbers that point nowhere, no text."""
    for column, given in COLUMNS.items():
        for value, row in product(given, (2, 8, 27)):
            statement = f"UPDATE log SET {column} = ? WHERE id = {row}"  # noqa: S608  (names of this file)
            yield f"log {row} {column} = {str(value)[:16]!r}", _said(statement, value)
    for number in IDS:
        yield f"log row {number}", _said("UPDATE log SET id = ? WHERE id = 27", number)


def bodies() -> Cases:
    """A strange thing in each place of the body of each kind of entry."""
    for kind, text in WRITTEN.items():
        for place, strange in product(branches(json.loads(text)), STRANGE):
            name = f"{kind} {'/'.join(place) or 'whole'} = {strange[:16]}"
            yield name, _said("UPDATE log SET body = ? WHERE kind = ?", _with(text, place, strange), kind)


def others() -> Cases:
    """A strange thing in each column of the other tables."""
    for table, columns in {
        "board": ("id", "name", "body", "saved_at", "binned_at"),
        "trial": ("board", "body", "at"),
        "run": ("board", "checklist", "body", "at"),
        "setting": ("key", "value"),
    }.items():
        for column, value in product(columns, (*TIMES, 7, 1e308, b"\xff\xfe", b"\0", "[" * 5000)):
            first = f"rowid = (SELECT min(rowid) FROM {table})"  # noqa: S608  (names of this file)
            yield (
                f"{table} {column} = {str(value)[:16]!r}",
                _said(
                    f"UPDATE {table} SET {column} = ? WHERE {first}",  # noqa: S608  (the same)
                    value,
                ),
            )


GROUPS = (places, older, beside, blocks, fields, rows, bodies, others)
