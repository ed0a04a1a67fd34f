"""Lines over two axes: each told apart by colour, by dashes and by its name at its end."""

from collections.abc import Callable, Sequence
from itertools import pairwise, product
from math import isfinite
from typing import NamedTuple

from kivy.graphics import Ellipse, Line
from kivy.metrics import dp
from kivy.properties import BooleanProperty, ObjectProperty, StringProperty

from screens.pictures.axis import cut, opened, plain_number, reach, ticks
from screens.theme import theme
from screens.widgets.drawing import Drawing
from screens.widgets.labelling import best_place, cross, leader, places
from screens.widgets.plane import Box, Point, Segment, dashes, pieces

STYLES = (("chart_a", ()), ("chart_b", (9, 5)), ("chart_c", (3, 4)), ("text", (12, 4, 3, 4)))
"""Colour token and dashes (ink, gap, in dp; none is a full line) of the first to the fourth line."""

HALF = 1.5
"""Half the thickness of a line in dp, as Kivy counts it."""
EDGE = 4
"""Margin inside the widget in dp."""


class Curve(NamedTuple):
    """One line of a chart: its name and its points (x, y) in the order they are joined."""

    name: str
    points: Sequence[Point]


class Mark(NamedTuple):
    """A marked point of a chart and its short label."""

    x: float
    y: float
    text: str


