"""Joints by touch and key: from the list to a record in the log, editing, looking up, reach and threadlocker."""

from collections.abc import Callable

import pytest

from tests.screens.session import Session


@pytest.fixture
def joints(app: Session) -> Session:
    """Give the app on the joints of Towpath 36."""
    app.tap("Bench")
    app.tap("Joints")
    return app


def answer(app: Session) -> str:
    return app.page.page.crown.word


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
