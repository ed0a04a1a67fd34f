"""When the data cannot be opened: a page with a true sentence, and an exit status of its own."""

import inspect
from collections.abc import Callable
from pathlib import Path

import pytest

from logic.store import NewerFile, NotAStore, errors
from screens.app import DeckhandApp
from screens.driver import Driver
from screens.trouble import trouble_page
from screens.words import storage
from screens.words.storage import STATUSES, sentence, sentences, status
from tests.screens.session import Session

CAUSES = [
    kind
    for _, kind in inspect.getmembers(errors, inspect.isclass)
    if issubclass(kind, errors.CannotStore | NewerFile | NotAStore) and kind is not errors.CannotStore
]


def test_every_cause_has_its_sentence_and_its_status() -> None:
    assert {kind.__name__ for kind in CAUSES} == set(sentences())
    assert len({sentence(kind()) for kind in CAUSES}) == len(CAUSES)
    assert {kind.__name__ for kind in CAUSES} == set(STATUSES)
    assert len(set(STATUSES.values())) == len(CAUSES)
    assert not set(STATUSES.values()) & {0, 1, 2, 3}


def test_a_status_does_not_rest_on_the_order_of_the_sentences(monkeypatch: pytest.MonkeyPatch) -> None:
    """A script waits for 8 where the storage is full, whatever stands above that sentence."""
    turned = {"sentences": dict(reversed(sentences().items()))}
    monkeypatch.setattr(storage, "texts", lambda _file: turned)
    assert [status(kind()) for kind in (NewerFile, errors.Full, errors.NotSaved)] == [4, 8, 11]


@pytest.mark.parametrize("cause", CAUSES)
def test_the_page_says_why(cause: type[Exception]) -> None:
    page = trouble_page(cause("a word from below"))
    said = " ".join(block.said() for block in page.blocks)
    assert sentence(cause()) in said
    assert "from below" not in said


@pytest.mark.parametrize("left", [b"board,kind\n", b"SQLite format 3\0" + b"\xff" * 5000])
def test_the_app_opens_with_the_reason_and_goes_on_once_it_can(tmp_path: Path, left: bytes) -> None:
    file = tmp_path / "deckhand.db"
    file.write_bytes(left)
    app = DeckhandApp(tmp_path, demo=True)
    driver = Driver(app)
    driver.settle()
    assert driver.shows("not readable as Deckhand's data")
    driver.tap("Try again")
    driver.settle()
    assert driver.shows("not readable as Deckhand's data")
    assert file.read_bytes() == left
    file.unlink()
    driver.tap("Try again")
    driver.settle()
    assert app.problem is None
    assert driver.shows("BEFORE A RIDE")
    driver.stop()


@pytest.mark.parametrize("place", [7, {}, {"at": "yesterday", "trail": []}, {"at": "2026-11-25", "trail": 3}])
def test_a_way_that_cannot_be_read_stops_no_start(begin: Callable[..., Session], place: object) -> None:
    app = begin()
    app.app.store.put("place", place)
    app.restart()
    assert app.page.title == "What do you want now?"


def test_a_copy_is_kept_aside_when_the_app_is_left(begin: Callable[..., Session], tmp_path: Path) -> None:
    app = begin()
    app.app.on_pause()
    assert len(list((tmp_path / "data" / "copies").glob("weekly-*.db"))) == 1
