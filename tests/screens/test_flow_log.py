"""Rides, notes, corrections, upkeep and copies, by taps on the real app."""

from collections.abc import Iterator
from pathlib import Path

import pytest

from screens.reminder import remind
from screens.theme import theme
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
    app.front.go("log.ride")
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
    app.state.changed()
    assert not remind(app.state.world)
    app.state.set_person(remind=True)
    assert remind(app.state.world)
    assert not remind(app.state.world)
    assert shown == [("Due on Towpath 36", "Check after water")]
