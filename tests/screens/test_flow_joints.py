"""Joints by touch and key: from the list to a record in the log, editing, looking up, reach and threadlocker."""

from collections.abc import Callable

import pytest

from screens.widgets.notice import Notice
from tests.screens.session import Session


@pytest.fixture
def joints(app: Session) -> Session:
    """Give the app on the joints of Towpath 36."""
    app.tap("Bench")
    app.tap("Joints")
    return app


def use(app: Session, name: str) -> None:
    app.state.choose(next(board.id for board in app.state.boards() if board.name == name))


def answer(app: Session) -> str:
    return app.page.page.crown.word


def notices(app: Session) -> list[str]:
    return [widget.word for widget in app.walk() if isinstance(widget, Notice) and widget.word]


def test_other_figures_who_and_a_note_are_recorded(joints: Session) -> None:
    joints.tap("Motor face screws")
    joints.tap("Record other figures or tool, a look, who, a note")
    joints.keys("1.6")
    joints.tap("Hex key and scale")
    joints.page.by.text = "Wren"
    joints.page.note.text = "left side only"
    joints.tap("Save")
    body = joints.state.last("tightening", joint="motor_face").body
    assert body.torque == pytest.approx(1.6)
    assert (body.tool, body.by, body.note) == ("hex key and scale", "Wren", "left side only")
    assert joints.shows(
        "Tightened just now by Wren: 1.6\u00a0N·m, hex key and scale, medium locker. left side only"
    )
    # The tap names the tool that it will write, and the locker.
    assert joints.page.page.foot.main.text == "Done: 1.7\u00a0N·m, hex key and scale"
    assert joints.shows("Done writes it into the log, medium locker.")
    # The tool is offered again.
    joints.tap("Record other figures or tool, a look, who, a note")
    assert joints.page.tool == "hex key and scale"
    assert joints.page.by.text == ""


def test_too_much_torque_is_said_and_still_recorded(joints: Session) -> None:
    joints.tap("Motor face screws")
    joints.tap("Record other figures or tool, a look, who, a note")
    assert joints.shows("Nothing typed: 1.7\u00a0N·m, as the card says.")
    joints.type("2.4")
    assert joints.shows("That is above 1.8\u00a0N·m")
    assert not joints.shows("Nothing typed")
    joints.tap("Save")
    assert joints.state.last("tightening", joint="motor_face").body.torque == pytest.approx(2.4)


def test_what_is_typed_for_a_record_outlives_a_restart(joints: Session) -> None:
    joints.tap("Motor face screws")
    joints.tap("Record other figures or tool, a look, who, a note")
    joints.type("1.6")
    joints.page.note.text = "cold"
    joints.restart(minutes=1)
    assert joints.page.entry.text == "1.6"
    assert joints.page.note.text == "cold"


def test_an_arm_that_cannot_be_is_not_used(joints: Session) -> None:
    joints.shell.go("settings")
    joints.tap("Arm of your hex key")
    joints.type("9000")
    joints.key(27)
    assert joints.row("Arm of your hex key").detail == "9000 not used"
    assert joints.state.person.key_arm is None


def test_a_motor_face_screw_is_looked_up_in_at_most_five_taps(begin: Callable[..., Session]) -> None:
    """From opening the app, with no board at all: M4, 5 mm in aluminium; one tap more for who knows that it is 6061."""
    app = begin()
    app.tap("Bench")
    app.tap("Look up a screw")
    app.tap("Motor face screws")
    app.tap("5 mm")
    assert app.taps <= 5
    assert answer(app).startswith("Set 0.7\u00a0N·m")
    assert app.shows("M4, class 8.8, 5\u00a0mm in aluminium, alloy not known")
    assert app.shows("Assumed: aluminium, alloy not known; class 8.8")
    app.tap("I know it is 6061")
    # Ours: the hole bears 1.474; the head on a mount nobody knows, 17.59 mm2 x 152 MPa = 2674 N -> 1.283; / 1.06 = 1.211.
    assert answer(app).startswith("Set 1.2\u00a0N·m")
    assert app.shows("Assumed: class 8.8")


def test_threadlocker_by_size_and_need(app: Session) -> None:
    app.tap("Bench")
    app.tap("Joints")
    app.tap("Threadlocker")
    assert app.page.answer == "Medium strength"
    app.tap("M3")
    assert app.page.answer == "Low strength"
    assert app.shows("A stronger grade could twist a screw this small")
    app.tap("Already together")
    assert app.page.answer == "Penetrating strength"
    assert app.shows("It creeps in and locks the balls.")
    assert notices(app) == ["caution"]


def test_a_record_of_a_nut_whose_drag_is_not_measured_has_no_ceiling(joints: Session) -> None:
    joints.state.set_value("joints.wheel_pulley.running", None)
    joints.settle()
    joints.tap("Wheel pulley bolts")
    joints.tap("Record other figures or tool, a look, who, a note")
    joints.type("2.4")
    assert not joints.shows("That is above")
