"""Rides, notes, corrections, upkeep and copies, by taps on the real app."""

import sqlite3
from collections.abc import Iterator
from contextlib import closing
from pathlib import Path

import pytest

from logic.log import BeltFitted, Note, Ride, Tension, Work
from screens.reminder import remind
from screens.theme import theme
from screens.widgets.row import Row
from tests.screens.session import Session


@pytest.fixture
def app(tmp_path: Path) -> Iterator[Session]:
    """Give the app with the example boards."""
    session = Session(tmp_path, demo=True)
    session.settle()
    yield session
    session.stop()
    theme.apply("day", 1.0)


def add_ride(app: Session, way: str = "8.4", **flags: bool) -> None:
    app.shell.go("log.ride")
    app.frame(2)
    app.keys(way)
    for flag in flags:
        app.tap(flag.capitalize())
    app.tap("SAVE THE RIDE")
    app.settle()


def test_a_ride_is_entered_in_a_few_keys_with_the_body_that_others_read(app):
    app.tap("Log")
    app.tap("+ Add a ride")
    app.keys("8.4")
    app.tap("Energy used")
    app.keys("92")
    app.page.writing.text = "Head wind"
    app.tap("SAVE THE RIDE")
    assert app.state.last("ride").body == Ride(
        distance=pytest.approx(8400.0), energy=pytest.approx(331200.0), note="Head wind"
    )
    assert app.shows("Ride: 8.4\u00a0km, 92\u00a0Wh")


def test_what_is_typed_of_a_ride_survives_leaving(app):
    app.shell.go("log.ride")
    app.frame(2)
    app.keys("12.")
    app.page.writing.text = "to the lock"
    app.key(27)
    app.restart(minutes=5)
    app.shell.go("log.ride")
    app.frame(2)
    assert (app.page.entry.text, app.page.writing.text) == ("12.", "to the lock")


def test_wrong_figures_are_told_and_kept(app):
    app.shell.go("log.ride")
    app.frame(2)
    app.tap("SAVE THE RIDE")
    assert app.state.last("ride") is None
    app.keys("5")
    app.tap("Volts before")
    app.keys("38")
    app.tap("Volts after")
    app.keys("41")
    app.tap("SAVE THE RIDE")
    assert app.shows("More volts after than before")
    assert app.state.last("ride") is None


def test_a_correction_keeps_what_was_and_can_be_taken_back(app):
    add_ride(app)
    number = app.state.last("ride").id
    app.tap("Log")
    app.tap("Ride: 8.4\u00a0km")
    app.tap("Correct it")
    assert app.page.entry.text == "8.4"
    app.page.entry.keypad.clear()
    app.keys("9.1")
    app.tap("SAVE THE CORRECTION")
    assert app.state.store.entry(number).body.distance == pytest.approx(9100.0)
    assert app.shows("As it was before")
    assert app.shows("Ride: 8.4\u00a0km")
    app.tap("Take the correction back")
    assert app.state.store.entry(number).body.distance == pytest.approx(8400.0)
    app.tap("Undo")
    assert app.state.store.entry(number).body.distance == pytest.approx(9100.0)


def test_an_entry_is_taken_out_with_undo_and_found_again_later(app):
    add_ride(app)
    app.tap("Log")
    app.tap("Ride: 8.4\u00a0km")
    app.tap("Take it out of the log")
    assert app.state.last("ride") is None
    app.tap("Undo")
    assert app.state.last("ride") is not None
    app.tap("Ride: 8.4\u00a0km")
    app.tap("Take it out of the log")
    app.state.undo = None
    app.tap("Taken out of the log")
    app.tap("Ride: 8.4\u00a0km")
    app.tap("Bring it back")
    assert app.state.last("ride") is not None


def test_filters_and_search_show_what_they_say_and_pages_turn(app):
    for number in range(45):
        app.state.store.append(app.state.saved.id, Note(note=f"note {number}"))
    app.state.store.append("another", Work(note="bearings"))
    app.state.changed()
    app.tap("Log")
    assert [title for _, title, *_ in app.page.entries][:2] == ["note 44", "note 43"]
    app.tap("Older entries")
    assert app.page.entries[0][1] == "note 24"
    app.key(27)
    assert app.page.entries[0][1] == "note 44"
    app.tap("Filter and search")
    app.page.search("note 7")
    app.settle()
    assert [title for _, title, *_ in app.page.entries] == ["note 7"]
    app.page.search("bear")
    app.settle()
    assert app.shows("Nothing in the log fits this filter.")
    app.tap("All boards")
    assert [title for _, title, *_ in app.page.entries] == ["Work: bearings"]
    app.tap("Rides")
    assert app.page.entries == []


def test_a_wet_ride_is_due_on_every_page_until_put_off_with_a_reason(app):
    add_ride(app, wet=True)
    app.looked_over()
    assert [one.key for one in app.state.due] == ["water"]
    app.tap("Numbers")
    app.tap("1 due")
    assert app.shows("Check after water")
    app.tap("Not now")
    app.tap("Put off until the next ride")
    assert app.shows("A reason is wanted")
    app.page.writing.text = "Only the deck was wet"
    app.tap("Put off until the next ride")
    app.settle()
    assert app.state.due == ()
    assert app.state.last("snooze").body.reason == "Only the deck was wet"
    add_ride(app)
    assert [one.key for one in app.state.due] == ["water"]


