"""Gearing and speed by touch and key: trying, keeping, dropping, typing right and typing wrong."""

from collections.abc import Callable

import pytest

from screens.widgets.result import Result
from tests.screens.session import Session, gaps

MINUS = "\u2212"


@pytest.fixture
def gears(app: Session) -> Session:
    """Give the app on its gearing page, Towpath 36 in use."""
    app.tap("Numbers")
    app.tap("Gearing and speed")
    return app


def cards(app: Session) -> dict[str, Result]:
    """Return the results on the page by their labels."""
    return {widget.label: widget for widget in app.walk() if isinstance(widget, Result)}


def values(app: Session) -> dict[str, str]:
    """Return what each result shows."""
    return {label: card.value for label, card in cards(app).items()}


def test_the_page_opens_with_the_answer(gears: Session) -> None:
    card = gears.page.head
    assert (card.label, card.unit) == ("Top speed, loaded", "km/h")
    assert float(card.value) > 30
    # Ours: 16 : 40 teeth; 36 V x 170 rpm/V x 0.95 / 2.5 x pi x 0.1 m = 43.837 km/h.
    assert values(gears)["Gear ratio"] == "2.5"
    assert values(gears)["Unloaded, nominal pack"] == "43.8"


def test_steps_are_a_trial_against_the_saved_board(gears: Session) -> None:
    before = float(gears.page.head.value)
    gears.tap("Motor pulley, one more")
    gears.tap("Motor pulley, one more")
    assert gears.shows("18 teeth")
    assert gears.shows("Trying: Motor pulley")
    assert gears.shows("trial open")
    # Ours: 18 teeth for 16 are an eighth more speed, 43.837 x 18 / 16 = 49.316 km/h.
    card = cards(gears)["Unloaded, nominal pack"]
    assert card.value == "49.3"
    assert card.difference == "+5.5\u00a0km/h against the saved board"
    push = cards(gears)["Push from standstill"]
    assert push.difference.startswith(MINUS)
    assert float(gears.page.head.value) > before
    assert gears.state.saved.drive.motor_teeth.si == 16.0


def test_keep_makes_it_the_boards_and_undo_takes_it_back(gears: Session) -> None:
    gears.tap("Motor pulley, one more")
    gears.tap("Keep on board")
    assert gears.state.saved.drive.motor_teeth.si == 17.0
    assert gears.state.saved.drive.motor_teeth.known == "chosen"
    assert not gears.shows("Trying")
    assert gears.state.last("board_changed").body["changes"]["drive.motor_teeth"]["is"]["si"] == 17.0
    gears.tap("Undo")
    assert gears.state.saved.drive.motor_teeth.si == 16.0
    assert gears.shows("16 teeth")


def test_drop_puts_the_saved_values_back_and_undo_the_trial(gears: Session) -> None:
    gears.tap("Motor pulley, one more")
    gears.tap("Drop the trial")
    assert gears.shows("16 teeth")
    gears.tap("Undo")
    assert gears.shows("17 teeth")
    assert gears.shows("Trying: Motor pulley")


def test_stepping_back_to_the_saved_value_ends_the_trial(gears: Session) -> None:
    gears.tap("Motor pulley, one more")
    gears.tap("Motor pulley, one less")
    assert not gears.shows("Keep on board")
    assert gears.state.trial == {}


def test_a_trial_outlives_a_restart_and_is_dropped_after_a_day(gears: Session) -> None:
    gears.tap("Motor pulley, one more")
    gears.restart(hours=23)
    gears.tap("Numbers")
    assert gears.shows("trial open")
    gears.tap("Gearing and speed")
    assert gears.shows("17 teeth")
    gears.restart(hours=25)
    gears.tap("Numbers")
    gears.tap("Gearing and speed")
    assert gears.shows("16 teeth")
    assert not gears.shows("Trying")


def test_a_trial_is_parked_with_its_board(gears: Session) -> None:
    gears.tap("Motor pulley, one more")
    gears.tap("Board Towpath 36")
    gears.tap("Boards")
    gears.tap("Weir")
    gears.key(27)
    assert gears.page.title == "Gearing and speed"
    assert gears.shows("18 teeth")
    assert not gears.shows("Trying")
    gears.tap("Board Weir")
    gears.tap("Boards")
    gears.tap("Towpath 36")
    gears.key(27)
    assert gears.shows("17 teeth")
    assert gears.shows("Trying: Motor pulley")


def test_a_digit_changes_the_results_in_the_next_frame(gears: Session) -> None:
    gears.tap("Wheel diameter")
    gears.type("9")
    before = values(gears)
    gears.window.dispatch("on_textinput", "7")
    gears.frame(1)
    # Ours: 43.837 km/h x 97 / 100 = 42.521.
    assert values(gears)["Unloaded, nominal pack"] == "42.5"
    assert values(gears) != before
    assert not gears.page.head.greyed


def test_the_keypad_does_the_same(gears: Session) -> None:
    gears.tap("Wheel diameter")
    gears.keys("97.5")
    assert gears.page.entry.text == "97.5"
    # Ours: 43.837 km/h x 97.5 / 100 = 42.741.
    assert values(gears)["Unloaded, nominal pack"] == "42.7"
    gears.tap("Done")
    assert gears.row("Wheel diameter").value == "97.5\u00a0mm"
    assert gears.row("Wheel diameter").trial


@pytest.mark.parametrize("typed", ["97mm", "97 mm", "97,0", "97.0", "9,7 cm"])
def test_point_comma_and_unit_are_read(gears: Session, typed: str) -> None:
    gears.tap("Wheel diameter")
    gears.type(typed)
    assert gears.state.board.drive.wheel_diameter.si == pytest.approx(0.097)
    assert gears.page.entry.text == typed


