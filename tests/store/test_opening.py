"""Opening always ends in an open store or in one of the project's own errors; a damaged file gives what can be read."""

import os
import sqlite3
from collections.abc import Callable
from contextlib import closing
from datetime import UTC, datetime
from pathlib import Path

import pytest

from logic.log import Ride
from logic.store import NewerFile, NotAStore, Store
from logic.store.errors import Busy, CannotStore, Damaged, Full, NoFolder, NoRight, NotSaved
from logic.store.guarded import told
from logic.store.opening import CHECK, NAME, look_next_time, open_store

RIDES = 400


def noon() -> datetime:
    return datetime(2026, 11, 25, 12, 0, tzinfo=UTC)


@pytest.fixture
def folder(tmp_path: Path) -> Path:
    """A folder whose file holds a board, a setting and many rides, closed."""
    with open_store(tmp_path, noon) as store:
        store.save_board("b1", "Weir", {"name": "Weir"})
        store.put("person", {"theme": "sun"})
        for metres in range(RIDES):
            store.append("b1", Ride(distance=float(metres + 1), note="x" * 200))
    return tmp_path


def pages_of(folder: Path, table: str) -> list[int]:
    """Return the numbers of the pages that hold a table's rows, as SQLite tells them."""
    with closing(sqlite3.connect(folder / NAME)) as connection:
        try:
            rows = connection.execute(
                "SELECT pageno FROM dbstat WHERE name = ? AND pagetype = 'leaf' ORDER BY pageno", (table,)
            ).fetchall()
        except sqlite3.OperationalError:
            pytest.skip("this SQLite has no dbstat")
    return [number for (number,) in rows]


def spoil(folder: Path, page: int) -> None:
    """Write nonsense over one page."""
    with (folder / NAME).open("r+b") as file:
        file.seek(16)
        size = int.from_bytes(file.read(2), "big")
        file.seek((page - 1) * size)
        file.write(b"\xa5" * size)


def rides(store: Store) -> set[float]:
    return {record.body.distance for record in store.page(limit=10_000)}


def test_a_damaged_page_costs_its_rows_and_no_others(folder):
    leaves = pages_of(folder, "log")
    assert len(leaves) > 10
    for page in (leaves[0], leaves[5], leaves[-1]):
        spoil(folder, page)
    look_next_time(folder)
    with open_store(folder, noon) as store:
        told = store.get("salvaged")
        found = rides(store)
        assert store.board("b1").name == "Weir"
        assert store.get("person") == {"theme": "sun"}
        assert told["rows"]["log"] == len(found)
        # A page holds about fifteen such rows: three pages are lost, and not one more row than they held.
        assert RIDES - 3 * RIDES / (len(leaves) - 1) * 1.5 < len(found) < RIDES
        assert told["kept"] == "deckhand-damaged-2026-11-25.db"
        store.append("b1", Ride(distance=9999.0))
    assert (folder / told["kept"]).exists()
    assert not (folder / CHECK).exists()
    with open_store(folder, noon) as store:
        assert rides(store) == found | {9999.0}


def test_a_damaged_table_of_boards_is_found_at_the_start_by_itself(folder):
    spoil(folder, pages_of(folder, "board")[0])
    with open_store(folder, noon) as store:
        assert store.boards() == []
        assert len(rides(store)) == RIDES
        assert store.get("salvaged")["rows"]["board"] == 0


def test_a_second_damaged_file_does_not_take_the_place_of_the_first(folder):
    for _ in range(2):
        spoil(folder, pages_of(folder, "setting")[0])
        open_store(folder, noon).close()
    assert {file.name for file in folder.glob("deckhand-damaged*.db")} == {
        "deckhand-damaged-2026-11-25.db",
        "deckhand-damaged-2026-11-25-2.db",
    }


def test_a_read_that_meets_damage_says_so_in_the_projects_own_words(folder):
    with open_store(folder, noon) as store:
        for page in pages_of(folder, "log"):
            spoil(folder, page)
        store._connection.execute("PRAGMA cache_size = 0")  # noqa: SLF001  (nothing from memory)
        with pytest.raises(Damaged):
            store.page(limit=10_000)


