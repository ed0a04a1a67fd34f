"""Boards with their log out and in, copies of everything and back: nothing changes its meaning, nothing is half done."""

import json
import random
import sqlite3
from contextlib import closing
from dataclasses import replace
from datetime import UTC, datetime, timedelta

import jsonschema
import pytest

from logic import read_back
from logic.board_saved import to_dict
from logic.exchange import demo_boards
from logic.exchange.arriving import arrival, take_in
from logic.exchange.board_file import DEEPEST, LARGEST, board_text, read_board_file
from logic.exchange.copies import bring_back, keep_weekly, look_at_copy, weekly_copies, write_copy
from logic.exchange.errors import Broken, Foreign, Later, TooDeep, TooLarge
from logic.exchange.files import file_name, write_whole
from logic.log import Note, Ride
from logic.store import Store
from logic.store.errors import NoRight
from logic.tables import ASSETS
from tests.every_answer import any_board

AT = datetime(2026, 11, 25, 12, 0, tzinfo=UTC)
SCHEMA = json.loads((ASSETS / "formats" / "board-file.schema.json").read_text("utf-8"))
VALIDATOR = jsonschema.Draft202012Validator(SCHEMA)


def some_log(store: Store, board: str, seed: int) -> None:
    """Write a few entries, some corrected, one hidden, one that this version cannot read."""
    draw = random.Random(seed)
    for place in range(draw.randint(1, 6)):
        at = AT - timedelta(hours=place, minutes=draw.randint(0, 59))
        entry = draw.choice(
            [
                Ride(distance=draw.uniform(10.0, 9e4), note='"=1+1"\n\u2028 é'),
                Note(note="oil, " * draw.randint(0, 9)),
                Ride(crash=True),
            ]
        )
        number = store.append(board, entry, at)
        if draw.random() < 0.3 and isinstance(entry, Ride):
            store.correct(number, replace(entry, distance=123.0))
        elif draw.random() < 0.2:
            store.void(number)
    store._connection.execute(  # noqa: SLF001  (a later app)
        "INSERT INTO log (board, kind, at, offset, version, body) VALUES (?, 'ride', ?, 60, 9, '{\"way\":{\"road\":3}}')",
        (board, "2026-11-25T09:30:00.000000+00:00"),
    )


def said(store: Store, board: str) -> list[tuple[object, ...]]:
    """Return what the log of a board says, oldest first."""
    page = store.page(board, limit=-1)[::-1]
    return [(one.kind, one.version, one.at, one.offset, json.loads(one.text)) for one in page]


@pytest.mark.parametrize("seed", range(200))
def test_a_board_with_its_log_goes_out_and_comes_in_again(tmp_path, clock, seed):
    board = any_board(random.Random(seed)) if seed >= 4 else demo_boards()[seed]
    with Store(tmp_path / "one.db", clock) as one, Store(tmp_path / "two.db", clock) as two:
        one.save_board(board.id, board.name, to_dict(board))
        some_log(one, board.id, seed)
        text = board_text(board, one.page(board.id, limit=-1), at=AT)
        assert list(VALIDATOR.iter_errors(json.loads(text))) == []
        coming = arrival(two, read_board_file(text.encode()))
        assert two.boards() == []
        assert coming.kind == "new"
        assert take_in(two, coming) == board.id
        assert read_back.board(two, board.id) == board
        assert said(two, board.id) == said(one, board.id)
        again = arrival(two, read_board_file(text))
        assert (again.kind, again.entries, again.here) == ("same", (), len(said(one, board.id)))


def test_on_a_clash_both_are_kept(store):
    board = demo_boards()[0]
    mine = board.with_value("load.board_mass", None)
    store.save_board(mine.id, mine.name, to_dict(mine))
    number = store.append(mine.id, Ride(distance=1000.0))
    coming = arrival(store, read_board_file(board_text(board, [], at=AT)))
    assert (coming.kind, coming.board.name) == ("beside", f"{board.name} (2)")
    assert coming.differs == ("load.board_mass",)
    taken = take_in(store, coming)
    assert {one.name for one in read_back.boards(store)} == {board.name, f"{board.name} (2)"}
    assert read_back.board(store, mine.id) == mine
    assert replace(read_back.board(store, taken), id=board.id, name=board.name) == board
    assert store.entry(number).board == mine.id


