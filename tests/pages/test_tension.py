"""The tension check, page by page: both belts, verdicts, what is kept when it is left half done."""

import re
from dataclasses import replace
from pathlib import Path
from typing import get_args

import pytest

from logic.belt.verdict import Word
from logic.board_saved import to_dict
from logic.log import BeltFitted, Tension
from logic.set_ups import set_ups
from logic.store.errors import Full
from screens.acts import Go, Undo
from screens.acts.boards import AddBoard
from screens.acts.outside import Say
from screens.blocks import PLAIN, RIGHT, UNSURE, WRONG
from screens.words.tension import SAID
from tests.pages.reader import Reader

ASSETS = Path(__file__).resolve().parents[2] / "assets"
GLOSSARY = "glossary.toml"
"""It lists what else a thing is called, for who looks for it."""

MINUS = "\u2212"


@pytest.fixture
def check(pages: Reader) -> Reader:
    """Give the tension check of Towpath 36."""
    return pages.open("ride.tension")


def test_both_belts_take_two_taps_besides_the_digits(check: Reader) -> None:
    check.type("0.92")
    check.tap("Save left, go to right")
    check.type("0.6")
    check.tap("Save right as it is")
    assert check.name == "ride.tension_saved"
    right, left = check.records()
    assert check.world.args["ids"] == [left.id, right.id]
    assert (right.body.belt, right.body.word) == ("right", "slack")
    assert (left.body.belt, left.body.word) == ("left", "in window")
    # A kilogram on a scale is 9.80665 N; the depth offered is the one with the smallest error.
    assert left.body.pull == pytest.approx(0.92 * 9.80665)
    assert left.body.depth == pytest.approx(0.0011)


def test_a_belt_is_read_where_storage_is_full_and_kept_once_it_is_not(
    check: Reader, monkeypatch: pytest.MonkeyPatch
) -> None:
    """No key was taken any more: the app was of no use on a phone without room."""

    def full(*_: object) -> None:
        raise Full

    with monkeypatch.context() as patched:
        patched.setattr(check.store, "save_trial", full)
        check.type("0.9")
        assert check.page.foot.entry.text == "0.9"
        assert check.page.crown.word
        assert check.world.undo.text.startswith("The storage is full.")
    check.type("2")
    check.restart()
    assert check.open("ride.tension").page.foot.entry.text == "0.92"


@pytest.mark.parametrize("page", ["ride.tension", "bench.belt", "log.tension", "log.note"])
def test_a_page_of_a_belt_that_the_board_has_no_more_is_that_of_the_one_it_has(
    pages: Reader, page: str
) -> None:
    pages.open(page, side="left", kind="belt_fitted")
    right = next(one.board for one in set_ups() if one.board.sides == ("right",))
    pages.act(AddBoard(right.name, like=right))
    assert pages.world.saved.sides == ("right",)
    assert pages.name == page
    assert pages.page.title
    assert pages.world.side_of(pages.world.saved) == "right"


@pytest.mark.parametrize(
    ("pull", "word", "form", "certainty", "move"),
    [
        ("0.5", "LOOSE", WRONG, "", "away from the wheel"),
        ("0.67", "LOOSE", WRONG, "", "away from the wheel"),
        ("0.7", "ON THE EDGE: may be loose", UNSURE, "The floor lies within", ""),
        ("0.77", "ON THE EDGE: may be loose", UNSURE, "The floor lies within", ""),
        ("0.85", "JUST RIGHT", RIGHT, "", ""),
        ("1", "ON THE EDGE: may be tight", UNSURE, "The ceiling lies within", ""),
        ("1.1", "TIGHT", WRONG, "", "towards the wheel"),
        ("2.4", "TIGHT", WRONG, "", "towards the wheel"),
    ],
)
def test_the_verdict_comes_with_the_last_digit(  # noqa: PLR0913  (a case)
    check: Reader, pull: str, word: str, form: str, certainty: str, move: str
) -> None:
    assert check["verdict"].form == PLAIN
    check.type(pull)
    assert (check["verdict"].word, check["verdict"].form) == (word, form)
    assert check.shows(certainty)
    assert ("move" in check) == bool(move)
    assert check.shows(move)


@pytest.mark.parametrize(
    "typed", ["9.022 N", "0.92", "0,92 kg", "920 g", "2.028 lb", "32.45 oz"], ids=lambda typed: typed
)
def test_the_scale_may_read_in_any_unit(check: Reader, typed: str) -> None:
    check.type(typed)
    # Ours: 0.92 kg x 9.80665 = 9.022 N; 2.028 lb and 32.45 oz are 0.92 kg too.
    assert check["tension"].text.startswith("Belt tension 102\u00a0N\u00a0±")


