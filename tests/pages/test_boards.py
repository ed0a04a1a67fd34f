"""The board's pages: what is known of it, names, the bin, set-ups. In plain Python."""

import pytest

from logic.board import Value
from logic.set_ups import set_ups
from logic.units import quantities
from screens.acts import Place, Undo
from screens.acts.boards import AddBoard, NotKnown
from screens.acts.entering import Write
from tests.pages.reader import Reader


def names(pages: Reader) -> list[str]:
    """Return the names of the saved boards."""
    return [board.name for board in pages.world.boards()]


def test_the_board_says_how_far_it_is_known_and_shows_one_part_at_a_time(bare: Reader) -> None:
    bare.open("board")
    assert bare.page.crown.word == "0 of 26 filled"
    assert bare["drive.motor_teeth"].value == "not set"
    assert "motor.kv" not in bare
    bare.tap("Motor")
    assert bare["motor.kv"].value == "not set"


def test_a_value_is_kept_with_how_it_is_known_and_can_be_taken_back(pages: Reader) -> None:
    pages.open("board")
    pages.tap("Wheel diameter")
    pages.type("96")
    pages.tap("On a label")
    pages.tap("Save")
    assert pages.name == "board"
    assert (pages["drive.wheel_diameter"].value, pages["drive.wheel_diameter"].detail) == (
        "96\u00a0mm",
        "label, 2026-11-25",
    )
    pages.act(Undo())
    assert pages["drive.wheel_diameter"].value == "100\u00a0mm"
    pages.restart()
    assert pages.world.saved.drive.wheel_diameter.si == 0.1


def test_a_standing_value_takes_up_how_it_is_known_at_once(pages: Reader) -> None:
    pages.open("board.value", key="drive.wheel_diameter")
    pages.tap("A guess")
    assert pages.world.saved.drive.wheel_diameter == Value(0.1, "guess", on="2026-11-25", typed_unit="mm")


def test_a_refused_value_cannot_be_saved_stays_typed_and_is_said_on_the_board(pages: Reader) -> None:
    pages.open("board")
    pages.tap("Wheel diameter")
    pages.type("9")
    assert pages.page.foot.main.act is None
    assert pages.shows("Wheel diameter: 50\u00a0mm to 250\u00a0mm.")
    pages.back()
    assert pages["drive.wheel_diameter"].detail == "9 not used"
    pages.tap("Wheel diameter")
    assert pages.typed == "9"
    assert pages.world.saved.drive.wheel_diameter.si == 0.1


def test_a_value_can_be_taken_out(pages: Reader) -> None:
    pages.open("board")
    pages.tap("Wheel diameter")
    pages.tap("Take this value out")
    assert pages["drive.wheel_diameter"].value == "not set"
    pages.act(Undo())
    assert pages["drive.wheel_diameter"].value == "100\u00a0mm"


def test_the_board_shows_the_saved_values_and_writes_them_while_a_trial_is_open(pages: Reader) -> None:
    pages.open("numbers.gearing")
    pages.tap("Motor pulley, one more")
    pages.back()
    pages.open("board")
    assert pages.shows("A trial is open. This page shows the saved board.")
    assert pages["drive.motor_teeth"].value == "16\u00a0teeth"
    pages.tap("Wheel pulley")
    pages.type("42")
    pages.tap("Save")
    assert pages.world.saved.drive.wheel_teeth.si == 42.0
    assert pages.world.trial["drive.motor_teeth"].si == 17.0


def test_another_board_is_chosen_in_the_list_and_stays(pages: Reader) -> None:
    pages.open("board")
    pages.tap("Boards")
    assert pages[pages.world.saved.id].chosen
    pages.tap("Lock-keeper")
    assert pages["drive.motor_teeth"].value == "15\u00a0teeth"
    pages.restart()
    assert pages.world.saved.name == "Lock-keeper"


def test_rename_with_undo(pages: Reader) -> None:
    pages.open("board")
    pages.tap("Rename")
    assert pages["name/rename"].text == "Towpath 36"
    pages.act(Write("name/rename", "Towpath 40"))
    pages.tap("Save")
    assert pages.name == "board"
    assert pages.world.saved.name == "Towpath 40"
    pages.act(Undo())
    assert pages.world.saved.name == "Towpath 36"


