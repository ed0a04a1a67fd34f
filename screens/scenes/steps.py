"""What a walk is made of. A text is touched, one after "=" is typed; all else is a function of the driver."""

from collections.abc import Callable
from dataclasses import dataclass

from screens.driver import Driver
from screens.scenes.held import Held

TYPED = "="
"""What stands before a text that is typed."""
ENTERS = 13
"""Kivy's code of the key that enters what is typed."""

Step = str | Callable[[Driver], object]


@dataclass(frozen=True)
class Scene:
    """A name, how to walk there from the first screen with the example boards loaded, and the page it must come to."""

    name: str
    walk: Callable[[Driver], object]
    page: str = ""


def scene(name: str, page: str, *steps: Step) -> Scene:
    """Return a scene that is walked to in steps."""
    return Scene(name, lambda driver: take(driver, *steps), page)


def take(driver: Driver, *steps: Step) -> None:
    """Take steps, one after the other."""
    for step in steps:
        if not isinstance(step, str):
            step(driver)
        elif step.startswith(TYPED):
            driver.type(step.removeprefix(TYPED))
        else:
            driver.tap(step)


def settled(driver: Driver) -> None:
    """Wait until nothing moves."""
    driver.settle()


def moment(driver: Driver) -> None:
    """Let what has just come be drawn."""
    driver.frame(2)


def enter(driver: Driver) -> None:
    """Enter what is typed."""
    driver.key(ENTERS)


def no_board(driver: Driver) -> None:
    """Be someone who has saved no board."""
    Held(driver).choose("none")


def board(name: str) -> Step:
    """Put an example board in use."""
    return lambda driver: Held(driver).choose_named(name)


def place(name: str) -> Step:
    """Go to one of the four places past the bar."""
    return lambda driver: driver.app.front.place(name)


def go(page: str, **given: object) -> Step:
    """Open a page past the rows that lead there."""
    return lambda driver: driver.app.front.go(page, **given)


def sight(text: str) -> Step:
    """Scroll to a text."""
    return lambda driver: driver.find(text).bring()


def scrolled(pixels: float) -> Step:
    """Scroll so far down."""
    return lambda driver: driver.app.front.paper.parts.panes[0].to(pixels)


def asked(label: str, text: str) -> tuple[Step, ...]:
    """Type a value for a row and close the keypad."""
    return (label, TYPED + text, "Done")
