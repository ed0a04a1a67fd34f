"""Walks through the board's pages."""

from screens.acts import Write
from screens.driver import Driver
from screens.scenes import Scene
from screens.scenes.held import Held


def home(driver: Driver) -> None:
    """Open the board by its chip."""
    driver.tap("Board Towpath 36")


def value(driver: Driver) -> None:
    """Open one value."""
    home(driver)
    driver.tap("Wheel diameter")


def guided(driver: Driver) -> None:
    """Begin the guided entry of a new board."""
    boards(driver)
    Held(driver).choose("none")
    driver.app.front.place("ride")
    driver.app.front.go("board.value", guided=True)
    driver.frame(2)
    driver.type("16")


def set_ups(driver: Driver) -> None:
    """Open the usual set-ups."""
    boards(driver)
    driver.tap("A usual set-up")


def choice(driver: Driver) -> None:
    """Open a choice of the board."""
    home(driver)
    driver.tap("Belt profile")


def boards(driver: Driver) -> None:
    """Open the list of boards."""
    home(driver)
    driver.tap("Boards")


def name(driver: Driver) -> None:
    """Ask for a name that is taken."""
    boards(driver)
    driver.tap("New board")
    driver.app.front.perform(Write("name/new", "Weir"))


def binned(driver: Driver) -> None:
    """Put a board in the bin: the list of boards, with the way back."""
    held = Held(driver)
    held.choose_named("Ferry")
    driver.app.front.go("board")
    driver.frame(2)
    driver.tap("Put in the bin")
    driver.settle()


SCENES = (
    Scene("board", home, "board"),
    Scene("board-value", value, "board.value"),
    Scene("board-choice", choice, "board.value"),
    Scene("board-guided", guided, "board.value"),
    Scene("board-set-ups", set_ups, "board.set_ups"),
    Scene("boards", boards, "board.boards"),
    Scene("board-name", name, "board.name"),
    Scene("board-binned", binned, "board.boards"),
)
