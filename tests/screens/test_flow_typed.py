"""A refused entry changes nothing: what stood before typing began stands again, and the field says what was not used."""

import pytest

from logic.board import Value, board_fields
from screens.acts import Ask
from tests.screens.session import Session


def chip(app: Session, key: str) -> tuple[str, str]:
    """Return what the row of a value shows: the value, and what stands under it."""
    one = next(block for block in app.page.page.blocks if block.key == key)
    return one.value.replace("\u00a0", " "), one.detail


def ask(app: Session, key: str) -> None:
    """Ask for a value of the page in front."""
    app.page.perform(Ask(key))
    app.settle()


@pytest.mark.parametrize(("key", "text", "shown"), [
    ("drive.wheel_diameter", "1024", "100 mm"),
    ("motor.kv", "17000", "170 rpm/V"),
    ("controller.motor_current", "4500", "45 A"),
])  # fmt: skip
def test_a_refused_number_leaves_what_stood(app: Session, key: str, text: str, shown: str) -> None:
    """Its first digits are a value the field allows: they must not stay behind, not even through a kill."""
    app.shell.go("numbers.gearing")
    saved = app.state.board.value(key)
    ask(app, key)
    app.keys(text)
    app.settle()
    assert app.page.entry.sentence
    assert app.state.board.value(key) == saved
    assert key not in app.state.trial
    app.tap("Done")
    assert app.state.board.value(key) == saved
    assert app.state.trial == {}
    assert chip(app, key) == (shown, f"{text} not used")
    app.restart(minutes=1)
    assert app.state.board.value(key).si == saved.si


def test_typed_again_and_right_it_is_used(app: Session) -> None:
    app.shell.go("numbers.gearing")
    ask(app, "drive.wheel_diameter")
    app.keys("1024")
    app.tap("Done")
    ask(app, "drive.wheel_diameter")
    assert app.page.entry.text == "1024"
    app.tap("Clear")
    app.settle()
    app.keys("102")
    app.tap("Done")
    assert chip(app, "drive.wheel_diameter")[0] == "102 mm"
    assert "not used" not in " ".join(app.texts())


@pytest.mark.parametrize(("text", "said"), [
    ("1.234,5", "Point and comma together"), ("-3", "50"), ("1.2.3", "already a decimal mark"),
])  # fmt: skip
def test_a_keyboards_text_is_refused_whole_with_a_reason(app: Session, text: str, said: str) -> None:
    """Without its second mark 1.234,5 would be 1.2345, and -3 without its minus 3."""
    app.shell.go("board.value", key="drive.wheel_diameter")
    app.type(text)
    app.settle()
    assert app.page.entry.text == text
    assert not app.page.can_save
    assert said in app.page.entry.sentence


def test_what_is_pasted_is_taken_whole(app: Session, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr("kivy.core.clipboard.Clipboard.paste", lambda: "280-5M-15\n")
    app.shell.go("board.value", key="drive.belt_teeth")
    app.key(ord("v"), "ctrl")
    app.settle()
    assert app.page.entry.text == "280-5M-15"


def test_a_belts_print_fills_profile_length_and_width_with_one_undo(app: Session) -> None:
    app.state.set_value("drive.belt_width", Value(0.009))
    before = app.state.saved
    app.shell.go("board.value", key="drive.belt_teeth")
    app.settle()
    app.keys("300-5M-15")
    app.settle()
    assert app.page.entry.sentence.replace("\u00a0", " ") == "Read as 60 teeth, HTD 5M, 15 mm."
    app.tap("Save")
    found = app.state.saved
    assert (found.value("drive.belt_teeth").si, found.value("drive.belt_width").si) == (60.0, 0.015)
    assert found.value("drive.belt_width").known == "label"
    app.tap("Undo")
    assert app.state.saved == before


def test_265_for_a_belt_is_asked_about(app: Session) -> None:
    app.shell.go("board.value", key="drive.belt_teeth")
    app.settle()
    app.keys("265")
    app.settle()
    app.tap("265\u00a0mm = 53\u00a0teeth?")
    assert app.page.entry.text == "53"
    app.tap("Save")
    assert app.state.saved.value("drive.belt_teeth").si == 53.0


def test_volts_of_a_label_are_cells(app: Session) -> None:
    app.shell.go("board.value", key="pack.series")
    app.settle()
    app.keys("36V")
    app.settle()
    assert app.page.entry.sentence == "Read as 10 cells in series."


def test_a_board_row_says_what_was_typed_and_not_used(app: Session) -> None:
    app.tap("Board Towpath 36")
    app.tap("Wheel diameter")
    app.settle()
    app.keys("1024")
    app.shell.back()
    row = app.row("Wheel diameter")
    assert (row.value, row.detail) == ("100\u00a0mm", "1024 not used")


@pytest.mark.parametrize(("key", "known"), [
    ("motor.kv", "label"), ("controller.motor_current", "label"), ("pack.series", "label"),
    ("drive.wheel_diameter", "measured"), ("load.board_mass", "measured"), ("drive.motor_teeth", "measured"),
])  # fmt: skip
def test_how_known_begins_at_what_is_usual_for_the_field(app: Session, key: str, known: str) -> None:
    app.state.set_value(key, None)
    app.shell.go("board.value", key=key)
    assert (app.page.known, board_fields()[key].known) == (known, known)


def test_teeth_that_are_chosen_are_no_guess(app: Session) -> None:
    app.shell.go("numbers.gearing")
    ask(app, "drive.motor_teeth")
    app.keys("18")
    app.tap("Done")
    assert app.state.trial["drive.motor_teeth"].known == "chosen"
    assert not any("pulley is a guess" in text for text in app.texts())
    app.tap("Keep on board")
    assert app.state.saved.value("drive.motor_teeth").known == "chosen"
