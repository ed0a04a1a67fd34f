"""What every page has that answers while one tries values: the same by touch and key, whatever it is about."""

import pytest

from tests.screens.session import Session

PAGES = [
    ("Wh/km at a speed", "load.board_mass", "14"),
]
"""A page, a value of the board that its first answer depends on, and another one for it."""


def visit(app: Session, row: str) -> Session:
    """Open a page from the list."""
    app.tap("Numbers")
    app.tap(row)
    return app


@pytest.mark.parametrize(("row", "key", "text"), PAGES)
def test_a_trial_is_told_against_the_saved_board_until_it_is_dropped(
    app: Session, row: str, key: str, text: str
) -> None:
    visit(app, row)
    assert app.page.head.difference == ""
    app.page.edit(key)
    app.type(text)
    app.tap("Done")
    assert app.page.head.difference.endswith("against the saved board")
    assert app.page.trying.startswith("Trying: ")
    app.tap("Drop the trial")
    assert (app.page.head.difference, app.page.trying) == ("", "")


@pytest.mark.parametrize(("row", "key"), [(row, key) for row, key, _ in PAGES])
def test_the_keypad_has_the_height_of_the_four_places(app: Session, row: str, key: str) -> None:
    visit(app, row)
    app.page.edit(key)
    app.settle()
    assert app.shell.nav.parent is None
    app.key(27)
    assert app.shell.nav.parent is not None
    assert app.page.title != "Numbers"


@pytest.mark.parametrize("row", [row for row, *_ in PAGES])
def test_tab_asks_for_the_first_value(app: Session, row: str) -> None:
    visit(app, row)
    app.key(9)
    assert app.page.field.key == app.page.keys[0]
