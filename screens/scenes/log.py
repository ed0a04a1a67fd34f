"""Walks through the log."""

from screens.driver import Driver
from screens.scenes import Scene


def home(driver: Driver) -> None:
    """Open the log."""
    driver.tap("Log")


SCENES = (Scene("log", home),)
