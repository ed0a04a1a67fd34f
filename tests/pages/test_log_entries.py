"""Rides, notes, corrections, upkeep, and the bin, as one who writes and reads the log."""

import sqlite3
from contextlib import closing
from dataclasses import replace

import pytest

from logic.log import BeltFitted, Check, Note, Ride, Snooze, Tension, Work
from screens.acts import Arrive, Place, Undo
from screens.acts.entering import Write
from screens.acts.keeping import Record, Settle, Void
from screens.reminder import remind
from tests.pages.reader import Reader
from tests.pages.test_layout import SCALES, SIZES, faults, laids


def add_ride(pages: Reader, way: str = "8.4", *flags: str) -> int:
    pages.open("log.ride")
    pages.type(way)
    for flag in flags:
        pages.tap(flag)
    pages.tap("Save the ride")
    return pages.records("ride")[0].id


def looked_over(pages: Reader) -> None:
    """Log what a board wants after its first ride: the tension of each belt and the joints' re-check."""
    for side in pages.world.saved.sides:
        pages.act(Record(Tension(belt=side, tension=60.0, error=10.0)))
    check = Check(list="first_recheck", base="first_recheck", verdict="all right", right=7, total=7)
    pages.act(Record(check))


def due(pages: Reader) -> list[tuple[str, str]]:
    return [(one.key, one.subject) for one in pages.world.due]


# A ride


def test_a_ride_is_entered_in_a_few_keys_with_the_body_that_others_read(pages: Reader) -> None:
    pages.open("log.ride")
    pages.type("8.4")
    pages.tap("Energy used")
    pages.type("92")
    pages.act(Write("ride/new/note", "Head wind"))
    pages.tap("Save the ride")
    said = pages.records("ride")[0].body
    assert said == Ride(distance=pytest.approx(8400.0), energy=pytest.approx(331200.0), note="Head wind")
    assert pages.name != "log.ride"
    pages.open("log.ride")
    assert (pages.typed, pages["energy"].value) == ("", "not set")
    pages.back()
    pages.act(Undo())
    assert pages.records("ride") == []


def test_what_is_typed_of_a_ride_survives_leaving(pages: Reader) -> None:
    pages.open("log.ride")
    pages.type("12.")
    pages.act(Write("ride/new/note", "to the lock"))
    pages.back()
    pages.restart(minutes=5)
    pages.open("log.ride")
    assert (pages.typed, pages["ride/new/note"].text) == ("12.", "to the lock")


def test_wrong_figures_are_told_and_kept(pages: Reader) -> None:
    pages.open("log.ride")
    assert pages.page.foot.main.act is None
    assert pages.page.foot.main.why.startswith("The distance is wanted")
    pages.type("5")
    pages.tap("Volts before")
    pages.type("38")
    pages.tap("Volts after")
    pages.type("41")
    assert pages.page.foot.main.act is None
    assert pages.page.foot.main.why.startswith("More volts after than before")
    assert pages.records("ride") == []


def test_a_ride_keeps_what_stood_and_says_what_was_not_used(pages: Reader) -> None:
    pages.open("log.ride")
    pages.type("12")
    pages.tap("Volts before")
    pages.type("4100")
    assert pages.page.foot.main.act is None
    pages.tap("Volts after")
    assert pages["volts_before"].detail == "4100 not used"
    pages.tap("Save the ride")
    body = pages.records("ride")[0].body
    assert (body.distance, body.volts_before) == (12000.0, None)


@pytest.mark.parametrize(("days", "volts"), [(0.5, 40.6), (2.0, None), (-0.5, None)])
def test_volts_of_a_check_count_for_a_day_and_can_be_left_out(
    pages: Reader, days: float, volts: float
) -> None:
    """A check dated ahead was read while the clock was wrong: nobody knows how old it is."""
    check = Check(list="before_ride", base="before_ride", verdict="all right", values={"charge": 40.6})
    pages.act(Record(check))
    pages.restart(days=days)
    pages.open("log.ride")
    pages.type("5")
    if volts is not None:
        assert (pages["volts_before"].value, pages["volts_before"].detail) == (
            "40.6\u00a0V",
            "from the check",
        )
    pages.tap("Save the ride")
    assert pages.records("ride")[0].body.volts_before == volts
    if volts is not None:
        pages.open("log.ride")
        pages.type("6")
        pages.tap("Leave these volts out")
        pages.tap("Save the ride")
        assert pages.records("ride")[0].body.volts_before is None


