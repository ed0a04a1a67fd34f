"""A coast to standstill: the rolling coefficient from distance, from time, or from both."""

from typing import Any

from kivy.properties import ObjectProperty, StringProperty

from logic.answers.consumption import best_rolling, coasting
from logic.answers.reading import RIDER
from logic.board import Value, board_fields
from logic.errors import InputError
from screens.numbers import consumption as _kv  # noqa: F401  (its kv file holds this page's rule)
from screens.numbers.figures import FiguresPage
from screens.words import refusal
from screens.words.consumption import LABELS


class CoastPage(FiguresPage):
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

    told = StringProperty()
    flow = ObjectProperty()

    def __init__(self, *args: Any, **kwargs: Any) -> None:  # noqa: ANN401  (as AppPage)
        """Name the page."""
        self.found: float | None = None
        super().__init__(*args, title="Coast", **kwargs)

    def show(self) -> None:
        """Show the coefficient of each way that was entered."""
        items = coasting(self.state.board, self.state.person.rider, self.asking)
        self.show_items(items, self.flow)
        self.found = best_rolling(items)
        self.told = (
            "Level road, no wind, upright as you ride; once each way. The air's part rests on the drag area."
        )

    def bars(self) -> tuple[tuple[str, str, Any], ...]:
        """Offer the mean of what was found, unless it is tried already."""
        rolling = self.state.board.load.rolling
        if self.found is None or (rolling is not None and rolling.si == self.found):
            return super().bars()
        try:
            board_fields()["load.rolling"].check(self.found)
        except InputError as problem:
            self.problem = refusal(problem, self.style)
            return super().bars()
        return ((f"Try {self.style.plain(self.found)} on the board", "main", self.try_it),)

    def try_it(self) -> None:
        """Lay the coefficient over the board as a trial."""
        if self.found is not None:
            self.state.try_value("load.rolling", Value(self.found, "measured", note="coast"))
