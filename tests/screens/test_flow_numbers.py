"""The fuller half of Numbers by touch and key."""

from typing import Any

import pytest

from logic.log import Ride
from screens.blocks import Figure, FigureRow
from screens.widgets.result import Result
from tests.screens.session import Session

GAP = "\u00a0"


def visit(app: Session, row: str) -> Session:
    """Open a page from the list."""
    app.tap("Numbers")
    app.tap(row)
    return app


def ask(app: Session, chip: str, text: str) -> None:
    """Type a value for a chip."""
    app.tap(chip if getattr(app.page, "data", False) else app.row(chip))
    app.type(text)
    app.tap("Done")


def value_of(app: Session, label: str) -> str:
    """Return what the result of a label shows."""
    card = next(widget for widget in app.walk() if isinstance(widget, Result) and widget.label == label)
    return f"{card.value} {card.unit}".strip()


PAGES = (
    "Gearing and speed",
    "Speed and push in full",
    "Pairs of pulleys",
    "Stopping",
    "Two set-ups side by side",
    "Hold for how long",
    "Wheel wear and size",
    "Motor from the bench",
    "Units",
)


@pytest.mark.parametrize("row", PAGES)
def test_each_page_is_two_taps_away_and_back_is_one(app: Session, row: str) -> None:
    taps = app.taps
    visit(app, row)
    assert app.taps - taps == 2
    assert app.page.title != "Numbers"
    app.key(27)
    assert app.page.title == "Numbers"


# The list


def leads_with(page: Any) -> tuple[str, str]:
    """Return the verdict and the first figure of a page."""
    if not getattr(page, "data", False):
        return "", f"{page.head.value}{GAP}{page.head.unit}"
    blocks = [page.page.crown, *page.page.blocks]
    first = next(block for block in blocks if isinstance(block, Figure | FigureRow))
    return page.page.crown.said(), f"{first.number}{GAP}{first.unit}"


@pytest.mark.parametrize("when", ["as it begins", "with rides and other questions"])
def test_a_row_of_the_list_shows_the_figure_its_page_leads_with(app: Session, when: str) -> None:
    if when != "as it begins":
        for used in (9.4, 12.0, 14.1):
            app.state.record(Ride(distance=6000.0, energy=used * 3.6 * 6000.0, crash=False))
        visit(app, "Range").tap("At a speed of, one more")
        ask(visit(app, "Does it fit"), "Wear asked about, off the diameter", "4")
    app.tap("Numbers")
    app.settle()
    shown = {name: row.value for name, row in app.page._rows.items() if row.value}  # noqa: SLF001  (the rows)
    assert len(shown) >= 10
    for name, value in shown.items():
        app.shell.go(name)
        app.settle()
        verdict, figure = leads_with(app.page)
        assert value == figure or value in verdict, name
