"""Walks through the log."""

from datetime import timedelta

from screens.driver import Driver
from screens.scenes import FIXED, Scene


def home(driver: Driver) -> None:
    """Open the log."""
    driver.tap("Log")


def history(driver: Driver) -> None:
    """Open the history of a belt that was measured five times over fifty kilometres."""
    state = driver.app.state
    store, board = state.store, state.saved.id
    begin = FIXED - timedelta(days=30)
    store.append(board, "belt_fitted", {"belt": "left"}, at=begin)
    for number, (tension, error) in enumerate(
        ((111.0, 15.0), (101.0, 14.0), (95.0, 9.0), (91.0, 14.0), (84.0, 9.0))
    ):
        at = begin + timedelta(days=6 * number)
        if number:
            store.append(board, "ride", {"distance": 12000.0 if number > 1 else 4000.0}, at=at)
        store.append(
            board,
            "tension",
            {
                "belt": "left",
                "method": "together" if error < 10 else "scale",  # noqa: PLR2004  (two ways are better)
                "tension": tension,
                "error": error,
                "word": "in window",
            },
            at=at + timedelta(minutes=5),
        )
    home(driver)
    driver.tap("History of a belt")


def history_empty(driver: Driver) -> None:
    """Show a belt without readings."""
    driver.app.state.record("belt_fitted", {"belt": "right"})
    home(driver)
    driver.tap("History of a belt")
    driver.tap("Right")


SCENES = (
    Scene("log", home),
    Scene("log-history", history),
    Scene("log-history-empty", history_empty),
)
