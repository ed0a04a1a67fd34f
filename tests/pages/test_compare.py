"""Two set-ups side by side: which is better at what, and the working of each number."""

from dataclasses import replace

import pytest

from logic.board import Value
from screens.acts import Go
from screens.acts.entering import Put
from screens.blocks import Columns
from tests.pages.reader import Reader

MINUS = "\u2212"


@pytest.fixture
def two(pages: Reader) -> Reader:
    """Give the page with a trial of two more teeth on the motor of Towpath 36."""
    pages.open("numbers.compare")
    pages.act(Put("drive.motor_teeth", Value(18.0)))
    return pages


def cells(page: Reader, key: str) -> list[tuple[str, bool]]:
    """Return the numbers of a row and whether each is the better one."""
    return [(cell.text, cell.better) for cell in page[key].cells]


def test_the_verdict_says_which_is_better_at_what(two: Reader) -> None:
    crown = two.page.crown
    # Ours: an eighth more teeth is an eighth more speed for an eighth less push.
    assert crown.word == "The trial is faster"
    assert "Towpath 36: climbs steeper" in crown.text
    assert "The trial: uses less energy" in crown.text
    assert [cell.text for cell in two["heads"].cells] == ["Towpath 36", "The trial"]
    assert cells(two, "top_loaded")[1][1]
    assert cells(two, "climb_start")[0][1]


def test_what_is_neither_better_nor_worse_is_not_ticked(two: Reader) -> None:
    two.tap("All figures")
    assert cells(two, "ratio") == [("2.5", False), ("2.22", False)]
    assert two["ratio"].detail == f"{MINUS}0.28"
    assert two["electrical"].detail == ""


def test_each_number_opens_its_own_working(two: Reader) -> None:
    two.tap("All figures")
    for row in (one for one in two.blocks() if isinstance(one, Columns) and not one.head):
        for place, cell in enumerate(row.cells):
            assert isinstance(cell.act, Go)
            assert cell.act.page == "working"
            item = cell.act.args["item"]
            assert item.name == row.key
            assert two.world.style.number(item.value, item.quantity) == row.cells[place].text
            assert item.working


def test_another_board_is_chosen(two: Reader) -> None:
    two.tap("Weir")
    assert [cell.text for cell in two["heads"].cells] == ["Towpath 36", "Weir"]
    assert len(two["chart"].strokes.strokes) > 4
    two.tap("Drop the trial")
    assert two["heads"].cells[1].text == "Weir"


def test_the_same_board_twice_is_better_at_nothing(pages: Reader) -> None:
    pages.open("numbers.compare")
    pages.act(Put("load.board_mass", Value(10.5001)))
    assert pages.page.crown.word == "Same top speed"
    assert pages.page.crown.text == ""
    assert not any(better for _text, better in cells(pages, "climb_start"))


def test_without_a_second_there_is_nothing_to_compare_with(bare: Reader) -> None:
    bare.open("numbers.compare")
    assert bare.page.crown.word == "Nothing to compare with"


def test_a_board_that_lacks_values_is_said_to(two: Reader) -> None:
    two.world = replace(two.world, saved=two.world.saved.with_value("motor.kv", None))
    assert two.page.crown.word == "Top speed not known"
    assert cells(two, "top_loaded")[0] == ("Motor constant (Kv) is missing. Add it.", False)
