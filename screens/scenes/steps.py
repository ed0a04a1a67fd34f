"""What a walk is made of: see assets/scenes.toml. The functions that its steps name are marked `@step`."""

import tomllib
from collections.abc import Callable, Iterable
from functools import cache
from typing import Any, TypeVar

from logic.frozen import frozen
from screens.acts import Dismiss, Place
from screens.acts.entering import Write
from screens.acts.keeping import Drop
from screens.driver import Driver
from screens.scenes.held import Held
from screens.tongue import ASSETS
from screens.world import HOME

ENTERS = 13
"""Kivy's code of the key that enters what is typed."""

Step = str | dict[str, Any]
Does = TypeVar("Does", bound=Callable[..., None])

STEPS: dict[str, Callable[..., None]] = {}


def step(function: Does) -> Does:
    """Mark a function that a step can name."""
    STEPS[function.__name__] = function
    return function


@cache
def written() -> dict[str, Any]:
    """Return the table of all walks."""
    return tomllib.loads((ASSETS / "scenes.toml").read_text(encoding="utf-8"))


@frozen
class Scene:
    """A name, how to walk there from the first screen with the example boards loaded, and the page it must come to."""

    name: str
    walk: Callable[[Driver], object]
    page: str = ""


def walked(name: str, page: str, steps: Iterable[Step]) -> Scene:
    """Return a scene that is walked to in steps."""
    return Scene(name, lambda driver: take(driver, steps), page)


def take(driver: Driver, steps: Iterable[Step]) -> None:
    """Take steps, one after the other."""
    for one in steps:
        if isinstance(one, dict):
            (name, first), *more = one.items()
            STEPS[name](driver, first, **dict(more))
        elif one.startswith("="):
            driver.type(one[1:])
        elif one.startswith("@"):
            take(driver, written()["walks"][one[1:]])
        elif one.startswith("!"):
            STEPS[one[1:]](driver)
        else:
            driver.tap(one)


@step
def settled(driver: Driver) -> None:
    """Wait until nothing moves."""
    driver.settle()


@step
def moment(driver: Driver) -> None:
    """Let what has just come be drawn."""
    driver.frame(2)


@step
def later(driver: Driver) -> None:
    """Let a second pass."""
    driver.frame(2, seconds=0.5)


@step
def enter(driver: Driver) -> None:
    """Enter what is typed."""
    driver.key(ENTERS)


@step
def no_board(driver: Driver) -> None:
    """Be someone who has saved no board."""
    Held(driver).choose("none")


@step
def begun(driver: Driver) -> None:
    """Be someone who opens the app for the first time."""
    held = Held(driver)
    held.do(Place(HOME))
    held.choose("none")
    held.do(Drop())
    held.do(Dismiss())
    held.forget_answers()
    held.store.drop_run(held.saved.id, "before_ride")
    driver.settle()


@step
def board(driver: Driver, name: str) -> None:
    """Put an example board in use."""
    Held(driver).choose_named(name)


@step
def place(driver: Driver, name: str) -> None:
    """Go to one of the four places past the bar."""
    driver.app.front.place(name)


@step
def go(driver: Driver, page: str, **given: object) -> None:
    """Open a page past the rows that lead there."""
    driver.app.front.go(page, **given)


@step
def write(driver: Driver, key: str, text: str) -> None:
    """Write a text into a field."""
    Held(driver).do(Write(key, text))


@step
def sight(driver: Driver, text: str) -> None:
    """Scroll until a text stands at the top of its pane."""
    spot = driver.find(text)
    spot.part.to(spot.down)


@step
def scrolled(driver: Driver, pixels: float) -> None:
    """Scroll so far down, on a wide window in each of its panes."""
    for pane in driver.app.front.paper.parts.panes[:2]:
        pane.to(pixels)
