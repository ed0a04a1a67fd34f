"""Ride when something stands in its way: a pack out of use, a check that stops a ride; and what the bars say."""

from dataclasses import replace
from typing import Any

import pytest

from logic.checks.lists import Checklist, checklist
from logic.log import Ride
from screens.asked import out_key
from screens.widgets.bar import Bar
from screens.widgets.row import Row
from tests.screens.session import Session

PRE = checklist("before_ride")


def run_through(app: Session) -> None:
    """Say of every item of the run in front that it is as wanted, up to its closing card."""
    app.frame(2)
    while app.shell.trail[-1][0] == "ride.run":
        app.frame(seconds=0.4)
        session = app.page.world.session(app.page.args["list"])
        item = session.of.item(session.under_way.at)
        if item.ask == "volts":
            app.keys("40")
        elif item.ask:
            app.tap(item.options[0])
        app.tap(item.state.upper())
    app.settle()


def take_out(state: Any, sign: str) -> None:
    state.remember(out_key(state), {"sign": sign, "at": state.clock().isoformat()})
    state.changed()


def bars(app: Session) -> list[str]:
    """The words of the bars, from the top."""
    found = [widget for widget in app.walk() if isinstance(widget, Bar)]
    return [bar.text for bar in sorted(found, key=lambda bar: -bar.to_window(*bar.pos)[1])]


def rows(app: Session) -> list[str]:
    return [widget.title for widget in app.walk() if isinstance(widget, Row)]


def last_check(app: Session) -> dict[str, Any]:
    return app.state.last("check").body


@pytest.fixture
def out(app: Session) -> Session:
    """Give the app with the pack of Towpath 36 taken out of use."""
    take_out(app.state, "swollen")
    app.settle()
    return app


def test_with_its_pack_out_of_use_ride_leads_to_what_to_do_and_checks_step_back(out: Session) -> None:
    assert bars(out) == ["Pack out of use: what to do"]
    assert out.page.foot.children[0].kind == "bad-outline"
    assert {"Pre-ride", "After-ride", "Tension check"} <= set(rows(out))
    out.tap("Pack out of use: what to do")
    assert out.page.title == "Pack: stop signs"
    out.tap("Another pack is in the board")
    out.tap("Put into use again")
    out.key(27)
    out.settle()
    assert "PRE-RIDE" in bars(out)
    assert "Pre-ride" not in rows(out)


def test_due_work_is_a_plain_row_while_the_pack_is_out_of_use(out: Session) -> None:
    out.state.record(Ride(distance=8000.0, wet=True))
    out.settle()
    assert bars(out) == ["Pack out of use: what to do"]
    out.tap("Due: Check after water")
    assert out.page.title.startswith("After water")


@pytest.fixture
def wet(app: Session) -> Session:
    """Give the app at the end of a check before a ride, every item right, a check after water due."""
    app.state.record(Ride(distance=8000.0, wet=True))
    app.looked_over()
    app.tap("PRE-RIDE")
    run_through(app)
    return app


def test_it_can_be_put_off_with_a_reason_that_the_record_keeps(wet: Session) -> None:
    wet.tap("Put it off")
    assert wet.shows("A reason is wanted")
    wet.tap("Why it can wait")
    wet.page.writing.text = "Only the deck was wet"
    wet.tap("Put off until the next ride")
    crown = wet.page.page.crown
    assert crown.word == "With care"
    assert crown.text.startswith("Check after water is put off.")
    assert wet.row("Put off: Check after water").detail == "Only the deck was wet"
    wet.tap("FINISH")
    assert last_check(wet).put_off == (("Check after water", "Only the deck was wet"),)
    assert wet.state.last("snooze").body.reason == "Only the deck was wet"
    wet.tap("Log")
    assert wet.shows("9 of 9 right. Put off: Check after water: Only the deck was wet")
    # The check is no ride yet; the next ride brings it back.
    wet.settle()
    assert wet.state.due == ()
    wet.state.record(Ride(distance=1000.0))
    wet.settle()
    assert [one.key for one in wet.state.due] == ["water"]


def test_a_ride_waits_beside_after_ride_until_it_is_entered(app: Session) -> None:
    assert "Add a ride" in rows(app)
    assert "Add a ride" not in bars(app)
    app.tap("PRE-RIDE")
    run_through(app)
    app.tap("FINISH")
    app.settle()
    assert set(bars(app)[1:3]) == {"Add a ride", "AFTER-RIDE"}
    beside = {widget.text: widget.y for widget in app.walk() if isinstance(widget, Bar)}
    assert beside["Add a ride"] == beside["AFTER-RIDE"]
    assert "Add a ride" not in rows(app)
    app.tap("Add a ride")
    app.keys("8.4")
    app.tap("SAVE THE RIDE")
    app.settle()
    assert "Add a ride" not in bars(app)


def test_a_ride_never_entered_stops_waiting_after_a_day(app: Session) -> None:
    app.tap("PRE-RIDE")
    run_through(app)
    app.tap("FINISH")
    app.settle()
    assert "Add a ride" in bars(app)
    app.restart(hours=25)
    assert "Add a ride" not in bars(app)


def test_the_counts_are_those_of_the_list_as_it_fits_the_board(
    app: Session, monkeypatch: pytest.MonkeyPatch
) -> None:
    def shorter(of: Checklist, _board: object) -> Checklist:
        return replace(of, items=of.items[:-2], seconds=60)

    monkeypatch.setattr("screens.state.for_board", shorter)
    monkeypatch.setattr("screens.world.for_board", shorter)
    app.state.changed()
    app.settle()
    assert app.shows("7 items, about 60 seconds")
    assert app.shows("4 items")
    app.tap("All checks")
    assert app.row("Before a ride").detail.startswith("7 items")
    app.tap("Before a ride")
    assert app.page.title.endswith("1 of 7")
    app.tap("FLAT, DRY, NO SMELL")
    app.key(27)
    assert app.row("Before a ride").detail == "You stopped at 2 of 7, just now."
