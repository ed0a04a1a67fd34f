"""Walks through joints, look-up, reach and threadlocker."""

from collections.abc import Iterator

from logic.answers.joints import joints_of
from logic.answers.reach import NAMES, asked_key
from logic.board import Value
from logic.log import Tightening
from screens.acts.entering import Put, Write
from screens.driver import Driver
from screens.scenes.held import Held
from screens.scenes.steps import Step, board, go, moment, no_board, place, scene, scrolled, settled
from screens.tongue import texts
from screens.words import Style
from screens.words.joints import set_text
from screens.world import World

SCREWS = ("Bench", "Screws")


def card(joint: str, of: str = "Towpath 36") -> tuple[Step, ...]:
    """Open one joint of one board."""
    return (board(of), place("bench"), go("bench.joint", joint=joint), moment)


def opened(joint: str, fold: str) -> tuple[Step, ...]:
    """Open one joint with a fold open and its drawing in sight."""
    open_too = {f"open_{fold}": True}
    return (place("bench"), go("bench.joint", joint=joint, **open_too), settled, scrolled(400.0))


def reach(*millimetres: float) -> tuple[Step, ...]:
    """Open the reach of a screw with these lengths."""
    answers = (
        Put(asked_key(name), Value(length / 1000.0, typed_unit="mm"), "question")
        for name, length in zip(NAMES, millimetres, strict=False)
    )
    return (*(done(answer) for answer in answers), place("bench"), go("bench.reach"))


def done(act: Put) -> Step:
    """Answer a question."""
    return lambda driver: Held(driver).do(act)


def tightened(driver: Driver) -> None:
    """Record the motor face screws."""
    Held(driver).record(
        Tightening(joint="motor_face", torque=1.7, tool="torque wrench", locker="medium", by="Wren")
    )


def looked_for(text: str) -> Step:
    """Write what one looks for."""
    return lambda driver: Held(driver).do(Write("lookup", text))


FACE = card("motor_face")
VALUE = "bench.joint_value"

JOINTS = (
    scene("joints", "bench.joints", *SCREWS),
    scene("joint-motor-face", "bench.joint", *FACE),
    scene("joint-motor-face-down", "bench.joint", *FACE, settled, scrolled(5000.0)),
    scene("joint-recorded", "bench.joint", *FACE, tightened, settled, scrolled(600.0)),
    scene("joint-not-known", "bench.joint", no_board, place("bench"), go("bench.joint", joint="motor_face")),
    scene("joint-bare-shaft", "bench.joint", *card("motor_set_screw", "Ferry")),
    scene("joint-worn-nut", "bench.joint", *card("deck_bolts", "Weir")),
    scene("joint-axle-solid", "bench.joint", *card("axle_nut", "Lock-keeper")),
    scene("joint-wheel-pulley", "bench.joint", *card("wheel_pulley")),
    scene("joint-soft-hub", "bench.joint", *card("wheel_pulley", "Lock-keeper")),
    scene("joint-hard-screw", "bench.joint", *card("motor_face", "Weir")),
    scene("joint-cross", "bench.joint", *opened("motor_face", "tool")),
    scene("joint-on-a-flat", "bench.joint", *opened("motor_set_screw", "tool")),
    scene("joint-stack", "bench.joint", *opened("bearings", "tool")),
    scene("joint-pull", "bench.joint", *opened("motor_face", "no wrench")),
    scene("joint-pull-nut", "bench.joint", *opened("wheel_pulley", "no wrench")),
    scene("joint-working", "working", *FACE, "1.7"),
    scene("joint-edit", "bench.joint_edit", *FACE, go("bench.joint_edit", joint="motor_face")),
    scene(
        "joint-thread",
        VALUE,
        *FACE,
        go("bench.joint_edit", joint="motor_face"),
        go(VALUE, key="joints.motor_face.thread"),
    ),
    scene("joint-hex-key", VALUE, *FACE, go(VALUE, key="person.key_arm"), moment, "=70"),
    # The torque is above the ceiling.
    scene(
        "joint-done",
        "bench.joint_done",
        *FACE,
        go("bench.joint_done", joint="motor_face", typing=True),
        moment,
        "=2.4",
    ),
    scene("screws-no-board", "bench.joints", no_board, *SCREWS),
    scene("lookup-found", "bench.joints", looked_for("5/16"), *SCREWS),
    scene("lookup-card", "bench.lookup_card", no_board, *SCREWS, "Motor face screws", "5 mm"),
    # This size has a double.
    scene(
        "lookup-look-alike",
        "bench.lookup_card",
        looked_for("M8"),
        *SCREWS,
        moment,
        "Any screw M8 × 1.25",
    ),
    scene("reach-empty", "bench.reach", *reach()),
    scene("reach-typed", "bench.reach", *reach(14, 7), moment, "Measure: ", moment, "=1"),
    scene("reach-enough", "bench.reach", *reach(14, 7, 1, 6.5, 7)),
    scene("reach-windings", "bench.reach", *reach(16, 7, 0, 6.5, 7)),
    scene("threadlocker", "bench.locker", *SCREWS, go("bench.locker")),
)


def results(world: World) -> Iterator[str]:
    """Yield the setting and the ceiling of each joint."""
    for one in joints_of(world.saved, world.person):
        name = one.kind.text("name")
        if one.torque is None:
            yield f"{name}: {texts('joints')['feel'].get(one.feel, 'not known')}"
        else:
            yield f"{name}: {set_text(one, Style(), inch=False)}"