def test_a_correction_keeps_what_was_and_can_be_taken_back(pages: Reader) -> None:
    pages.act(Record(Ride(distance=8437.0, energy=300e3)))
    number = pages.records("ride")[0].id
    pages.open("log.entry", number=number)
    pages.tap("Correct it")
    assert pages.typed == "8.437"
    # 300 kJ / 3.6 kJ/Wh = 83.333... Wh, which nobody typed.
    assert pages["energy"].value == "83.3\u00a0Wh"
    pages.tap("Crash")
    pages.tap("Save the correction")
    # What was not touched keeps the digits that are not shown.
    assert pages.store.entry(number).body == Ride(distance=8437.0, energy=300e3, crash=True)
    pages.tap("Correct it")
    pages.rub(5)
    pages.type("9.1")
    pages.tap("Energy used")
    pages.rub(4)
    pages.tap("Save the correction")
    assert pages.store.entry(number).body == Ride(distance=pytest.approx(9100.0), crash=True)
    assert pages.shows("As it was before")
    assert pages.shows("Ride: 8.44\u00a0km")
    pages.tap("Take the correction back")
    assert pages.store.entry(number).body.distance == 8437.0
    pages.act(Undo())
    assert pages.store.entry(number).body.distance == pytest.approx(9100.0)


# Notes, work and belts


def test_a_note_wants_words_and_a_correction_begins_with_them(pages: Reader) -> None:
    pages.open("log.note")
    assert pages.page.foot.main.act is None
    assert pages.page.foot.main.why == "Write a few words first."
    pages.tap("Repair or work")
    pages.act(Write("note/new", "New bearings"))
    pages.tap("Save")
    assert pages.records("work")[0].body == Work(note="New bearings")
    number = pages.records("work")[0].id
    pages.open("log.entry", number=number)
    pages.tap("Correct it")
    assert pages[f"note/{number}"].text == "New bearings"
    pages.act(Write(f"note/{number}", ""))
    assert pages[f"note/{number}"].text == ""
    pages.act(Write(f"note/{number}", "New bearings, front"))
    pages.tap("Save")
    assert pages.store.entry(number).body == Work(note="New bearings, front")


def test_a_new_belt_begins_its_rechecks(pages: Reader) -> None:
    pages.open("log.note")
    pages.tap("New belt")
    pages.tap("Right belt")
    pages.tap("Save")
    assert pages.records("belt_fitted")[0].body == BeltFitted(belt="right")
    add_ride(pages)
    assert due(pages) == [("belt_first", "both"), ("joints_first", "")]
    pages.open("log.due")
    assert pages.page.crown.word == "First tension check (both belts)"


# The bin, and the way back


def test_an_entry_is_taken_out_with_undo_and_found_again_later(pages: Reader) -> None:
    number = add_ride(pages)
    pages.open("log.entry", number=number)
    pages.tap("Take it out of the log")
    assert pages.records("ride") == []
    pages.act(Undo())
    assert [one.id for one in pages.records("ride")] == [number]
    pages.open("log.entry", number=number)
    pages.tap("Take it out of the log")
    pages.open("log.bin")
    pages.tap("Ride: 8.4\u00a0km")
    assert pages.shows("Taken out of the log.")
    pages.tap("Bring it back")
    assert [one.id for one in pages.records("ride")] == [number]


def test_the_bin_shows_its_older_entries_too(pages: Reader) -> None:
    for count in range(45):
        pages.store.void(pages.store.append(pages.world.saved.id, Note(note=f"note {count:02}")))
    pages.restart()
    pages.open("log.bin")
    assert (pages.shows("note 44"), pages.shows("note 03")) == (True, False)
    pages.tap("Older entries")
    assert pages.shows("note 00")


