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
    "Wh/km at a speed",
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
    assert len(shown) >= 11
    for name, value in shown.items():
        app.shell.go(name)
        app.settle()
        verdict, figure = leads_with(app.page)
        assert value == figure or value in verdict, name


# Rides and coasting


def test_rides_with_their_speeds_are_laid_over_the_board(app: Session) -> None:
    for used in (7.4, 8.9, 10.4, 13.0, 15.8):
        app.state.record(Ride(distance=6000.0, energy=used * 3.6 * 6000.0, crash=False))
    app.state.record(Ride(distance=6000.0, energy=None, crash=False))
    visit(app, "Wh/km at a speed")
    app.tap("From logged rides")
    assert app.shows("0 of 4 rides")
    for row, speed in zip(list(app.page._row_of), ("29", "25", "21", "16", "12"), strict=True):  # noqa: SLF001  (the rides)
        app.tap(row)
        app.type(speed)
        app.tap("Done")
    assert app.shows("From 5 rides")
    assert float(value_of(app, "Rolling coefficient from rides")) == pytest.approx(0.015, abs=0.005)
    app.tap("Try both on the board")
    assert app.state.board.load.rolling.known == "measured"
    app.key(27)
    assert app.shows("entered on the board")


def test_a_coast_is_laid_over_the_board(app: Session) -> None:
    visit(app, "Wh/km at a speed")
    app.tap("From a coast")
    ask(app, "Coast from", "18")
    ask(app, "Rolled until standstill", "62")
    app.tap("Try 0.0158 on the board")
    assert app.state.board.load.rolling.si == pytest.approx(0.0158, abs=5e-5)
