"""What is done on the way to scenes of Bench: belts that were measured, plucks, screws."""

import math
from array import array
from collections.abc import Iterable

from logic.answers.belt_sound import Recording
from logic.answers.reach import NAMES, asked_key
from logic.board import Value
from logic.log import BeltFitted, Tension, Tightening
from screens.acts.entering import Put
from screens.acts.outside import Heard
from screens.driver import Driver
from screens.scenes.held import Held
from screens.scenes.seed import finished, run_to
from screens.scenes.steps import board, go, moment, place, settled, sight, step

RATE = 44100
FLOOR, TARGET, CEILING = 75.3, 107.6, 118.4
"""The window of the readings in N."""


@step
def recorded(driver: Driver, way: str, tension: float, error: float) -> None:
    """Put a reading of the left belt into the log."""
    word = "slack" if tension < FLOOR else "tight" if tension > CEILING else "in window"
    window = {"floor": FLOOR, "ceiling": CEILING, "target": TARGET}
    Held(driver).record(
        Tension(belt="left", method=way, tension=tension, error=error, word=word, **window)  # type: ignore[arg-type]
    )


@step
def right_in_window(driver: Driver) -> None:
    """Put a reading of the right belt into the log."""
    Held(driver).record(Tension(belt="right", method="scale", tension=101.0, error=18.0, word="in window"))


@step
def fresh(driver: Driver) -> None:
    """Begin a scene with an empty history: a new belt is noted on both sides."""
    for side in ("left", "right"):
        Held(driver).record(BeltFitted(belt=side))


@step
def three_pulls(driver: Driver) -> None:
    """Type three pulls of one depth, as far as the page takes them one after the other."""
    for text in ("1", "0.85", "1.5", "1.5"):
        driver.type(text)
        if text != "1.5" or driver.app.front.page.foot.beside == ():
            driver.key(13)


@step
def stages_built(driver: Driver) -> None:
    """Have built two stages, with one under way."""
    finished(driver, "build.layout")
    finished(driver, "build.trucks")
    run_to(driver, "build.wheels", "wheels_on")


def pluck(frequency: float, loud: float = 0.4) -> Recording:
    """Return a made-up pluck, a quarter of a second into a quiet second."""
    samples = array("h", bytes(2 * RATE))
    begin = RATE // 4
    for at in range(RATE - begin):
        time = at / RATE
        value = sum(
            math.sin(2 * math.pi * frequency * order * time) * math.exp(-time * order / 0.12) / order**2
            for order in (1, 2, 3)
        )
        samples[begin + at] = max(-32768, min(32767, round(32767 * loud * value)))
    return Recording(samples, RATE)


@step
def heard(driver: Driver, frequencies: Iterable[float], loud: float = 0.4) -> None:
    """Let the microphone give plucks."""
    for frequency in frequencies:
        driver.app.front.perform(Heard(pluck(frequency, loud)))


@step
def card(driver: Driver, joint: str, of: str = "Towpath 36") -> None:
    """Open one joint of one board."""
    board(driver, of)
    place(driver, "bench")
    go(driver, "bench.joint", joint=joint)
    moment(driver)


@step
def opened(driver: Driver, joint: str, fold: str) -> None:
    """Open one joint with a fold open and its drawing in sight."""
    place(driver, "bench")
    go(driver, "bench.joint", joint=joint, **{f"open_{fold}": True})
    settled(driver)
    sight(driver, next(block.title for block in driver.app.front.page.blocks if block.key == fold))


@step
def tightened(driver: Driver) -> None:
    """Record the motor face screws."""
    Held(driver).record(
        Tightening(joint="motor_face", torque=1.7, tool="torque wrench", locker="medium", by="Wren")
    )


@step
def reach(driver: Driver, millimetres: Iterable[float]) -> None:
    """Open the reach of a screw with these lengths."""
    for name, length in zip(NAMES, millimetres, strict=False):
        Held(driver).do(Put(asked_key(name), Value(length / 1000.0, typed_unit="mm"), "question"))
    place(driver, "bench")
    go(driver, "bench.reach")
