"""Walks through the settings."""

from screens.acts import Dismiss
from screens.driver import Driver
from screens.scenes import CANNOT_SHOW, Scene
from screens.scenes.held import Held


def home(driver: Driver) -> None:
    """Open the settings from the board."""
    driver.tap("Board Towpath 36")
    driver.tap("Settings")


def lists(driver: Driver) -> None:
    """Open one's own lists."""
    held = Held(driver)
    if not held.own_lists():
        held.copy_list("before_ride")
        held.do(Dismiss())
    driver.app.front.go("settings.lists")


def own_list(driver: Driver) -> None:
    """Open an own list."""
    lists(driver)
    driver.app.front.go("settings.list", key=next(iter(Held(driver).own_lists())))


def sources(driver: Driver) -> None:
    """See where the numbers come from."""
    driver.app.front.go("settings.sources")


def source(driver: Driver) -> None:
    """See what was held against one source."""
    driver.app.front.go("settings.sources", key="sdpsi-2017")


def item(driver: Driver) -> None:
    """Add an item without words."""
    own_list(driver)
    driver.frame(2)
    driver.tap("Add an item")


def licences(driver: Driver) -> None:
    """Open the licences and the text of the first."""
    driver.app.front.go("settings.licences")
    driver.settle()
    driver.tap("Kivy")


def cannot_show(driver: Driver) -> None:
    """Stand before a page that failed."""
    driver.app.front.go("numbers.gearing")
    driver.app.front.cannot_show(RuntimeError("a fault made for the picture"))


SCENES = (
    Scene("settings", home, "settings"),
    Scene("settings-lists", lists, "settings.lists"),
    Scene("settings-list", own_list, "settings.list"),
    Scene("settings-item", item, "settings.item"),
    Scene("settings-licences", licences, "settings.licences"),
    Scene("settings-sources", sources, "settings.sources"),
    Scene("settings-source", source, "settings.sources"),
    Scene("cannot-show", cannot_show, CANNOT_SHOW),
)
