"""History of a belt: readings over the way ridden, the trend, how long it lasts, and its picture."""

from datetime import timedelta

import pytest
from kivy.metrics import dp

from logic.log import BeltFitted, Ride, Tension
from screens.paper.ink import width_of
from screens.paper.picture import height_of, lay
from screens.pictures.history import Reading, history
from screens.pictures.strokes import Disc, Fill, Label
from tests.pages.reader import Reader
from tests.pages.test_layout import SCALES

RODE = ((111.0, 15.0), (101.0, 14.0), (95.0, 9.0), (91.0, 14.0), (84.0, 9.0))
"""Tensions of one belt with their errors, N: one a ride of 12 km."""


@pytest.fixture
def ridden(pages: Reader) -> Reader:
    """Give the history of a belt that was measured five times."""
    board, begin = pages.world.saved.id, pages.time
    pages.store.append(board, BeltFitted(belt="left"))
    for number, (tension, error) in enumerate(RODE):
        pages.time = begin + timedelta(days=6 * number)
        if number:
            pages.store.append(board, Ride(distance=12000.0))
        pages.store.append(
            board, Tension(belt="left", method="scale", tension=tension, error=error, word="in window")
        )
    pages.restart()
    return pages.open("log.tension", side="left")


def test_a_fall_is_told_by_the_way_ridden(ridden: Reader) -> None:
    # Ours: some 27 N over 48 km, the least-square line weighs each reading by its error.
    assert ridden.page.crown.word.startswith("Falls by 5")
    assert ridden.page.crown.word.endswith("in 10\u00a0km")
    assert ridden["left"].unit == "km"
    assert ridden["chart"].text == "111, 101, 95, 91, 84"
    newest = next(block for block in ridden.page.blocks if block.key.startswith("reading "))
    assert newest.title.startswith("84")


def test_a_belt_without_readings_says_what_will_stand_there(ridden: Reader) -> None:
    ridden.tap("Right")
    assert ridden.page.crown.word == "No trend yet"
    assert ridden.shows("0 of 3 readings.")
    assert ridden.shows("Readings of this belt will stand here")
    ridden.tap("Left")
    ridden.store.append(ridden.world.saved.id, BeltFitted(belt="left"))
    ridden.restart()
    assert ridden.shows("0 of 3 readings.")


def test_without_rides_it_is_told_by_days(pages: Reader) -> None:
    board, begin = pages.world.saved.id, pages.time
    for number, tension in enumerate((110.0, 100.0, 90.0, 80.0)):
        pages.time = begin + timedelta(days=10 * number)
        pages.store.append(board, Tension(belt="left", method="scale", tension=tension, error=2.0))
    pages.restart()
    pages.open("log.tension")
    # Ours: 1 N a day is 30 N in 30 days; 80 N stands 4.7 N over a floor of 75.3 N.
    assert pages.page.crown.word == "Falls by 30\u00a0N in 30 days"
    assert (pages["left"].number, pages["left"].unit) == ("4.7", "days")


def test_first_and_last_reading_stand_off_the_frame() -> None:
    drawn = history([Reading(0.0, 111.0, 15.0), Reading(48.0, 84.0, 9.0)], (75.0, 118.0), y_title="N")
    assert drawn is not None
    left, foot, right, top = drawn.box
    discs = [one for one in drawn.strokes if isinstance(one, Disc)]
    assert [disc.centre for disc in discs] == [(0.0, 111.0), (48.0, 84.0)]
    room = 0.05 * (right - left)
    assert all(left + room < x < right - room and foot < y < top for x, y in (disc.centre for disc in discs))
    # The window is one band with its edges named where they are, not two more curves.
    assert sum(isinstance(one, Fill) for one in drawn.strokes) == 1
    assert {one.at[1] for one in drawn.strokes if isinstance(one, Label) and one.text in ("floor", "ceiling")} == {
        75.0, 118.0,
    }  # fmt: skip


def test_the_numbers_of_an_axis_stand_beside_it_at_any_text_size() -> None:
    """Where lines are nearer than a number is high, every other number is left out."""
    readings = [Reading(0.0, 111.0, 15.0), Reading(48.0, 84.0, 9.0)]
    drawn = history(readings, (75.0, 118.0), y_title="N")
    assert drawn is not None
    for width in (288, 380):
        for scale in SCALES:
            laid = lay(drawn, dp(width), height_of(drawn, dp(width), height=0.0, text=scale), scale)
            axis = next(one for one in reversed(laid) if one.kind == "line" and len(one.points) == 3).points[
                0
            ][0]
            numbers = [one for one in laid if one.text.isdecimal() and one.points[0][0] < axis]
            ends = [one.points[0][0] + width_of(one.text, one.width, one.bold) for one in numbers]
            assert len(numbers) >= 2, (width, scale)
            assert max(ends) < axis, (width, scale)


def test_a_single_reading_is_drawn() -> None:
    assert history([Reading(0.0, 90.0, 10.0)], None, y_title="") is not None
    assert history([], None, y_title="") is None
