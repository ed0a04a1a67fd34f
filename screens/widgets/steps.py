"""The last readings as steps over their window: each value printed under its step, the newest at the right."""

from typing import NamedTuple

from kivy.metrics import dp
from kivy.properties import ListProperty, NumericProperty

from screens.theme import theme
from screens.widgets.drawing import Drawing

TALL = 64
"""Height of the steps in dp."""
GAP = 12
"""Least distance between two printed values in dp."""
FEWEST = 2
"""Readings from which on there is something to compare."""


class Reading(NamedTuple):
    """One reading: its value and the text printed for it."""

    value: float
    text: str


class Steps(Drawing):
    """Up to as many of the newest `readings` as can be printed; nothing for a single one.

    The window from `floor` to `ceiling` lies behind them, unless both are 0.
    """

    readings = ListProperty()
    floor = NumericProperty(0.0)
    ceiling = NumericProperty(0.0)

    def height_wanted(self) -> float:
        """Return room for the steps and the row of values."""
        if len(self.readings) < FEWEST:
            return 0.0
        return dp(TALL + 8) + self.measure("0", theme.small, bold=True)[1]

    def shown(self) -> list[Reading]:
        """Return the newest readings that can be printed side by side."""
        widest = max(self.measure(one.text, theme.small, bold=True)[0] for one in self.readings)
        most = max(FEWEST, int(self.width // (widest + dp(GAP))))
        return list(self.readings[-most:])

    def draw(self) -> None:
        """Draw the window, then a step and its value for each reading."""
        if len(self.readings) < FEWEST or self.width < dp(80):
            return
        shown = self.shown()
        foot = self.height - dp(TALL)
        ends = [one.value for one in shown] + ([self.floor, self.ceiling] if self.ceiling else [])
        low, high = min(ends), max(ends)
        room = dp(TALL - 12) / ((high - low) or 1.0)

        def place(value: float) -> float:
            return foot + dp(6) + (value - low) * room

        if self.ceiling:
            bottom, top = place(self.floor), place(self.ceiling)
            self.ink(theme.key)
            self.bar(0, bottom, self.width, top - bottom)
            self.ink(theme.text)
            self.frame(0, bottom, self.width, top - bottom, dp(1))
        wide = self.width / len(shown)
        before: float | None = None
        for number, one in enumerate(shown):
            left, level = number * wide, place(one.value)
            self.ink(theme.main)
            self.bar(left, level - dp(2), wide, dp(4))
            if before is not None:
                self.bar(left - dp(1), min(before, level), dp(2), abs(level - before))
            before = level
            across, tall = self.measure(one.text, theme.small, bold=True)
            self.write(
                one.text, left + (wide - across) / 2, foot - dp(4) - tall, theme.small, theme.text, bold=True
            )