def test_a_file_in_use_by_another_is_busy(folder, monkeypatch):
    monkeypatch.setattr("logic.store.file.PATIENCE", 50)
    with closing(sqlite3.connect(folder / NAME, isolation_level=None)) as other:
        other.execute("BEGIN IMMEDIATE")
        with open_store(folder, noon) as store:
            with pytest.raises(Busy):
                store.put("theme", "sun")
            other.execute("ROLLBACK")
            store.put("theme", "sun")


def test_a_full_storage_changes_nothing(folder):
    with open_store(folder, noon) as store:
        pages = store._connection.execute("PRAGMA page_count").fetchone()[0]  # noqa: SLF001  (a full disk)
        store._connection.execute(f"PRAGMA max_page_count = {pages}")  # noqa: SLF001  (the same)
        with pytest.raises(Full):
            store.put("long", "x" * 2_000_000)
        assert store.get("long") is None
        assert len(rides(store)) == RIDES


def test_a_start_on_a_full_storage_says_that_it_is_full():
    """What SQLite says where the file is there and no room for its index beside it (seen on a volume of 2 MB)."""
    problem = sqlite3.OperationalError("disk I/O error")
    problem.sqlite_errorcode = sqlite3.SQLITE_IOERR_SHMSIZE
    assert type(told(problem)) is Full
    problem.sqlite_errorcode = sqlite3.SQLITE_IOERR_READ
    assert type(told(problem)) is NotSaved


def file_at(place: Path) -> Path:
    place.write_text("a note")
    return place


def dangling(place: Path) -> Path:
    place.symlink_to(place.parent / "nowhere" / "at all")
    return place


def folder_as_file(place: Path) -> Path:
    (place / NAME).mkdir(parents=True)
    return place


def under_a_file(place: Path) -> Path:
    return file_at(place) / "data"


@pytest.mark.parametrize("make", [file_at, dangling, folder_as_file, under_a_file])
def test_where_no_folder_can_be_the_error_says_so(tmp_path, make):
    place = make(tmp_path / "place")
    with pytest.raises(NoFolder):
        open_store(place, noon)


@pytest.mark.skipif(os.geteuid() == 0, reason="root may write anywhere")
def test_a_folder_without_the_right_to_write_is_named(folder):
    folder.chmod(0o500)
    try:
        with pytest.raises(NoRight):
            open_store(folder, noon)
    finally:
        folder.chmod(0o700)


def test_a_file_that_may_only_be_read_is_named(folder, monkeypatch):
    # Root may write anywhere: the connection is made as one that may not.
    from logic.store import file, guarded  # noqa: PLC0415  (the rooms that are changed)

    def read_only(address: str, *, uri: bool = False) -> sqlite3.Connection:
        return guarded.connect(address if uri else f"file:{address}?mode=ro", uri=True)

    monkeypatch.setattr(file, "connect", read_only)
    with open_store(folder, noon) as store, pytest.raises(NoRight):
        store.put("theme", "sun")


@pytest.mark.parametrize("written", [b"board,kind\n", b"SQLite format 3\0" + b"\xff" * 5000])
def test_a_foreign_file_stays_as_it_was(tmp_path, written):
    (tmp_path / NAME).write_bytes(written)
    with pytest.raises(NotAStore):
        open_store(tmp_path, noon)
    assert (tmp_path / NAME).read_bytes() == written


def test_a_newer_file_stays_as_it_was(folder):
    with closing(sqlite3.connect(folder / NAME)) as connection, connection:
        connection.execute("INSERT INTO migration VALUES ('99 lights', '2030')")
    with pytest.raises(NewerFile):
        open_store(folder, noon)


@pytest.mark.parametrize("name", [None, b"2 log"])
def test_a_step_without_a_name_is_damage_and_what_can_be_read_is_read(folder, name):
    with closing(sqlite3.connect(folder / NAME)) as connection, connection:
        connection.execute("UPDATE migration SET name = ? WHERE name = '5 set aside'", (name,))
    with open_store(folder, noon) as store:
        assert len(rides(store)) == RIDES


