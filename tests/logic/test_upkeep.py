"""What is due, by rules over a log that a person can follow by hand."""

from collections.abc import Iterable
from datetime import UTC, datetime, timedelta

import pytest

from logic.history import Event, History
from logic.upkeep import Due, upkeep

START = datetime(2026, 11, 1, 9, 0, tzinfo=UTC)


def at(day: float) -> datetime:
    return START + timedelta(days=day)


def history(*events: tuple[float, str, dict]) -> History:
    return History(Event(row, at(day), kind, **rest) for row, (day, kind, rest) in enumerate(events, start=1))


def due_on(past: History, sides: Iterable[str], now: datetime) -> list[Due]:
    return [one for one in upkeep(past, sides, now) if one.due]


def keys(past: History, day: float, sides: tuple[str, ...] = ("left",)) -> list[tuple[str, str]]:
    return [(one.key, one.subject) for one in due_on(past, sides, at(day))]


RIDE = {"distance": 4000.0}
NEW = (0, "belt_fitted", {"about": "left"})
READ = (0, "tension", {"about": "left"})


def test_nothing_is_due_on_an_empty_log():
    assert upkeep(History(), ("left", "right"), at(0)) == ()


def test_a_new_belt_is_looked_at_after_its_first_ride_at_10_km_and_at_50_km():
    past = history(NEW, READ)
    assert keys(past, 0.5) == []
    ridden = (NEW, READ, (1, "ride", RIDE), (1.05, "check", {"about": "first_recheck"}))
    past = history(*ridden)
    assert keys(past, 1.1) == [("belt_first", "left")]
    past = history(*ridden, (1.1, "tension", {"about": "left"}))
    assert keys(past, 1.2) == []
    past = history(*ridden, (1.1, "tension", {"about": "left"}), (2, "ride", {"distance": 7000.0}))
    assert keys(past, 2.1) == [("belt_10", "left")]


def test_a_look_a_little_early_counts():
    past = history(
        NEW, READ, (1, "ride", {"distance": 8200.0}), (1.1, "tension", {"about": "left"}), (2, "ride", RIDE)
    )
    assert ("belt_10", "left") not in keys(past, 2.1)


def test_a_date_backs_the_distance_up():
    past = history(NEW, READ)
    assert ("belt_first", "left") in keys(past, 8)
    assert ("belt_month", "left") in keys(history(READ), 30.5)


def test_each_belt_counts_by_itself_and_both_are_one_thing_to_do():
    both = (NEW, (0, "belt_fitted", {"about": "right"}), (1, "ride", RIDE))
    done = (1.05, "check", {"about": "first_recheck"})
    assert keys(history(*both, done), 1.2, ("left", "right")) == [("belt_first", "both")]
    past = history(*both, (1.1, "tension", {"about": "left"}), done)
    assert keys(past, 1.2, ("left", "right")) == [("belt_first", "right")]


def test_a_board_ridden_25_km_with_no_tension_in_the_log_is_due():
    # Decisions of the trade, checks: a belt never measured is due.
    ridden = [(day, "ride", {"distance": 5000.0}) for day in range(1, 6)]
    past = history(*ridden)
    found = due_on(past, ("left", "right"), at(5.5))
    assert [(one.name, one.subject) for one in found if one.opens == "ride.tension"] == [
        ("First tension check", "both")
    ]
    assert found[0].stop
    measured = history(*ridden, *((5.1, "tension", {"about": side}) for side in ("left", "right")))
    assert not [one for one in due_on(measured, ("left", "right"), at(5.5)) if one.opens == "ride.tension"]


def test_the_first_ride_starts_the_clock_of_a_board_that_was_not_built_here():
    assert upkeep(history(), ("left",), at(0)) == ()
    for first in ((1, "ride", RIDE), (1, "check", {"about": "after_ride"})):
        assert [one.key for one in due_on(history(first), ("left",), at(1.1))] == [
            "belt_first",
            "joints_first",
        ]
    three = history(*((day, "ride", RIDE) for day in (1, 2, 3)))
    assert "pre_ride" in [one.key for one in due_on(three, ("left",), at(3.1))]


YEAR = 365.0


def test_a_clock_set_ahead_and_back_hides_nothing_that_is_due():
    ahead = history(READ, (YEAR, "tension", {"about": "left"}))
    assert ("belt_month", "left") not in keys(ahead, 20)
    assert ("belt_month", "left") in keys(ahead, 31)
    # A look whose date says a year was no look at 60 days.
    new = history(NEW, (YEAR, "tension", {"about": "left"}))
    assert "belt_50" not in [one.key for one in due_on(new, ("left",), at(1))]
    assert "belt_50" in [one.key for one in due_on(new, ("left",), at(61))]
    # No plausible date at all: due by date until something says when it was.
    assert keys(history((YEAR, "tension", {"about": "left"})), 5) != []