def test_a_copy_is_a_board_of_its_own(pages: Reader) -> None:
    pages.open("board")
    pages.tap("Copy this board")
    pages.tap("Save")
    assert pages.world.saved.name == "Towpath 36 copy"
    assert not pages.world.saved.example
    pages.tap("Wheel diameter")
    pages.type("90")
    pages.tap("Save")
    first = next(board for board in pages.world.boards() if board.name == "Towpath 36")
    assert (first.drive.wheel_diameter.si, pages.world.saved.drive.wheel_diameter.si) == (0.1, 0.09)
    pages.tap("Copy this board")
    assert pages["name/copy"].text == "Towpath 36 copy copy"


@pytest.mark.parametrize("name", ["Weir", "weir", " Weir "])
def test_a_name_that_is_taken_is_refused_and_stays(pages: Reader, name: str) -> None:
    pages.open("board.name", purpose="copy")
    pages.act(Write("name/copy", name))
    assert pages.page.foot.main.act is None
    assert pages["why"].text == "Another board has this name."
    pages.back()
    pages.open("board.name", purpose="copy")
    assert pages["name/copy"].text == name
    assert len(names(pages)) == 4


def test_an_empty_name_is_refused(bare: Reader) -> None:
    bare.open("board.name", purpose="new")
    bare.act(Write("name/new", ""))
    assert (bare.page.foot.main.act, bare.page.foot.main.why) == (None, "A name has 1 to 40 letters.")
    assert bare["name/new"].text == ""


def test_the_bin_leads_to_the_list_gives_back_by_undo_and_after_a_restart(pages: Reader) -> None:
    pages.open("numbers.gearing")
    pages.tap("Motor pulley, one more")
    pages.open("board")
    pages.tap("Put in the bin")
    assert pages.name == "board.boards"
    assert pages.world.saved.name == "Ferry"
    # The bar of the next board's own bin must not come under the same thumb.
    assert not any(text == "Put in the bin" for text, _act in pages.parts())
    pages.act(Undo())
    assert pages.world.saved.name == "Towpath 36"
    # The trial that was open on it is open still.
    assert pages.world.trial["drive.motor_teeth"].si == 17.0
    pages.open("board")
    pages.tap("Put in the bin")
    pages.restart(hours=1)
    pages.tap("Towpath 36")
    assert pages.world.saved.drive.wheel_diameter.si == 0.1
    assert "bin" not in pages


def test_the_last_board_in_the_bin_leaves_none(bare: Reader) -> None:
    bare.act(AddBoard("Mooring"))
    bare.open("board")
    bare.tap("Put in the bin")
    assert bare.world.is_scratch
    bare.act(Undo())
    assert bare.world.saved.name == "Mooring"


def test_the_example_boards_come_with_a_rider(bare: Reader) -> None:
    bare.open("board.boards")
    bare.tap("Add the example boards")
    assert names(bare) == ["Ferry", "Lock-keeper", "Towpath 36", "Weir"]
    assert bare.world.person.rider.known == "guess"


def test_a_usual_set_up_is_taken_and_changed(bare: Reader) -> None:
    bare.open("board")
    bare.tap("Boards")
    bare.tap("A usual set-up")
    bare.tap("Two motors, street")
    assert bare.name == "board"
    board = bare.world.saved
    assert (board.name, board.example) == ("Two motors, street", True)
    assert {value.known for key in ("drive.motor_teeth", "motor.kv") if (value := board.value(key))} == {
        "guess"
    }
    bare.tap("Wheel pulley")
    bare.type("40")
    bare.tap("Save")
    assert bare.world.saved.drive.wheel_teeth.si == 40.0
    # What is offered stays as it was, and a second one has a name of its own.
    assert set_ups()[1].board.drive.wheel_teeth.si == 44.0
    bare.open("board.set_ups")
    bare.tap("Two motors, street")
    assert bare.world.saved.name == "Two motors, street 2"


