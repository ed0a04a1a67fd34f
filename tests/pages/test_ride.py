"""Ride: the state of the board first, what forbids riding in sight, and what one may want without a board."""

from dataclasses import replace
from pathlib import Path

import pytest

from logic.checks.lists import Checklist
from logic.log import Check, Fault, Ride, Snooze, Tension
from screens.acts import Go, Place, Undo
from screens.acts.keeping import Record
from screens.blocks import WRONG, Line, Notice, Verdict
from screens.paper.measure import measure
from screens.paper.scale import Look
from screens.paper.sheet import Drawing
from tests.pages.reader import Reader
from tests.pages.sight import in_sight
from tests.pages.test_runs import begin, last_check, looked_over, right, right_until

GAP = "\u00a0"


def home(pages: Reader) -> Reader:
    """Come back to Ride as one would later: what is due is looked up anew."""
    pages.restart()
    pages.act(Place("ride"))
    return pages


def bars(pages: Reader) -> list[str]:
    foot = pages.page.foot
    return [bar.text.split("\n")[0] for bar in (*foot.beside, *([foot.main] if foot.main else []))]


def rows(pages: Reader) -> list[str]:
    return [block.title for block in pages.page.blocks if isinstance(block, Line)]


def measured(pages: Reader, side: str, tension: float, word: str = "in window", **age: float) -> None:
    entry = Tension(belt=side, tension=tension, error=8.0, floor=75.0, ceiling=118.0, target=107.0, word=word)
    pages.store.append(pages.world.saved.id, entry)
    pages.restart(**age)


# The state of the board.


def test_each_belt_shows_its_tension_its_verdict_its_age_and_a_small_gauge(pages: Reader) -> None:
    assert pages["left"].title == "Left belt"
    assert pages["left"].detail == "Not measured yet"
    measured(pages, "left", 99.0)
    measured(pages, "right", 40.0, "slack", hours=3 * 24)
    left, right_belt = pages["left"], pages["right"]
    assert (left.title, left.detail, left.bad) == (f"Left belt: 99{GAP}N", "just right, 3 days ago", False)
    assert (right_belt.detail, right_belt.bad) == ("loose, 3 days ago", True)
    # Where the marker stands tells the word without any word: inside the window, or left of it.
    inside, outside = (
        [stroke for stroke in line.strokes.strokes if getattr(stroke, "tone", "") == "main"][-1].points[0][0]
        for line in (left, right_belt)
    )
    assert 75.0 < inside < 118.0
    assert outside < 75.0
    assert left.act == Go("ride.tension", {"side": "left"})
    assert [block.key for block in pages.page.blocks][:2] == ["left", "right"]


@pytest.mark.parametrize(("scale", "drawn"), [(1.0, True), (1.3, True), (2.0, False)])
def test_the_small_gauge_gives_way_to_words(pages: Reader, scale: float, drawn: bool) -> None:  # noqa: FBT001
    measured(pages, "left", 99.0)
    laid = measure(pages["left"], 320, Look(scale))
    assert any(isinstance(mark, Drawing) for mark in laid.marks) is drawn


def test_the_pack_shows_what_was_read_last(pages: Reader) -> None:
    looked_over(pages)
    begin(pages)
    right_until(pages, "")
    pages.tap("FINISH")
    home(pages)
    assert pages["pack"].title == f"Pack: 40.2{GAP}V"
    assert pages["pack"].detail == "Read just now"


def test_the_great_bar_says_how_long_the_check_is(pages: Reader, monkeypatch: pytest.MonkeyPatch) -> None:
    assert pages.page.foot.main.text == f"BEFORE A RIDE\n9 items, about 2{GAP}min"

    def shorter(of: Checklist, _board: object) -> Checklist:
        return replace(of, items=of.items[:-2], seconds=60)

    monkeypatch.setattr("screens.world.for_board", shorter)
    home(pages)
    assert pages.page.foot.main.text == f"BEFORE A RIDE\n7 items, about 1{GAP}min"
    pages.tap("All checks")
    assert pages["before_ride"].detail.startswith("7 items")
    pages.tap("Before a ride")
    assert pages["progress"].place == "1 of 7"


# What stands in the way of a ride.


def test_with_its_pack_out_of_use_ride_leads_to_what_to_do_and_checks_step_back(pages: Reader) -> None:
    pages.tap("Pack hot or swollen?")
    pages.tap("Swollen")
    pages.tap("Take this pack out of use")
    pages.back()
    assert isinstance(pages.page.crown, Notice)
    assert pages.page.crown.word == "danger"
    assert bars(pages) == ["PACK OUT OF USE:"]
    assert {"Before a ride", "After a ride", "Tension check"} <= set(rows(pages))
    pages.tap("PACK OUT OF USE:\nwhat to do")
    pages.tap("Another pack is in the board")
    pages.tap("Put into use again")
    pages.back()
    assert "BEFORE A RIDE" in bars(pages)
    assert "Before a ride" not in rows(pages)


