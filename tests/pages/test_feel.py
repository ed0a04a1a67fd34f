"""Wheels, bushings and trucks: wheel bite, the turn, what suits the rider, and what a change does."""

import pytest

from logic.answers.feel import PARTS as NAMED
from logic.answers.feel import changes, feel
from logic.answers.reading import Open, Result
from logic.board import Value
from logic.exchange import demo_boards
from screens.acts.entering import Put
from screens.blocks import PLAIN, RIGHT, UNSURE, WRONG, Notice
from screens.tongue import texts
from tests.pages.reader import Reader

BOARD = demo_boards()[0]
MEASURED = {"ask.deck_width": 0.23, "ask.track": 0.33, "ask.wheel_width": 0.055}


@pytest.fixture
def board(pages: Reader) -> Reader:
    """Give the page on Towpath 36."""
    return pages.open("numbers.feel")


def answer(page: Reader, **values: float) -> None:
    """Answer questions of the page."""
    for name, value in values.items():
        page.act(Put(f"ask.{name}", Value(value), "question"))


def test_wheel_bite_is_told_first_and_not_sure_while_measures_are_assumed(board: Reader) -> None:
    # Ours: 75 - 50 = 25 mm over the wheel, 115 mm out: arctan(25 / 115) = 12.3 degrees; asked at 15.
    assert board.page.crown.form == UNSURE
    assert board.page.crown.word.startswith("Wheel bite from 12.3")
    assert [one.word for one in board.blocks() if isinstance(one, Notice)] == ["warning"]
    for key, value in MEASURED.items():
        board.act(Put(key, Value(value), "question"))
    assert board.page.crown.form == WRONG


def test_a_riser_or_less_lean_makes_room(board: Reader) -> None:
    for key, value in MEASURED.items():
        board.act(Put(key, Value(value), "question"))
    answer(board, riser=0.006)
    # Ours: 31 - 115 x tan 15 = 0.19 mm: just clear.
    assert board.page.crown.form == RIGHT
    assert [one.word for one in board.blocks() if isinstance(one, Notice)] == ["caution"]
    answer(board, riser=0.0, lean=0.2)
    assert board.page.crown.form == RIGHT


def test_a_narrow_deck_has_nothing_to_bite(board: Reader) -> None:
    answer(board, deck_width=0.19)
    assert board.page.crown.word.startswith("No wheel bite")
    assert board["gap_lean"].detail == "The deck does not reach over the wheels: there is nothing to bite."


def test_a_longer_board_rides_a_wider_circle(board: Reader) -> None:
    # Ours: 0.75 / (2 x 1.1918 x 0.2588) = 1.216 m; the circle goes with the wheelbase.
    assert board["radius"].number == "1.22"
    answer(board, wheelbase=1.5)
    assert board["radius"].number == "2.43"


def test_bushings_are_held_against_the_rider(board: Reader) -> None:
    assert board["bushing"].number == "87 to 92"
    for hardness, said in ((80.0, "softer"), (90.0, "suit"), (97.0, "harder")):
        answer(board, bushing_hardness=hardness)
        assert said in board["bushing"].detail


def test_the_rows_of_bushings_leave_no_rider_out_and_grow() -> None:
    found = [feel(BOARD, Value(float(mass)), {}).items["bushing"] for mass in range(10, 251, 5)]
    assert all(isinstance(item, Result) for item in found)
    bands = [item.band for item in found if isinstance(item, Result)]
    assert bands == sorted(bands)
    assert all(item.standing == "practice" for item in found if isinstance(item, Result))


def test_one_motor_has_no_other_beside_it() -> None:
    one = BOARD.with_value("drive.motors", Value("1"))
    assert "motors_gap" not in feel(one, None, {}).items
    assert isinstance(feel(BOARD, None, {}).items["bushing"], Open)


def test_every_part_says_what_a_change_does_as_common_practice(board: Reader) -> None:
    assert set(texts("feel")["parts"]) == set(NAMED)
    for part, title in texts("feel")["parts"].items():
        board.tap(title)
        assert f"{part} 0" in board
        assert board[part].note == "Common practice, no source."
        assert all(row.standing == "practice" and row.source == "practice" for row in changes(part))


def test_without_a_board_the_turn_is_told_and_the_rest_asked_for(bare: Reader) -> None:
    bare.open("numbers.feel")
    assert bare.page.crown.form == PLAIN
    assert "Radius 1.22" in bare.page.crown.text
    bare.act(bare.page.crown.act)
    assert bare.page.foot.entry.key == "mount.deck_height"
