"""The guided entry of a board: one question after the other, from nothing to a speed."""

import pytest

from logic.answers.reading import RIDER
from logic.board import board_fields
from screens.acts import Undo
from screens.board.guide import FIRST
from screens.pictures.asked import picture_of
from tests.pages.hand import Hand
from tests.pages.reader import Reader

NUMBERS = (
    ("Motor pulley", "16"), ("Wheel pulley", "40"), ("Wheel diameter", "97.5"), ("Motor constant (Kv)", "170"),
    ("Cells in series", "10"),
)  # fmt: skip
"""The first questions, in their order, with what is typed."""


@pytest.fixture
def guided(bare: Reader) -> Reader:
    """Give a new board whose first value is asked for."""
    bare.open("board")
    bare.open("board.name", purpose="new")
    bare.tap("Save")
    return bare


def test_a_new_board_is_asked_about_at_once_and_says_how_far_one_is(guided: Reader) -> None:
    assert (guided.name, guided.world.saved.name) == ("board.value", "My board")
    # Ours: of the 12 values of the first round, the driven side is asked for one motor only.
    assert guided.page.title == "1 of 11"
    assert guided["label"].text == "Motor pulley"
    assert [bar.text for bar in (*guided.page.foot.beside, guided.page.foot.main)] == ["Skip", "Save"]
    guided.type("16")
    guided.enter()
    assert guided.page.title == "2 of 11"


def test_from_nothing_to_a_speed(guided: Reader) -> None:
    for label, typed in NUMBERS:
        assert guided["label"].text == label
        guided.type(typed)
        guided.tap("Save")
    assert guided["label"].text == "Cell chemistry"
    guided.tap("NMC, 4.20 V full")
    # The rider is asked with the board.
    assert guided["label"].text == RIDER.label
    guided.type("80")
    guided.tap("Save")
    assert guided.world.person.rider.si == 80.0
    # Ours: 170 rpm/V x 36 V x 0.95 / 2.5 turns of a 97.5 mm wheel: 2325.6 rpm, 42.7 km/h.
    assert guided["top_nominal"].label == "Top speed so far"
    guided.tap("One")
    assert guided.page.title == "9 of 12"
    assert guided["label"].text == "Driven side"
    guided.back()
    assert guided.page.crown.word == "7 of 27 filled"
    guided.open("numbers.gearing")
    # Ours: 170 rpm/V x 36 V x 0.95 / 2.5 turns of a 97.5 mm wheel: 2325.6 rpm, 42.7 km/h.
    assert guided["top_nominal"].number == "42.7"


def test_a_boards_first_speed_takes_five_values_and_seven_touches_beside_digits(bare: Reader) -> None:
    hand = Hand(bare)
    hand.tap("My board")
    hand.tap("Save")
    for _label, typed in NUMBERS:
        hand.keys(typed)
        hand.tap("Save")
    assert bare["top_nominal"].number == "42.7"
    hand.told("a board of one's own, to its first speed", taps=7, values=5)


def test_the_round_ends_and_the_rest_can_be_asked_for(guided: Reader) -> None:
    for _ in range(11):
        options = [block for block in guided.page.blocks if block.key in ("NMC", "2")]
        if options:
            guided.act(options[0].act)
        else:
            guided.type("10" if guided["label"].text == "Cells in series" else "50")
            guided.tap("Save")
    assert guided.page.crown.label == "Top speed so far"
    assert guided.shows("That is enough for first answers.")
    guided.tap("Ask for the other")
    assert guided["label"].text == "Belt profile"
    assert guided.page.title.startswith("1 of ")


def test_skipped_is_left_out_of_this_round_and_asked_in_the_next(guided: Reader) -> None:
    guided.tap("Skip")
    assert (guided["label"].text, guided.page.title) == ("Wheel pulley", "2 of 11")
    guided.type("36")
    guided.tap("Save")
    assert guided["label"].text == "Wheel diameter"
    guided.back()
    guided.tap("Add the next missing value")
    assert guided["label"].text == "Motor pulley"


def test_what_is_not_known_is_never_asked_again(guided: Reader) -> None:
    guided.tap("Don't know")
    assert guided["label"].text == "Wheel pulley"
    guided.back()
    guided.tap("Add the next missing value")
    assert guided["label"].text == "Wheel pulley"


