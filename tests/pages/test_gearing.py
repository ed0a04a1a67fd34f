"""Gearing and speed: trying, keeping, dropping, typing right and typing wrong."""

from dataclasses import replace

import pytest

from logic.answers.asked import questions
from logic.answers.gearing import gearing
from logic.answers.run import WhenRead
from logic.board_saved import to_dict
from screens.acts import Go, Undo
from screens.acts.entering import Ask
from screens.acts.keeping import Settle
from screens.blocks import Figure, FigureRow
from tests.pages.reader import Reader

MINUS = "\u2212"
WHEEL = "drive.wheel_diameter"


@pytest.fixture
def gears(pages: Reader) -> Reader:
    """Give the page on Towpath 36."""
    return pages.open("numbers.gearing")


def values(page: Reader) -> dict[str, str]:
    """Return what each figure shows."""
    return {one.label: one.number for one in page.blocks() if isinstance(one, Figure | FigureRow)}


def test_the_page_opens_with_the_answer(gears: Reader) -> None:
    crown = gears.page.crown
    assert (crown.label, crown.unit) == ("Top speed, loaded", "km/h")
    assert float(crown.number) > 30
    # Ours: 16 : 40 teeth; 36 V x 170 rpm/V x 0.95 / 2.5 x pi x 0.1 m = 43.837 km/h.
    assert values(gears)["Gear ratio"] == "2.5"
    assert values(gears)["Without load, nominal pack"] == "43.8"


def test_steps_are_a_trial_against_the_saved_board(gears: Reader) -> None:
    before = float(gears.page.crown.number)
    gears.tap("Motor pulley, one more")
    gears.tap("Motor pulley, one more")
    assert gears["drive.motor_teeth"].value == "18\u00a0teeth"
    assert gears["drive.motor_teeth"].trial
    assert gears.page.foot.note == "Trying: Motor pulley"
    # Ours: 18 teeth for 16 are an eighth more speed, 43.837 x 18 / 16 = 49.316 km/h.
    row = gears["top_nominal"]
    assert (row.number, row.change) == ("49.3", "+5.5\u00a0km/h")
    assert gears["push_start"].change.startswith(MINUS)
    assert float(gears.page.crown.number) > before
    assert gears.world.saved.drive.motor_teeth.si == 16.0


def test_keep_makes_it_the_boards_and_undo_takes_it_back(gears: Reader) -> None:
    gears.tap("Motor pulley, one more")
    gears.tap("Keep on board")
    assert gears.world.saved.drive.motor_teeth.si == 17.0
    assert gears.world.saved.drive.motor_teeth.known == "chosen"
    assert gears.page.foot.note == ""
    assert gears.records("board_changed")[0].body.changes["drive.motor_teeth"].now.si == 17.0
    gears.act(Undo())
    assert gears.world.saved.drive.motor_teeth.si == 16.0
    gears.restart()
    assert (gears["drive.motor_teeth"].value, gears.page.foot.note) == (
        "17\u00a0teeth",
        "Trying: Motor pulley",
    )
    gears.tap("Drop the trial")
    assert gears["drive.motor_teeth"].value == "16\u00a0teeth"


def test_drop_puts_the_saved_values_back_and_undo_the_trial(gears: Reader) -> None:
    gears.tap("Motor pulley, one more")
    gears.tap("Drop the trial")
    assert gears["drive.motor_teeth"].value == "16\u00a0teeth"
    gears.act(Undo())
    assert gears["drive.motor_teeth"].value == "17\u00a0teeth"


def test_undo_changes_the_board_it_belongs_to(gears: Reader) -> None:
    first = gears.world.saved
    gears.tap("Motor pulley, one more")
    gears.tap("Keep on board")
    step = gears.world.undo
    other = next(board for board in gears.world.boards() if board.name == "Weir")
    gears.store.put("board", other.id)
    gears.restart()
    gears.world = replace(gears.world, undo=step)
    gears.act(Undo())
    assert gears.store.board(first.id).body == to_dict(first)
    assert gears.world.saved.id == other.id
    assert gears.store.board(other.id).body["drive"]["motor_teeth"]["si"] == 18.0


