"""Files out and in, by the pages: written, looked into, taken in; a copy brought back; what could not be read."""

import json
from pathlib import Path

import pytest

from logic import read_back
from logic.exchange.copies import keep_weekly
from logic.log import Ride
from screens.acts.boards import OpenFile
from screens.acts.entering import Write
from screens.settings.files import PASTED, PATH
from tests.pages.reader import Reader


@pytest.fixture
def reader(tmp_path: Path):
    found = Reader(tmp_path / "one")
    yield found.open("settings.files")
    found.close()


@pytest.fixture
def other(tmp_path: Path):
    found = Reader(tmp_path / "two", demo=False)
    yield found.open("settings.files")
    found.close()


def written(reader: Reader, ending: str) -> Path:
    (path,) = (reader.folder / "copies").glob(f"*{ending}")
    assert path.name in reader["said"].text
    return path


def test_a_board_goes_to_another_phone_with_its_log(reader, other):
    reader.store.append(reader.world.saved.id, Ride(distance=4200.0))
    reader.tap("Towpath 36, with its log")
    path = written(reader, ".json")
    other.act(Write(PATH, str(path)))
    other.tap("Look into this file")
    assert other.page.crown.word == "Adds Towpath 36"
    assert other["entries"].value == "1"
    assert other.store.boards() == []
    other.tap("Take it in")
    assert other.world.saved == reader.world.saved
    assert [record.body.distance for record in other.records("ride")] == [4200.0]
    assert other.shows("Towpath 36 is here, with 1 entries of its log.")
    other.act(OpenFile(str(path)))
    assert other.page.crown.word == "Nothing new"
    other.restart()
    assert other.world.saved.name == "Towpath 36"


def test_looking_and_leaving_changes_nothing(reader, other):
    reader.tap("Towpath 36, with its log")
    text = written(reader, ".json").read_text("utf-8")
    other.tap("Paste the text of a board")
    other.act(Write(PASTED, text))
    other.tap("Look into this text")
    assert other.page.crown.word == "Adds Towpath 36"
    other.back()
    assert other.page.title == "Files and copies"
    assert other.store.boards() == []


def test_on_a_clash_the_page_says_that_both_are_kept(reader):
    reader.tap("Towpath 36, with its log")
    body = json.loads(written(reader, ".json").read_text("utf-8"))
    body["board"]["drive"]["motor_teeth"]["si"] = 13.0
    reader.tap("Paste the text of a board")
    reader.act(Write(PASTED, json.dumps(body)))
    reader.tap("Look into this text")
    assert reader.shows("Both are kept.")
    assert reader["differs"].value == "1"
    reader.tap("Take it in")
    assert {"Towpath 36", "Towpath 36 (2)"} < {board.name for board in read_back.boards(reader.store)}
    assert reader.world.saved.drive.motor_teeth.si == 13.0


def test_everything_is_copied_and_brought_back(reader, other):
    reader.tap("Copy of everything")
    path = written(reader, ".db")
    other.store.append("b9", Ride())
    other.act(Write(PATH, str(path)))
    other.tap("Look into this file")
    assert other["boards"].value == "4"
    other.tap("Bring it back")
    assert other.shows("What was here before is kept as before-")
    assert len(other.store.boards()) == 4
    assert other.world.saved.name == "Towpath 36"
    other.restart()
    assert len(other.store.boards()) == 4


def test_a_weekly_copy_is_offered(reader):
    keep_weekly(reader.store, reader.time)
    reader.store.append(reader.world.saved.id, Ride())
    reader.tap("Copy of 2026-11-25")
    assert reader.page.crown.word == "Takes the place of everything"
    reader.tap("Bring it back")
    assert reader.records("ride") == []


@pytest.mark.parametrize(
    ("content", "sentence"),
    [
        (b"{", "cut short or damaged"),
        (b"[]", "no file of Deckhand"),
        (b'{"format": "deckhand board", "version": 7}', "A later Deckhand"),
        (b"SQLite format 3\0" + b"\xff" * 4000, "no file of Deckhand"),
        (b"", "cut short or damaged"),
    ],
)
def test_a_file_that_cannot_be_taken_in_says_why(other, tmp_path, content, sentence):
    path = tmp_path / "came.bin"
    path.write_bytes(content)
    other.act(OpenFile(str(path)))
    assert sentence in other["told"].text
    assert other.store.boards() == []


@pytest.mark.parametrize("path", ["", "nowhere", "/", "\0", "~no one/x", "a" * 5000])
def test_a_path_that_leads_nowhere_says_so(other, path):
    other.act(OpenFile(path))
    assert other["told"].text


def test_what_could_not_be_read_is_named_and_sent(reader):
    reader.open("settings.unread")
    assert reader.page.crown.word == "All read"
    reader.store._connection.execute("UPDATE board SET body = '{' WHERE name = 'Weir'")  # noqa: SLF001  (damage)
    assert reader.page.crown.word == "1 not read"
    reader.tap("Board: Weir")
    assert reader["text 0"].text == "{"
    reader.tap("Send it")
    assert reader.out[-1].text == "{"


def test_a_salvaged_file_is_told_of(reader):
    reader.store.put(
        "salvaged",
        {
            "kept": "deckhand-damaged-2026-11-25.db",
            "at": "2026-11-25T12:00:00+00:00",
            "rows": {"board": 3, "log": 40},
        },
    )
    reader.open("settings.unread")
    assert "3 boards and 40 entries" in reader["salvaged"].text


@pytest.mark.parametrize(
    ("page", "row"), [("settings.files", "Copy of everything"), ("log.export", "as a table")]
)
def test_what_came_of_a_copy_stays_in_sight(pages: Reader, page: str, row: str) -> None:
    """It stood at the top of the page, out of sight of the row that was touched: nothing seemed to happen."""
    pages.open(page)
    pages.tap(row)
    assert pages.page.crown is not None
    assert pages.page.crown.said().startswith("Saved as ")


def test_a_row_that_waits_for_a_path_or_a_text_says_so(pages: Reader) -> None:
    pages.open("settings.files", open_paste=True)
    assert (pages["open"].act, pages["open"].detail) == (None, "First say where it is.")
    assert (pages["look"].act, pages["look"].detail) == (None, "First paste it here.")
