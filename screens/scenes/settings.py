"""Walks through the settings."""

from screens.acts import Dismiss
from screens.acts.runs import CopyList
from screens.driver import Driver
from screens.scenes import CANNOT_SHOW
from screens.scenes.held import Held
from screens.scenes.steps import go, moment, scene, settled


def lists(driver: Driver) -> None:
    """Open one's own lists."""
    held = Held(driver)
    if not held.world.own_lists():
        held.do(CopyList("before_ride"))
        held.do(Dismiss())
    driver.app.front.go("settings.lists")


def own_list(driver: Driver) -> None:
    """Open an own list."""
    lists(driver)
    driver.app.front.go("settings.list", key=next(iter(Held(driver).world.own_lists())))


def failed(driver: Driver) -> None:
    """Let the page in front fail."""
    driver.app.front.cannot_show(RuntimeError("a fault made for the picture"))


SCENES = (
    scene("settings", "settings", "Board Towpath 36", "Settings"),
    scene("settings-lists", "settings.lists", lists),
    scene("settings-list", "settings.list", own_list),
    scene("settings-item", "settings.item", own_list, moment, "Add an item"),
    scene("settings-code", "settings.code", go("settings.code")),
    scene("settings-licences", "settings.licences", go("settings.licences"), settled, "Kivy"),
    scene("settings-sources", "settings.sources", go("settings.sources")),
    scene("settings-source", "settings.sources", go("settings.sources", key="sdpsi-2017")),
    scene("cannot-show", CANNOT_SHOW, go("numbers.gearing"), failed),
)