def test_undo_of_a_log_entry_acts_on_it_whatever_board_is_in_use(pages: Reader) -> None:
    board = pages.world.saved.id
    number = add_ride(pages)
    other = next(one.id for one in pages.world.boards() if one.id != board)
    pages.store.put("board", other)
    step = pages.world.undo
    pages.restart()
    pages.world = replace(pages.world, undo=step)
    assert pages.world.saved.id == other
    pages.act(Undo())
    assert pages.store.entry(number).voided_by is not None
    # The board in use is not changed by it.
    assert (pages.world.saved.id, pages.store.get("board")) == (other, other)


def test_undo_of_what_is_gone_says_so_and_changes_nothing(pages: Reader) -> None:
    number = add_ride(pages)
    step = pages.world.undo
    pages.act(Void(number))
    pages.world = replace(pages.world, undo=step)
    pages.act(Undo())
    assert pages.world.undo.text == "What this would take back is gone. Nothing was changed."
    assert pages.store.entry(number).voided_by is not None
    # The bar only says it: a second tap closes it.
    pages.act(Undo())
    assert pages.world.undo is None


def test_undo_of_a_board_that_is_gone_says_so(pages: Reader) -> None:
    pages.open("numbers.gearing")
    pages.tap("Motor pulley, one more")
    pages.tap("Drop")
    step, board = pages.world.undo, pages.world.saved.id
    pages.store.bin_board(board)
    pages.store.put("board", next(one.id for one in pages.world.boards() if one.id != board))
    pages.restart()
    now = pages.world.saved.id
    pages.world = replace(pages.world, undo=step)
    pages.act(Undo())
    assert pages.world.undo.text.startswith("What this would take back is gone.")
    assert (pages.world.saved.id, pages.world.trial) == (now, {})


# Upkeep


def test_a_wet_ride_is_due_until_put_off_with_a_reason(pages: Reader) -> None:
    add_ride(pages, "8.4", "Wet")
    looked_over(pages)
    assert due(pages) == [("water", "")]
    pages.open("log.due")
    assert (pages.page.crown.word, pages.page.crown.form) == ("Check after water", "wrong")
    pages.tap("Not now")
    assert pages.page.foot.main.act is None
    assert pages.page.foot.main.why.startswith("A reason is wanted")
    pages.act(Write("snooze/water", "Only the deck was wet"))
    pages.tap("Put off until the next ride")
    assert due(pages) == []
    assert pages.records("snooze")[0].body.reason == "Only the deck was wet"
    pages.act(Undo())
    assert due(pages) == [("water", "")]
    pages.act(Record(Snooze(rule="water", reason="dry by now", stop=True)))
    add_ride(pages)
    assert due(pages) == [("water", "")]


def test_what_is_due_opens_what_clears_it(pages: Reader) -> None:
    add_ride(pages, "8.4", "Crash")
    looked_over(pages)
    pages.open("log.due")
    pages.tap("Check now")
    assert (pages.name, pages.world.args["list"]) == ("ride.run", "after_crash")


def test_upkeep_says_who_says_so_and_folds_what_is_far(pages: Reader) -> None:
    pages.open("log.due")
    assert pages.page.crown.text.startswith("Rules begin with the first")
    add_ride(pages)
    looked_over(pages)
    pages.open("log.due")
    assert pages.page.crown.word == "Nothing is due"
    rules = len(pages.world.upcoming)
    assert rules > 3
    open_now = [block for block in pages.blocks() if getattr(block, "icon", "") == "clock"]
    assert len(open_now) == 3
    assert all("practice" in block.detail or ", p." in block.detail for block in open_now)
    pages.tap("All rules")
    assert len([block for block in pages.blocks() if getattr(block, "icon", "") == "clock"]) == rules


