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


# Climbs, wheels, the bench, units


def test_a_climb_is_held_for_a_time_or_for_good(app: Session) -> None:
    visit(app, "Hold for how long")
    ask(app, "Climb", "14")
    assert app.page.head.unit in ("min", "s")
    assert "if it cools badly" in app.page.head.detail
    ask(app, "Climb", "2")
    assert app.page.head.detail == "Stays below the limit however long it climbs."


def test_a_rolled_out_wheel_is_laid_over_the_board(app: Session) -> None:
    visit(app, "Wheel wear and size")
    ask(app, "Rolled from mark to mark", "3.02")
    # Ours: 3.02 m / 10 / pi = 96.13 mm.
    assert app.page.head.value == "96.1"
    app.tap(f"Try 96.1{GAP}mm on the board")
    assert app.state.board.drive.wheel_diameter.si == pytest.approx(0.09613, abs=5e-6)
    assert app.state.board.drive.wheel_diameter.known == "measured"


def test_a_motor_is_measured_on_the_bench(app: Session) -> None:
    visit(app, "Motor from the bench")
    ask(app, "Magnets in the can", "13")
    assert app.shows("Magnets come in pairs of poles: an odd count was miscounted.")
    ask(app, "Volts between two wires", "0.46")
    ask(app, "Amps through them", "10")
    assert value_of(app, "Winding, line to line") == "46 mΩ"
    app.tap("Try the measured values on the board")
    assert app.state.board.motor.resistance.si == pytest.approx(0.046)


def test_units_are_read_as_they_are_typed(app: Session) -> None:
    visit(app, "Units")
    app.tap(app.row("Torque"))
    app.type("1.5 Nm")
    assert {"13.2761", "1.10634", "15.2957"} <= {
        card.value for card in app.walk() if isinstance(card, Result)
    }
    app.tap("Done")
    app.tap(app.row("Wire gauge"))
    app.type("12")
    assert value_of(app, "Cross-section") == "3.31 mm²"


def test_a_wrong_number_keeps_the_rest(app: Session) -> None:
    visit(app, "Units")
    app.tap(app.row("Length"))
    app.type("3 furlong")
    app.frame(seconds=1.0)
    assert any("unit is not known" in text for text in app.texts())
    app.tap("Done")
    app.tap(app.row("Length"))
    assert app.page.entry.text == "3 furlong"
