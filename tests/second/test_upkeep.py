"""What is due, and what a check ends in, against a second calculation, over logs and runs drawn at random."""

import json
import os
from collections import Counter
from datetime import UTC, datetime, timedelta
from random import Random

import pytest

from logic import history
from logic.answers.checks import nearly_empty, volts_fault
from logic.board import Value
from logic.checks.lists import checklists
from logic.checks.run import Answer, ChecklistRun
from logic.checks.verdict import fitness, verdict
from logic.exchange import demo_boards
from logic.history import Event, History
from logic.upkeep import rules, upkeep
from tests.second import upkeep as second
from tests.second.pack import Pack, row

LOGS = 5 * int(os.environ.get("SECOND_BOARDS", "40"))
DEMOS = demo_boards()
START = datetime(2026, 3, 1, 9, 0, tzinfo=UTC)
LISTS = (
    "before_ride", "after_ride", "first_recheck", "build.first_ride", "after_crash", "after_water", "storage",
    "from_storage",
)  # fmt: skip
KINDS = (
    "ride",
    "ride",
    "ride",
    "check",
    "check",
    "tension",
    "tension",
    "belt_fitted",
    "snooze",
    "tightening",
)


def drawn_log(luck: Random) -> tuple[list[Event], datetime]:
    """Return a log as it may be written, now and then with the clock of the phone far ahead, and the time now."""
    events: list[Event] = []
    day = 0.0
    for place in range(luck.randint(0, 25)):
        day += luck.choice([0.0, 0.02, luck.uniform(0.0, 2.0), luck.uniform(0.0, 25.0)])
        kind = luck.choice(KINDS)
        about = {
            "check": luck.choice(LISTS),
            "tension": luck.choice(["left", "right"]),
            "belt_fitted": luck.choice(["left", "right"]),
            "tightening": "motor_face",
            "snooze": luck.choice([rule.text("key") for rule in rules()]),
        }.get(kind, "")
        riding = kind == "ride"
        ahead = luck.uniform(300.0, 900.0) if luck.random() < 0.03 else 0.0
        events.append(
            Event(
                place,
                START + timedelta(days=day + ahead),
                kind,
                about,
                luck.choice([0.0, luck.uniform(500.0, 30000.0)]) if riding else 0.0,
                crash=riding and luck.random() < 0.1,
                wet=riding and luck.random() < 0.1,
                finished=kind != "check" or luck.random() < 0.85,
            )
        )
    return events, START + timedelta(
        days=day + luck.choice([0.0, luck.uniform(0.0, 8.0), luck.uniform(0.0, 80.0)])
    )


def test_what_is_due_of_random_logs() -> None:
    counted: Counter[tuple[str, bool]] = Counter()
    for number in range(LOGS):
        luck = Random(number)
        events, now = drawn_log(luck)
        sides = luck.choice([("left",), ("right",), ("left", "right")])
        found, other = upkeep(History(events), sides, now), second.due(events, sides, now)
        words = [(one.key, one.subject, one.name, one.due, one.snoozed, one.stop, one.unit) for one in found]
        assert words == [
            (one.key, one.subject, one.name, one.due, one.snoozed, one.stop, one.unit) for one in other
        ], number
        for ours, theirs in zip(found, other, strict=True):
            assert (ours.share, ours.left) == pytest.approx((theirs.share, theirs.left), rel=1e-3), number
            counted[ours.key, ours.due] += 1
    assert {key for key, _ in counted} == {rule.text("key") for rule in rules()}
    assert len(counted) >= 2 * len(rules()) - 3, counted


