"""A coast to standstill: the rolling coefficient from distance, from time, or from both."""

from typing import Any

from kivy.properties import StringProperty

from logic.answers.consumption import best_rolling, coasting
from logic.answers.reading import RIDER, Item
from logic.board import Board, Value, board_fields
from logic.errors import InputError
from screens.answering import AnsweringPage
from screens.numbers import consumption as _kv  # noqa: F401  (its kv file holds this page's rule)
from screens.words import refusal
from screens.words.consumption import LABELS


class CoastPage(AnsweringPage):
    """One way or the other, with the value to lay over the board."""

    CHIPS = (
        "ask.coast_speed",
        "ask.coast_distance",
        "ask.coast_time",
        "ask.coast_end",
        "ask.coast_belts",
        "load.drag_area",
        "load.board_mass",
        RIDER.key,
    )
    LABELS = LABELS

    title = StringProperty("Coast")
    told = StringProperty()

    def work_out(self, board: Board) -> dict[str, Item]:
        """Return the coefficient by each way that was entered."""
        return coasting(board, self.rider, self.asking)

    @property
    def found(self) -> float | None:
        """Return the mean of what was found."""
        return best_rolling(self.items)

    def show(self, _answer: dict[str, Item]) -> None:
        """Say what it rests on."""
        self.told = (
            "Level road, no wind, upright as you ride; once each way. The air's part rests on the drag area."
        )

    def bars(self) -> list[tuple[str, str, Any]]:
        """Offer the mean of what was found, unless it is tried already."""
        rolling = self.board.load.rolling
        if self.found is None or (rolling is not None and rolling.si == self.found):
            return super().bars()
        try:
            board_fields()["load.rolling"].check(self.found)
        except InputError as problem:
            self.problem = refusal(problem, self.style)
            return super().bars()
        return [(f"Try {self.style.plain(self.found)} on the board", "main", self.try_it)]

    def try_it(self) -> None:
        """Lay the coefficient over the board as a trial."""
        if self.found is not None:
            self.state.try_value("load.rolling", Value(self.found, "measured", note="coast"))
