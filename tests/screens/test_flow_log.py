"""The log and the search by touches on the real app: the text field opens over its block, what is typed is shown at once."""

from collections.abc import Iterator
from pathlib import Path

import pytest

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


def test_a_ride_is_entered_found_again_and_taken_back(app: Session) -> None:
    app.tap("Log")
    app.tap("+ Add a ride")
    app.settle()
    app.keys("8.4")
    app.tap("Note")
    app.page.writing.text = "to the lock"
    app.tap("Save the ride")
    app.settle()
    assert app.shows("Ride: 8.4\u00a0km")
    app.tap("Search")
    app.settle()
    app.tap("Page, screw, fault, word or log")
    app.page.writing.text = "lock"
    app.settle()
    assert app.shows("Threadlocker")
    app.tap("Ride: 8.4\u00a0km")
    app.settle()
    app.tap("Take it out of the log")
    app.settle()
    assert not app.shows("Ride: 8.4\u00a0km")
    app.tap("Undo")
    app.settle()
    assert app.shows("Ride: 8.4\u00a0km")