def test_a_summary_of_a_log_says_what_the_log_says(monkeypatch: pytest.MonkeyPatch) -> None:
    """The same logs, cut anywhere: summed up there, read back from JSON and followed further. Out of order it is not used."""
    monkeypatch.setattr(history, "NEWEST", 2)
    used = 0
    for number in range(LOGS):
        luck = Random(number)
        events, now = drawn_log(luck)
        cut = luck.randint(len(events) // 2, len(events))
        short = History.from_dict(json.loads(json.dumps(History(events[:cut]).to_dict())))
        for event in events[cut:]:
            short.add(event)
        if not History(events).orderly(now):
            continue
        used += len(short.events) < len(events)
        whole = History(events)
        assert upkeep(short, ("left", "right"), now) == upkeep(whole, ("left", "right"), now), number
        assert (short.ridden(-1), short.faults) == (whole.ridden(-1), whole.faults), number
    assert used > LOGS / 5


def test_a_board_ridden_with_checks_only_has_stood_too() -> None:
    """A finished check after a ride is a ride (decisions of the trade, checks): from it, too, a board stands."""
    events = [Event(1, START, "check", "after_ride")]
    found = upkeep(History(events), ("left",), START + timedelta(days=61))
    assert ("stood", True) in [(one.key, one.due) for one in found]


def test_the_second_calculation_by_hand() -> None:
    """A belt fitted and read on day 0, three rides of 4 km on days 1, 2 and 3; on day 3.5 nothing was looked at since.

    12 km of 10 km is 1.2, and 3.5 of 30 days less: the re-check at 10 km is due, 2 km late. One ride was enough for
    the first re-check: 3 rides of 1. Of 50 km 12 are ridden, 0.24. The reading of day 0 is 3.5 of 30 days and 12 of
    150 km old: 0.117.
    """
    events = [Event(0, START, "belt_fitted", "left"), Event(1, START, "tension", "left")]
    events += [Event(2 + day, START + timedelta(days=1.0 + day), "ride", distance=4000.0) for day in range(3)]
    found = {one.key: one for one in second.due(events, ("left",), START + timedelta(days=3.5))}
    shares = {"belt_first": 3.0, "belt_10": 1.2, "belt_50": 0.24, "belt_month": 3.5 / 30.0}
    assert {key: found[key].share for key in shares} == pytest.approx(shares)
    assert (found["belt_10"].unit, found["belt_10"].left) == ("distance", pytest.approx(-2000.0))


NOTES = ("", "", "", " ", "creeps a little")


def test_what_a_run_ends_in() -> None:
    counted: Counter[str] = Counter()
    lists = sorted(checklists().values(), key=lambda of: of.key != "before_ride")
    for number in range(LOGS):
        luck = Random(number)
        of = lists[0] if luck.random() < 0.6 else luck.choice(lists)
        order = [item.key for item in of.items]
        luck.shuffle(order)
        pace = luck.uniform(0.05, 1.5) * max(of.seconds, 1) / len(order)
        usual, answers = luck.choice([1.0, 0.97, 0.6]), {}
        for place, key in enumerate(order):
            state = (
                "right" if luck.random() < usual else luck.choice(["right", "noted", "aside", "failed", ""])
            )
            if state:
                note = luck.choice(NOTES) if state in ("right", "aside") else "does not turn"
                answers[key] = Answer(state, (START + timedelta(seconds=pace * place)).isoformat(), note)
        breaks = tuple(luck.uniform(0.0, 3.0) for _ in range(luck.randint(0, 2)))
        whole = pace * len(order)
        ended = (START + timedelta(seconds=whole)).isoformat()
        run = ChecklistRun(of.key, of.version, START.isoformat(), ended, tuple(order), "", answers, breaks)
        states = [(answers[key].state, answers[key].note) if key in answers else None for key in order]
        found = verdict(run, of)
        assert found.word == second.ends_in(states)
        assert found.right == [state and state[0] for state in states].count("right")
        assert found.aside == [state and state[0] for state in states].count("aside")
        seconds = max(0.0, whole - sum(breaks))
        assert found.seconds == pytest.approx(seconds, abs=1e-5)
        everything = None not in states
        assert found.fast is (of.kind == "do-confirm" and everything and seconds < 0.3 * of.seconds)
        held = luck.choice(["", "", "", "pack is swollen"])
        put_off = luck.choice([(), (), (("Belt tension", "no scale here"),)])
        elsewhere = luck.choice([(), (), ("Left belt: frayed",)])
        fit = fitness(run, of, held, put_off, elsewhere)
        named = [(of.item(key).name, state) for key, state in zip(order, states, strict=True)]
        other = second.may_ride(named, held, put_off, elsewhere) if of.base == "before_ride" else None
        assert (None if fit is None else (fit.word, fit.why)) == other
        counted.update([found.word, "" if fit is None else fit.word, f"fast {found.fast}"])
    assert set(counted) == {
        "all right", "with notes", "stopped", "not finished", "", "fit to ride", "with care", "do not ride",
        "fast True", "fast False",
    }  # fmt: skip


def test_what_the_volts_of_a_pack_say() -> None:
    """Cells in a row, one by one: a hundredth over full and anything under empty belong to another pack."""
    said: Counter[tuple[str, bool]] = Counter()
    asks = [item for of in checklists().values() for item in of.items if item.ask == "volts"]
    for number in range(LOGS):
        luck = Random(number)
        board, item = luck.choice(DEMOS), luck.choice(asks)
        board = board.with_value("pack.chemistry", Value(luck.choice(["NMC", "NCA", "LFP"])))
        pack = Pack(board.with_value("pack.series", Value(float(luck.randint(3, 14)))))
        volts = luck.uniform(0.9 * pack.at("empty"), 1.05 * pack.at("full"))
        held_back = row("low_voltage", name=pack.text("pack.chemistry"))["start"] * pack.series
        high, low = volts > 1.01 * pack.at("full"), volts < pack.at("empty")
        found = volts_fault(item, volts, pack.board)
        assert found == ("above full" if high else "below empty" if low else "")
        empty = nearly_empty(item, volts, pack.board)
        assert empty is ("low_start" in item.figures and volts < held_back)
        said[found, empty] += 1
    assert len(said) >= 5
