"""Opening: migrations, files that are refused, and what is promised of the connection."""

import shutil
import sqlite3
import sys
from contextlib import closing
from pathlib import Path

import pytest

from logic.log import BoardChanged, Ride
from logic.store import NewerFile, NotAStore, Store, migrations
from logic.store.migrations import STEPS, Step, migrate, pending

AT = "2026-01-01T00:00:00.000000+00:00"
ROWS = {
    "1 boards": "INSERT INTO board (id, name, body, saved_at) VALUES ('b1', 'Weir', '{\"old\":1}', '2026')",
    "2 log": "INSERT INTO log (board, kind, at, offset, version, body)"
    " VALUES ('b1', 'ride', '2026-01-01T00:00:00.000000+00:00', 60, 1, '{}')",
    "3 trials and runs": "INSERT INTO run (board, checklist, body, at)"
    " VALUES ('b1', 'travel', '{}', '2026-01-01')",
    "4 settings": "INSERT INTO setting (key, value) VALUES ('theme', '\"Sun\"')",
    "5 set aside": "INSERT INTO aside VALUES ('setting', 'theme', '{', '2026-01-01')",
}


def files(folder):
    return {file.name: file.read_bytes() for file in folder.iterdir() if file.is_file()}


def old_file(path, steps):
    with closing(sqlite3.connect(path, isolation_level=None)) as connection:
        migrate(connection, steps, AT)
        for step in steps:
            connection.execute(ROWS[step.name])


def shape(path):
    with closing(sqlite3.connect(path)) as connection:
        return sorted(connection.execute("SELECT type, name, sql FROM sqlite_master"))


def names(steps):
    return [step.name for step in steps]


def test_a_statement_leaves_nothing_behind(store):
    """SQLite for Python remembers each cursor that is made directly: a digit makes several."""
    statements = 2000
    before = sys.getallocatedblocks()
    for _ in range(statements):
        store.get("theme", "")
    assert sys.getallocatedblocks() - before < statements / 2


def test_a_new_file_records_every_step_with_its_time(store, raw):
    assert raw("SELECT name, at FROM migration ORDER BY name") == [
        (step.name, "2026-11-25T08:30:00.000000+00:00") for step in STEPS
    ]
    assert store.boards() == []


@pytest.mark.parametrize("done", range(len(STEPS) + 1))
def test_a_file_of_each_earlier_step_is_brought_up_to_date_with_what_it_held(path, tmp_path, clock, done):
    old_file(path, STEPS[:done])
    with Store(tmp_path / "new.db", clock):
        pass
    assert names(pending(path)) == names(STEPS[done:])
    with Store(path, clock) as store:
        assert [board.body for board in store.boards()] == [{"old": 1}][:done]
        assert store.count("b1", "ride") == (done >= 2)
        assert (store.run("b1", "travel") is not None) == (done >= 3)
        assert store.get("theme") == ("Sun" if done >= 4 else None)
        store.keep_trial("b1", "Weir", {"new": 2}, BoardChanged())
    assert pending(path) == ()
    assert shape(path) == shape(tmp_path / "new.db")


def test_an_open_that_finds_nothing_pending_writes_nothing(path, tmp_path, clock):
    with Store(path, clock) as store:
        store.put("theme", "Sun")
    before = files(tmp_path)
    Store(path, clock).close()
    assert files(tmp_path) == before


@pytest.mark.parametrize("done", range(len(STEPS) + 1))
def test_asking_what_is_pending_writes_nothing(path, tmp_path, done):
    old_file(path, STEPS[:done])
    before = files(tmp_path)
    assert names(pending(path)) == names(STEPS[done:])
    assert files(tmp_path) == before


def test_asking_about_a_file_that_is_not_there_does_not_make_it(path, tmp_path):
    assert pending(path) == STEPS
    assert files(tmp_path) == {}


def crashed_copy(path, folder):
    """Copy an open store's file with its write-ahead log: what a crash leaves on the disk."""
    folder.mkdir()
    for name in (path.name, path.name + "-wal"):
        shutil.copy(path.with_name(name), folder)
    return folder / path.name


def test_what_a_crash_left_in_the_write_ahead_log_counts(path, tmp_path, clock):
    with Store(path, clock) as store:
        store.append("b1", Ride())
        copy = crashed_copy(path, tmp_path / "crashed")
    before = files(copy.parent)
    assert pending(copy) == ()
    assert before.items() <= files(copy.parent).items()
    with Store(copy, clock) as store:
        assert store.count() == 1


@pytest.mark.parametrize("left_by", ["a clean end", "a crash"])
def test_a_newer_file_is_refused_untouched(path, tmp_path, clock, left_by):
    with Store(path, clock) as store:
        store._connection.execute("INSERT INTO migration VALUES ('99 lights', '2030')")  # noqa: SLF001  (a later app)
        if left_by == "a crash":
            path = crashed_copy(path, tmp_path / "crashed")
    before = files(path.parent)
    for attempt in (lambda: pending(path), lambda: Store(path, clock)):
        with pytest.raises(NewerFile, match="99 lights"):
            attempt()
    # Reading a write-ahead log makes SQLite's index of it beside it, and that is all.
    assert files(path.parent).keys() - before.keys() <= {path.name + "-shm"}
    assert before.items() <= files(path.parent).items()


def foreign_tables(path: Path) -> None:
    with closing(sqlite3.connect(path)) as connection:
        connection.execute("CREATE TABLE recipe (name)")


