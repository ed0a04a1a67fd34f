"""What widgets do when they are touched or typed at."""

from collections.abc import Callable, Iterator
from typing import Any

import pytest
from kivy.core.window import Window

from screens.driver import Driver
from screens.paper.keys import Keys
from screens.theme import theme
from screens.widgets.bar import Bar
from screens.widgets.chip import ChipFlow, ValueChip
from screens.widgets.choice import Choice
from screens.widgets.keypad import LONGEST, SECOND_MARK, WHOLE, Keypad
from screens.widgets.result import Result
from screens.widgets.row import Foot, Page, Row
from screens.widgets.text import Text
from screens.widgets.undo import UndoBar
from tests.screens.gallery import Gallery

MINUS = "\N{MINUS SIGN}"


@pytest.fixture(scope="module")
def driver() -> Iterator[Driver]:
    """Keep one app for the module."""
    driver = Driver(Gallery())
    theme.apply("day", 1.0)
    driver.resize(360, 800)
    yield driver
    driver.stop()


@pytest.fixture
def show(driver: Driver) -> Callable[..., Page]:
    """Give a function that puts widgets, and a foot, on a fresh page."""

    def put(*widgets: Any, foot: Any = None) -> Page:
        for child in Window.children[:]:
            Window.remove_widget(child)
        page = Page(foot=foot or Foot())
        for widget in widgets:
            page.add_widget(widget)
        Window.add_widget(page)
        driver.settle()
        return page

    return put


def heard(widget: Any, *events: str) -> list[tuple[Any, ...]]:
    """Return a list that fills with the events a widget sends."""
    log: list[tuple[Any, ...]] = []
    for event in events:
        widget.bind(**{event: lambda _widget, *values, event=event: log.append((event, *values))})
    return log


def test_a_bar_acts_on_release_and_not_on_press(driver: Driver, show: Callable[..., Page]) -> None:
    bar = Bar(text="Keep on board")
    log = heard(bar, "on_release")
    show(foot=bar)
    touch = driver.touch("Keep on board")
    driver.frame(3)
    assert (bar.state, log) == ("down", [])
    touch.up()
    driver.frame(5)
    assert (bar.state, log) == ("normal", [("on_release",)])


def test_sliding_off_a_bar_cancels_and_shows_it(driver: Driver, show: Callable[..., Page]) -> None:
    bar = Bar(text="Drop")
    log = heard(bar, "on_release")
    show(foot=bar)
    touch = driver.touch(bar)
    driver.frame(2)
    touch.move(180, 700)
    assert bar.state == "normal"
    touch.up()
    driver.frame(5)
    assert log == []


def test_a_disabled_bar_does_nothing(driver: Driver, show: Callable[..., Page]) -> None:
    bar = Bar(text="Save", disabled=True)
    log = heard(bar, "on_release")
    show(foot=bar)
    driver.tap(bar)
    assert log == []


def test_a_row_in_a_scroller_answers_a_short_tap_in_the_same_frame(
    driver: Driver, show: Callable[..., Page]
) -> None:
    row = Row(title="Wheel pulley", value="40 teeth")
    log = heard(row, "on_release")
    show(row, *(Row(title=f"Row {number}") for number in range(30)))
    touch = driver.touch("Wheel pulley")
    driver.frame()
    touch.up()
    assert log == [("on_release",)]
    driver.frame(30)
    assert log == [("on_release",)]


def test_dragging_a_row_scrolls_and_does_not_tap(driver: Driver, show: Callable[..., Page]) -> None:
    row = Row(title="Motor pulley")
    log = heard(row, "on_release")
    page = show(row, *(Row(title=f"Row {number}") for number in range(30)))
    touch = driver.touch(row)
    for step in range(1, 8):
        touch.move(180, 750 + 15 * step)
    touch.up()
    driver.settle()
    assert log == []
    assert page.scroll.scroll_y < 1


def test_a_chip_is_tapped_by_its_value(driver: Driver, show: Callable[..., Page]) -> None:
    flow, chip = ChipFlow(), ValueChip(label="Belt", value="56 teeth", known="label")
    log = heard(chip, "on_release")
    flow.add_widget(chip)
    show(flow)
    driver.tap("56 teeth")
    assert log == [("on_release",)]
    assert driver.shows("L")


