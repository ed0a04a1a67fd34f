"""Walks through joints, look-up, reach and threadlocker."""

from collections.abc import Callable, Iterator

from logic.answers.joints import joints_of
from logic.answers.reach import NAMES, asked_key
from logic.board import Value
from logic.log import Tightening
from screens.driver import Driver
from screens.scenes import Scene
from screens.scenes.held import Held
from screens.words import Style
from screens.words.joints import FEEL, set_text
from screens.world import World


def joints(driver: Driver) -> None:
    """Open the joints of the board."""
    driver.tap("Bench")
    driver.tap("Screws")


def card(name: str, board: str = "Towpath 36") -> Callable[[Driver], None]:
    """Return the walk to one joint of one board."""

    def walk(driver: Driver) -> None:
        held = Held(driver)
        held.choose_named(board)
        driver.app.front.place("bench")
        driver.app.front.go("bench.joint", joint=name)
        driver.frame(2)

    return walk


def card_recorded(driver: Driver) -> None:
    """Record a joint with one tap."""
    card("motor_face")(driver)
    Held(driver).record(
        Tightening(joint="motor_face", torque=1.7, tool="torque wrench", locker="medium", by="Wren")
    )
    driver.settle()
    driver.app.front.paper.parts.panes[0].to(600.0)


def card_down(driver: Driver) -> None:
    """Scroll to the end of a card."""
    card("motor_face")(driver)
    driver.settle()
    driver.app.front.paper.parts.panes[0].to(5000.0)


def card_empty(driver: Driver) -> None:
    """Open a joint of a board that says nothing of it."""
    Held(driver).choose("none")
    driver.app.front.place("bench")
    driver.app.front.go("bench.joint", joint="motor_face")


def opened(name: str, fold: str) -> Callable[[Driver], None]:
    """Return the walk to one joint with a fold open and its drawing in sight."""

    def walk(driver: Driver) -> None:
        driver.app.front.place("bench")
        driver.app.front.go("bench.joint", joint=name, **{f"open_{fold}": True})
        driver.settle()
        driver.app.front.paper.parts.panes[0].to(400.0)

    return walk


def working(driver: Driver) -> None:
    """Open the working of a setting."""
    card("motor_face")(driver)
    driver.tap("1.7")


def edit(driver: Driver) -> None:
    """Open the values of a joint."""
    card("motor_face")(driver)
    driver.app.front.go("bench.joint_edit", joint="motor_face")


def value(name: str) -> Callable[[Driver], None]:
    """Return the walk to one value of the motor screws."""

    def walk(driver: Driver) -> None:
        edit(driver)
        driver.app.front.go("bench.joint_value", key=f"joints.motor_face.{name}")

    return walk


def arm(driver: Driver) -> None:
    """Type the arm of the key."""
    card("motor_face")(driver)
    driver.app.front.go("bench.joint_value", key="person.key_arm")
    driver.frame(2)
    driver.type("70")


def done(driver: Driver) -> None:
    """Record a torque above the ceiling."""
    card("motor_face")(driver)
    driver.app.front.go("bench.joint_done", joint="motor_face", typing=True)
    driver.frame(2)
    driver.type("2.4")


def lookup(driver: Driver) -> None:
    """Look for a screw that no board has described."""
    Held(driver).choose("none")
    joints(driver)


def lookup_found(driver: Driver) -> None:
    """Search for what is seen."""
    Held(driver).note_typed("lookup", "5/16")
    joints(driver)


def lookup_card(driver: Driver) -> None:
    """Look up a motor face screw: M4, 5 mm in aluminium."""
    lookup(driver)
    driver.tap("Motor face screws")
    driver.tap("5 mm")


def lookup_thread(driver: Driver) -> None:
    """Look up a size that has a double."""
    Held(driver).note_typed("lookup", "M8")
    joints(driver)
    driver.frame(2)
    driver.tap("Any screw M8 × 1.25")


def reach(*millimetres: float, type_next: str = "") -> Callable[[Driver], None]:
    """Return the walk to the reach of a screw with these lengths, and the next one being typed."""

    def walk(driver: Driver) -> None:
        for name, length in zip(NAMES, millimetres, strict=False):
            Held(driver).answer(asked_key(name), Value(length / 1000.0, typed_unit="mm"))
        driver.app.front.place("bench")
        driver.app.front.go("bench.reach")
        if type_next:
            driver.frame(2)
            driver.tap("Measure: ")
            driver.frame(2)
            driver.type(type_next)

    return walk


def locker(driver: Driver) -> None:
    """Open the guide to threadlocker."""
    joints(driver)
    driver.app.front.go("bench.locker")


JOINTS = (
    Scene("joints", joints, "bench.joints"),
    Scene("joint-motor-face", card("motor_face"), "bench.joint"),
    Scene("joint-motor-face-down", card_down, "bench.joint"),
    Scene("joint-recorded", card_recorded, "bench.joint"),
    Scene("joint-not-known", card_empty, "bench.joint"),
    Scene("joint-bare-shaft", card("motor_set_screw", "Ferry"), "bench.joint"),
    Scene("joint-worn-nut", card("deck_bolts", "Weir"), "bench.joint"),
    Scene("joint-axle-solid", card("axle_nut", "Lock-keeper"), "bench.joint"),
    Scene("joint-wheel-pulley", card("wheel_pulley"), "bench.joint"),
    Scene("joint-soft-hub", card("wheel_pulley", "Lock-keeper"), "bench.joint"),
    Scene("joint-hard-screw", card("motor_face", "Weir"), "bench.joint"),
    Scene("joint-cross", opened("motor_face", "tool"), "bench.joint"),
    Scene("joint-on-a-flat", opened("motor_set_screw", "tool"), "bench.joint"),
    Scene("joint-stack", opened("bearings", "tool"), "bench.joint"),
    Scene("joint-pull", opened("motor_face", "no wrench"), "bench.joint"),
    Scene("joint-pull-nut", opened("wheel_pulley", "no wrench"), "bench.joint"),
    Scene("joint-working", working, "working"),
    Scene("joint-edit", edit, "bench.joint_edit"),
    Scene("joint-thread", value("thread"), "bench.joint_value"),
    Scene("joint-hex-key", arm, "bench.joint_value"),
    Scene("joint-done", done, "bench.joint_done"),
    Scene("screws-no-board", lookup, "bench.joints"),
    Scene("lookup-found", lookup_found, "bench.joints"),
    Scene("lookup-card", lookup_card, "bench.lookup_card"),
    Scene("lookup-look-alike", lookup_thread, "bench.lookup_card"),
    Scene("reach-empty", reach(), "bench.reach"),
    Scene("reach-typed", reach(14, 7, type_next="1"), "bench.reach"),
    Scene("reach-enough", reach(14, 7, 1, 6.5, 7), "bench.reach"),
    Scene("reach-windings", reach(16, 7, 0, 6.5, 7), "bench.reach"),
    Scene("threadlocker", locker, "bench.locker"),
)


def results(world: World) -> Iterator[str]:
    """Yield the setting and the ceiling of each joint."""
    for one in joints_of(world.saved, world.person):
        name = one.kind.text("name")
        if one.torque is None:
            yield f"{name}: {FEEL.get(one.feel, 'not known')}"
        else:
            yield f"{name}: {set_text(one, Style(), inch=False)}"