def test_it_says_what_to_do_first_and_what_locked_pulleys_would_read(check: Reader) -> None:
    assert check.shows("Power off, pack unplugged.")
    assert check.shows("Pull the middle of the free span 1.1\u00a0mm aside.")
    assert check.shows("Right when the scale reads 0.959\u00a0kg")
    assert check.shows("One pulley must be free to turn. With both held the scale would read 1.67\u00a0kg")


def test_the_change_since_last_time_comes_with_its_sign(check: Reader) -> None:
    check.type("0.92")
    check.enter()
    check.type("0.92")
    check.enter()
    check.restart(hours=72)
    check.open("ride.tension")
    assert check.shows("Last time 102\u00a0N\u00a0±\u00a020\u00a0N, just right, 3 days ago.")
    check.type("0.85")
    # Ours: 0.07 kg less pull at 1.1 mm is 0.686 N x 64.5 mm / (4 x 1.1 mm) = 10.06 N less tension: 91.9 N after 102 N,
    # which is known to a newton.
    assert check.shows(f"{MINUS}10\u00a0N since last time.")


def test_back_never_loses_what_was_typed(check: Reader) -> None:
    check.type("0.85")
    check.back()
    assert check.name == "ride"
    check.open("ride.tension")
    assert check.typed == "0.85"
    assert check["verdict"].word == "JUST RIGHT"
    check.enter()
    check.type("0.82x")
    check.back()
    assert check.page.title == "Left belt, 1 of 2"
    check.back()
    check.restart(minutes=90)
    check.open("ride.tension")
    assert check.typed == ""
    check.type("0.85")
    check.enter()
    assert check.typed == "0.82x"


def test_a_refused_pull_keeps_the_plan_and_cannot_be_saved(check: Reader) -> None:
    check.type("0.92x")
    assert check["verdict"].form == PLAIN
    assert check.shows("Right when the scale reads 0.959\u00a0kg")
    assert check.page.foot.entry.sentence.startswith("That unit is not known here. Known: ")
    assert check.page.foot.main.act is None
    check.enter()
    assert check.records("tension") == []
    check.rub()
    assert check["verdict"].word == "JUST RIGHT"


def test_a_deeper_pull_asks_for_more(check: Reader) -> None:
    check.type("0.92")
    for _ in range(3):
        check.tap("Pull depth, one more")
    # A calliper sets a depth to a tenth of a millimetre.
    assert check["depth"].value == "1.4\u00a0mm"
    # Ours: the same pull at 1.4 mm for 1.1 mm is about four fifths of the tension, less what the belt stretches.
    assert check["verdict"].word == "LOOSE"
    for _ in range(3):
        check.tap("Pull depth, one less")
    assert check["verdict"].word == "JUST RIGHT"


def test_the_check_uses_the_saved_board_and_says_so(pages: Reader) -> None:
    pages.open("numbers.gearing")
    pages.tap("Motor pulley, one more")
    pages.back()
    pages.open("ride.tension")
    assert pages.shows("A trial is open: this check uses the saved board.")
    assert pages.shows("Right when the scale reads 0.959\u00a0kg")


def test_outside_the_window_the_main_bar_adjusts_and_measures_again(check: Reader) -> None:
    check.type("0.6")
    assert check.page.foot.main.text == "Adjust, measure again"
    check.enter()
    assert check.page.title == "Left belt, 1 of 2"
    assert check.typed == ""
    assert check.shows("Move the motor a little away from the wheel, turn, measure again.")
    assert check.shows("loose, just now.")
    check.type("0.92")
    # Ours: 0.32 kg more pull at 1.1 mm, 3.138 N x 64.5 mm / (4 x 1.1 mm), is 46.0 N more tension: 102 N after 56 N.
    assert check.shows("+46\u00a0N since last time.")
    check.enter()
    check.type("0.92")
    check.tap("Save right")
    records = check.records("tension")
    assert [(one.body.belt, one.body.word) for one in records] == [
        ("right", "in window"), ("left", "in window"), ("left", "slack"),
    ]  # fmt: skip
    assert check.world.args["ids"] == [records[1].id, records[0].id]


def test_each_result_opens_its_working(check: Reader) -> None:
    check.type("0.92")
    act = check["working"].act
    assert isinstance(act, Go)
    assert (act.page, act.args["label"]) == ("working", "Belt tension, each span")
    check.tap("All figures")
    rows = [
        block for block in check.page.blocks if block.key in check["figures"].key or hasattr(block, "number")
    ]
    opened = {block.label for block in rows if hasattr(block, "number") and isinstance(block.act, Go)}
    assert len(opened) == 20