def test_a_board_in_the_bin_stays_there(store):
    board = demo_boards()[0]
    store.save_board(board.id, board.name, to_dict(board))
    store.bin_board(board.id)
    take_in(store, arrival(store, read_board_file(board_text(board, at=AT))))
    assert [one.name for one in read_back.boards(store)] == [f"{board.name} (2)"]
    assert [one.id for one in read_back.binned(store)] == [board.id]


def page(**changes):
    return {**json.loads(board_text(demo_boards()[0], at=AT)), **changes}


DEEP = json.loads("[" * DEEPEST + "]" * DEEPEST)


@pytest.mark.parametrize(
    ("data", "cause"),
    [
        (b"", Broken),
        (b"\xff\xfe{", Broken),
        ("{", Broken),
        ("[NaN]", Broken),
        ("9" * 5000, Broken),
        ("[" * 100_000, TooDeep),
        (json.dumps(page(board=DEEP)), TooDeep),
        (b" " * (LARGEST + 1), TooLarge),
        ("[]", Foreign),
        ("{}", Foreign),
        (json.dumps(page(format="another")), Foreign),
        (json.dumps(page(version="new")), Foreign),
        (json.dumps(page(version=True)), Foreign),
        (json.dumps(page(version=2)), Later),
        (json.dumps(page(board=[])), Foreign),
        (json.dumps(page(board={"version": 1})), Foreign),
        (json.dumps(page(board={**page()["board"], "version": 9})), Later),
        (json.dumps(page(board={**page()["board"], "name": ""})), Foreign),
        (json.dumps(page(log={})), Foreign),
        (json.dumps(page(log=[{}])), Foreign),
        (
            json.dumps(page(log=[{"kind": "ride", "version": 1, "at": "2026", "offset": 0, "body": {}}])),
            Foreign,
        ),
        (
            json.dumps(
                page(log=[{"kind": "ride", "version": 1, "at": AT.isoformat(), "offset": 10**9, "body": {}}])
            ),
            Foreign,
        ),
    ],
    ids=range(22),
)
def test_a_file_that_cannot_be_taken_says_why(data, cause):
    with pytest.raises(cause):
        read_board_file(data)


def test_what_this_version_does_not_know_is_kept_and_written_again(store):
    body = {**page()["board"], "lamp": {"colour": "warm"}}
    body["drive"] = {**body["drive"], "feather": 3, "motor_teeth": {"si": 1e9, "known": "guess"}}
    coming = read_board_file(json.dumps(page(board=body)))
    again = json.loads(board_text(coming.board, at=AT))["board"]
    assert again["lamp"] == {"colour": "warm"}
    assert (again["drive"]["feather"], again["drive"]["motor_teeth"]["si"]) == (3, 1e9)


def test_taking_in_is_all_or_nothing(store):
    coming = arrival(store, read_board_file(board_text(demo_boards()[0], at=AT)))
    rows = [("ride", "2026-11-25T09:30:00.000000+00:00", 0, 1, "{}"), ("ride", None, 0, 1, "{}")]
    with pytest.raises(sqlite3.IntegrityError):
        store.take_in(coming.board.id, coming.board.name, to_dict(coming.board), rows)
    assert store.boards() == []
    assert store.count() == 0


@pytest.fixture
def full(store):
    for board in demo_boards():
        store.save_board(board.id, board.name, to_dict(board))
        some_log(store, board.id, 7)
    store.put("person", {"theme": "sun"})
    store.save_trial(demo_boards()[0].id, {"values": {}})
    return store


def everything(store):
    tables = ("board", "log", "trial", "run", "setting")
    return [store._connection.execute(f"SELECT * FROM {table} ORDER BY rowid").fetchall() for table in tables]  # noqa: SLF001, S608


