"""Screws by real touches: the shortest way to an answer, and the arm of the hex key in the settings."""

from collections.abc import Callable

from screens.driver.finger import Finger
from tests.screens.session import Session


def answer(app: Session) -> str:
    return app.page.page.crown.word


def test_an_arm_that_cannot_be_is_not_used(app: Session) -> None:
    app.front.go("settings")
    app.tap("Tools")
    app.tap("Arm of your hex key")
    app.type("9000")
    app.key(27)
    assert app.row("Arm of your hex key").detail == "9000 not used"
    assert app.state.world.person.key_arm is None


def test_a_motor_face_screw_is_looked_up_in_four_taps(begin: Callable[..., Session]) -> None:
    """From opening the app, with no board at all, by real touches: M4, 5 mm in aluminium."""
    app = begin()
    app.tap("Bench")
    app.tap("Screws")
    app.tap("Motor face screws")
    app.tap("5 mm")
    assert app.taps == 4
    assert answer(app) == "0.7\u00a0N·m, never over 0.8"
    app.restart(minutes=1)
    assert answer(app) == "0.7\u00a0N·m, never over 0.8"


def test_a_trembling_glove_writes_one_entry(app: Session) -> None:
    """A second touch a tenth of a second later wrote a second one."""
    app.front.go("bench.joint", joint="motor_face")
    app.settle()
    bar = app.find("Done:").middle
    for _ in range(2):
        finger = Finger(app, *bar)
        app.frame(2)
        finger.up()
        app.frame(seconds=0.1)
    assert app.state.store.count(kind="tightening") == 1
    app.tap("Done again: 1.7\u00a0N·m, torque wrench")
    assert app.state.store.count(kind="tightening") == 2
    app.restart(minutes=5)
    app.front.go("bench.joint", joint="motor_face")
    app.settle()
    assert app.shows("Done: 1.7\u00a0N·m, torque wrench")
