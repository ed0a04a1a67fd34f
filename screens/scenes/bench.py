"""Walks through Bench."""

from screens.driver import Driver
from screens.scenes import Scene
from screens.scenes.packs import BENCH


def home(driver: Driver) -> None:
    """Open Bench."""
    driver.tap("Bench")


SCENES = (Scene("bench", home), *BENCH)
