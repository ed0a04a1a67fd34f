"""The belt drive to scale: two pulleys, the belt, the wheel behind, dimensions and the pull at mid-span."""

from collections.abc import Sequence
from math import atan2, cos, hypot, pi, sin
from operator import itemgetter

from kivy.graphics import Line
from kivy.metrics import dp
from kivy.properties import BooleanProperty, NumericProperty, StringProperty

from screens.theme import theme
from screens.widgets.drawing import Drawing
from screens.widgets.drive_layout import (
    ARROW,
    DISTINCT,
    MARGIN,
    OFFSET,
    Drive,
    Layout,
    Note,
    fit,
    place_notes,
)
from screens.widgets.plane import Box, Point, Segment

TRIES = ((1.0, 0.5), (0.9, 0.5), (0.8, 0.5), (0.8, 0.0), (0.65, 0.5), (0.65, 0.0), (0.5, 0.5), (0.5, 0.0))
"""Shares of the largest drawing, and of the height left over under it, tried until every label has room."""


class DriveDrawing(Drawing):
    """The drive from its side, as large as its labels leave room for. Lengths in metres; 0 is not known."""

    motor_teeth = NumericProperty(0)
    wheel_teeth = NumericProperty(0)
    centre = NumericProperty(0.0)
    motor_diameter = NumericProperty(0.0)
    wheel_pulley_diameter = NumericProperty(0.0)
    """Pitch diameters."""
    line_offset = NumericProperty(0.0)
    """How far the belt's pitch line lies outside the pulleys' outside diameter."""
    wheel_diameter = NumericProperty(0.0)
    """Outline of the wheel behind its pulley, or 0 for none."""
    motor_text = StringProperty()
    wheel_text = StringProperty()
    centre_text = StringProperty()
    span_text = StringProperty()
    pull_word = StringProperty("pull")
    pull_text = StringProperty()
    depth_text = StringProperty()
    show_pull = BooleanProperty(defaultvalue=True)
    inward = BooleanProperty(defaultvalue=False)
    """Whether the span is pushed in; otherwise it is pulled out."""
    mirrored = BooleanProperty(defaultvalue=False)

    @property
    def complete(self) -> bool:
        """Return whether there is a drive to draw."""
        known = min(self.motor_teeth, self.wheel_teeth, self.motor_diameter, self.wheel_pulley_diameter) > 0
        return bool(known and self.centre > abs(self.wheel_pulley_diameter - self.motor_diameter) / 2)

    layout: Layout | None = None
    """The drive as last drawn, before it is mirrored; None while there is none."""

    def draw(self) -> None:
        """Find the largest scale at which every label has room, then draw."""
        self.layout = None
        if not self.complete:
            self.write_empty()
            return
        drive = Drive(
            self.centre, self.wheel_pulley_diameter / 2, self.motor_diameter / 2, self.wheel_diameter / 2
        )
        foot = self.level() if self.centre_text else 0.0
        tries = []
        for share, under in TRIES:
            layout = fit(
                drive,
                width=self.width,
                height=self.height,
                foot=foot,
                arrow=self.show_pull,
                share=share,
                under=under,
            )
            if layout.scale * drive.centre < dp(DISTINCT):
                break
            notes = self.notes(layout)
            placed = place_notes(layout, notes, width=self.width, height=self.height, level=self.level())
            names = {note.name for note, _ in placed}
            # The drawing shrinks for the pull or a dimension, never for a count of teeth.
            found = [note.name in names for note in notes if note.name in {"pull", "centre", "span"}]
            tries.append((found, share, layout, placed))
            if all(found):
                break
        if tries:
            _, _, layout, placed = max(tries, key=itemgetter(0, 1))
            left, right = layout.edges()
            left, right = (
                min((left, *(box.x for _, box in placed))),
                max((right, *(box.right for _, box in placed))),
            )
            shift = (self.width - left - right) / 2
            self.layout = layout.moved(shift)
            self.paint(self.layout, [(note, box._replace(x=box.x + shift)) for note, box in placed], shift)

    def level(self) -> float:
        """Return the height at which the centre distance's dimension line stands."""
        return dp(MARGIN + 5) + self.measure(self.centre_text, theme.small)[1]

    def notes(self, layout: Layout) -> list[Note]:
        """Return the labels that have a text, the most important first."""
        pull = (f"{self.pull_word} {self.pull_text}".strip(), self.depth_text)
        middle = (layout.wheel[0] + layout.motor[0]) / 2
        wanted: list[tuple[str, tuple[str, ...], Point]] = [
            ("pull", pull if self.show_pull else (), layout.middle(1, dp(ARROW))),
            ("centre", (self.centre_text,), (middle, 0.0)),
            (
                "span",
                (self.span_text,) if layout.span() > dp(DISTINCT) else (),
                layout.middle(-1, dp(OFFSET)),
            ),
            ("wheel", (self.wheel_text,), layout.wheel),
            ("motor", (self.motor_text,), layout.motor),
        ]
        notes = []
        for name, given, anchor in wanted:
            texts = tuple(text for text in given if text)
            if texts:
                sizes = [self.measure(text, theme.small, bold=text == pull[0]) for text in texts]
                notes.append(
                    Note(name, texts, max(wide for wide, _ in sizes), sum(tall for _, tall in sizes), anchor)
                )
        return notes

    # All is worked out with the wheel at the left; a mirrored drawing turns x over as it is painted.

    def turned(self, x: float) -> float:
        """Return x as drawn."""
        return self.width - x if self.mirrored else x

    def segments(self, *segments: Segment) -> list[Segment]:
        """Return strokes as drawn."""
        return [(self.turned(x0), y0, self.turned(x1), y1) for x0, y0, x1, y1 in segments]

    def paint(self, layout: Layout, placed: Sequence[tuple[Note, Box]], shift: float) -> None:
        """Draw wheel, pulleys, belt, dimensions, arrow and labels, in that order."""
        names = {note.name for note, _ in placed}
        if layout.wheel_outline > 0:
            self.ink(theme.outline)
            self.ring(self.turned(layout.wheel[0]), layout.wheel[1], layout.wheel_outline, dp(0.6))
        offset = self.line_offset * layout.scale
        for centre, radius, teeth in (
            (layout.wheel, layout.wheel_radius, self.wheel_teeth),
            (layout.motor, layout.motor_radius, self.motor_teeth),
        ):
            self.paint_pulley(centre, radius - offset, int(teeth))
        self.belt_points = [(self.turned(x), y) for x, y in layout.belt()]
        self.ink(theme.main)
        self.add(
            Line(
                points=[at for point in self.belt_points for at in point],
                width=dp(1.8),
                close=True,
                joint="round",
            )
        )
        if "centre" in names:
            self.paint_centre(layout)
        if "span" in names:
            self.paint_span(layout)
        if self.show_pull:
            self.paint_pull(layout)
        self.paint_notes(placed, shift)

    def paint_pulley(self, centre: Point, radius: float, teeth: int) -> None:
        """Draw a pulley's outside circle, its teeth as short ticks inwards and its centre as a cross."""
        x, y = centre
        self.ink(theme.text)
        self.ring(self.turned(x), y, radius, dp(0.6))
        pitch = 2 * pi * radius / teeth
        cross = dp(4)
        strokes: list[Segment] = [(x - cross, y, x + cross, y), (x, y - cross, x, y + cross)]
        if pitch > dp(2.5):
            inner = radius - min(max(dp(2), 0.35 * pitch), 0.4 * radius)
            for tooth in range(teeth):
                across, up = sin(2 * pi * tooth / teeth), cos(2 * pi * tooth / teeth)
                strokes.append((x + inner * across, y + inner * up, x + radius * across, y + radius * up))
        self.strokes(self.segments(*strokes), dp(0.6))

    def paint_centre(self, layout: Layout) -> None:
        """Draw the centre distance as a dimension line under the drive, with lines down from both centres."""
        level = self.level()
        (x0, y), (x1, _) = layout.wheel, layout.motor
        self.ink(theme.outline)
        self.strokes(self.segments(*((x, y - dp(6), x, level - dp(4)) for x in (x0, x1))), dp(0.5))
        self.dimension((x0, level), (x1, level))

    def paint_span(self, layout: Layout) -> None:
        """Draw the span's dimension line beside the lower span, from tangent point to tangent point."""
        near, far = layout.beside(-1, dp(4)), layout.beside(-1, dp(OFFSET + 4))
        self.ink(theme.outline)
        self.strokes(self.segments(*((*one, *two) for one, two in zip(near, far, strict=True))), dp(0.5))
        self.dimension(*layout.beside(-1, dp(OFFSET)))

    def dimension(self, start: Point, end: Point) -> None:
        """Draw a dimension line with an arrow head at each end."""
        self.ink(theme.second)
        self.strokes(self.segments((*start, *end)), dp(0.6))
        self.head(end, start, dp(7), dp(2.5))
        self.head(start, end, dp(7), dp(2.5))

    def head(self, tail: Point, tip: Point, long: float, half: float) -> None:
        """Draw an arrow head at the tip."""
        length = hypot(tip[0] - tail[0], tip[1] - tail[1]) or 1.0
        along, up = (tip[0] - tail[0]) / length, (tip[1] - tail[1]) / length
        base = (tip[0] - long * along, tip[1] - long * up)
        corners = (
            tip,
            (base[0] - half * up, base[1] + half * along),
            (base[0] + half * up, base[1] - half * along),
        )
        self.polygon(*((self.turned(x), y) for x, y in corners))

    def paint_pull(self, layout: Layout) -> None:
        """Draw the arrow at mid-span, square to the span."""
        tail, tip = layout.middle(1, dp(4)), layout.middle(1, dp(ARROW))
        if self.inward:
            tail, tip = tip, tail
        self.ink(theme.text)
        length = hypot(tip[0] - tail[0], tip[1] - tail[1])
        short = 1 - dp(8) / length
        neck = (tail[0] + short * (tip[0] - tail[0]), tail[1] + short * (tip[1] - tail[1]))
        self.strokes(self.segments((*tail, *neck)), dp(1.5))
        self.head(tail, tip, dp(12), dp(6))

    def paint_notes(self, placed: Sequence[tuple[Note, Box]], shift: float) -> None:
        """Write the labels, with a thin line to those that stand away from what they name."""
        for note, box in placed:
            if note.name in {"pull", "span"}:
                self.paint_leader((note.anchor[0] + shift, note.anchor[1]), box)
            top = box.top
            for text in note.texts:
                bold = note.name == "pull" and text == note.texts[0]
                wide, tall = self.measure(text, theme.small, bold=bold)
                top -= tall
                left = self.turned(box.x + wide) if self.mirrored else box.x
                self.write(
                    text, left, top, theme.small, theme.text, bold=bold, plate=note.name in {"pull", "span"}
                )

    def paint_leader(self, anchor: Point, box: Box) -> None:
        """Draw a thin line to a label that stands away from its anchor."""
        x, y = anchor
        end = (min(max(x, box.x), box.right), min(max(y, box.y), box.top))
        if hypot(end[0] - x, end[1] - y) > dp(18):
            away = atan2(end[1] - y, end[0] - x)
            across, up = cos(away), sin(away)
            line = (x + dp(5) * across, y + dp(5) * up, end[0] - dp(3) * across, end[1] - dp(3) * up)
            self.ink(theme.outline)
            self.strokes(self.segments(line), dp(0.5))
