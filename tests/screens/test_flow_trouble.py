"""A page that fails never stops the start and never ends the app."""

from collections.abc import Callable
from typing import Any

import pytest
from kivy.base import ExceptionManager

from logic.store import NotSaved
from screens import front, warming
from screens.acts.keeping import Settle
from screens.front import NOT_COME_BACK_TO
from tests.screens.session import Session

CANNOT = "This page cannot be shown"


def fails(*_: object) -> None:
    raise ValueError("a fault made for the test")


def break_page(monkeypatch: pytest.MonkeyPatch, page: str) -> None:
    """Let one page fail; the others go on."""
    real = front.page_function
    monkeypatch.setattr(front, "page_function", lambda name: fails if name == page else real(name))


def as_the_loop(act: Callable[..., Any], *given: Any) -> None:
    """Do what Kivy's endless loop does with what is raised inside it."""
    try:
        act(*given)
    except Exception as problem:
        if ExceptionManager.handle_exception(problem) != ExceptionManager.PASS:
            raise


def test_a_page_that_fails_does_not_stop_the_start(app: Session, monkeypatch: pytest.MonkeyPatch) -> None:
    app.tap("Numbers")
    app.tap("Motor heat on a climb")
    break_page(monkeypatch, "numbers.hold")
    app.restart(minutes=1)
    assert app.page.title == "Ride"
    app.frame(seconds=60.0)
    assert app.shows(NOT_COME_BACK_TO)
    app.restart(minutes=1)
    assert app.page.title == "Ride"
    assert not app.shows(NOT_COME_BACK_TO)


def test_a_first_page_that_fails_leaves_the_other_places(
    app: Session, monkeypatch: pytest.MonkeyPatch
) -> None:
    break_page(monkeypatch, "ride")
    app.restart(hours=1)
    assert app.page.title == CANNOT
    app.tap("Bench")
    assert app.page.title == "Bench"


def test_a_page_that_fails_when_it_is_opened_says_so(app: Session, monkeypatch: pytest.MonkeyPatch) -> None:
    break_page(monkeypatch, "numbers.hold")
    app.tap("Numbers")
    as_the_loop(app.tap, "Motor heat on a climb")
    app.settle()
    assert app.page.title == CANNOT
    assert app.shows("Nothing that was saved is lost.")
    app.tap("Back")
    assert app.page.title == "Numbers"
    monkeypatch.undo()
    app.tap("Motor heat on a climb")
    assert app.page.title == "Motor heat on a climb"


def test_a_page_that_fails_shows_the_record_of_the_fault_and_hands_it_on(
    app: Session, monkeypatch: pytest.MonkeyPatch
) -> None:
    shared: list[tuple[str, str]] = []
    monkeypatch.setattr(
        "screens.phone.share.share", lambda text, title: shared.append((title, text)) or "Handed on."
    )
    break_page(monkeypatch, "numbers.hold")
    app.tap("Numbers")
    app.tap("Motor heat on a climb")
    assert not app.shows("ValueError")
    app.tap("Read the record of the fault")
    app.settle()
    assert app.shows("ValueError: a fault made for the test")
    app.tap("Share the record")
    app.settle()
    ((title, text),) = shared
    assert title == "Record of a fault"
    assert text.startswith("Deckhand, 2026-11-25T09:30:00+01:00\n\nTraceback")
    assert text.endswith("ValueError: a fault made for the test\n")
    assert app.shows("Handed on.")
    assert app.page.title == CANNOT
    app.tap("Back")
    assert app.page.title == "Numbers"


