"""A tension gauge: the window from floor to ceiling, the marks to set to, the estimate with its error bar."""

import re
from collections.abc import Sequence
from typing import NamedTuple

from kivy.metrics import dp
from kivy.properties import NumericProperty, ObjectProperty, StringProperty

from screens.theme import theme
from screens.widgets.drawing import Drawing
from screens.widgets.plane import spread

BAND = 32
"""Height of the scale in dp."""
EDGE = 8
"""Margin left and right of the scale in dp."""
GAP = 16
"""Least distance between two labels of a row in dp."""


class Label(NamedTuple):
    """One label of a row: its text and the place on the scale it belongs to, in pixels."""

    text: str
    x: float


def short(text: str) -> str:
    """Return a label's number and unit without the words before it; nothing if it has no number.

    >>> short("target 55 N")
    '55 N'
    """
    found = re.search(r"[\N{MINUS SIGN}+-]?\d.*", text, flags=re.DOTALL)
    return found.group() if found else ""


class Gauge(Drawing):
    """Where a tension stands against its window. Without an estimate it shows the window alone.

    From the top: marks, estimate, scale, words, floor and ceiling.
    """

    low = NumericProperty(0.0)
    high = NumericProperty(0.0)
    """Ends of the scale; nothing but the empty text while they leave no room between them."""
    floor = NumericProperty(0.0)
    ceiling = NumericProperty(0.0)
    floor_text = StringProperty()
    ceiling_text = StringProperty()
    slack_text = StringProperty("slack")
    window_text = StringProperty("in window")
    tight_text = StringProperty("tight")
    target = ObjectProperty(None, allownone=True)
    target_text = StringProperty()
    run_in = ObjectProperty(None, allownone=True)
    run_in_text = StringProperty()
    last = ObjectProperty(None, allownone=True)
    last_text = StringProperty()
    estimate = ObjectProperty(None, allownone=True)
    estimate_low = ObjectProperty(None, allownone=True)
    estimate_high = ObjectProperty(None, allownone=True)
    """Ends of the error bar, or None for no bar."""
    estimate_text = StringProperty()

    @property
    def on_scale(self) -> bool:
        """Return whether there is a scale to draw."""
        return bool(self.high > self.low and self.low <= self.floor < self.ceiling <= self.high)

    @property
    def has_marks(self) -> bool:
        """Return whether the row of marks is wanted."""
        return any(value is not None for value in (self.target, self.run_in, self.last))

    def line(self) -> float:
        """Return the height of a row of small text."""
        return self.measure("0", theme.small)[1]

    def estimate_line(self) -> float:
        """Return the height of the estimate's row; nothing without an estimate."""
        return (
            self.measure(self.estimate_text or "0", theme.strong, bold=True)[1]
            if self.estimate is not None
            else 0.0
        )

    def word_rows(self) -> int:
        """Return how many rows slack, in window and tight need: one if they fit side by side, else two."""
        words = (self.slack_text, self.window_text, self.tight_text)
        wide = sum(self.measure(word, theme.small, bold=True)[0] for word in words)
        return 1 if wide + 2 * dp(GAP) <= self.width else 2

    def height_wanted(self) -> float:
        """Return the height of all rows that have something to show."""
        rows = self.word_rows() + (2 if self.has_marks else 1)
        return dp(BAND + 20) + rows * self.line() + self.estimate_line()

    def place(self, value: float) -> float:
        """Return where a value is drawn, in pixels from the widget's left; linear, and held at the ends."""
        edge = dp(EDGE)
        share = (value - self.low) / (self.high - self.low)
        return edge + min(max(share, 0.0), 1.0) * (self.width - 2 * edge)

    def draw(self) -> None:
        """Draw the rows from the foot upwards; too low a widget loses the marks, then floor and ceiling."""
        if not self.on_scale:
            self.write_empty()
            return
        line, estimate = self.line(), self.estimate_line()
        words = self.word_rows() * line
        spare = self.height - dp(BAND + 12) - estimate - words
        numbers = spare >= line
        marks = self.has_marks and spare >= 2 * line + dp(8)
        foot = max(0.0, (spare - line * numbers - (line + dp(8)) * marks) / 2)
        words_foot = foot + line * numbers
        bottom = words_foot + words + dp(4)
        top = bottom + dp(BAND)
        self.draw_scale(bottom)
        if marks:
            self.draw_marks(top, top + dp(8) + estimate + dp(4))
        self.draw_words(words_foot, bottom)
        if numbers:
            self.draw_numbers(foot)
        if self.last is not None:
            self.draw_last(self.place(self.last), bottom)
        if self.estimate is not None:
            self.draw_estimate(bottom, top)

    def draw_scale(self, bottom: float) -> None:
        """Draw the whole scale as a thin frame and the window as a thick one."""
        left, right = self.place(self.low), self.place(self.high)
        floor, ceiling = self.place(self.floor), self.place(self.ceiling)
        inset = dp(6)
        self.ink(theme.outline)
        self.frame(left, bottom + inset, right - left, dp(BAND) - 2 * inset, dp(1))
        self.ink(theme.key)
        self.bar(floor, bottom, ceiling - floor, dp(BAND))
        self.ink(theme.text)
        self.frame(floor, bottom, ceiling - floor, dp(BAND), dp(2))

    def draw_words(self, foot: float, bottom: float) -> None:
        """Write slack, in window and tight below their parts of the scale."""
        floor, ceiling = self.place(self.floor), self.place(self.ceiling)
        low, high = self.place(self.low), self.place(self.high)
        slack = Label(self.slack_text, (low + floor) / 2)
        window = Label(self.window_text, (floor + ceiling) / 2)
        tight = Label(self.tight_text, (ceiling + high) / 2)
        if self.word_rows() == 1:
            self.row([slack, window, tight], foot, bold=True)
        else:
            self.row([window], foot + self.line(), bold=True)
            self.row([slack, tight], foot, bold=True)
        self.ink(theme.text)
        for edge in (floor, ceiling - dp(2)):
            self.bar(edge, bottom - dp(5), dp(2), dp(5))

    def draw_numbers(self, foot: float) -> None:
        """Write floor and ceiling below their edges, shortened to the numbers if they do not fit."""
        labels = [
            Label(self.floor_text, self.place(self.floor)),
            Label(self.ceiling_text, self.place(self.ceiling)),
        ]
        if self.row(labels, foot) is None:
            self.row([Label(short(text), x) for text, x in labels], foot)

    def draw_marks(self, top: float, foot: float) -> None:
        """Draw the marks with leaders to their labels; run-in drops out first, then last, then the words."""
        values = {"target": self.target, "run_in": self.run_in, "last": self.last}
        given = {name: value for name, value in values.items() if value is not None}
        labels = {
            name: Label(getattr(self, f"{name}_text"), self.place(value)) for name, value in given.items()
        }
        for left_out in ((), ("run_in",), ("run_in", "last")):
            kept = sorted(
                (label for name, label in labels.items() if name not in left_out), key=lambda one: one.x
            )
            places = self.row(kept, foot)
            if places is not None:
                break
        else:
            kept = [Label(short(label.text), label.x) for name, label in labels.items() if name == "target"]
            places = self.row(kept, foot) or []
        self.ink(theme.text)
        for name, label in labels.items():
            if name != "last":
                self.bar(label.x - dp(1), top - dp(8), dp(2), dp(14))
        self.ink(theme.outline)
        leaders = []
        for label, left in zip(kept, places, strict=False):
            wide = self.measure(label.text, theme.small)[0]
            leaders.append((label.x, top + dp(6), min(max(label.x, left + dp(2)), left + wide - dp(2)), foot))
        self.strokes(leaders, dp(0.5))

    def draw_last(self, x: float, bottom: float) -> None:
        """Draw the last value as a hollow tick."""
        wide, tall = dp(8), dp(BAND - 4)
        left = min(max(0.0, x - wide / 2), self.width - wide)
        self.ink(self.ground)
        self.bar(left, bottom + dp(2), wide, tall)
        self.ink(theme.text)
        self.frame(left, bottom + dp(2), wide, tall, dp(1.5))

    def draw_estimate(self, bottom: float, top: float) -> None:
        """Draw the error bar as a bracket, the needle over it and the estimate's text above."""
        x, middle, thick = self.place(self.estimate), bottom + dp(BAND) / 2, dp(4)
        if self.estimate_low is not None and self.estimate_high is not None:
            start, end = self.place(self.estimate_low), self.place(self.estimate_high)
            for grown, colour in ((dp(1.5), self.ground), (0.0, theme.main)):
                # A rim in the ground's colour keeps the bracket apart from the frames it crosses.
                self.ink(colour)
                self.bar(
                    start - grown, middle - thick / 2 - grown, end - start + 2 * grown, thick + 2 * grown
                )
                for value, cap in ((self.estimate_low, start), (self.estimate_high, end - dp(3))):
                    if self.low <= value <= self.high:
                        self.bar(cap - grown, middle - dp(8) - grown, dp(3) + 2 * grown, dp(16) + 2 * grown)
        self.ink(self.ground)
        self.bar(x - dp(4), bottom - dp(2), dp(8), dp(BAND + 4))
        self.ink(theme.main)
        self.bar(x - dp(2.5), bottom - dp(2), dp(5), dp(BAND + 4))
        head = dp(8)
        # Off the scale the head points the way the value lies.
        if self.low <= self.estimate <= self.high:
            self.polygon((x - head, top + head), (x + head, top + head), (x, top - dp(2)))
        else:
            way = head if self.estimate > self.high else -head
            self.polygon((x, middle - dp(12)), (x, middle + dp(12)), (x + way, middle))
        self.row([Label(self.estimate_text, x)], top + head, role="strong", bold=True)

    def row(
        self, labels: Sequence[Label], foot: float, *, role: str = "small", bold: bool = False
    ) -> list[float] | None:
        """Write labels in a row and return their left edges; None, and nothing written, if too wide."""
        size = getattr(theme, role)
        widths = [self.measure(label.text, size, bold=bold)[0] for label in labels]
        places = spread(widths, [label.x for label in labels], 0.0, self.width, dp(GAP))
        if places is None:
            return None
        for label, left in zip(labels, places, strict=True):
            self.write(label.text, left, foot, size, theme.text, bold=bold, plate=True)
        return places
