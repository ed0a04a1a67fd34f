"""Walks through Bench."""

import math
from array import array
from typing import Any

from logic.answers.belt_sound import Recording
from logic.log import BeltFitted, Tension
from screens.acts import Heard
from screens.driver import Driver
from screens.scenes import Scene
from screens.scenes.held import Held
from screens.scenes.joints import JOINTS
from screens.scenes.packs import BENCH
from screens.scenes.seed import finished, run_to, show_run

RATE = 44100


def home(driver: Driver) -> None:
    """Open Bench."""
    driver.tap("Bench")


def belt(driver: Driver) -> None:
    """Open the page to set a belt."""
    home(driver)
    driver.tap("Set a belt")


def _record(driver: Driver, way: str, tension: float, error: float, **own: Any) -> None:  # noqa: ANN401
    held = Held(driver)
    window: dict[str, Any] = {"floor": 75.3, "ceiling": 118.4, "target": 107.6}
    word = "slack" if tension < window["floor"] else "tight" if tension > window["ceiling"] else "in window"
    held.record(Tension(belt="left", method=way, tension=tension, error=error, word=word, **window, **own))


def _clear(driver: Driver) -> None:
    """Begin a scene with an empty history: a new belt is noted on both sides."""
    for side in ("left", "right"):
        Held(driver).record(BeltFitted(belt=side))


def positions_in_window(driver: Driver) -> None:
    """Type four pulls."""
    _clear(driver)
    belt(driver)
    for text in ("0.92", "0.98", "0.9", "0.95"):
        driver.type(text)
        if text != "0.95":
            driver.key(13)


def positions_slack(driver: Driver) -> None:
    """Type one pull that is too small."""
    belt(driver)
    driver.type("0.55")


def other_ways(driver: Driver) -> None:
    """Show every way with what it takes."""
    belt(driver)
    driver.tap("Other ways")


def pulls(driver: Driver) -> None:
    """Type three pulls at three depths."""
    other_ways(driver)
    driver.tap("Several pulls")
    for text in ("1", "0.85", "1.5", "1.5"):
        driver.type(text)
        if text != "1.5" or driver.app.front.page.foot.beside == ():
            driver.key(13)
    driver.tap("Another depth")
    driver.type("2.5")
    driver.key(13)
    driver.type("3.35")


def weight(driver: Driver) -> None:
    """Hang a weight of a kilogram."""
    other_ways(driver)
    driver.tap("A known weight")
    driver.type("1")
    driver.key(13)
    driver.type("1.3")


def motor(driver: Driver) -> None:
    """Open pulling the motor."""
    other_ways(driver)
    driver.tap("Pull the motor")


def motor_pulled(driver: Driver) -> None:
    """Type a pull on the motor."""
    motor(driver)
    driver.type("20")


def motor_saved(driver: Driver) -> None:
    """Save it: set, not verified."""
    motor_pulled(driver)
    driver.tap("SAVE")


def belt_first(driver: Driver) -> None:
    """Begin with a belt where no board is saved."""
    Held(driver).choose("none")
    driver.app.front.place("bench")
    driver.tap("Set a belt")


def belt_first_right(driver: Driver) -> None:
    """Type six values and see whether the belt is right."""
    belt_first(driver)
    for text in ("280-5M-15", "16", "40", "170", "45"):
        driver.type(text)
        driver.key(13)
    driver.type("0.92")


def pluck(frequency: float, loud: float = 0.4) -> Recording:
    """Return a made-up pluck, a quarter of a second into a quiet second."""
    samples = array("h", bytes(2 * RATE))
    begin = RATE // 4
    for step in range(RATE - begin):
        time = step / RATE
        value = sum(
            math.sin(2 * math.pi * frequency * order * time) * math.exp(-time * order / 0.12) / order**2
            for order in (1, 2, 3)
        )
        samples[begin + step] = max(-32768, min(32767, round(32767 * loud * value)))
    return Recording(samples, RATE)


def sound(driver: Driver) -> None:
    """Open pluck and listen."""
    other_ways(driver)
    driver.tap("Pluck and listen")


def _hear(driver: Driver, *recordings: Recording) -> None:
    """Let the microphone give recordings."""
    for recording in recordings:
        driver.app.front.perform(Heard(recording))


def sound_heard(driver: Driver) -> None:
    """Hear three plucks."""
    sound(driver)
    _hear(driver, pluck(362.0), pluck(365.0), pluck(364.0))


def sound_clipped(driver: Driver) -> None:
    """Hear a pluck that is too loud."""
    sound(driver)
    _hear(driver, pluck(362.0, loud=3.0))


def sound_typed(driver: Driver) -> None:
    """Type a pitch."""
    sound(driver)
    driver.tap("Type the pitch")
    driver.type("358")


