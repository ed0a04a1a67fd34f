"""A board from nothing: first start, guided entry, and what can be done with a whole board, by touch and key."""

from collections.abc import Callable

import pytest

from logic.board import Value
from screens.driver import Touch
from tests.screens.session import Session

GUIDED = (
    ("Motor pulley", "16"), ("Wheel pulley", "40"), ("Wheel diameter", "97,5"), ("Motor speed constant", "170"),
    ("Cells in series", "10"),
)  # fmt: skip
"""The first questions of the guided entry, in its order, with what is typed."""


@pytest.fixture
def empty(begin: Callable[..., Session]) -> Session:
    """Give the app on its first start."""
    return begin()


def enter_a_board(app: Session, name: str = "Mooring") -> None:
    """Walk from the first start into the guided entry."""
    app.tap("My board")
    app.type(name)
    app.tap("Save")
    app.tap("Add the next missing value")


def test_guided_entry_leads_from_nothing_to_a_speed(empty: Session) -> None:
    enter_a_board(empty)
    for label, typed in GUIDED:
        assert empty.page.title == label
        empty.keys(typed.replace(",", "."))
        empty.tap("Save and go on")
    assert empty.page.title == "Cell chemistry"
    empty.tap("NMC, 4.20 V full")
    empty.tap("Save and go on")
    assert empty.page.title == "Belt profile"
    empty.key(27)
    assert empty.shows("6 of 26 filled")
    empty.tap("Back")
    empty.tap("Numbers")
    empty.tap("Gearing and speed")
    # Ours: 170 rpm/V x 36 V x 0.95 / 2.5 turns of a 97.5 mm wheel: 2325.6 rpm, 42.7 km/h. The constant was read off the
    # motor, and a printed one may be a tenth off: 38.5 to 47 km/h.
    assert empty.row("Unloaded, nominal pack").number == "38.5 to 47"
    head = empty.page.page.crown
    assert (head.label, head.number) == ("Top speed, loaded", "–")
    assert "missing" in head.detail


def test_a_skipped_question_does_not_come_again_in_this_round(empty: Session) -> None:
    enter_a_board(empty)
    empty.tap("Skip, add it later")
    assert empty.page.title == "Wheel pulley"
    empty.keys("36")
    empty.tap("Save and go on")
    assert empty.page.title == "Wheel diameter"
    empty.key(27)
    empty.tap("Add the next missing value")
    assert empty.page.title == "Motor pulley"


@pytest.mark.parametrize(("way", "known"), [("On a label", "label"), ("A guess", "guess")])
def test_how_a_value_is_known_is_kept_with_it(app: Session, way: str, known: str) -> None:
    app.tap("Board Towpath 36")
    app.tap("Wheel diameter")
    app.keys("96")
    app.tap(way)
    app.tap("Save")
    assert app.row("Wheel diameter").value == "96\u00a0mm"
    assert app.state.saved.drive.wheel_diameter == Value(0.096, known, on="2026-11-25", typed_unit="mm")


def test_a_saved_value_can_be_taken_back(app: Session) -> None:
    app.tap("Board Towpath 36")
    app.tap("Wheel diameter")
    app.keys("96")
    app.tap("Save")
    app.tap("Undo")
    assert app.row("Wheel diameter").value == "100\u00a0mm"
    app.restart()
    assert app.state.saved.drive.wheel_diameter.si == 0.1


def test_a_refused_value_cannot_be_saved_and_stays_typed(app: Session) -> None:
    app.tap("Board Towpath 36")
    app.tap("Wheel diameter")
    app.keys("9")
    app.tap("Save")
    assert app.page.title == "Wheel diameter"
    app.frame(60)
    assert app.shows("Wheel diameter: 50\u00a0mm to 250\u00a0mm.")
    app.key(27)
    app.tap("Wheel diameter")
    assert app.page.entry.text == "9"
    assert app.state.saved.drive.wheel_diameter.si == 0.1


def test_a_value_can_be_taken_out(app: Session) -> None:
    app.tap("Board Towpath 36")
    app.tap("Wheel diameter")
    app.tap("Take this value out")
    assert app.row("Wheel diameter").value == "not set"
    app.tap("Undo")
    assert app.row("Wheel diameter").value == "100\u00a0mm"


def test_rename_with_undo(app: Session) -> None:
    app.tap("Board Towpath 36")
    app.tap("Rename")
    app.page.name_input.select_all()
    app.type("Towpath 40")
    app.tap("Save")
    assert app.shows("Towpath 40")
    app.tap("Undo")
    assert app.state.saved.name == "Towpath 36"