@pytest.mark.parametrize(("width", "columns"), [(320, 2), (360, 2), (800, 3)])
def test_chips_stand_in_as_many_columns_as_fit(
    driver: Driver, show: Callable[..., Page], width: int, columns: int
) -> None:
    driver.resize(width, 800)
    flow = ChipFlow()
    for number in range(3):
        flow.add_widget(ValueChip(label="Belt", value=f"{number}"))
    show(flow)
    assert flow.columns() == columns
    driver.resize(360, 800)


def test_a_choice_moves_its_tick(driver: Driver, show: Callable[..., Page]) -> None:
    choice = Choice(options=[("m", "Measured"), ("g", "A guess")], chosen="m")
    log = heard(choice, "on_choose")
    show(choice)
    driver.tap("A guess")
    driver.tap("A guess")
    assert (choice.chosen, log) == ("g", [("on_choose", "g")])


def test_a_result_opens_its_working(driver: Driver, show: Callable[..., Page]) -> None:
    result = Result(label="Top speed", value="37.4", unit="km/h")
    log = heard(result, "on_open")
    show(result)
    driver.tap("37.4")
    assert log == [("on_open",)]


def test_undo_stays_ten_seconds_and_then_goes(driver: Driver, show: Callable[..., Page]) -> None:
    bar = UndoBar(text="Moved to the bin.")
    log = heard(bar, "on_undo", "on_dismiss")
    show(foot=bar)
    began = driver.now
    bar.restart()
    driver.frame(9, seconds=1)
    assert log == []
    driver.frame(3, seconds=1)
    assert log == [("on_dismiss",)]
    assert driver.now - began >= 10


def test_undo_takes_back(driver: Driver, show: Callable[..., Page]) -> None:
    bar = UndoBar(text="Moved to the bin.", stay=0)
    log = heard(bar, "on_undo", "on_dismiss")
    show(foot=bar)
    driver.tap("Undo")
    driver.tap("Close")
    assert log == [("on_undo",), ("on_dismiss",)]


# The keypad.


def keypad(show: Callable[..., Page], **more: Any) -> Keypad:
    """Put a keypad on a page."""
    pad = Keypad(**more)
    show(Text(text="Pull"), foot=pad)
    return pad


def test_taps_type_digits_and_the_mark_of_the_person(driver: Driver, show: Callable[..., Page]) -> None:
    pad = keypad(show, mark=",")
    for key in ("1", "4", ",", "5"):
        driver.tap(key)
    assert pad.text == "14,5"


def test_keys_are_a_third_of_the_width_and_leave_no_dead_strip(
    driver: Driver, show: Callable[..., Page]
) -> None:
    keypad(show)
    seven, eight, four = (driver.find(text) for text in "784")
    assert (seven.width, seven.height) == (pytest.approx((360 - 32) / 3), 60)
    assert (seven.right, four.top) == (pytest.approx(eight.x), pytest.approx(seven.y))


def test_glove_keys_are_higher(driver: Driver, show: Callable[..., Page]) -> None:
    keypad(show, glove=True)
    assert driver.find("7").height == 80


def test_a_second_mark_is_refused_and_said_for_half_a_second(
    driver: Driver, show: Callable[..., Page]
) -> None:
    pad = keypad(show)
    log = heard(pad, "on_refused")
    for key in ("1", ".", "5"):
        driver.tap(key)
    driver.tap(driver.find("."))
    assert (pad.text, log) == ("1.5", [("on_refused", SECOND_MARK)])
    assert driver.shows("There is already a decimal mark.")
    driver.frame(40)
    assert not driver.shows("There is already a decimal mark.")


def test_the_same_key_within_80_ms_counts_once(driver: Driver, show: Callable[..., Page]) -> None:
    pad = keypad(show)
    for pause in (2, 12):
        touch = driver.touch("5")
        driver.frame()
        touch.up()
        driver.frame(pause)
    assert pad.text == "5"
    driver.tap("5")
    assert pad.text == "55"


