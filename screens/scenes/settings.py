"""What is done on the way to scenes of the settings."""

from screens.acts import Dismiss
from screens.acts.runs import CopyList
from screens.driver import Driver
from screens.scenes.held import Held
from screens.scenes.steps import step


@step
def lists(driver: Driver) -> None:
    """Open one's own lists."""
    held = Held(driver)
    if not held.world.own_lists():
        held.do(CopyList("before_ride"))
        held.do(Dismiss())
    driver.app.front.go("settings.lists")


@step
def own_list(driver: Driver) -> None:
    """Open an own list."""
    lists(driver)
    driver.app.front.go("settings.list", key=next(iter(Held(driver).world.own_lists())))


@step
def failed(driver: Driver) -> None:
    """Let the page in front fail."""
    driver.app.front.cannot_show(RuntimeError("a fault made for the picture"))
