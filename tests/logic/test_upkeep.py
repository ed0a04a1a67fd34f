"""What is due, by rules over a log that a person can follow by hand."""

from datetime import UTC, datetime, timedelta

import pytest

from logic.ledger import Event, History
from logic.upkeep import due_now, upkeep

START = datetime(2026, 11, 1, 9, 0, tzinfo=UTC)


def at(day: float) -> datetime:
    return START + timedelta(days=day)


def history(*events: tuple[float, str, dict]) -> History:
    return History(Event(row, at(day), kind, **rest) for row, (day, kind, rest) in enumerate(events, start=1))


def keys(past: History, day: float, sides: tuple[str, ...] = ("left",)) -> list[tuple[str, str]]:
    return [(one.key, one.subject) for one in due_now(past, sides, at(day))]


RIDE = {"distance": 4000.0}
NEW = (0, "belt_fitted", {"about": "left"})
READ = (0, "tension", {"about": "left"})


def test_nothing_is_due_on_an_empty_log():
    assert upkeep(History(), ("left", "right"), at(0)) == ()


def test_a_new_belt_is_looked_at_after_its_first_ride_at_10_km_and_at_50_km():
    past = history(NEW, READ)
    assert keys(past, 0.5) == []
    past = history(NEW, READ, (1, "ride", RIDE))
    assert keys(past, 1.1) == [("belt_first", "left")]
    past = history(NEW, READ, (1, "ride", RIDE), (1.1, "tension", {"about": "left"}))
    assert keys(past, 1.2) == []
    past = history(
        NEW, READ, (1, "ride", RIDE), (1.1, "tension", {"about": "left"}), (2, "ride", {"distance": 7000.0})
    )
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


def test_each_belt_counts_by_itself():
    past = history(
        NEW, (0, "belt_fitted", {"about": "right"}), (1, "ride", RIDE), (1.1, "tension", {"about": "left"})
    )
    assert keys(past, 1.2, ("left", "right")) == [("belt_first", "right")]


@pytest.mark.parametrize(
    ("flag", "key", "base"), [("crash", "crash", "after_crash"), ("wet", "water", "after_water")]
)
def test_a_crash_and_a_soaking_are_due_at_once_until_their_list_is_run(flag, key, base):
    past = history((0, "ride", {**RIDE, flag: True}))
    assert keys(past, 0.1) == [(key, "")]
    unfinished = history(
        (0, "ride", {**RIDE, flag: True}), (0.1, "check", {"about": base, "finished": False})
    )
    assert keys(unfinished, 0.2) == [(key, "")]
    done = history((0, "ride", {**RIDE, flag: True}), (0.1, "check", {"about": base}))
    assert keys(done, 0.2) == []


def test_a_finished_check_before_a_ride_is_a_ride_and_the_entry_within_a_day_completes_it():
    check = (1, "check", {"about": "before_ride"})
    assert history(NEW, check).ridden(0) == (1, 0.0)
    assert history(NEW, check, (1.2, "ride", RIDE)).ridden(0) == (1, 4000.0)
    assert history(NEW, check, (2.2, "ride", RIDE)).ridden(0) == (2, 4000.0)
    assert history(check, (1.05, "tension", {"about": "left"}), (1.2, "ride", RIDE)).ridden(1) == (1, 4000.0)


def test_snoozed_until_the_next_ride():
    past = history((0, "ride", {**RIDE, "crash": True}), (0.1, "snooze", {"about": "crash"}))
    assert keys(past, 0.2) == []
    assert [one.snoozed for one in upkeep(past, ("left",), at(0.2)) if one.key == "crash"] == [True]
    assert keys(past, 9) != []
    past = history(
        (0, "ride", {**RIDE, "crash": True}), (0.1, "snooze", {"about": "crash"}), (0.5, "ride", RIDE)
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