def test_a_unit_typed_in_inches_stays_as_typed(gears: Session) -> None:
    gears.tap("Wheel diameter")
    gears.type("3.8 in")
    assert gears.row("Wheel diameter").value == "3.8\u00a0in"
    assert gears.state.board.drive.wheel_diameter.si == pytest.approx(0.09652)


def test_the_unit_key_changes_what_the_digits_mean(gears: Session) -> None:
    gears.tap("Wheel diameter")
    gears.keys("4")
    gears.tap("mm")
    gears.tap("in")
    assert gears.state.board.drive.wheel_diameter.si == pytest.approx(0.1016)


def test_wrong_input_greys_the_results_at_once_and_tells_after_a_while(gears: Session) -> None:
    shown = values(gears)
    gears.tap("Wheel diameter")
    gears.type("97")
    assert values(gears) != shown
    gears.window.dispatch("on_textinput", "8")
    gears.frame(1)
    assert all(card.greyed for card in cards(gears).values())
    assert values(gears) == shown
    assert gears.page.entry.sentence == ""
    gears.frame(45)
    assert gears.page.entry.sentence == ""
    gears.frame(5)
    assert gears.page.entry.sentence == "Wheel diameter: 50\u00a0mm to 250\u00a0mm."
    assert gears.page.entry.text == "978"
    gears.key(8)
    assert not any(card.greyed for card in cards(gears).values())
    assert gears.page.entry.sentence == ""


def test_two_marks_that_can_be_read_two_ways_are_refused(gears: Session) -> None:
    gears.tap("Wheel diameter")
    gears.page.entry.keypad.text = "1.234,5"  # As pasted: a key of the pad is not taken for a second mark.
    gears.frame(60)
    assert gears.page.entry.sentence == (
        "Point and comma together can be read two ways. Use one decimal mark and no thousands mark."
    )
    assert gears.page.entry.text == "1.234,5"
    assert gears.page.head.greyed


def test_a_second_mark_of_a_keyboard_is_refused_not_left_out(gears: Session) -> None:
    gears.tap("Wheel diameter")
    gears.type("9,7,5")
    gears.frame(60)
    assert gears.page.entry.text == "9,7,5"
    assert gears.page.entry.sentence == "There is already a decimal mark."


def test_a_comma_before_three_digits_is_read_back(gears: Session) -> None:
    gears.tap("Wheel diameter")
    gears.type("97,125")
    assert gears.shows("Read as 97.125\u00a0mm.")


def test_what_is_typed_outlives_back_and_a_restart(gears: Session) -> None:
    gears.tap("Wheel diameter")
    gears.type("978")
    gears.key(27)
    assert gears.page.title == "Gearing and speed"
    gears.restart(minutes=5)
    assert gears.page.title == "Gearing and speed"
    gears.tap("Wheel diameter")
    assert gears.page.entry.text == "978"


def test_tab_goes_on_and_shift_tab_back(gears: Session) -> None:
    gears.key(9)
    assert gears.page.entry.label == "Motor pulley"
    gears.type("18")
    gears.key(9)
    assert gears.page.entry.label == "Wheel pulley"
    gears.type("44")
    gears.key(9)
    assert gears.page.entry.label == "Wheel diameter"
    gears.key(9, "shift")
    assert gears.page.entry.label == "Wheel pulley"
    gears.key(13)
    assert gears.page.field is None
    assert {key: value.si for key, value in gears.state.trial.items()} == {
        "drive.motor_teeth": 18.0,
        "drive.wheel_teeth": 44.0,
    }


def test_values_that_do_not_fit_together_are_kept_and_named(gears: Session) -> None:
    gears.key(9)
    gears.type("44")
    assert gears.shows("The motor pulley has more teeth than the wheel pulley")
    assert gears.page.head.greyed
    assert gears.state.trial["drive.motor_teeth"].si == 44.0
    gears.tap("Done")
    gears.tap("Drop the trial")
    assert not gears.page.head.greyed


def test_a_choice_is_tried_by_a_tap(gears: Session) -> None:
    gears.tap("Cell chemistry")
    gears.tap("LFP, 3.65 V full")
    # Ours: 3.2 V for 3.6 V a cell: 43.837 x 32 / 36 = 38.966 km/h.
    assert values(gears)["Unloaded, nominal pack"] == "39"


def test_the_chosen_speed_renames_its_results(gears: Session) -> None:
    gears.tap("Ask at a speed of")
    gears.type("25")
    gears.tap("Done")
    assert "Push at 25\u00a0km/h" in cards(gears)


def test_the_scratch_board_needs_no_board_and_is_kept_by_a_name(begin: Callable[..., Session]) -> None:
    app = begin()
    app.tap("Just look something up")
    assert app.page.title == "Gearing and speed"
    assert app.shows("not saved")
    for key in ("16", "40", "100", "170"):
        app.key(9)
        app.type(key)
    app.tap("Done")
    assert app.row("Gear ratio").value == "2.5"
    app.restart(minutes=1)
    assert app.row("Gear ratio").value == "2.5"
    app.tap("Keep on board")
    app.type("Mooring")
    app.tap("Save")
    assert app.page.title == "Gearing and speed"
    assert app.state.saved.name == "Mooring"
    assert app.state.saved.motor.kv is not None
    assert not app.shows("not saved")
    app.restart(hours=48)
    assert app.state.saved.drive.wheel_teeth.si == 40.0


def test_each_result_opens_its_working(gears: Session) -> None:
    for label in cards(gears):
        gears.tap(gears.row(label))
        page = gears.page
        assert page.title == "Working", label
        assert page.label == label
        assert page.answer
        assert gaps(page) == [], label
        gears.tap("Back")
        assert gears.page.title == "Gearing and speed"