def test_what_ended_a_ride_stays_in_sight_until_it_is_found_right(pages: Reader) -> None:
    begin(pages)
    right_until(pages, "wheels")
    pages.tap("NOT RIGHT")
    pages.tap("Wobbles")
    pages.tap("STOP: NOT RIDING")
    pages.tap("CLOSE")
    home(pages)
    crown = pages.page.crown
    assert isinstance(crown, Verdict)
    assert (crown.word, crown.form) == ("Do not ride", WRONG)
    assert crown.text == "Wheels: Wobbles. Before a ride, just now. Tap to check it again."
    assert not any("Wobbles" in title for title in rows(pages))
    pages.act(crown.act)
    assert pages.shows("Last time: Wobbles")
    right(pages)
    pages.restart(minutes=15)
    pages.tap("START AGAIN")
    home(pages)
    assert pages.page.crown is None


def test_what_was_noted_is_a_row_until_it_is_found_right(pages: Reader) -> None:
    noted = Check(
        list="before_ride",
        base="before_ride",
        verdict="with notes",
        faults=(Fault("mounts", "Mounts", "Line broken", stops=False),),
    )
    pages.store.append(pages.world.saved.id, noted)
    home(pages)
    assert pages.page.crown is None
    assert pages["fault 0"].title == "With care: mounts (line broken)"
    cleared = replace(noted, verdict="all right", faults=(), answers={"mounts": ("right", "")})
    pages.store.append(pages.world.saved.id, cleared)
    assert "fault 0" not in home(pages)


def test_a_fault_of_a_list_that_is_not_here_is_shown_all_the_same(pages: Reader) -> None:
    faults = (Fault("a", "Light", "dark", stops=True), Fault("b", "Bell", "mute", stops=False))
    later = Check(list="lights", base="lights", verdict="stopped", stopped_by="Look", faults=faults)
    pages.store.append(pages.world.saved.id, later)
    home(pages)
    assert pages.page.crown.text.startswith("Light: dark. lights, just now.")
    assert pages.page.crown.act is None
    assert (pages["fault 0"].detail, pages["fault 0"].act) == ("lights, just now.", None)


def test_what_is_due_is_one_row_that_leads_to_it(pages: Reader) -> None:
    pages.store.append(pages.world.saved.id, Ride(distance=8000.0, wet=True))
    home(pages)
    assert pages["due"].title == "DUE: Check after water"
    assert pages["upkeep"].act == Go("log.due")
    pages.tap("DUE: Check after water")
    assert pages.page.title.startswith("After water")


def test_a_check_that_is_put_off_is_named_with_its_reason(pages: Reader) -> None:
    pages.store.append(pages.world.saved.id, Ride(distance=8000.0, wet=True))
    looked_over(pages)
    home(pages)
    begin(pages)
    right_until(pages, "")
    put_off = next(bar for bar in pages.page.foot.beside if bar.text == "PUT IT OFF")
    assert put_off.act.page == "log.snooze"
    pages.act(
        Record(Snooze(rule="water", name="Check after water", reason="Only the deck was wet", stop=True))
    )
    crown = pages.page.crown
    assert crown.word == "With care"
    assert crown.text.startswith("Check after water is put off.")
    assert pages["off Check after water"].detail == "Only the deck was wet"
    pages.tap("FINISH")
    assert last_check(pages).put_off == (("Check after water", "Only the deck was wet"),)
    # The check is no ride yet; the next ride brings it back.
    assert pages.world.due == ()
    pages.store.append(pages.world.saved.id, Ride(distance=1000.0))
    home(pages)
    assert [one.key for one in pages.world.due] == ["water"]


def test_a_ride_waits_beside_after_ride_until_it_is_entered(pages: Reader) -> None:
    looked_over(pages)
    home(pages)
    assert "Add a ride" in rows(pages)
    assert bars(pages) == ["TENSION CHECK", "AFTER THE RIDE", "BEFORE A RIDE"]
    begin(pages)
    right_until(pages, "")
    pages.tap("FINISH")
    assert bars(pages) == ["ADD A RIDE", "AFTER THE RIDE", "BEFORE A RIDE"]
    assert "Add a ride" not in rows(pages)
    pages.store.append(pages.world.saved.id, Ride(distance=8400.0))
    assert bars(home(pages))[0] == "TENSION CHECK"