def test_everything_skipped_says_so(guided: Reader) -> None:
    for _ in range(11):
        guided.tap("Skip")
    assert guided["said"].text == "11 skipped. They stay open."
    guided.tap("Done")
    assert guided.name == "board"


def test_taken_back_the_question_comes_again(guided: Reader) -> None:
    guided.type("16")
    guided.tap("Save")
    guided.act(Undo())
    assert (guided["label"].text, guided.page.title) == ("Motor pulley", "1 of 11")


def test_the_way_back_names_the_value_it_was_for(guided: Reader) -> None:
    """After the rider the bar still took the value before it back."""
    guided.type("16")
    guided.tap("Save")
    assert guided.world.undo.text == "Saved: Motor pulley"
    guided.tap("Don't know")
    assert guided.world.undo.text == "Not asked again: Wheel pulley"
    guided.act(Undo())
    assert guided["label"].text == "Wheel pulley"
    assert guided.world.undo is None
    guided.open("board.value", key=RIDER.key)
    guided.type("80")
    guided.tap("Save")
    assert guided.world.undo.text == "Saved: Rider"
    guided.act(Undo())
    assert (guided.world.person.rider, guided.world.undo) == (None, None)


def test_how_it_is_known_is_said_for_one_value_only(guided: Reader) -> None:
    guided.tap("A guess")
    guided.type("16")
    guided.tap("Save")
    assert guided.world.saved.drive.motor_teeth.known == "guess"
    assert [option.text for option in guided["known"].options if option.chosen] == ["Measured"]


def test_a_belts_print_answers_three_questions_with_one_undo(pages: Reader) -> None:
    before = pages.world.saved
    pages.open("board.value", key="drive.belt_teeth")
    pages.type("300-5M-12")
    assert pages.page.foot.entry.read_back.replace("\u00a0", " ") == "Read as 60 teeth, HTD 5M, 12 mm."
    pages.tap("Save")
    found = pages.world.saved
    assert (found.drive.belt_teeth.si, found.drive.belt_width.si, found.drive.belt_width.known) == (
        60.0,
        0.012,
        "label",
    )
    pages.act(Undo())
    assert pages.world.saved == before


def test_a_motors_print_fills_its_can_as_a_label(pages: Reader) -> None:
    pages.open("board.value", key="motor.kv")
    pages.type("6374-170KV")
    assert pages.page.foot.entry.read_back.replace("\u00a0", " ") == "Read as 170 rpm/V, 63 mm, 74 mm."
    pages.tap("Save")
    found = pages.world.saved
    assert (found.mount.can_diameter.si, found.mount.can_diameter.known) == (0.063, "label")


@pytest.mark.parametrize(("key", "text", "said"), [
    ("pack.series", "10S2P", "Read as 10 cells in series, 2 in parallel."),
    ("pack.parallel", "10S2P8Ah", "Read as 2 in parallel, 10 cells in series, 4 Ah a cell."),
])  # fmt: skip
def test_a_packs_print_is_read_back_with_what_it_counts(
    pages: Reader, key: str, text: str, said: str
) -> None:
    pages.open("board.value", key=key)
    pages.type(text)
    assert pages.page.foot.entry.read_back.replace("\u00a0", " ") == said


def test_amp_hours_without_the_p_number_say_what_they_wait_for(guided: Reader) -> None:
    guided.open("board.value", key="pack.series")
    guided.type("36V4Ah")
    assert guided.page.foot.entry.read_back.endswith("The Ah wait for the P number: type 10S2P 4\u00a0Ah.")
    guided.tap("Save")
    assert guided.world.saved.pack.series.si == 10.0


def test_265_for_a_belt_is_asked_about(pages: Reader) -> None:
    pages.open("board.value", key="drive.belt_teeth")
    pages.type("265")
    assert pages.page.foot.entry.offer.replace("\u00a0", " ") == "265 mm = 53 teeth?"
    pages.act(pages.page.foot.entry.take)
    pages.tap("Save")
    assert pages.world.saved.drive.belt_teeth.si == 53.0


def test_the_first_round_is_short_and_every_sketch_belongs_to_a_value() -> None:
    assert len(FIRST) == 12
    assert {key for key in FIRST if key != RIDER.key} <= set(board_fields())
    assert picture_of("drive.motor_teeth") != picture_of("drive.wheel_teeth")
    assert picture_of("load.board_mass") is None
