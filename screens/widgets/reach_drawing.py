"""A screw in its hole, cut open, to scale: head, washers, plate, thread, and what lies behind the hole."""

from collections.abc import Iterator
from typing import NamedTuple

from kivy.metrics import dp
from kivy.properties import BooleanProperty, NumericProperty, StringProperty

from screens.theme import theme
from screens.widgets.drawing import Drawing
from screens.widgets.plane import Segment

MARGIN, TALLEST, WIDE = 8, 150, 520
"""Edge, largest height of the cut and largest width of the whole, in dp."""
HEAD, HEAD_WIDE, BODY, BEHIND = 1.0, 1.6, 2.6, 0.8
"""Height and width of a head, height of the metal shown, and depth shown behind the hole, in diameters."""


class Mark(NamedTuple):
    """A length of the drawing with its words: from, to (metres from below the head), and whether it is bad."""

    text: str
    start: float
    end: float
    bad: bool


class ReachDrawing(Drawing):
    """The head is at the left. Lengths in metres from below the head; 0 is not known, washers may be 0.

    The screw past the end of the hole is drawn in the colour of an error, and its words say so.
    """

    diameter = NumericProperty(0.0)
    screw_length = NumericProperty(0.0)
    plate = NumericProperty(0.0)
    washers = NumericProperty(0.0)
    thread_depth = NumericProperty(0.0)
    hole_depth = NumericProperty(0.0)
    through = BooleanProperty(defaultvalue=True)
    plate_text = StringProperty()
    engaged_text = StringProperty()
    room_text = StringProperty()
    behind_text = StringProperty()

    @property
    def complete(self) -> bool:
        """Return whether there is a screw to draw."""
        return bool(min(self.diameter, self.screw_length, self.plate, self.thread_depth, self.hole_depth) > 0)

    @property
    def face(self) -> float:
        """Return how far below the head the hole begins."""
        return float(self.washers + self.plate)

    @property
    def end(self) -> float:
        """Return how far below the head the hole ends."""
        return self.face + float(self.hole_depth)

    def height_wanted(self) -> float:
        """Return the height of the cut with a line of words for each mark."""
        if not self.complete:
            return dp(96)
        rows = sum(self.row_height(mark) for mark in self.marks())
        return self.scale() * BODY * self.diameter + rows + dp(3 * MARGIN)

    def scale(self) -> float:
        """Return pixels for a metre."""
        long = HEAD * self.diameter + max(self.screw_length, self.end) + BEHIND * self.diameter
        wide = min(self.width, dp(WIDE)) - dp(2 * MARGIN)
        return float(max(1.0, min(wide / long, dp(TALLEST) / (BODY * self.diameter))))

    def marks(self) -> Iterator[Mark]:
        """Yield the marked lengths that have words, from the head on."""
        tip, engaged = self.screw_length, min(self.screw_length, self.face + self.thread_depth)
        yield Mark(self.plate_text, 0.0, self.face, bad=False)
        if tip > self.face:
            yield Mark(self.engaged_text, self.face, engaged, bad=False)
            yield Mark(self.room_text, min(tip, self.end), max(tip, self.end), bad=tip > self.end)
        yield Mark(self.behind_text, self.end, self.end + BEHIND * self.diameter, bad=False)

    def row_height(self, mark: Mark) -> float:
        """Return the height of one mark and its words."""
        if not mark.text:
            return 0.0
        return self.measure(mark.text, theme.small, width=self.words_width())[1] + dp(12)

    def words_width(self) -> float:
        """Return the width that words may take."""
        return max(dp(40), self.width - dp(2 * MARGIN))

    def draw(self) -> None:
        """Draw the cut, then the marks under it."""
        if not self.complete:
            self.write_empty()
            return
        scale = self.scale()
        tall = BODY * self.diameter * scale
        left = dp(MARGIN) + HEAD * self.diameter * scale
        middle = self.height - dp(MARGIN) - tall / 2
        self.paint_metal(left, middle, scale)
        self.paint_screw(left, middle, scale)
        top = middle - tall / 2 - dp(6)
        for mark in self.marks():
            if mark.text:
                self.paint_mark(mark, left, top, scale)
                top -= self.row_height(mark)

    def paint_metal(self, left: float, middle: float, scale: float) -> None:
        """Draw washers, plate and motor face, above and below the hole, and what is behind."""
        half, radius = BODY * self.diameter * scale / 2, self.diameter * scale / 2
        clear = radius * 1.1
        thick = dp(1.5)
        washer = self.washers * scale
        face, end = left + self.face * scale, left + self.end * scale
        for up in (True, False):
            for start, stop, gap, depth in (
                (left, left + washer, clear, half * 0.85),
                (left + washer, face, clear, half),
                (face, end, radius, half),
            ):
                if stop - start < 1:
                    continue
                low = middle + gap if up else middle - depth
                self.ink(theme.panel if theme.name != "sun" else theme.ground)
                self.bar(start, low, stop - start, depth - gap)
                self.ink(theme.text)
                self.frame(start, low, stop - start, depth - gap, thick)
        self.ink(theme.second)
        self.strokes(self.hatches(left + washer, face, middle, clear, half), dp(0.5))
        self.paint_behind(end, middle, half, scale)

    def hatches(
        self, start: float, stop: float, middle: float, gap: float, depth: float
    ) -> Iterator[Segment]:
        """Yield slanting strokes over the plate, so that it is told from the motor without colour."""
        step, slant = dp(8), depth - gap
        x = start
        while x + step < stop:
            right = min(x + slant, stop)
            yield x, middle + gap, right, middle + gap + (right - x)
            yield x, middle - depth, right, middle - depth + (right - x)
            x += step

    def paint_behind(self, end: float, middle: float, half: float, scale: float) -> None:
        """Draw windings as rings behind a through hole, a wall behind a blind one."""
        deep = BEHIND * self.diameter * scale
        if not self.through:
            self.ink(theme.text)
            self.frame(end, middle - half, deep * 0.5, 2 * half, dp(1.5))
            return
        self.ink(theme.trial)
        radius = max(dp(2.5), deep / 4)
        count = max(2, int(2 * half / (2.4 * radius)))
        for at in range(count):
            y = middle - half + (at + 0.5) * 2 * half / count
            self.ring(end + radius * 1.4, y, radius, dp(0.8))

    def paint_screw(self, left: float, middle: float, scale: float) -> None:
        """Draw head and shank, the engaged thread as teeth, and what is past the end in the colour of an error."""
        radius = self.diameter * scale / 2
        head, wide = HEAD * self.diameter * scale, HEAD_WIDE * radius
        tip, face = left + self.screw_length * scale, left + self.face * scale
        tapped = face + self.thread_depth * scale
        end = left + self.end * scale
        self.ink(theme.second)
        self.bar(left - head, middle - wide, head, 2 * wide)
        self.bar(left, middle - radius * 0.92, min(tip, end) - left, 2 * radius * 0.92)
        self.ink(theme.ground)
        self.bar(left - head, middle - wide * 0.45, head * 0.55, wide * 0.9)
        self.ink(theme.main)
        step, tooth = max(dp(3), radius * 0.35), radius * 0.3
        x, teeth = face, []
        while x + step <= min(tip, tapped) + 0.5:
            for side in (1, -1):
                rim = middle + side * radius
                teeth += [
                    (x, rim, x + step / 2, rim - side * tooth),
                    (x + step / 2, rim - side * tooth, x + step, rim),
                ]
            x += step
        self.strokes(teeth, dp(1))
        if tip > end:
            self.ink(theme.bad)
            self.bar(end, middle - radius * 0.92, tip - end, 2 * radius * 0.92)

    def paint_mark(self, mark: Mark, left: float, top: float, scale: float) -> None:
        """Draw a length with its ends, and its words below, as near to it as the width allows."""
        colour = theme.bad if mark.bad else theme.text
        start, stop = left + mark.start * scale, left + mark.end * scale
        self.ink(colour)
        self.bar(start, top - dp(4), max(dp(2), stop - start), dp(1.5))
        for x in (start, stop):
            self.bar(x - dp(0.75), top - dp(8), dp(1.5), dp(8))
        width = self.words_width()
        across, tall = self.measure(mark.text, theme.small, width=width)
        single = self.measure(mark.text, theme.small)
        if single[0] <= width:
            across, tall, width = *single, 0.0
        x = min(max(dp(MARGIN), (start + stop - across) / 2), self.width - dp(MARGIN) - across)
        self.write(mark.text, max(dp(2), x), top - dp(9) - tall, theme.small, colour, width=width)
