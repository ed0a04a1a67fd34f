"""Walks through the board's pages."""

from screens.acts.entering import Write
from screens.driver import Driver
from screens.scenes.steps import board, go, moment, no_board, place, scene, settled

HOME = "Board Towpath 36"
BOARDS = (HOME, "Boards")


def name_taken(driver: Driver) -> None:
    """Write a name that another board has."""
    driver.app.front.perform(Write("name/new", "Weir"))


SCENES = (
    scene("board", "board", HOME),
    scene("board-value", "board.value", HOME, "Wheel diameter"),
    scene("board-choice", "board.value", HOME, "Belt profile"),
    scene(
        "board-guided",
        "board.value",
        *BOARDS,
        no_board,
        place("ride"),
        go("board.value", guided=True),
        moment,
        "=16",
    ),
    scene("board-set-ups", "board.set_ups", *BOARDS, "A usual set-up"),
    scene("boards", "board.boards", *BOARDS),
    scene("board-name", "board.name", *BOARDS, "New board", name_taken),
    scene("board-binned", "board.boards", board("Ferry"), go("board"), moment, "Put in the bin", settled),
)
