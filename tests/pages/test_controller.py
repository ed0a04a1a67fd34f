"""Set the controller: the saved board's card, each controller first, braking never without what it does."""

from dataclasses import replace

from logic.board import Value
from screens.acts import Go
from screens.acts.entering import Put
from screens.blocks import Figure, FigureRow
from tests.pages.reader import Reader


def rows(pages: Reader) -> dict[str, str]:
    return {one.label: one.number for one in pages.blocks() if isinstance(one, FigureRow | Figure)}


def test_what_is_typed_into_a_controller_stands_first(pages: Reader) -> None:
    pages.open("bench.controller")
    # Two of them share the 30 A of the board.
    crown = pages.page.crown
    assert (crown.label, crown.number, crown.unit) == ("Battery amps, drive, each controller", "15", "A")
    assert rows(pages)["The motors alone slow by"] == "0.776"
    open_rows = [one for one in pages.page.blocks if isinstance(one, FigureRow)]
    assert len(open_rows) <= 6
    pages.tap("All figures")
    assert rows(pages)["Battery amps, drive, whole board"] == "30"
    assert pages.shows("Temperatures")
    assert pages.shows("Motor: hold back from ")


def test_a_trial_does_not_count_and_a_value_opens_the_boards_page(pages: Reader) -> None:
    pages.open("bench.controller")
    pages.act(Put("controller.battery_current", Value(20.0, "guess")))
    assert pages.shows("A trial is open: this page uses the saved board.")
    assert pages.page.crown.number == "15"
    line = pages["controller.battery_current"]
    assert line.act == Go("board.value", {"key": "controller.battery_current"})
    assert (line.value, line.trial) == ("30\u00a0A", False)
    assert pages.page.foot.main is None
    pages.act(Put("controller.battery_current", Value(20.0, "guess"), "saved"))
    assert pages.page.crown.number == "10"


def test_the_part_that_holds_a_current_down_is_named(pages: Reader) -> None:
    board = pages.world.saved.with_value("pack.fuse", Value(20.0, "label"))
    pages.world = replace(pages.world, saved=board)
    pages.open("bench.controller")
    # The lowest of what is entered: a fuse of 20 A under the 30 A of the board; two controllers share it.
    assert (pages.page.crown.number, pages.page.crown.detail[:17]) == ("10", "Held by the fuse.")
