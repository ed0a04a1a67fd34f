"""Walks through the settings."""

from screens.driver import Driver
from screens.scenes import Scene


def home(driver: Driver) -> None:
    """Open the settings from the board."""
    driver.tap("Board Towpath 36")
    driver.tap("Settings")


SCENES = (Scene("settings", home),)