@pytest.mark.parametrize("one", set_ups(), ids=lambda one: one.key)
def test_a_usual_set_up_answers_everything_that_is_asked(bare: Reader, one: object) -> None:
    bare.act(AddBoard("Taken", one.board))  # type: ignore[attr-defined]
    assert bare.world.saved.missing() == ()


def test_what_nobody_knows_is_not_asked_for_again(bare: Reader) -> None:
    bare.act(AddBoard("Mooring"))
    bare.open("board")
    bare.act(NotKnown("drive.motor_teeth"))
    assert bare["drive.motor_teeth"].value == "not known"
    bare.tap("Add the next missing value")
    assert bare["label"].text == "Wheel pulley"


@pytest.mark.parametrize(("text", "said"), [
    ("1.234,5", "Point and comma together"), ("-3", "50"), ("1.2.3", "already a decimal mark"),
])  # fmt: skip
def test_text_is_refused_whole_with_a_reason(pages: Reader, text: str, said: str) -> None:
    """Without its second mark 1.234,5 would be 1.2345, and -3 without its minus 3."""
    pages.open("board.value", key="drive.wheel_diameter")
    pages.type(text)
    assert pages.page.foot.main.act is None
    assert said in pages.page.foot.entry.sentence


def test_volts_of_a_label_are_cells(pages: Reader) -> None:
    pages.open("board.value", key="pack.series")
    pages.type("36V")
    assert pages.page.foot.entry.read_back == "Read as 10 cells in series."


def test_inch_begins_with_inches(pages: Reader) -> None:
    pages.open("settings")
    pages.tap("Inch and pound")
    pages.open("board.value", key="drive.wheel_diameter")
    pages.tap("Take this value out")
    pages.open("board.value", key="drive.wheel_diameter")
    pages.type("3.8")
    pages.tap("Save")
    # Ours: 3.8 in x 25.4 mm = 96.52 mm.
    assert pages.world.saved.drive.wheel_diameter.si == pytest.approx(0.09652)
    assert quantities()["length"].home("inch").shown == "in"


@pytest.mark.parametrize(("key", "known"), [
    ("motor.kv", "On a label"), ("controller.motor_current", "On a label"), ("pack.series", "On a label"),
    ("drive.wheel_diameter", "Measured"), ("load.board_mass", "Measured"), ("drive.motor_teeth", "Measured"),
])  # fmt: skip
def test_how_known_begins_at_what_is_usual_for_the_field(bare: Reader, key: str, known: str) -> None:
    bare.act(AddBoard("Mooring"))
    bare.open("board.value", key=key)
    assert [option.text for option in bare["known"].options if option.chosen] == [known]


def test_half_typed_is_there_again_after_half_an_hour(pages: Reader) -> None:
    pages.open("board")
    pages.tap("Wheel diameter")
    pages.type("96")
    pages.restart(minutes=29)
    assert (pages.page.title, pages.typed) == ("Wheel diameter", "96")


def test_what_was_typed_without_a_board_is_of_the_first_one(bare: Reader) -> None:
    bare.open("numbers.gearing")
    bare.tap("Give them one by one")
    bare.type("10")
    bare.act(Place("ride"))
    bare.tap("My board")
    bare.tap("Save")
    assert bare.world.saved.name == "My board"
    assert bare.world.saved.pack.series.si == 10.0
    # It is not asked for again.
    assert bare.page.foot.entry.key == "board/drive.motor_teeth"


def test_a_board_is_sent_from_its_own_page(pages: Reader) -> None:
    pages.open("board")
    pages.tap("Send it to a friend")
    assert pages.name == "settings.files"
    assert pages["board"].detail == "One file, for another phone or a friend"


def test_a_part_says_what_is_set_and_what_is_still_needed(pages: Reader) -> None:
    pages.open("board")
    # Towpath 36 is known whole: eight values of its drive, all that its answers need.
    assert (pages.page.crown.word, pages["drive"].note) == ("26 of 26 filled", "8 set")


def test_a_part_of_a_new_board_says_what_is_still_needed(bare: Reader) -> None:
    assert bare.open("board")["drive"].note == "0 set, 8 still needed"
