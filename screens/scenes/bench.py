"""Walks through Bench."""

import math
from array import array
from typing import Any

from logic.answers.belt_sound import Recording
from logic.log import BeltFitted, Tension
from screens.acts.outside import Heard
from screens.driver import Driver
from screens.scenes.held import Held
from screens.scenes.joints import JOINTS
from screens.scenes.packs import BENCH
from screens.scenes.ride import at
from screens.scenes.seed import finished, run_to
from screens.scenes.steps import Step, enter, no_board, place, scene

RATE = 44100


def recorded(way: str, tension: float, error: float) -> Step:
    """Put a reading of the left belt into the log."""
    window: dict[str, Any] = {"floor": 75.3, "ceiling": 118.4, "target": 107.6}
    word = "slack" if tension < window["floor"] else "tight" if tension > window["ceiling"] else "in window"
    reading = Tension(belt="left", method=way, tension=tension, error=error, word=word, **window)
    return lambda driver: Held(driver).record(reading)


def right_in_window(driver: Driver) -> None:
    """Put a reading of the right belt into the log."""
    Held(driver).record(Tension(belt="right", method="scale", tension=101.0, error=18.0, word="in window"))


def fresh(driver: Driver) -> None:
    """Begin a scene with an empty history: a new belt is noted on both sides."""
    for side in ("left", "right"):
        Held(driver).record(BeltFitted(belt=side))


def three_pulls(driver: Driver) -> None:
    """Type three pulls of one depth, as far as the page takes them one after the other."""
    for text in ("1", "0.85", "1.5", "1.5"):
        driver.type(text)
        if text != "1.5" or driver.app.front.page.foot.beside == ():
            driver.key(13)


def stages_built(driver: Driver) -> None:
    """Have built two stages, with one under way."""
    finished(driver, "build.layout")
    finished(driver, "build.trucks")
    run_to(driver, "build.wheels", "wheels_on")


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


def heard(*recordings: Recording) -> Step:
    """Let the microphone give recordings."""

    def hear(driver: Driver) -> None:
        for recording in recordings:
            driver.app.front.perform(Heard(recording))

    return hear


def typed(*texts: str) -> tuple[Step, ...]:
    """Type and enter one value after the other, the last of which stands as it is typed."""
    between = tuple(step for text in texts[:-1] for step in ("=" + text, enter))
    return (*between, "=" + texts[-1])


BELT = ("Bench", "Set a belt")
WAYS = (*BELT, "Other ways")
MOTOR = (*WAYS, "Pull the motor")
SOUND = (*WAYS, "Pluck and listen")
AROUND = (*BELT, "Around this belt")
FIRST = (no_board, place("bench"), "Set a belt")
FAULTS = ("Bench", "Fault guide")

SCENES = (
    scene("bench", "bench", "Bench"),
    scene("bench-belt", "bench.belt", *BELT),
    scene("bench-belt-known", "bench.belt", fresh, recorded("scale", 68.0, 15.0), right_in_window, *BELT),
    scene("bench-belt-first", "bench.belt", *FIRST),
    scene(
        "bench-belt-first-right",
        "bench.belt",
        *FIRST,
        *typed("280-5M-15", "16", "40", "170", "45", "0.92"),
    ),
    scene("bench-belt-in-window", "bench.belt", fresh, *BELT, *typed("0.92", "0.98", "0.9", "0.95")),
    scene("bench-belt-slack", "bench.belt", *BELT, "=0.55"),
    scene("bench-belt-ways", "bench.belt", *WAYS),
    scene(
        "bench-pulls",
        "bench.belt",
        *WAYS,
        "Several pulls",
        three_pulls,
        "Another depth",
        *typed("2.5", "3.35"),
    ),
    scene("bench-weight", "bench.belt", *WAYS, "A known weight", *typed("1", "1.3")),
    scene("bench-motor-pull", "bench.motor", *MOTOR),
    scene("bench-motor-pulled", "bench.motor", *MOTOR, "=20"),
    scene("bench-motor-saved", "bench.saved", *MOTOR, "=20", "Save"),
    scene("bench-sound", "bench.sound", *SOUND),
    scene("bench-sound-heard", "bench.sound", *SOUND, heard(pluck(362.0), pluck(365.0), pluck(364.0))),
    scene("bench-sound-clipped", "bench.sound", *SOUND, heard(pluck(362.0, loud=3.0))),
    scene("bench-sound-typed", "bench.sound", *SOUND, "Type the pitch", "=358"),
    scene("bench-sound-file", "bench.sound", *SOUND, "Open a recording"),
    scene(
        "bench-together",
        "bench.belt",
        fresh,
        recorded("scale", 92.0, 18.0),
        recorded("motor", 103.0, 15.0),
        *WAYS,
    ),
    scene(
        "bench-disagree",
        "bench.belt",
        fresh,
        recorded("scale", 158.0, 26.0),
        recorded("motor", 95.0, 14.0),
        *WAYS,
    ),
    scene("bench-view", "bench.view", *AROUND, "Read from a metre away"),
    scene("bench-wear", "bench.wear", *AROUND, "What its wear tells"),
    scene("bench-wear-sign", "bench.wear_sign", *AROUND, "What its wear tells", "It jumps teeth"),
    *JOINTS,
    *BENCH,
    scene("build", "bench.build", stages_built, "Bench", "Build, stage by stage"),
    scene("build-belt", "ride.run", *at("set", "build.belt")),
    scene("build-side", "ride.run", *at("side", "build.motor")),
    scene("build-wiring", "ride.run", *at("polarity", "build.wiring")),
    scene("build-first-power", "ride.run", *at("lift", "first_power")),
    scene("faults", "bench.faults", *FAULTS),
    scene("fault", "bench.fault", *FAULTS, "Brake weak or none"),
    scene("spares", "bench.spares", "Bench", "Tools and spares"),
)
