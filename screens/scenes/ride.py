"""Walks through Ride."""

from collections.abc import Iterator
from typing import Any

from logic.answers.reading import Result
from logic.answers.tension import belt_plan
from screens.driver import Driver
from screens.scenes import Scene
from screens.scenes.packs import RIDE
from screens.words import Style
from screens.words.tension import ITEMS


def home(_driver: Driver) -> None:
    """Stay where the app opens."""


def first_start(driver: Driver) -> None:
    """Show the app without any board."""
    driver.app.state.choose("none")


def check(driver: Driver) -> None:
    """Open the tension check."""
    driver.tap("TENSION CHECK")


def in_window(driver: Driver) -> None:
    """Type a right pull."""
    check(driver)
    driver.type("1.5")


def slack(driver: Driver) -> None:
    """Type a pull that is too small."""
    check(driver)
    driver.type("1.05")


def tight(driver: Driver) -> None:
    """Type a pull that is too large."""
    check(driver)
    driver.type("1.9")


def refused(driver: Driver) -> None:
    """Type what cannot be a pull, and wait for its sentence."""
    check(driver)
    driver.type("1.5x")
    driver.settle()


def working(driver: Driver) -> None:
    """Open the working of a reading."""
    in_window(driver)
    driver.tap("Working of this reading")


def drawing(driver: Driver) -> None:
    """Scroll to the drawing of the drive."""
    check(driver)
    driver.app.shell.page.scroll.scroll_to(driver.app.shell.page.drive, animate=False)


def saved(driver: Driver) -> None:
    """Save both belts."""
    in_window(driver)
    driver.tap("SAVE LEFT, GO TO RIGHT")
    driver.type("1.1")
    driver.tap("SAVE RIGHT")


SCENES = (
    Scene("ride-first-start", first_start),
    Scene("ride", home),
    Scene("tension-check", check),
    Scene("tension-in-window", in_window),
    Scene("tension-slack", slack),
    Scene("tension-tight", tight),
    Scene("tension-refused", refused),
    Scene("tension-working", working),
    Scene("tension-drawing", drawing),
    Scene("tension-saved", saved),
    *RIDE,
)


def results(state: Any) -> Iterator[str]:  # noqa: ANN401  (the app's State)
    """Yield the belt's target, the depth and the pull."""
    plan, style = belt_plan(state.saved), Style()
    for name in ("target", "floor", "ceiling", "depth", "pull_target"):
        item = plan.items[name]
        if isinstance(item, Result):
            yield f"{ITEMS[name]}: {style.number(item.value, item.quantity)}"
    pull = plan.items["pull_target"]
    if isinstance(pull, Result):
        yield f"Scale reading for the target: {style.shown(pull.value, 'force', unit='kg')}"