def test_a_copy_of_everything_is_brought_back(full, reopened, tmp_path, clock):
    before = everything(full)
    copy = tmp_path / "all.db"
    write_copy(full, copy)
    assert [file.name for file in tmp_path.glob("all.db*")] == ["all.db"]
    whole = copy.read_bytes()
    for stored in full.boards():
        full.bin_board(stored.id)
    full.append("b9", Ride())
    wiped = everything(full)
    seen = look_at_copy(copy, clock)
    assert (len(seen.boards), seen.entries) == (4, sum(not one[6] for one in before[1]) - hidden(copy))
    assert everything(full) == wiped
    kept = bring_back(full, copy, clock)
    assert everything(full) == before
    assert everything(reopened()) == before
    assert copy.read_bytes() == whole
    with Store(kept, clock) as aside:
        assert everything(aside) == wiped


def hidden(copy):
    with closing(sqlite3.connect(copy)) as connection:
        return connection.execute("SELECT count(DISTINCT replaces) FROM live_void").fetchone()[0]


def test_a_copy_of_an_older_app_is_brought_up_to_date(full, tmp_path, clock):
    from logic.store.migrations import STEPS, migrate  # noqa: PLC0415  (only here)

    old = tmp_path / "old.db"
    with closing(sqlite3.connect(old, isolation_level=None)) as connection:
        migrate(connection, STEPS[:2], "2026")
    bring_back(full, old, clock)
    assert full.get("theme") is None
    full.put("theme", "sun")
    assert full.boards() == []


@pytest.mark.parametrize("written", [b"", b"PK\x03\x04", b"SQLite format 3\0" + b"\xff" * 4000])
def test_a_copy_that_is_none_changes_nothing(full, tmp_path, clock, written):
    before = everything(full)
    path = tmp_path / "copy.db"
    path.write_bytes(written)
    with pytest.raises(Foreign):
        look_at_copy(path, clock)
    with pytest.raises(Foreign):
        bring_back(full, path, clock)
    with pytest.raises(NoRight):
        look_at_copy(tmp_path / "nowhere.db", clock)
    assert everything(full) == before


def test_a_copy_of_a_later_app_changes_nothing(full, tmp_path, clock):
    before, path = everything(full), tmp_path / "copy.db"
    write_copy(full, path)
    with closing(sqlite3.connect(path)) as connection, connection:
        connection.execute("INSERT INTO migration VALUES ('99 lights', '2030')")
    with pytest.raises(Later):
        bring_back(full, path, clock)
    assert everything(full) == before


def test_a_copy_is_kept_aside_every_week_and_three_stay(full, clock):
    made = [keep_weekly(full, clock.now + timedelta(days=days)) for days in range(36)]
    days = [place for place, path in enumerate(made) if path is not None]
    assert days == [0, 7, 14, 21, 28, 35]
    folder = full.path.parent / "copies"
    assert [path.name for path in weekly_copies(folder)] == [
        "weekly-2026-12-16.db",
        "weekly-2026-12-23.db",
        "weekly-2026-12-30.db",
    ]
    # The clock goes back: the copies of the future do not keep a new one from being made.
    assert keep_weekly(full, clock.now) is not None


def test_two_boards_never_share_a_file_and_a_failed_write_keeps_the_older(tmp_path):
    one, other = demo_boards()[0], demo_boards()[0]
    names = {
        file_name(board, "log", "csv", AT) for board in (one, other, replace(one, id="x", name="Éclair/36?"))
    }
    assert len(names) == 3
    assert all(set(name) <= set("abcdefghijklmnopqrstuvwxyz0123456789-._é") for name in names)
    path = tmp_path / "a" / "log.csv"
    write_whole(path, "old")
    (tmp_path / "a" / "log.csv.part").mkdir()
    with pytest.raises(NoRight):
        write_whole(path, "new")
    assert path.read_text() == "old"