def test_nothing_that_is_due_is_hidden_once_the_wrong_date_has_come():
    """By hand: read on day 1 while the clock said day 60; a ride on day 3. Due by date from day 30 on, and it stays so."""
    ahead = history(READ, (60, "tension", {"about": "left"}), (3, "ride", RIDE))
    for day in (31, 59, 60, 65, 80):
        assert ("belt_month", "left") in keys(ahead, day), day
    # One entry of a clock that had lost its time tells nothing of those before it.
    lost = history(READ, (20, "tension", {"about": "left"}), (-4000, "ride", RIDE))
    assert ("belt_month", "left") not in keys(lost, 40)
    assert ("belt_month", "left") in keys(lost, 51)


def test_a_snooze_that_has_ended_does_not_begin_again_on_the_day_it_bears():
    crash = (0, "ride", {**RIDE, "crash": True})
    past = history(crash, (40, "snooze", {"about": "crash"}), (2, "tension", {"about": "left"}))
    assert "crash" not in [key for key, _ in keys(past, 3)]
    for day in (8, 39, 41, 45):
        assert "crash" in [key for key, _ in keys(past, day)], day


def test_a_snooze_from_a_clock_set_ahead_ends():
    crash = (0, "ride", {**RIDE, "crash": True})
    past = history(crash, (YEAR, "snooze", {"about": "crash"}))
    assert "crash" not in [key for key, _ in keys(past, 1)]
    assert "crash" in [key for key, _ in keys(past, 8)]


@pytest.mark.parametrize(
    ("flag", "key", "base"), [("crash", "crash", "after_crash"), ("wet", "water", "after_water")]
)
def test_a_crash_and_a_soaking_are_due_at_once_until_their_list_is_run(flag, key, base):
    looked = ((0.05, "tension", {"about": "left"}), (0.06, "check", {"about": "first_recheck"}))
    past = history((0, "ride", {**RIDE, flag: True}))
    assert keys(past, 0.1)[0] == (key, "")
    unfinished = history(
        (0, "ride", {**RIDE, flag: True}), *looked, (0.1, "check", {"about": base, "finished": False})
    )
    assert keys(unfinished, 0.2) == [(key, "")]
    done = history((0, "ride", {**RIDE, flag: True}), *looked, (0.1, "check", {"about": base}))
    assert keys(done, 0.2) == []


def test_a_check_before_a_ride_is_no_ride_and_an_entry_near_a_check_after_it_is_the_same_one():
    # Decisions of the trade, checks: a finished pre-ride is no ride; an entered ride or a finished after-ride is.
    assert history(NEW, (1, "check", {"about": "before_ride"})).ridden(0) == (0, 0.0)
    after = (1, "check", {"about": "after_ride"})
    assert history(NEW, after).ridden(0) == (1, 0.0)
    assert history(NEW, after, (1.2, "ride", RIDE)).ridden(0) == (1, 4000.0)
    assert history(NEW, (0.9, "ride", RIDE), after).ridden(0) == (1, 4000.0)
    assert history(NEW, after, (2.2, "ride", RIDE)).ridden(0) == (2, 4000.0)
    assert history(NEW, (1, "ride", RIDE), (1.1, "ride", RIDE), after).ridden(0) == (2, 8000.0)
    unfinished = (1, "check", {"about": "after_ride", "finished": False})
    assert history(NEW, unfinished).ridden(0) == (0, 0.0)


def test_snoozed_until_the_next_ride():
    looked = ((0.05, "tension", {"about": "left"}), (0.06, "check", {"about": "first_recheck"}))
    past = history((0, "ride", {**RIDE, "crash": True}), *looked, (0.1, "snooze", {"about": "crash"}))
    assert keys(past, 0.2) == []
    assert [one.snoozed for one in upkeep(past, ("left",), at(0.2)) if one.key == "crash"] == [True]
    assert keys(past, 9) != []
    past = history(
        (0, "ride", {**RIDE, "crash": True}),
        *looked,
        (0.1, "snooze", {"about": "crash"}),
        (0.5, "ride", RIDE),
    )
    assert keys(past, 0.6) == [("crash", "")]


def test_stop_items_come_first_and_what_is_left_is_told():
    past = history(READ, (1, "ride", {**RIDE, "crash": True}))
    found = upkeep(past, ("left",), at(45))
    due = [one for one in found if one.due]
    assert [one.stop for one in due] == sorted((one.stop for one in due), reverse=True)
    assert "crash" in [one.key for one in due if one.stop]
    assert found[: len(due)] == tuple(due)
    month = next(one for one in found if one.key == "belt_month")
    assert (month.unit, month.left) == ("days", pytest.approx(-15.0))