def test_delete_takes_one_character_however_long_it_is_held(
    driver: Driver, show: Callable[..., Page]
) -> None:
    pad = keypad(show, text="14.5")
    touch = driver.touch("Delete")
    driver.frame(180)
    touch.up()
    driver.frame(3)
    assert pad.text == "14."


def test_clear_has_an_undo(driver: Driver, show: Callable[..., Page]) -> None:
    pad = keypad(show, text="14.5")
    driver.tap("Clear")
    assert pad.text == ""
    driver.tap("Undo")
    assert pad.text == "14.5"
    driver.tap("Clear")
    driver.tap("7")
    assert pad.text == "7"
    assert not driver.shows("Undo")


def test_minus_and_fractions_only_where_they_mean_something(
    driver: Driver, show: Callable[..., Page]
) -> None:
    keypad(show, unit="mm", units=["mm", "in"])
    assert not driver.shows("Space")
    assert not driver.shows(MINUS)
    pad = keypad(show, unit="in", units=["mm", "in"], signed=True)
    for key in (MINUS, "1", "Space", "1", "/", "4"):
        driver.tap(key)
    assert pad.text == f"{MINUS}1 1/4"
    driver.tap(MINUS)
    assert pad.text == f"{MINUS}1 1/4"


def test_the_unit_key_opens_the_units_in_place(driver: Driver, show: Callable[..., Page]) -> None:
    pad = keypad(show, text="14.5", unit="N", units=["N", "kg", "lb"])
    log = heard(pad, "unit")
    driver.tap("N")
    assert not driver.shows("7")
    driver.tap("kg")
    assert (pad.unit, pad.text, log) == ("kg", "14.5", [("unit", "kg")])
    assert driver.shows("7")


def test_no_more_than_the_longest_text(show: Callable[..., Page]) -> None:
    pad = keypad(show)
    log = heard(pad, "on_refused")
    for _ in range(LONGEST + 1):
        pad.tap("1")
    assert (len(pad.text), len(log)) == (LONGEST, 1)


def test_a_keyboards_text_is_taken_whole_or_not_at_all(show: Callable[..., Page]) -> None:
    """Far more than any number has is left out; what was taken is too long to be read as one."""
    pad = keypad(show)
    log = heard(pad, "on_refused")
    assert pad.feed("1" * WHOLE)
    assert not pad.feed("1")
    assert (len(pad.text), len(log)) == (WHOLE, 1)
    assert WHOLE > LONGEST


@pytest.fixture
def keys() -> Iterator[Keys]:
    """Give a router that lets go of the window afterwards."""
    keys = Keys(Window)
    yield keys
    keys.stop()


def test_a_hardware_keyboard_types_either_mark_and_unit_words(
    driver: Driver, show: Callable[..., Page], keys: Keys
) -> None:
    keys.front = pad = keypad(show)
    log = heard(pad, "on_enter", "on_next", "on_refused")
    driver.type("1,5.2 mm")
    assert pad.text == "1,5.2 mm"
    for code in (8, 13, 9):
        driver.key(code)
    driver.key(9, "shift")
    assert pad.text == "1,5.2 m"
    assert log == [("on_enter",), ("on_next", 1), ("on_next", -1)]


def test_escape_shuts_the_units_and_is_else_left_to_the_shell(
    driver: Driver, show: Callable[..., Page], keys: Keys
) -> None:
    keys.front = pad = keypad(show, unit="N", units=["N", "kg"])
    left: list[int] = []
    Window.bind(on_keyboard=lambda _window, code, *_: left.append(code) or True)
    driver.tap("N")
    driver.key(27)
    assert (pad.choosing, left) == (False, [])
    driver.key(27)
    assert left == [27]


def test_where_no_text_input_comes_the_key_itself_counts_once(
    driver: Driver, show: Callable[..., Page], keys: Keys
) -> None:
    keys.front = pad = keypad(show)
    Window.dispatch("on_key_down", 53, 0, "5", [])
    driver.frame(2)
    assert pad.text == "5"
    Window.dispatch("on_key_down", 54, 0, "6", [])
    Window.dispatch("on_textinput", "6")
    driver.frame(2)
    assert pad.text == "56"
    Window.dispatch("on_key_down", 266, 0, None, [])
    driver.frame(2)
    assert pad.text == "56."