def test_a_ride_never_entered_stops_waiting_after_a_day(pages: Reader) -> None:
    looked_over(pages)
    begin(pages)
    right_until(pages, "")
    pages.tap("FINISH")
    assert bars(pages)[0] == "ADD A RIDE"
    pages.restart(hours=25)
    pages.act(Place("ride"))
    assert bars(pages)[0] == "TENSION CHECK"


def test_a_second_tap_on_undo_finds_nothing_to_take_back(pages: Reader) -> None:
    pages.act(Record(Ride(distance=1000.0), undo="Saved"))
    pages.act(Undo())
    pages.act(Undo())
    assert pages.records("ride") == []
    assert pages.world.undo is None


# Without a board.


def test_the_first_start_asks_what_one_wants_and_each_way_opens(bare: Reader) -> None:
    assert bare.page.title == "What do you want now?"
    assert bare.page.crown.title == "Pack hot or swollen?"
    assert rows(bare) == [
        "A screw",
        "A belt",
        "Before a ride",
        "Speed and range",
        "Something is wrong",
        "May it fly?",
    ]
    assert bars(bare) == ["My board", "An example"]
    for title in rows(bare):
        bare.tap(title)
        assert bare.name != "ride", title
        assert bare.page.title
        bare.act(Place("ride"))


@pytest.mark.parametrize("demo", [True, False], ids=["example board", "no board"])
def test_the_red_line_for_a_pack_is_on_every_home_and_in_the_fault_guide(tmp_path: Path, demo: bool) -> None:  # noqa: FBT001
    pages = Reader(tmp_path, demo=demo)
    for name in ("ride", "bench", "numbers", "log", "bench.faults"):
        pages.act(Place(name))
        line = pages["signs"]
        assert (line.title, line.bad, line.act) == ("Pack hot or swollen?", True, Go("ride.pack_signs"))
    pages.close()


@pytest.mark.parametrize(("width", "height", "scale"), [(320, 568, 1.0), (360, 640, 1.3), (412, 915, 1.6)])
def test_all_of_the_first_start_is_in_sight(bare: Reader, width: int, height: int, scale: float) -> None:
    assert {block.key for block in bare.page.blocks} == in_sight(bare.page, width, height, scale)


def test_the_example_boards_come_at_a_tap(bare: Reader) -> None:
    bare.tap("An example")
    assert bare.world.saved.name == "Towpath 36"
    assert bare.world.person.rider is not None
    assert "left" in bare
    assert [board.name for board in bare.world.boards()] == ["Ferry", "Lock-keeper", "Towpath 36", "Weir"]


def test_a_pack_can_be_taken_out_and_a_check_can_end_a_ride_without_a_board(bare: Reader) -> None:
    bare.tap("Before a ride")
    right_until(bare, "wheels")
    bare.tap("NOT RIGHT")
    bare.tap("Wobbles")
    bare.tap("STOP: NOT RIDING")
    bare.tap("CLOSE")
    assert bare.page.crown.word == "Do not ride"
    assert "Pack hot or swollen?" in rows(bare)
    bare.tap("Pack hot or swollen?")
    bare.tap("Hot without a hard ride")
    bare.tap("Take this pack out of use")
    bare.back()
    assert bare.page.crown.word == "danger"


def test_with_nothing_due_ride_says_what_comes_next(pages: Reader) -> None:
    """On a tablet a third of the page was empty, and nothing told when the next check is."""
    looked_over(pages)
    home(pages)
    assert pages.world.due == ()
    assert (pages["upkeep"].title, pages["upkeep"].act) == ("Nothing is due", Go("log.due", {}))
    assert pages["upkeep"].detail == "Next: belt re-check after the first ride (both belts), in 1 ride."


def test_ride_tells_what_upkeep_comes_after_what_is_named(pages: Reader) -> None:
    pages.store.append(pages.world.saved.id, Ride(distance=3000.0))
    home(pages)
    rest = [one.name for one in pages.world.upcoming if not one.due]
    named = [block.title for block in pages.blocks() if block.key.startswith("next")]
    assert named == ["Next", *rest]
    looked_over(pages)
    home(pages)
    named = [block.title for block in pages.blocks() if block.key.startswith("next")]
    assert (named[0], len(named)) == ("After that", 4)
    assert {block.key for block in pages.blocks() if block.title in named} <= pages.page.aside


def test_what_comes_next_is_something_to_do(pages: Reader) -> None:
    """It said "Next: rides without a check before, in 3 rides", which nobody could read."""
    pages.act(Record(Check(list="before_ride", base="before_ride", verdict="all right")))
    pages.act(Place("ride"))
    assert pages["upkeep"].detail == "Next: check before a ride, in 3 rides."