def wav(driver: Driver) -> None:
    """Ask for the path of a recording."""
    sound(driver)
    driver.tap("Open a recording")


def together(driver: Driver) -> None:
    """Show two readings that agree."""
    _clear(driver)
    _record(driver, "scale", 92.0, 18.0)
    _record(driver, "motor", 103.0, 15.0)
    other_ways(driver)


def disagree(driver: Driver) -> None:
    """Show two readings that do not."""
    _clear(driver)
    _record(driver, "scale", 158.0, 26.0)
    _record(driver, "motor", 95.0, 14.0)
    other_ways(driver)


def view(driver: Driver) -> None:
    """Read it from a metre away."""
    belt(driver)
    driver.tap("Around this belt")
    driver.tap("Read from a metre away")


def wear(driver: Driver) -> None:
    """Open the wear guide."""
    belt(driver)
    driver.tap("Around this belt")
    driver.tap("What its wear tells")


def wear_sign(driver: Driver) -> None:
    """Open one sign."""
    wear(driver)
    driver.tap("It jumps teeth")


def belt_known(driver: Driver) -> None:
    """Show both belts with readings."""
    _clear(driver)
    _record(driver, "scale", 68.0, 15.0)
    Held(driver).record(Tension(belt="right", method="scale", tension=101.0, error=18.0, word="in window"))
    belt(driver)


def build(driver: Driver) -> None:
    """Show the build with some stages done and one under way."""
    finished(driver, "build.layout")
    finished(driver, "build.trucks")
    run_to(driver, "build.wheels", "wheels_on")
    home(driver)
    driver.tap("Build, stage by stage")


def belt_stage(driver: Driver) -> None:
    """Come to setting the belt, with its numbers for this board."""
    run_to(driver, "build.belt", "set")
    show_run(driver, "build.belt")


def mount_side(driver: Driver) -> None:
    """Choose where the mount goes."""
    run_to(driver, "build.motor", "side")
    show_run(driver, "build.motor")


def first_power(driver: Driver) -> None:
    """Come to first power."""
    run_to(driver, "first_power", "lift")
    show_run(driver, "first_power")


def polarity(driver: Driver) -> None:
    """Come to the polarity, with the volts of this pack."""
    run_to(driver, "build.wiring", "polarity")
    show_run(driver, "build.wiring")


def faults(driver: Driver) -> None:
    """Open the fault guide."""
    home(driver)
    driver.tap("Fault guide")


def fault(driver: Driver) -> None:
    """Open a fault."""
    faults(driver)
    driver.tap("Brake weak or none")


def spares(driver: Driver) -> None:
    """Open tools and spares."""
    home(driver)
    driver.tap("Tools and spares")


SCENES = (
    Scene("bench", home, "bench"),
    Scene("bench-belt", belt, "bench.belt"),
    Scene("bench-belt-known", belt_known, "bench.belt"),
    Scene("bench-belt-first", belt_first, "bench.belt"),
    Scene("bench-belt-first-right", belt_first_right, "bench.belt"),
    Scene("bench-belt-in-window", positions_in_window, "bench.belt"),
    Scene("bench-belt-slack", positions_slack, "bench.belt"),
    Scene("bench-belt-ways", other_ways, "bench.belt"),
    Scene("bench-pulls", pulls, "bench.belt"),
    Scene("bench-weight", weight, "bench.belt"),
    Scene("bench-motor-pull", motor, "bench.motor"),
    Scene("bench-motor-pulled", motor_pulled, "bench.motor"),
    Scene("bench-motor-saved", motor_saved, "bench.saved"),
    Scene("bench-sound", sound, "bench.sound"),
    Scene("bench-sound-heard", sound_heard, "bench.sound"),
    Scene("bench-sound-clipped", sound_clipped, "bench.sound"),
    Scene("bench-sound-typed", sound_typed, "bench.sound"),
    Scene("bench-sound-file", wav, "bench.sound"),
    Scene("bench-together", together, "bench.belt"),
    Scene("bench-disagree", disagree, "bench.belt"),
    Scene("bench-view", view, "bench.view"),
    Scene("bench-wear", wear, "bench.wear"),
    Scene("bench-wear-sign", wear_sign, "bench.wear_sign"),
    *JOINTS,
    *BENCH,
    Scene("build", build, "bench.build"),
    Scene("build-belt", belt_stage, "ride.run"),
    Scene("build-side", mount_side, "ride.run"),
    Scene("build-wiring", polarity, "ride.run"),
    Scene("build-first-power", first_power, "ride.run"),
    Scene("faults", faults, "bench.faults"),
    Scene("fault", fault, "bench.fault"),
    Scene("spares", spares, "bench.spares"),
)
