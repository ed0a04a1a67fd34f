"""A full record of a joint: figures, tool, locker, who, a note; too much torque; a look."""

import pytest

from logic.board_saved import to_dict
from screens.acts import Undo
from screens.acts.entering import Write
from tests.pages.reader import Reader

RECORD = "Record other figures or tool, a look, who, a note"


@pytest.fixture
def joint(pages: Reader) -> Reader:
    """Give the pages on a full record of the motor face screws of Towpath 36."""
    pages.open("bench.joint", joint="motor_face")
    pages.tap(RECORD)
    return pages


def key(name: str, joint: str = "motor_face") -> str:
    return f"done/{joint}/{name}"


def test_other_figures_who_and_a_note_are_recorded(joint: Reader) -> None:
    joint.tap("Set to")
    joint.type("1.6")
    joint.tap("Done")
    joint.tap("Hex key and scale")
    joint.act(Write(key("by"), "Wren"))
    joint.act(Write(key("note"), "left side only"))
    joint.tap("Save")
    body = joint.world.last("tightening", joint="motor_face").body
    assert body.torque == pytest.approx(1.6)
    assert (body.tool, body.by, body.note) == ("hex key and scale", "Wren", "left side only")
    assert joint.name == "bench.joint"
    assert joint.shows(
        "Tightened just now by Wren: 1.6\u00a0N·m, hex key and scale, medium locker. left side only"
    )
    # The tap names the tool that it will write, and the locker.
    assert joint.page.foot.main.text == "Done again: 1.7\u00a0N·m, hex key and scale"
    assert joint.shows("Done writes it into the log, medium locker.")
    # The tool is offered again, the rest is empty.
    joint.tap(RECORD)
    assert [one.text for one in joint["tool"].options if one.chosen] == ["Hex key and scale"]
    assert (joint[key("by")].text, joint["torque"].value) == ("", "1.7\u00a0N·m")
    joint.back()
    joint.act(Undo())
    assert joint.world.last("tightening", joint="motor_face") is None


def test_nothing_typed_records_what_the_card_says(joint: Reader) -> None:
    assert (joint["torque"].value, joint["torque"].detail) == ("1.7\u00a0N·m", "as the card says")
    joint.tap("High")
    joint.tap("Save")
    body = joint.records("tightening")[0].body
    assert (body.torque, body.locker, body.tool) == (pytest.approx(1.7), "high", "torque wrench")


def test_too_much_torque_is_said_and_still_recorded(joint: Reader) -> None:
    joint.tap("Set to")
    joint.type("2.4")
    assert joint["over"].text.startswith("Above 1.8\u00a0N·m, the most for this joint.")
    joint.tap("Done")
    joint.tap("Save")
    assert joint.records("tightening")[0].body.torque == pytest.approx(2.4)


def test_a_torque_that_cannot_be_is_not_recorded(joint: Reader) -> None:
    joint.tap("Set to")
    joint.type("900")
    assert joint.page.foot.entry.sentence.endswith("0.05\u00a0N·m to 100\u00a0N·m.")
    joint.back()
    assert joint.name == "bench.joint_done"
    assert joint["torque"].detail == "900 not used"
    assert joint.page.foot.main.act is None


def test_a_look_is_recorded_without_a_torque(joint: Reader) -> None:
    joint.tap("Looked at, line whole")
    assert "torque" not in joint
    joint.tap("Save")
    body = joint.records("tightening")[0].body
    assert (body.looked, body.torque) == (True, None)


def test_what_is_typed_for_a_record_outlives_a_restart(joint: Reader) -> None:
    joint.tap("Set to")
    joint.type("1.6")
    joint.act(Write(key("note"), "cold"))
    joint.restart(minutes=1)
    assert joint.typed == "1.6"
    assert joint[key("note")].text == "cold"


def test_a_record_of_a_nut_whose_drag_is_not_measured_has_no_ceiling(pages: Reader) -> None:
    board = pages.world.saved.with_value("joints.wheel_pulley.running", None)
    pages.store.save_board(board.id, board.name, to_dict(board))
    pages.restart()
    pages.open("bench.joint_done", joint="wheel_pulley", typing=True)
    pages.type("2.4")
    assert pages["torque"].value == "2.4\u00a0N·m"
    assert "over" not in pages


def test_a_joint_by_feel_begins_with_by_feel(pages: Reader) -> None:
    pages.open("bench.joint_done", joint="axle_nut")
    assert pages["torque"].value == "by feel"
    assert [one.text for one in pages["tool"].options if one.chosen] == ["By feel"]
    pages.tap("Save")
    assert pages.store.get("joint_tool") is None
