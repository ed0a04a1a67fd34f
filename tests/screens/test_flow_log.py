"""Rides, notes, corrections, upkeep and copies, by taps on the real app."""

from collections.abc import Iterator
from pathlib import Path

import pytest

from logic.log import Note, Ride, Tension
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


def test_the_note_of_the_day_comes_once_only_when_asked_for_and_ridden(app, monkeypatch):
    shown = []
    monkeypatch.setattr("screens.reminder.notice", lambda title, text: shown.append((title, text)) or True)
    add_ride(app, wet=True)
    assert not remind(app.state)
    app.state.set_person(remind=True)
    assert remind(app.state)
    assert not remind(app.state)
    assert shown == [("Due on Towpath 36", "Check after water")]


@pytest.mark.parametrize(
    "page",
    ["board.boards"],
)
def test_rows_are_built_anew_only_when_they_differ(app, page):
    add_ride(app, wet=True)
    app.state.record(Tension(belt="left", tension=99.0, error=11.0, word="in window"))
    app.state.store.void(app.state.record(Note(note="no")))
    app.state.changed()
    number = app.state.last("ride").id
    app.shell.go(page)
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
    assert [widget for widget in app.walk() if isinstance(widget, Row)] != before