def cut_short(path: Path) -> None:
    foreign_tables(path)
    path.write_bytes(path.read_bytes()[:3000])


@pytest.mark.parametrize(
    "write",
    [
        lambda path: path.write_text("board,kind,at\n"),
        lambda path: path.write_bytes(b"S"),
        lambda path: path.write_bytes(b"SQLite format 3\0" + b"\xff" * 4080),
        cut_short,
        foreign_tables,
    ],
    ids=["text", "one byte", "only the first words", "cut short", "another program's"],
)
def test_a_file_that_is_not_ours_is_refused_untouched(path, tmp_path, clock, write):
    write(path)
    before = files(tmp_path)
    for attempt in (lambda: pending(path), lambda: Store(path, clock)):
        with pytest.raises(NotAStore, match="deck hand #1"):
            attempt()
    assert files(tmp_path) == before


def journal_chosen(path: Path) -> None:
    """Leave the file as a kill between the first open and the first step does."""
    with closing(sqlite3.connect(path)) as connection:
        connection.execute("PRAGMA journal_mode = WAL")


@pytest.mark.parametrize("write", [Path.touch, journal_chosen], ids=["no bytes", "no tables"])
def test_an_empty_file_is_a_new_one(path, clock, write):
    write(path)
    assert pending(path) == STEPS
    with Store(path, clock) as store:
        assert store.append("b1", Ride()) == 1


def test_a_step_that_fails_leaves_no_part_of_itself(path, clock, monkeypatch):
    with Store(path, clock) as store:
        store.put("theme", "Sun")
    before = shape(path)
    good = Step("5 good", ("CREATE TABLE good (id)",))
    bad = Step("6 bad", ("CREATE TABLE bad (id)", "INSERT INTO setting VALUES ('theme', '1')"))
    monkeypatch.setattr(migrations, "STEPS", (*STEPS, good, bad))
    with pytest.raises(sqlite3.IntegrityError):
        Store(path, clock)
    assert shape(path) == sorted([*before, ("table", "good", "CREATE TABLE good (id)")])
    assert pending(path) == (bad,)


def test_a_commit_waits_for_the_disk_and_rows_that_act_name_real_ones(store):
    def pragma(name: str) -> object:
        connection = store._connection  # noqa: SLF001  (only the connection itself can tell)
        return connection.execute(f"PRAGMA {name}").fetchone()[0]

    full = 2
    assert pragma("journal_mode") == "wal"
    assert pragma("synchronous") == full
    assert pragma("foreign_keys") == 1
    assert pragma("busy_timeout") == 5000
    assert store._connection.isolation_level is None  # noqa: SLF001  (same)


def test_what_is_typed_does_not_wait_for_the_disk_and_all_else_does(store):
    ran: list[str] = []
    store._connection.set_trace_callback(ran.append)  # noqa: SLF001  (as above)
    store.save_trial("b1", {"typed": {"a": "1"}})
    assert ran[0] == "PRAGMA synchronous = NORMAL"
    assert ran[-2:] == ["COMMIT", "PRAGMA synchronous = FULL"]
    ran.clear()
    store.put("theme", "Sun")
    store.drop_trial("b1")
    assert not any("synchronous" in one for one in ran)
    with pytest.raises(TypeError):
        store.save_trial("b1", {"typed": object()})
    assert store._connection.execute("PRAGMA synchronous").fetchone()[0] == 2  # noqa: SLF001  (FULL, whatever came of it)


@pytest.fixture(scope="module")
def long_log(tmp_path_factory):
    """Give a store with 100,000 entries on two boards, some of them voided or corrected."""
    path = tmp_path_factory.mktemp("long") / "long.db"
    old_file(path, ())
    with closing(sqlite3.connect(path, isolation_level=None)) as connection:
        migrate(connection, STEPS, AT)
        connection.execute("BEGIN")
        connection.executemany(
            "INSERT INTO log (board, kind, at, offset, version, replaces, body)"
            " VALUES (?, ?, ?, 60, 1, ?, '{}')",
            (
                (
                    "b2" if index % 3 else "b1",
                    ("ride", "tension", "check", "note", "correction" if index % 2 else "void")[index % 5],
                    AT,
                    index - 3 if index % 5 == 4 else None,
                )
                for index in range(100_000)
            ),
        )
        connection.execute("COMMIT")
    with Store(path, lambda: None) as store:
        yield store


@pytest.mark.parametrize(
    ("board", "kind", "index"),
    [
        (None, None, "INTEGER PRIMARY KEY"),
        ("b1", None, "INDEX log_by_board "),
        (None, "tension", "INDEX log_by_kind "),
        ("b1", "tension", "INDEX log_by_board_and_kind "),
    ],
)
@pytest.mark.parametrize("before", [None, 50_000])
def test_a_page_of_a_long_log_is_read_by_index_and_never_sorted(long_log, board, kind, index, before):
    connection = long_log._connection  # noqa: SLF001  (the statement is taken as the store runs it)
    statements = []
    connection.set_trace_callback(statements.append)
    page = long_log.page(board, kind, before)
    connection.set_trace_callback(None)
    assert len(page) == 200
    assert len(statements) == 1
    plan = [row[3] for row in connection.execute("EXPLAIN QUERY PLAN " + statements[0])]
    assert index in plan[0]
    assert [line for line in plan if "SCAN" in line or "TEMP B-TREE" in line] == []
