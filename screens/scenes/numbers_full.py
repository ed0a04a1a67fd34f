"""Walks through the fuller half of Numbers."""

from screens.driver import Driver
from screens.scenes import Scene


def visit(driver: Driver, name: str) -> None:
    """Open a page of Numbers."""
    driver.app.shell.place("numbers")
    driver.app.shell.go(f"numbers.{name}")
    driver.settle()


def pairs(driver: Driver) -> None:
    """Open the pairs of pulleys."""
    visit(driver, "pairs")
    page = driver.app.shell.page
    page.sorted_by, page.begin, page.table.offset = None, 0, 0
    page.rank()
    driver.settle()


def pairs_wish(driver: Driver) -> None:
    """Ask which pairs do 38 km/h and a 15 % hill."""
    pairs(driver)
    ask(driver, "Top speed wished for", "38")
    ask(driver, "Hill wished for", "15")


def pairs_sorted(driver: Driver) -> None:
    """Sort by push."""
    pairs(driver)
    driver.tap("Sort by Push N")


def pairs_printed(driver: Driver) -> None:
    """Show a board whose motor constant is only printed."""
    state = driver.app.state
    state.choose(next(board.id for board in state.boards() if board.name == "Ferry"))
    pairs(driver)


def pairs_scratch(driver: Driver) -> None:
    """Show what a board without values lacks."""
    driver.app.state.choose("none")
    pairs(driver)


def pair(driver: Driver) -> None:
    """Open one pair."""
    pairs_wish(driver)
    page = driver.app.shell.page
    driver.tap(page.table._rows[0])  # noqa: SLF001  (the first row, whatever its teeth)


def stopping(driver: Driver) -> None:
    """Open stopping."""
    visit(driver, "stopping")


def ask(driver: Driver, chip: str, text: str) -> None:
    """Type a value for a chip and close the keypad."""
    driver.tap(chip)
    driver.type(text)
    driver.tap("Done")


def stopping_hill(driver: Driver) -> None:
    """Ask for a hill that is stronger than the brake."""
    stopping(driver)
    ask(driver, "Slope under it", "-20")


def stopping_pack(driver: Driver) -> None:
    """Scroll to what tyre and pack allow, on a pack that is not full."""
    stopping(driver)
    ask(driver, "Pack at rest", "39")
    page = driver.app.shell.page
    page.scroll.scroll_to(page.pack, animate=False)


def push(driver: Driver) -> None:
    """Open speed and push."""
    visit(driver, "push")


def push_hill(driver: Driver) -> None:
    """Climb against the wind."""
    push(driver)
    ask(driver, "Grade", "8")
    ask(driver, "Headwind", "15")


def push_steep(driver: Driver) -> None:
    """Ask for a hill it cannot start."""
    push(driver)
    ask(driver, "Grade", "40")


def push_down(driver: Driver) -> None:
    """Ask for a slope on which gravity runs past the motors."""
    push(driver)
    ask(driver, "Grade", "-20")


def push_figures(driver: Driver) -> None:
    """Step along the curve and scroll to the figures there."""
    push(driver)
    driver.tap("Along the curve, one more")
    page = driver.app.shell.page
    page.scroll.scroll_to(page.flow, animate=False)


SCENES = (
    Scene("pairs", pairs),
    Scene("pairs-wish", pairs_wish),
    Scene("pairs-sorted", pairs_sorted),
    Scene("pairs-printed", pairs_printed),
    Scene("pairs-scratch", pairs_scratch),
    Scene("pair", pair),
    Scene("stopping", stopping),
    Scene("stopping-hill", stopping_hill),
    Scene("stopping-pack", stopping_pack),
    Scene("push", push),
    Scene("push-hill", push_hill),
    Scene("push-steep", push_steep),
    Scene("push-down", push_down),
    Scene("push-figures", push_figures),
)
