"""Numbers: which pulleys in the first row, each row with the figure its page leads with, and what is dear comes after."""

from itertools import product

import pytest

from logic.board import Value
from logic.board_saved import to_dict
from logic.log import Ride
from logic.units import GAP
from screens.acts.boards import Choose
from screens.acts.entering import Put
from screens.acts.keeping import Record, Set, Settle
from screens.blocks import Figure, FigureRow, Line
from screens.numbers.home import HEADINGS, LEADS
from screens.ways import ways_from
from tests.pages.reader import Reader
from tests.pages.test_layout import SCALES, SIZES, laids

PAGES = [row for group in HEADINGS for row in ways_from(group)]


@pytest.fixture
def numbers(pages: Reader) -> Reader:
    """Give the list on Towpath 36."""
    return pages.open("numbers")


def ask(page: Reader, label: str, text: str) -> None:
    """Type a value and close the keypad."""
    page.tap(label)
    page.type(text)
    page.tap("Done")


def first(page: Reader) -> Line:
    """Return the first row."""
    row = page.page.blocks[0]
    assert isinstance(row, Line)
    return row


def leads_with(page: Reader) -> str:
    """Return the first figure of a page."""
    one = next(block for block in page.blocks() if isinstance(block, Figure | FigureRow))
    return f"{one.number}{GAP}{one.unit}"


def test_which_pulleys_is_answered_in_the_first_row(numbers: Reader) -> None:
    assert (first(numbers).title, first(numbers).value) == ("Pairs of pulleys", "16:40")
    ask(numbers, "Top speed you want", "35")
    ask(numbers, "Hill you want", "12")
    numbers.rest()
    # Held against the table in tests/logic.
    assert first(numbers).value == "16:44"
    assert first(numbers).detail.startswith("also 18:48, 16:40.")
    numbers.act(first(numbers).act)
    assert numbers.page.crown.word == "16:44"


def test_an_app_without_a_board_shows_no_figure(bare: Reader) -> None:
    bare.open("numbers").rest()
    assert [
        one.title for one in bare.blocks() if isinstance(one, Line) and one.value not in ("", "not set")
    ] == []


def test_the_row_says_what_stands_in_the_way(bare: Reader) -> None:
    bare.open("numbers")
    assert first(bare).value == ""
    ask(bare, "Top speed you want", "35")
    bare.rest()
    assert first(bare).detail == "8 values give the pulleys."


def test_nothing_dear_is_worked_out_before_the_page_stands(numbers: Reader) -> None:
    ask(numbers, "Top speed you want", "35")
    empty = [one.value for one in numbers.blocks() if isinstance(one, Line) and one.key in LEADS]
    assert empty == [""] * len(LEADS)
    steps = 0
    while numbers.page.then is not None and steps < 100:
        numbers.act(numbers.page.then)
        steps += 1
    assert steps == len(LEADS) + 1
    # What is known stands at once when one comes back.
    numbers.open("numbers.units")
    numbers.back()
    numbers.open("numbers")
    assert numbers.page.then is None


@pytest.mark.parametrize("when", ["as it begins", "with rides and other questions"])
def test_a_row_shows_the_figure_its_page_leads_with(numbers: Reader, when: str) -> None:
    if when != "as it begins":
        for used in (9.4, 12.0, 14.1):
            numbers.act(Record(Ride(distance=6000.0, energy=used * 3.6 * 6000.0, crash=False)))
        numbers.open("numbers.range").tap("At a speed of, one more")
        numbers.act(Put("ask.wheel_wear", Value(0.004), "question"))
        numbers.open("numbers")
    numbers.rest()
    shown = {one.key: one.value for one in numbers.blocks() if isinstance(one, Line) and one.key in LEADS}
    assert all(shown.values())
    for page, value in shown.items():
        numbers.open(page)
        assert value == leads_with(numbers) or value in numbers.page.crown.said(), page


def test_each_page_is_one_tap_away_and_back_is_one(numbers: Reader) -> None:
    for row in PAGES:
        numbers.tap(row.title)
        assert numbers.name == row.key
        numbers.back()
        assert numbers.name == "numbers"


def test_a_trial_and_a_wrong_charger_are_told(numbers: Reader) -> None:
    numbers.act(Put("drive.motor_teeth", Value(18.0)))
    numbers.rest()
    assert numbers["numbers.gearing"].detail == "Top speed, loaded; hills and wind. Trial open."
    assert first(numbers).value == "18:40"
    assert not numbers["numbers.charging"].bad
    numbers.act(Put("pack.charger_voltage", Value(50.4)))
    numbers.rest()
    row = numbers["numbers.charging"]
    assert (row.value, row.detail, row.bad) == ("", "Wrong charger for this pack.", True)


@pytest.mark.parametrize("system", ["metric", "inch"])
@pytest.mark.parametrize("wish", [(), (9.0, 0.15), (30.0, 0.5)], ids=["no wish", "a wish", "too much"])
def test_no_row_grows_when_its_figure_comes(numbers: Reader, system: str, wish: tuple[float, ...]) -> None:
    """A touch aimed at one met its neighbour half a second after the page came."""
    numbers.act(Settle({"system": system}))
    for board in numbers.world.boards():
        numbers.act(Choose(board.id))
        if board.name == "Weir":
            # Its first figures come with a band.
            for lacked in ("motor.resistance", "controller.brake_current"):
                numbers.act(Set({lacked: None}))
        for key, value in zip(("ask.wish_speed", "ask.wish_grade"), wish, strict=False):
            numbers.act(Put(key, Value(value), "question"))
        numbers.open("numbers")
        before = numbers.page
        numbers.rest()
        assert all(row.value for row in numbers.blocks() if isinstance(row, Line) and row.key in LEADS)
        for (width, height), scale in product(SIZES, SCALES):
            first, last = (
                {name: laid.height for name, laid in laids(page, width, height, scale)}
                for page in (before, numbers.page)
            )
            assert first == last, (board.name, width, scale)


def test_saved_boards_are_read_again_when_one_of_them_changed(numbers: Reader) -> None:
    before = numbers.world.boards()
    assert all(one is same for one, same in zip(before, numbers.world.boards(), strict=True))
    numbers.world.store.save_board(before[0].id, "Renamed", to_dict(before[0]) | {"name": "Renamed"})
    assert "Renamed" in [board.name for board in numbers.world.boards()]