def test_stepping_back_to_the_saved_value_ends_the_trial(gears: Reader) -> None:
    gears.tap("Motor pulley, one more")
    gears.tap("Motor pulley, one less")
    assert gears.page.foot.main is None
    assert gears.world.trial == {}


def test_a_trial_outlives_a_restart_and_is_dropped_after_a_day(gears: Reader) -> None:
    gears.tap("Motor pulley, one more")
    gears.restart(hours=23)
    assert gears["drive.motor_teeth"].value == "17\u00a0teeth"
    gears.restart(hours=25)
    assert gears["drive.motor_teeth"].value == "16\u00a0teeth"


def test_a_digit_changes_the_results(gears: Reader) -> None:
    gears.tap("Wheel diameter")
    gears.type("97.5")
    # Ours: 43.837 km/h x 97.5 / 100 = 42.741.
    assert values(gears)["Without load, nominal pack"] == "42.7"
    assert not gears.page.crown.grey
    gears.tap("Done")
    assert (gears[WHEEL].value, gears[WHEEL].trial) == ("97.5\u00a0mm", True)
    assert gears.world.typed == {}


@pytest.mark.parametrize("typed", ["97mm", "97 mm", "97,0", "97.0", "9,7 cm"])
def test_point_comma_and_unit_are_read(gears: Reader, typed: str) -> None:
    gears.tap("Wheel diameter")
    gears.type(typed)
    assert gears.world.board.drive.wheel_diameter.si == pytest.approx(0.097)
    assert gears.typed == typed


def test_a_unit_typed_in_inches_stays_as_typed(gears: Reader) -> None:
    gears.tap("Wheel diameter")
    gears.type("3.8 in")
    assert gears[WHEEL].value == "3.8\u00a0in"
    assert gears.world.board.drive.wheel_diameter.si == pytest.approx(0.09652)


def test_the_unit_key_changes_what_the_digits_mean(gears: Reader) -> None:
    gears.tap("Wheel diameter")
    gears.type("4", unit="in")
    assert gears.world.board.drive.wheel_diameter.si == pytest.approx(0.1016)
    assert gears.page.foot.entry.unit == "in"


def test_wrong_input_greys_the_results_and_the_old_value_stands(gears: Reader) -> None:
    gears.tap("Wheel diameter")
    gears.type("97")
    assert gears.world.trial[WHEEL].si == pytest.approx(0.097)
    gears.type("8")
    assert gears.page.crown.grey
    assert all(one.grey for one in gears.blocks() if isinstance(one, FigureRow))
    assert gears.page.foot.entry.sentence == "Wheel diameter: 50\u00a0mm to 250\u00a0mm."
    # What stood before the typing began stands again.
    assert WHEEL not in gears.world.trial
    gears.rub()
    assert not gears.page.crown.grey
    assert gears.world.trial[WHEEL].si == pytest.approx(0.097)


def test_refused_text_that_is_left_counts_for_nothing_and_says_so(gears: Reader) -> None:
    gears.tap("Wheel diameter")
    gears.type("1024")
    gears.back()
    assert gears.name == "numbers.gearing"
    assert (gears[WHEEL].value, gears[WHEEL].detail) == ("100\u00a0mm", "1024 not used")
    assert not gears.page.crown.grey
    gears.restart(minutes=5)
    gears.tap("Wheel diameter")
    assert gears.typed == "1024"


@pytest.mark.parametrize(
    ("key", "text"),
    [(WHEEL, "1024"), ("motor.kv", "17000"), ("controller.motor_current", "4500")],
)
def test_the_first_digits_of_a_refused_number_do_not_stay_behind(gears: Reader, key: str, text: str) -> None:
    """They are a value the field allows: not even a kill may leave them."""
    gears.act(Ask(key))
    gears.type(text)
    gears.restart()
    assert gears.world.trial == {}
    assert gears[key].detail == f"{text} not used"
    gears.act(Ask(key))
    gears.rub(len(text))
    gears.tap("Done")
    assert "not used" not in gears[key].detail