def test_the_due_card_opens_what_clears_it(app):
    add_ride(app, crash=True)
    app.shell.place("ride")
    app.settle()
    app.tap("Check now")
    assert app.page.title == "After a crash, 1 of 8"


def test_a_new_belt_begins_its_rechecks(app):
    app.shell.go("log.note")
    app.frame(2)
    app.tap("New belt")
    app.tap("Right belt")
    app.tap("SAVE")
    assert app.state.last("belt_fitted").body == BeltFitted(belt="right")
    add_ride(app)
    assert [(one.key, one.subject) for one in app.state.due] == [("belt_first", "both"), ("joints_first", "")]
    assert app.shows("First tension check (both belts)")


def test_the_note_of_the_day_comes_once_only_when_asked_for_and_ridden(app, monkeypatch):
    shown = []
    monkeypatch.setattr("screens.reminder.notice", lambda title, text: shown.append((title, text)) or True)
    add_ride(app, wet=True)
    assert not remind(app.state)
    app.state.set_person(remind=True)
    assert remind(app.state)
    assert not remind(app.state)
    assert shown == [("Due on Towpath 36", "Check after water")]


def test_the_build_sheet_is_written_as_text_and_with_pictures_and_the_log_as_a_table(app):
    add_ride(app)
    app.shell.go("ride.tension")
    app.frame(2)
    app.keys("0.92")
    app.tap("SAVE LEFT, GO TO RIGHT")
    app.keys("0.95")
    app.tap("SAVE RIGHT")
    app.tap("Finish")
    app.tap("Log")
    app.tap("Copies and build sheet")
    app.tap("Build sheet with pictures")
    assert app.shows("Saved as towpath-36-build-sheet-2026-11-25.html")
    app.tap("Build sheet as text")
    app.tap("Log as a table")
    page, text, table = (
        (app.folder / "copies" / f"towpath-36-{name}").read_text(encoding="utf-8")
        for name in ("build-sheet-2026-11-25.html", "build-sheet-2026-11-25.txt", "log-2026-11-25.csv")
    )
    assert page.count("<svg") == 3
    assert "The drive, to scale" in page
    assert "<script" not in page
    assert "Belt tension to set: 108\u00a0N (Worked out)" in text
    assert "A record, not a promise." in text
    assert len(table.splitlines()) == 4
    app.tap("SHARE THE BUILD SHEET")
    assert app.shows("Copied: paste it where it is wanted.")


@pytest.mark.parametrize(
    "page",
    ["ride", "log", "log.due", "log.export", "log.bin", "board.boards", "entry"],
)
def test_rows_are_built_anew_only_when_they_differ(app, page):
    add_ride(app, wet=True)
    app.state.record(Tension(belt="left", tension=99.0, error=11.0, word="in window"))
    app.state.store.void(app.state.record(Note(note="no")))
    app.state.changed()
    number = app.state.last("ride").id
    app.shell.go("log.entry", number=number) if page == "entry" else app.shell.go(page)
    app.settle()
    before = [widget for widget in app.walk() if isinstance(widget, Row)]
    assert before
    app.state.changed()
    app.settle()
    assert [widget for widget in app.walk() if isinstance(widget, Row)] == before
    app.state.store.append(app.state.saved.id, Ride(distance=200000.0))
    app.state.store.correct(number, Ride(distance=9000.0))
    app.state.store.void(app.state.record(Note(note="again")))
    app.state.record(Tension(belt="left", tension=98.0, error=11.0, word="in window"))
    app.state.rename_board("Towpath 40")
    if page == "ride.lists":
        app.state.copy_list("travel")
    app.settle()
    if page != "ride":
        assert [widget for widget in app.walk() if isinstance(widget, Row)] != before


def test_entries_that_cannot_be_read_stand_in_the_log_as_they_are(app: Session) -> None:
    """A later version wrote one, one is damaged, one is of a kind nobody knows; the pages that count go on."""
    add_ride(app)
    store, board = app.state.store, app.state.saved.id
    with closing(sqlite3.connect(store.path)) as connection, connection:
        connection.executemany(
            "INSERT INTO log (board, kind, at, offset, version, body) VALUES (?, ?, ?, 0, ?, ?)",
            [
                (board, kind, app.state.clock().isoformat(), version, body)
                for kind, version, body in (
                    ("ride", 9, '{"way": 3}'),
                    ("tension", 1, "{"),
                    ("check", 1, '{"verdict": 4}'),
                    ("snooze", 1, "[]"),
                    ("walk", 1, "{}"),
                )
            ],
        )
    app.state.changed()
    app.settle()
    app.shell.place("log")
    app.settle()
    assert app.shows("Rides: Written by a later version")
    for title in ("Tension: Could not be read", "Checks: Could not be read", "Entry: Could not be read"):
        assert app.shows(title)
    number = store.page(board, "tension")[0].id
    app.shell.go("log.entry", number=number)
    app.settle()
    assert app.shows("Could not be read")
    assert app.shows("It is kept as it is")
    assert not app.shows("Correct it")
    assert not app.shows("Add or change its note")
    app.tap("Take it out of the log")
    app.settle()
    app.shell.go("log.bin")
    app.settle()
    assert app.shows("Tension: Could not be read")
    for page in ("log.due", "log.tension", "log.export", "bench.belt", "ride.lists", "ride.tension"):
        app.shell.go(page)
        app.settle()
    assert app.state.last("ride").body.distance == 8400.0
