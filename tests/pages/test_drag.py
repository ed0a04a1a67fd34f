"""Range and Wh/km in one place, and what rides and a coast tell about rolling and air."""

import pytest

from logic.board import Value
from logic.log import Ride
from logic.units import GAP
from screens.acts import Go
from screens.acts.entering import Put
from screens.acts.keeping import Record
from screens.blocks import PLAIN, RIGHT, UNSURE, Picture
from tests.pages.reader import Reader


def ask(pages: Reader, label: str, text: str) -> None:
    """Type a value and close the keypad."""
    pages.tap(label)
    pages.type(text)
    pages.tap("Done")


def ridden(pages: Reader, *speeds: str) -> Reader:
    """Open drag from rides with five of them, and give the newest their usual speeds."""
    for used in (7.4, 8.9, 10.4, 13.0, 15.8):
        pages.act(Record(Ride(distance=6000.0, energy=used * 3.6 * 6000.0, crash=False)))
    pages.act(Record(Ride(distance=6000.0, energy=None, crash=False)))
    pages.open("numbers.range").tap("From logged rides")
    rows = [block.title for block in pages.blocks() if block.key.startswith("ride ")]
    assert len(rows) == 5
    keys = [block.key for block in pages.blocks() if block.key.startswith("ride ")]
    for key, speed in zip(keys, speeds, strict=False):
        pages.act(pages[key].act)
        pages.type(speed)
        pages.tap("Done")
    return pages


# Range and what a way takes


def test_range_tells_what_a_way_takes_and_where_the_drag_comes_from(pages: Reader) -> None:
    pages.open("numbers.range")
    assert pages["per_distance"].label == f"Energy on the way at 20{GAP}km/h"
    assert pages["rests on"].text.endswith("assumed, until rides or a coast tell better.")
    pages.tap("All figures")
    # Ours: watts over volts are amps; the pack's own heat is not in what the plug gives.
    watts, amps = float(pages["steady_power"].number), float(pages["steady_battery"].number)
    assert 0.9 * 36.0 < watts / amps <= 36.0
    pages.tap("Energy over speed")
    assert isinstance(pages["spent chart"], Picture)


def test_a_steeper_climb_takes_more_of_the_pack(pages: Reader) -> None:
    pages.open("numbers.range")
    level = float(pages["per_distance"].number)
    pages.act(Put("ask.range_grade", Value(0.04), "question"))
    assert float(pages["per_distance"].number) > 2 * level


# Rides


def test_rides_with_their_speeds_are_laid_over_the_board(pages: Reader) -> None:
    ridden(pages, "29", "25", "21", "16", "12")
    assert pages.page.crown.form == RIGHT
    assert pages.page.crown.text.startswith("From 5 rides")
    assert float(pages["rolling"].number) == pytest.approx(0.015, abs=0.005)
    assert pages["rolling"].detail.startswith("± ")
    pages.tap("Try both on the board")
    assert pages.world.board.load.rolling.known == "measured"
    pages.back()
    assert pages["rests on"].text.endswith("entered on the board.")


def test_the_verdict_asks_for_the_first_speed_that_is_not_known(pages: Reader) -> None:
    ridden(pages, "29")
    assert (pages.page.crown.word, pages.page.crown.form) == ("1 of 4 rides known", PLAIN)
    pages.act(pages.page.crown.act)
    pages.type("25")
    pages.tap("Done")
    assert pages.page.crown.word == "2 of 4 rides known"


def test_the_speed_of_a_ride_is_kept_with_it(pages: Reader) -> None:
    ridden(pages, "29", "25", "21", "16", "12")
    pages.restart()
    shown = [block.value for block in pages.blocks() if block.key.startswith("ride ")]
    assert shown == [f"{speed}{GAP}km/h" for speed in (29, 25, 21, 16, 12)]


def test_a_speed_left_by_back_is_kept_and_one_refused_stays_typed(pages: Reader) -> None:
    ridden(pages)
    first = next(block for block in pages.blocks() if block.key.startswith("ride "))
    pages.act(first.act)
    pages.type("29")
    pages.back()
    assert pages[first.key].value == f"29{GAP}km/h"
    assert pages.page.foot.entry is None
    pages.act(first.act)
    pages.type("290")
    assert pages.page.foot.entry.sentence
    pages.back()
    assert pages[first.key].value == f"29{GAP}km/h"
    pages.act(first.act)
    assert pages.typed == "290"


def test_rides_of_one_speed_tell_nothing(pages: Reader) -> None:
    ridden(pages, "20", "20", "20", "20", "20")
    assert pages.page.crown.form == UNSURE
    assert pages.page.foot.main is None


# A coast


def test_a_coast_is_laid_over_the_board(pages: Reader) -> None:
    pages.open("numbers.range").tap("From a coast")
    assert (pages.page.crown.word, pages.page.crown.form) == ("Not measured yet", PLAIN)
    pages.act(pages.page.crown.act)
    assert pages.world.asking.key == "ask.coast_distance"
    pages.type("62")
    pages.tap("Done")
    ask(pages, "Coast from", "18")
    assert pages.page.crown.word == "Rolling 0.0158"
    assert isinstance(pages.page.crown.act, Go)
    pages.tap("Try 0.0158 on the board")
    rolling = pages.world.board.load.rolling
    assert (float(rolling.si), rolling.note) == (pytest.approx(0.0158, abs=5e-5), "coast")
