"""Walks through Bench."""

from screens.driver import Driver
from screens.scenes import Scene


def home(driver: Driver) -> None:
    """Open Bench."""
    driver.tap("Bench")


SCENES = (Scene("bench", home),)