class Chart(Drawing):
    """Up to four lines, marked points and a cursor. Everything comes in as numbers and ready texts."""

    lines = ObjectProperty(())
    """Up to four `Curve`."""
    bars = ObjectProperty(())
    """Any number of (x, low, high): the error bar of a reading."""
    marks = ObjectProperty(())
    """Any number of `Mark`: a ring and its label."""
    x_title = StringProperty()
    y_title = StringProperty()
    """Axis titles with their units."""
    x_range = ObjectProperty(None, allownone=True)
    y_range = ObjectProperty(None, allownone=True)
    """(low, high), or None to take what the points need."""
    x_ticks = ObjectProperty(())
    y_ticks = ObjectProperty(())
    """(value, text) pairs to choose from, or none for round numbers written by the functions below."""
    x_text: Callable[[float], str] = ObjectProperty(plain_number)
    y_text: Callable[[float], str] = ObjectProperty(plain_number)
    from_zero = BooleanProperty(defaultvalue=True)
    """Whether the y axis that fits itself always shows zero."""
    cursor = ObjectProperty(None, allownone=True)
    """x of an upright line, or None."""
    cursor_text = StringProperty()
    """The values at the cursor, ready to read; stands above the plot."""

    def on_lines(self, _chart: "Chart", lines: Sequence[Curve]) -> None:
        """Refuse a fifth line: there is no fifth style that could be told apart."""
        if len(lines) > len(STYLES):
            raise ValueError(f"a chart shows at most {len(STYLES)} lines, not {len(lines)}")

    def height_wanted(self) -> float:
        """Return room for the titles, the ticks and a plot that holds six labels above each other."""
        return max(dp(220), dp(60) + 12 * self.measure("0", theme.small)[1])

    def draw(self) -> None:
        """Lay out from the outside inwards: titles, ticks, then the plot with what it holds."""
        curves = [
            Curve(name, [(x, y) for x, y in points if isfinite(x) and isfinite(y)])
            for name, points in self.lines
        ]
        points = [point for curve in curves for point in curve.points] + [
            (mark.x, mark.y) for mark in self.marks
        ]
        points += [(x, end) for x, low, high in self.bars for end in (low, high)]
        if not points:
            self.write_empty()
            return
        self.xs = self.x_range or opened(min(x for x, _ in points), max(x for x, _ in points))
        self.ys = self.y_range or reach([y for _, y in points], from_zero=self.from_zero)
        edge = EDGE * dp(1)
        top = self.height - self.draw_head(edge)
        line = self.measure("0", theme.small)[1]
        self.bottom = edge + self.fitted(self.x_title)[1] + line + dp(6)
        self.tall = top - self.bottom
        if self.tall < line or self.width < dp(80):
            return
        y_ticks = self.choose_y(line)
        gutter = max((self.measure(text, theme.small)[0] for _, text, _ in y_ticks), default=0)
        self.left = edge + gutter + dp(6)
        self.wide = self.width - self.left - dp(10)
        self.draw_axes(y_ticks, edge)
        self.draw_plot(curves)

    def place_x(self, x: float) -> float:
        """Return where a value of x is drawn, in pixels from the widget's left."""
        return self.left + (x - self.xs[0]) / (self.xs[1] - self.xs[0]) * self.wide

    def place_y(self, y: float) -> float:
        """Return where a value of y is drawn, in pixels from the widget's foot."""
        return self.bottom + (y - self.ys[0]) / (self.ys[1] - self.ys[0]) * self.tall

    def fitted(self, text: str, *, bold: bool = False) -> tuple[float, float, float]:
        """Return width, height and the width to wrap at (0 for one line) of a text as wide as the widget."""
        room = self.width - 2 * EDGE * dp(1)
        wide, tall = self.measure(text, theme.small, bold=bold)
        if wide <= room:
            return wide, tall, 0.0
        return room, self.measure(text, theme.small, bold=bold, width=room)[1], room

    def draw_head(self, edge: float) -> float:
        """Draw the y title and the cursor's values, side by side if they fit; return the height taken."""
        values = self.cursor_text if self.cursor is not None else ""
        title_wide, title_tall, title_wrap = self.fitted(self.y_title)
        wide, tall, wrap = self.fitted(values, bold=True)
        beside = title_wide + dp(16) + wide <= self.width - 2 * edge
        top = self.height - edge
        self.write(self.y_title, edge, top - title_tall, theme.small, theme.second, width=title_wrap)
        values_top = top if beside else top - title_tall
        self.write(
            values,
            self.width - edge - wide,
            values_top - tall,
            theme.small,
            theme.text,
            bold=True,
            width=wrap,
        )
        return edge + dp(6) + (max(title_tall, tall) if beside else title_tall + tall)

    def choose_y(self, line: float) -> list[tuple[float, str, float]]:
        """Return value, text and foot of the y axis's ticks, as many as stand clear of each other."""
        for most in range(6, 0, -1):
            placed = []
            for value, text in ticks(self.y_ticks, self.ys, most, self.y_text):
                # The lowest stands above the texts of the x axis, the highest below the title.
                foot = max(self.bottom - dp(6), self.place_y(value) - line / 2)
                placed.append((value, text, min(foot, self.bottom + self.tall + dp(6) - line)))
            if all(one[2] + 1.2 * line <= two[2] for one, two in pairwise(placed)):
                return placed
        return []

    def choose_x(self) -> list[tuple[float, str, float]]:
        """Return value, text and left edge of the x axis's ticks, as many as stand clear of each other."""
        for most in range(6, 0, -1):
            placed = []
            ends = []
            for value, text in ticks(self.x_ticks, self.xs, most, self.x_text):
                wide = self.measure(text, theme.small)[0]
                placed.append((value, text, min(max(0.0, self.place_x(value) - wide / 2), self.width - wide)))
                ends.append(placed[-1][2] + wide)
            if all(end + dp(8) <= two[2] for end, two in zip(ends, placed[1:], strict=False)):
                return placed
        return []

    def draw_axes(self, y_ticks: Sequence[tuple[float, str, float]], edge: float) -> None:
        """Draw both axes with ticks, their texts and the x title."""
        line = self.measure("0", theme.small)[1]
        hair, tick = dp(1), dp(4)
        x_ticks = self.choose_x()
        if theme.name != "sun":
            # Black on white shows no tints, and black rules would be taken for lines.
            self.ink(theme.outline, 0.25)
            for value, *_ in y_ticks:
                self.bar(self.left, self.place_y(value), self.wide, hair)
        self.ink(theme.outline)
        self.bar(self.left, self.bottom, self.wide, hair)
        self.bar(self.left, self.bottom, hair, self.tall)
        for value, *_ in y_ticks:
            self.bar(self.left - tick, self.place_y(value), tick, hair)
        for value, *_ in x_ticks:
            self.bar(self.place_x(value), self.bottom - tick, hair, tick)
        for _, text, foot in y_ticks:
            wide = self.measure(text, theme.small)[0]
            self.write(text, self.left - dp(6) - wide, foot, theme.small, theme.second)
        for _, text, left in x_ticks:
            self.write(text, left, self.bottom - dp(6) - line, theme.small, theme.second)
        wide, _, wrap = self.fitted(self.x_title)
        self.write(self.x_title, self.width - edge - wide, edge, theme.small, theme.second, width=wrap)

    def draw_plot(self, curves: Sequence[Curve]) -> None:
        """Draw the lines, the cursor and the rings, then the labels where they hide least."""
        ink: list[Box] = []
        ends = [self.draw_line(curve, style, ink) for curve, style in zip(curves, STYLES, strict=False)]
        if self.cursor is not None and self.xs[0] <= self.cursor <= self.xs[1]:
            x = self.place_x(self.cursor)
            self.ink(theme.text)
            self.bar(x, self.bottom, dp(1), self.tall)
            ink.append(Box("", x, self.bottom, dp(1), self.tall))
        self.draw_bars()
        shown = [mark for mark in self.marks if self.holds(mark)]
        self.leaders: list[Segment] = []
        taken = [self.draw_ring(mark) for mark in shown]
        # Marks first: a line has many places for its name, a ring has only those around it.
        for mark in shown:
            at = (self.place_x(mark.x), self.place_y(mark.y))
            self.write_near(mark.text, theme.text, [at], taken, ink)
        for curve, (token, _), end in zip(curves, STYLES, ends, strict=False):
            if end:
                self.write_near(curve.name, getattr(theme, token), end[::-1], taken, ink)

    def holds(self, mark: Mark) -> bool:
        """Return whether a marked point lies within both axes."""
        return self.xs[0] <= mark.x <= self.xs[1] and self.ys[0] <= mark.y <= self.ys[1]

    def draw_line(self, curve: Curve, style: tuple[str, tuple[int, ...]], ink: list[Box]) -> list[Point]:
        """Draw one line in its style, note where it runs and return its last part that shows."""
        token, pattern = style
        self.ink(getattr(theme, token))
        across, up = self.wide / (self.xs[1] - self.xs[0]), self.tall / (self.ys[1] - self.ys[0])
        flat = [((x - self.xs[0]) * across, (y - self.ys[0]) * up) for x, y in curve.points]
        last: list[Point] = []
        for part in cut(flat, self.wide, self.tall):
            last = [(x + self.left, y + self.bottom) for x, y in part]
            if pattern:
                self.strokes(dashes(last, [dp(length) for length in pattern]), HALF * dp(1))
            else:
                flat_points = [at for point in last for at in point]
                self.add(Line(points=flat_points, width=HALF * dp(1), joint="none"))
            ink += pieces(last, max(dp(12), self.wide / 24))
        return last

    def draw_bars(self) -> None:
        """Draw the error bars, each with a short cap at both ends."""
        self.ink(theme.text)
        for x, low, high in self.bars:
            middle, foot, head = self.place_x(x), self.place_y(low), self.place_y(high)
            self.bar(middle - dp(0.75), foot, dp(1.5), head - foot)
            for end in (foot, head):
                self.bar(middle - dp(4), end - dp(0.75), dp(8), dp(1.5))

    def draw_ring(self, mark: Mark) -> Box:
        """Draw the ring of a marked point and return the room it takes."""
        x, y, radius = self.place_x(mark.x), self.place_y(mark.y), dp(5)
        self.ink(self.ground)
        self.add(Ellipse(pos=(x - radius, y - radius), size=(2 * radius, 2 * radius), segments=24))
        self.ink(theme.text)
        self.ring(x, y, radius, dp(1.2))
        return Box("", x - radius, y - radius, 2 * radius, 2 * radius)

    def write_near(
        self, text: str, colour: list[float], anchors: Sequence[Point], taken: list[Box], ink: Sequence[Box]
    ) -> None:
        """Write a label beside its line or ring; left out when there is no room for it at all."""
        if not text:
            return
        size = self.measure(text, theme.small)
        plot = Box("", self.left, self.bottom, self.wide, self.tall)
        boxes = (Box(text, x, y, *size) for x, y in places(plot, *size, anchors))
        free = (
            box
            for box in boxes
            if not any(cross(*two) for two in product(leader(anchors, box), self.leaders))
        )
        best = best_place(free, taken, ink)
        if best is None:
            return
        taken.append(best)
        self.ink(colour)
        stroke = leader(anchors, best)
        self.leaders += stroke
        self.strokes(stroke, dp(0.5))
        self.write(text, best.x, best.y, theme.small, colour, plate=True)