def test_the_record_can_be_read_where_the_page_itself_would_come_back(
    app: Session, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setattr("screens.phone.share.share", lambda *_: "Handed on.")
    app.tap("Numbers")
    as_the_loop(fails)
    app.tap("Read the record of the fault")
    app.settle()
    assert app.shows("ValueError: a fault made for the test")
    app.tap("Share the record")
    app.settle()
    assert app.shows("Handed on.")
    assert app.page.title == CANNOT
    app.tap("Bench")
    assert app.page.title == "Bench"


def test_a_page_that_meets_a_storage_that_refuses_says_so_and_shows_no_record(
    app: Session, monkeypatch: pytest.MonkeyPatch
) -> None:
    def refuses(*_: object) -> None:
        raise NotSaved

    real = front.page_function
    monkeypatch.setattr(
        front, "page_function", lambda name: refuses if name == "numbers.hold" else real(name)
    )
    app.tap("Numbers")
    app.tap("Motor heat on a climb")
    assert app.page.title == CANNOT
    assert app.shows("The storage does not answer.")
    assert not app.shows("Read the record of the fault")


def test_a_page_that_fails_at_a_new_value_says_so(app: Session, monkeypatch: pytest.MonkeyPatch) -> None:
    app.tap("Numbers")
    app.tap("Motor heat on a climb")
    app.tap("Mass of the board")
    break_page(monkeypatch, "numbers.hold")
    as_the_loop(app.keys, "1")
    as_the_loop(app.settle)
    app.settle()
    assert app.page.title == CANNOT
    app.tap("Back")
    assert app.page.title == "Numbers"


def test_what_ends_a_program_on_purpose_goes_on_up(app: Session) -> None:
    assert ExceptionManager.handle_exception(KeyboardInterrupt()) == ExceptionManager.RAISE
    assert ExceptionManager.handle_exception(NotSaved()) == ExceptionManager.PASS
    assert app.page.title == "Ride"


def test_a_fault_that_nobody_took_up_is_told_at_the_next_start_with_the_way_to_send_it(
    app: Session, monkeypatch: pytest.MonkeyPatch
) -> None:
    shared: list[tuple[str, str]] = []
    monkeypatch.setattr(
        "screens.phone.share.share", lambda text, title: shared.append((title, text)) or "Handed on."
    )
    app.tap("Numbers")
    as_the_loop(fails)
    app.restart(minutes=1)
    assert app.page.title == "Last time"
    app.tap("Share the record")
    ((title, text),) = shared
    assert title == "Record of a fault"
    assert "2026-11-25T09:30:00+01:00" in text
    assert text.endswith("ValueError: a fault made for the test\n")
    assert app.shows("Handed on.")
    app.tap("Go on")
    assert app.page.title == "Ride"
    app.restart(minutes=1)
    assert app.page.title == "Ride"


def test_a_fault_that_cannot_be_written_down_stops_nothing(
    app: Session, monkeypatch: pytest.MonkeyPatch
) -> None:
    def full(*_: object, **__: object) -> None:
        raise OSError(28, "No space left on device")

    monkeypatch.setattr("pathlib.Path.write_text", full)
    as_the_loop(fails)
    assert app.page.title == CANNOT
    app.tap("Bench")
    assert app.page.title == "Bench"


def test_text_begins_as_large_as_on_the_phone_until_one_chooses(
    begin: Callable[..., Session], monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setattr("screens.app.text_scale", lambda: 1.6)
    app = begin(demo=True)
    assert app.front.world.person.text == 1.6
    app.front.perform(Settle({"text": 1.0}))
    app.restart(minutes=1)
    assert app.front.world.person.text == 1.0


def test_what_could_not_be_read_is_told_once_after_the_start(app: Session) -> None:
    app.app.store._connection.execute("UPDATE board SET body = '{' WHERE name = 'Weir'")  # noqa: SLF001  (a spoilt file)
    app.restart(minutes=1)
    app.front.warm_up()
    app.settle()
    assert app.shows(warming.UNREAD)
    app.restart(minutes=1)
    app.front.warm_up()
    app.settle()
    assert not app.shows(warming.UNREAD)


def test_a_touch_is_heard_while_pages_are_loaded(app: Session, monkeypatch: pytest.MonkeyPatch) -> None:
    loaded: list[str] = []
    monkeypatch.setattr(warming, "page_function", lambda name: loaded.append(name) or fails)
    app.front.warm_up()
    while len(loaded) < len(warming.PAGES):
        before = len(loaded)
        app.frame()
        assert len(loaded) - before <= 1
    assert loaded == list(warming.PAGES)


def test_nothing_is_told_where_all_was_read(app: Session) -> None:
    app.front.warm_up()
    app.settle()
    assert not app.shows(warming.UNREAD)
