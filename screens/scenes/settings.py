"""Walks through the settings."""

from screens.driver import Driver
from screens.scenes import CANNOT_SHOW, Scene


def home(driver: Driver) -> None:
    """Open the settings from the board."""
    driver.tap("Board Towpath 36")
    driver.tap("Settings")


def lists(driver: Driver) -> None:
    """Open one's own lists."""
    state = driver.app.state
    if not state.own_lists():
        state.copy_list("before_ride")
        state.undo = None
    driver.app.shell.go("settings.lists")


def own_list(driver: Driver) -> None:
    """Open an own list."""
    lists(driver)
    driver.app.shell.go("settings.list", key=next(iter(driver.app.state.own_lists())))


def item(driver: Driver) -> None:
    """Add an item without words."""
    own_list(driver)
    driver.frame(2)
    driver.tap("Add an item")


def cannot_show(driver: Driver) -> None:
    """Stand before a page that failed."""
    driver.app.shell.go("numbers.gearing")
    driver.app.shell.cannot_show(RuntimeError("a fault made for the picture"))


SCENES = (
    Scene("settings", home, "settings"),
    Scene("settings-lists", lists, "settings.lists"),
    Scene("settings-list", own_list, "settings.list"),
    Scene("settings-item", item, "settings.item"),
    Scene("cannot-show", cannot_show, CANNOT_SHOW),
)