def test_the_note_of_the_day_comes_once_only_when_asked_for_and_ridden(
    pages: Reader, monkeypatch: pytest.MonkeyPatch
) -> None:
    shown = []
    monkeypatch.setattr("screens.reminder.notice", lambda title, text: shown.append((title, text)) or True)
    add_ride(pages, "8.4", "Wet")
    assert not remind(pages.world)
    pages.act(Settle({"remind": True}))
    assert remind(pages.world)
    assert not remind(pages.world)
    assert shown == [("Due on Towpath 36", "Check after water")]


# What cannot be read, and how it looks


def test_entries_that_cannot_be_read_stand_in_the_log_as_they_are(pages: Reader) -> None:
    """A later version wrote one, one is damaged, one is of a kind nobody knows; the pages that count go on."""
    number = add_ride(pages)
    board = pages.world.saved.id
    with closing(sqlite3.connect(pages.store.path)) as connection, connection:
        connection.executemany(
            "INSERT INTO log (board, kind, at, offset, version, body) VALUES (?, ?, ?, 0, ?, ?)",
            [
                (board, kind, pages.time.isoformat(), version, body)
                for kind, version, body in (
                    ("ride", 9, '{"way": 3}'),
                    ("tension", 1, "{"),
                    ("check", 1, '{"verdict": 4}'),
                    ("snooze", 1, "[]"),
                    ("walk", 1, "{}"),
                )
            ],
        )
    pages.restart()
    pages.act(Place("log"))
    damaged = pages.store.page(board, "tension")[0].id
    pages.open("log.entry", number=damaged)
    assert pages.shows("Could not be read")
    assert pages.shows("It is kept as it is")
    assert pages.page.foot.main is None
    pages.tap("Take it out of the log")
    pages.open("log.bin")
    assert pages.shows("Tension: Could not be read")
    for page in ("log.due", "log.tension", "ride.tension", "log.entry"):
        pages.open(page, **({"number": number} if page == "log.entry" else {}))
        pages.act(Arrive())
        assert pages.page.title
    assert pages.world.last("ride").body.distance == 8400.0


def test_entries_of_each_kind_are_shown_whole_at_every_size(pages: Reader) -> None:
    """Long words, a correction, a check with notes: nothing is cut at any size or text scale."""
    number = add_ride(pages, "8.4", "Wet", "Crash")
    pages.store.correct(number, Ride(distance=9100.0, note="read from the map " * 8))
    entries = (
        Note(note="Right belt sounds brighter than the left one, and only so when it is cold outside " * 3),
        Check(
            list="before_ride",
            base="before_ride",
            title="Before a ride",
            verdict="with notes",
            values={"charge": 40.6},
            notes=(("Press each belt", "line broken at the left motor mount"),),
            right=8,
            total=9,
            seconds=81.0,
            breaks=2,
        ),
        Tension(belt="left", method="scale", tension=99.0, error=11.0, floor=75.6, ceiling=118.8, pull=13.0),
        Snooze(rule="water", name="Check after water", reason="Only the deck was wet", stop=True),
    )
    numbers = [number, *(pages.store.append(pages.world.saved.id, entry) for entry in entries)]
    pages.store.void(numbers[1])
    pages.restart()
    found = []
    for one in (*numbers, "log.bin", "log.due"):
        pages.open(one) if isinstance(one, str) else pages.open("log.entry", number=one)
        for width, height in SIZES:
            for scale in SCALES:
                for part, laid in laids(pages.page, width, height, scale):
                    found += [f"{one} {width}x{height} {scale} {part}: {fault}" for fault in faults(laid)]
    assert found == []


def test_volts_of_a_check_are_written_with_the_decimal_mark_of_the_person(pages: Reader) -> None:
    pages.act(Settle({"mark": ","}))
    check = Check(list="before_ride", base="before_ride", verdict="all right", values={"charge": 40.6})
    pages.act(Record(check))
    pages.open("log.entry", number=pages.records("check")[0].id)
    assert any(getattr(block, "value", "") == "40,6\u00a0V" for block in pages.blocks())