def test_any_spoilt_byte_ends_in_an_open_store_or_in_an_error_of_ours(folder):
    whole = (folder / NAME).read_bytes()
    for place in range(0, len(whole), len(whole) // 60):
        (folder / NAME).write_bytes(whole[:place] + b"\xff\x00\xff\x00" + whole[place + 4 :])
        look_next_time(folder)
        try:
            open_store(folder, noon).close()
        except (CannotStore, NotAStore, NewerFile):
            continue
        finally:
            for left in folder.iterdir():
                left.unlink()


@pytest.mark.skipif(os.name != "posix", reason="owners are the system's")
def test_the_folder_is_for_its_owner_only(tmp_path):
    open_store(tmp_path / "new" / "data", noon).close()
    assert (tmp_path / "new" / "data").stat().st_mode & 0o077 == 0


def cut(folder: Path) -> None:
    body = (folder / NAME).read_bytes()
    (folder / NAME).write_bytes(body[: len(body) * 3 // 4])


def over(at: int, written: bytes) -> Callable[[Path], None]:
    def change(folder: Path) -> None:
        with (folder / NAME).open("r+b") as file:
            file.seek(at)
            file.write(written)

    return change


def garble_the_list_of_tables(folder: Path) -> None:
    """Spoil a letter of a name and one of a statement: SQLite's own words about it are no text then."""
    body = (folder / NAME).read_bytes()
    (folder / NAME).write_bytes(body.replace(b"CREATE TABLE run", b"CREATE T\x9eBLE \x9dun", 1))


@pytest.mark.parametrize(
    ("change", "least"),
    [
        pytest.param(cut, RIDES // 2, id="cut short"),
        pytest.param(over(0, b"\xff" * 16), RIDES, id="no first words"),
        pytest.param(over(18, b"\x07\x07"), RIDES, id="a way of writing that there is not"),
        pytest.param(over(28, b"\x7f\xff\xff\xff"), RIDES, id="a length it has not"),
        pytest.param(garble_the_list_of_tables, RIDES, id="a garbled list of tables"),
    ],
)
def test_a_damaged_head_or_a_cut_end_leaves_the_rows_that_are_there(folder, change, least):
    change(folder)
    with open_store(folder, noon) as store:
        assert len(rides(store)) >= least
        assert store.get("salvaged")["kept"] == "deckhand-damaged-2026-11-25.db"
    assert not (folder / "deckhand-patched.db").exists()
    with open_store(folder, noon) as store:
        assert len(rides(store)) >= least


@pytest.mark.parametrize("gone", ["TABLE setting", "TABLE migration", "VIEW entry"])
def test_a_table_that_is_not_there_any_more_costs_what_was_in_it(folder, gone):
    with closing(sqlite3.connect(folder / NAME)) as connection:
        connection.execute(f"DROP {gone}")
    with open_store(folder, noon) as store:
        assert len(rides(store)) == RIDES


def test_a_row_that_can_stand_in_its_table_no_more_is_set_aside(folder):
    with closing(sqlite3.connect(folder / NAME)) as connection, connection:
        connection.execute("PRAGMA writable_schema = ON")
        connection.execute("UPDATE sqlite_master SET sql = replace(sql, 'kind TEXT NOT NULL', 'kind TEXT')")
        connection.execute("DROP TRIGGER log_keeps_text")
    with closing(sqlite3.connect(folder / NAME)) as connection, connection:
        connection.execute("UPDATE log SET kind = NULL WHERE id = 7")
    look_next_time(folder)
    spoil(folder, pages_of(folder, "setting")[0])
    with open_store(folder, noon) as store:
        assert len(rides(store)) == RIDES - 1
        (kept,) = store.aside()
        assert (kept.what, kept.key) == ("log", "(7,)")
        assert "x" * 200 in kept.text