def test_a_copy_is_a_board_of_its_own(app: Session) -> None:
    app.tap("Board Towpath 36")
    app.tap("Copy this board")
    app.tap("Save")
    assert app.state.saved.name == "Towpath 36 copy"
    assert not app.state.saved.example
    app.tap("Wheel diameter")
    app.keys("90")
    app.tap("Save")
    first = next(board for board in app.state.boards() if board.name == "Towpath 36")
    assert first.drive.wheel_diameter.si == 0.1
    assert app.state.saved.drive.wheel_diameter.si == 0.09


@pytest.mark.parametrize("name", ["Weir", "weir", " Weir "])
def test_a_name_that_is_taken_is_refused_and_stays(app: Session, name: str) -> None:
    app.tap("Board Towpath 36")
    app.tap("Copy this board")
    app.page.name_input.select_all()
    app.type(name)
    app.tap("Save")
    assert app.shows("Another board has this name.")
    assert app.page.name_input.text == name
    assert len(app.state.boards()) == 4


def test_an_empty_name_is_refused(empty: Session) -> None:
    empty.tap("My board")
    empty.tap("Save")
    assert empty.shows("A name has 1 to 40 letters.")
    assert empty.state.is_scratch


def test_the_bin_gives_back_by_undo(app: Session) -> None:
    app.tap("Board Towpath 36")
    app.tap("Put in the bin")
    assert app.shows("Towpath 36 is in the bin")
    assert app.state.saved.name == "Ferry"
    app.tap("Undo")
    assert app.state.saved.name == "Towpath 36"
    assert app.state.binned() == []


def test_after_the_bin_comes_the_list_with_the_way_back_and_no_other_bin(app: Session) -> None:
    app.tap("Numbers")
    app.tap("Gearing and speed")
    app.tap("Motor pulley, one more")
    app.key(27)
    app.tap("Board Towpath 36")
    bar = app.find("Put in the bin")
    finger = app.touch(bar)
    thumb = bar.to_window(*bar.center)
    finger.up()
    app.frame(3)
    assert app.page.title == "Boards"
    assert not app.shows("Put in the bin")
    assert app.shows("Undo")
    # A second tap on the same spot bins nothing.
    again = Touch(app, *thumb)
    app.frame(3)
    again.up()
    app.frame(3)
    assert [board.name for board in app.state.binned()] == ["Towpath 36"]
    app.tap("Undo")
    assert app.page.title == "Boards"
    assert app.state.saved.name == "Towpath 36"
    # The trial that was open on it is open still.
    assert app.state.board.drive.motor_teeth.si == 17


def test_the_bin_gives_back_after_a_restart(app: Session) -> None:
    app.tap("Board Towpath 36")
    app.tap("Put in the bin")
    app.restart(hours=1)
    app.tap("Board Ferry")
    app.tap("Boards")
    assert app.shows("In the bin")
    app.tap("Towpath 36")
    assert app.state.saved.name == "Towpath 36"
    assert app.state.saved.drive.wheel_diameter.si == 0.1
    assert not app.shows("In the bin")


def test_another_board_is_chosen_in_the_list(app: Session) -> None:
    app.tap("Board Towpath 36")
    app.tap("Boards")
    app.tap("Lock-keeper")
    assert app.page.title == "Board"
    assert app.row("Motor pulley").value == "15\u00a0teeth"
    app.restart()
    assert app.state.saved.name == "Lock-keeper"


def test_back_goes_one_level_and_out_from_the_first_place(app: Session) -> None:
    app.tap("Numbers")
    app.tap("Board Towpath 36")
    app.tap("Wheel diameter")
    for title in ("Board", "Numbers", "Ride"):
        assert app.shell.back()
        assert app.page.title == title
    assert not app.shell.back()


@pytest.mark.parametrize(("minutes", "title"), [(29, "Wheel diameter"), (31, "Ride")])
def test_the_last_place_comes_back_within_half_an_hour(app: Session, minutes: int, title: str) -> None:
    app.tap("Board Towpath 36")
    app.tap("Wheel diameter")
    app.keys("96")
    app.restart(minutes=minutes)
    assert app.page.title == title
    if title == "Wheel diameter":
        assert app.page.entry.text == "96"
        app.key(27)
        assert app.page.title == "Board"