def test_teeth_that_are_chosen_are_no_guess(gears: Reader) -> None:
    gears.tap("Motor pulley")
    gears.type("18")
    gears.tap("Done")
    assert gears.world.trial["drive.motor_teeth"].known == "chosen"
    assert not gears.shows("pulley is a guess")


def test_a_comma_before_three_digits_is_read_back(gears: Reader) -> None:
    gears.tap("Wheel diameter")
    gears.type("97,125")
    assert gears.page.foot.entry.read_back == "Read as 97.125\u00a0mm."


def test_values_that_do_not_fit_together_are_kept_and_named(gears: Reader) -> None:
    gears.tap("Motor pulley")
    gears.type("44")
    assert gears.shows("The motor pulley has more teeth than the wheel pulley")
    assert gears.page.crown.grey
    assert gears.world.trial["drive.motor_teeth"].si == 44.0
    gears.tap("Done")
    gears.tap("Drop the trial")
    assert not gears.page.crown.grey


def test_a_choice_is_tried_by_a_tap(gears: Reader) -> None:
    gears.tap("Cell chemistry")
    gears.tap("LFP, 3.65 V full")
    # Ours: 3.2 V for 3.6 V a cell: 43.837 x 32 / 36 = 38.966 km/h.
    assert values(gears)["Without load, nominal pack"] == "39"


def test_the_chosen_speed_renames_its_results(gears: Reader) -> None:
    gears.tap("At a speed of")
    gears.type("25")
    gears.tap("Done")
    assert "Push at 25\u00a0km/h" in values(gears)


def test_the_scratch_board_keeps_what_is_tried(bare: Reader) -> None:
    bare.open("numbers.gearing")
    for name, text in (("Motor pulley", "16"), ("Wheel pulley", "40"), ("Wheel diameter", "100")):
        bare.tap(name)
        bare.type(text)
    bare.tap("Done")
    assert values(bare)["Gear ratio"] == "2.5"
    bare.restart(minutes=1)
    assert values(bare)["Gear ratio"] == "2.5"
    assert bare.page.foot.main.act == Go("board.name", {"purpose": "keep"})


def test_each_result_opens_its_working(gears: Reader) -> None:
    gears.tap("All figures")
    figures = [one for one in gears.blocks() if isinstance(one, Figure | FigureRow)]
    assert len(figures) == 14
    for one in figures:
        assert isinstance(one.act, Go), one.label
        assert (one.act.page, one.act.args["label"]) == ("working", one.label)


def test_results_that_lack_the_same_value_say_so_once(bare: Reader) -> None:
    bare.open("numbers.gearing")
    bare.tap("All figures")
    details = [one.detail for one in bare.blocks() if isinstance(one, Figure | FigureRow)]
    assert len(details) == len(set(details)) > 1


def test_a_folded_figure_is_not_worked_out(gears: Reader) -> None:
    speed = float(questions()["ask.speed"].begins.si)
    items = gears.world.kept(gearing, gears.world.board, gears.world.person.rider, speed).items
    assert isinstance(items, WhenRead)
    assert gears.page.crown
    assert items.read == {"top_loaded", "top_nominal", "push_start", "climb_start", "ratio", "push_at"}
    assert len(items) > len(items.read)
    gears.tap("All figures")
    assert gears.page.crown
    assert items.read == set(items)


def test_what_a_question_begins_at_is_in_the_persons_unit(pages: Reader) -> None:
    """Who reads miles was asked in km/h, beside figures at 12.4 mph."""
    pages.act(Settle({"system": "inch"}))
    pages.open("numbers.gearing")
    assert pages["ask.speed"].value == "12.4\u00a0mph"
    pages.act(Ask("ask.speed"))
    assert pages.page.foot.entry.unit == "mph"
    pages.type("15")
    assert pages["ask.speed"].value == "15\u00a0mph"
    pages.act(Settle({"system": "metric"}))
    assert pages["ask.speed"].value == "15\u00a0mph"