def test_the_last_eight_readings_stand_side_by_side(check: Reader) -> None:
    assert "latest" not in check
    said, board = Tension(belt="left", method="scale", error=11.0, word="in window"), check.world.saved.id
    for number in range(10):
        check.store.append(board, replace(said, tension=90.0 + number))
    check.store.append(board, replace(said, tension=99.0, belt="right"))
    check.store.append(board, replace(said, tension=300.0, method="pluck"))
    check.restart()
    assert check["latest"].text == ", ".join(str(number) for number in range(92, 100))
    assert check["latest title"].text == "Last readings of this belt, N"
    check.store.append(board, BeltFitted(belt="left"))
    check.restart()
    assert "latest" not in check


def test_target_and_verdict_are_said_aloud(check: Reader) -> None:
    check.tap("Say target and verdict aloud")
    assert check.out == [
        Say(
            "Left belt. Pull 1.1\u00a0mm aside. Right when the scale reads 0.959\u00a0kg: 108\u00a0N in the belt."
        )
    ]
    check.type("0.6")
    assert check.page.say == (
        "Reads 0.6\u00a0kg, aim 0.959, right 0.735 to 1.03. Belt tension 56\u00a0N\u00a0±\u00a016\u00a0N. Loose."
        " Move the motor a little away from the wheel, turn, measure again."
    )


def test_one_motor_has_one_belt(pages: Reader) -> None:
    other = next(board for board in pages.world.boards() if board.name == "Lock-keeper")
    pages.store.put("board", other.id)
    pages.restart()
    pages.open("ride.tension")
    assert pages.page.title == "Tension check"
    pages.type("0.85")
    pages.tap("Save")
    assert len(pages.world.args["ids"]) == 1


def test_without_the_belt_a_pull_says_nothing_and_is_not_saved(pages: Reader) -> None:
    board = pages.world.saved.with_value("drive.belt_teeth", None).with_value("drive.profile", None)
    pages.store.save_board(board.id, board.name, to_dict(board))
    pages.restart()
    pages.open("ride.tension")
    assert pages.shows("Without the belt a pull says nothing, and is not saved. Belt profile is missing.")
    # What is missing leads to the board's own page.
    assert pages["drive.profile"].act == Go("board.value", {"key": "drive.profile"})
    pages.type("0.92")
    assert pages.page.foot.main.act is None
    pages.enter()
    assert pages.typed == "0.92"
    assert pages.records("tension") == []


def test_a_reading_on_the_edge_says_what_the_scale_should_read(check: Reader) -> None:
    check.type("0.75")
    assert check["verdict"].word == "ON THE EDGE: may be loose"
    assert check["verdict"].text == "Reads 0.75\u00a0kg, aim 0.959, right 0.735 to 1.03."
    check.tap("Save left, go to right")
    assert check.records("tension")[0].body.word == "on the edge: may be slack"


def test_the_other_ways_are_one_tap_away(check: Reader) -> None:
    check.tap("Set this belt")
    assert (check.name, check.page.title) == ("bench.belt", "Left belt")


def test_a_belt_is_loose_just_right_or_tight_wherever_it_is_told() -> None:
    """One word for one thing: the log keeps its own words, a rider reads these."""
    assert set(SAID) == set(get_args(Word))
    said = [text for folder in ("checklists", "tables") for path in (ASSETS / folder).glob("*.toml") if path.name != GLOSSARY
            for text in re.findall(r'"([^"]*)"', path.read_text())]  # fmt: skip
    assert [
        text
        for text in (*SAID.values(), *said)
        if re.search(r"\bslack(en|er|ens|ened)?\b", text, re.IGNORECASE)
    ] == []


def test_a_saved_tension_is_taken_back_by_the_bar(check: Reader) -> None:
    """It was the one saving without a way back."""
    check.type("0.92")
    check.enter()
    check.type("0.6")
    check.tap("Save right as it is")
    assert check.world.undo.text == "Saved: Right belt"
    check.act(Undo())
    assert check.name == "ride.tension_saved"
    assert "belt right" not in check
    assert check["belt left"].title.startswith("Left belt")
    assert [record.body.belt for record in check.records("tension")] == ["left"]


def test_a_check_that_is_taken_back_whole_says_so(check: Reader) -> None:
    check.type("0.92")
    check.enter()
    assert check.world.undo.text == "Saved: Left belt"
    check.act(Undo())
    check.type("0.92")
    check.enter()
    check.act(Undo())
    assert check["verdict"].word == "Taken back"
    assert check.records("tension") == []
    check.tap("Measure again")
    assert check.name == "ride.tension"
