"""The belt drive drawn to scale: two pulleys, the belt, the wheel behind, dimensions and the pull at mid-span."""

from collections.abc import Sequence
from operator import itemgetter
from math import asin, atan2, ceil, cos, hypot, pi, sin
from typing import NamedTuple

from kivy.graphics import Line
from kivy.metrics import dp
from kivy.properties import BooleanProperty, NumericProperty, StringProperty

from screens.theme import theme
from screens.widgets.drawing import Box, Drawing, Point, Segment, pieces

MARGIN = 8
ARROW = 34
"""Length of the pull arrow in dp: it shows a direction, not an amount."""
OFFSET = 14
"""Distance of the span's dimension line from the span in dp."""
TRIES = (1.0, 0.9, 0.8, 0.7, 0.6, 0.5)
"""Shares of the largest drawing that are tried until every label has room."""


class Layout(NamedTuple):
    """Where the drive stands in pixels, wheel at the left: scale, centres, pitch radii and the upper span's normal."""

    scale: float
    wheel: Point
    motor: Point
    wheel_radius: float
    motor_radius: float
    wheel_outline: float
    lean: float
    """Angle in radians by which the upper span leans from the line of centres; positive when it falls to the motor."""

    def tangents(self, side: int) -> tuple[Point, Point]:
        """Return where a span leaves the wheel pulley and the motor pulley; side is 1 for the upper, -1 for the lower."""
        across, up = sin(self.lean), side * cos(self.lean)
        return (
            (self.wheel[0] + self.wheel_radius * across, self.wheel[1] + self.wheel_radius * up),
            (self.motor[0] + self.motor_radius * across, self.motor[1] + self.motor_radius * up),
        )

    def middle(self, side: int, out: float = 0.0) -> Point:
        """Return the middle of a span, moved out square to it."""
        (x0, y0), (x1, y1) = self.tangents(side)
        return (x0 + x1) / 2 + out * sin(self.lean), (y0 + y1) / 2 + side * out * cos(self.lean)

    def belt(self) -> list[Point]:
        """Return the belt's pitch line as a closed row of points."""
        points = []
        for centre, radius, start, turn in (
            (self.wheel, self.wheel_radius, pi / 2 - self.lean, pi + 2 * self.lean),
            (self.motor, self.motor_radius, self.lean - pi / 2, pi - 2 * self.lean),
        ):
            steps = max(8, ceil(turn * radius / 4))
            points += [
                (
                    centre[0] + radius * cos(start + turn * step / steps),
                    centre[1] + radius * sin(start + turn * step / steps),
                )
                for step in range(steps + 1)
            ]
        return points


class Note(NamedTuple):
    """A label, line by line, what it belongs to, and where it may stand, the best place first."""

    name: str
    texts: tuple[str, ...]
    anchor: Point
    places: tuple[Point, ...]


class DriveDrawing(Drawing):
    """The drive seen from its side, as large as its labels leave room for. Lengths in metres; 0 is not known."""

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

    def draw(self) -> None:
        """Find the largest scale at which every label has room, then draw."""
        self.layout = None
        if not self.complete or min(self.size) < dp(60):
            self.write_empty()
            return
        tries = []
        for share in TRIES:
            layout = self.fit(share)
            notes = self.notes(layout)
            placed = self.place_notes(layout, notes)
            names = {note.name for note, _ in placed}
            # The drawing shrinks for a dimension or the pull, never for a count of teeth.
            found = [note.name in names for note in notes if note.name in {"pull", "centre", "span"}]
            tries.append((found, share, layout, placed))
            if all(found):
                break
        _, _, layout, placed = max(tries, key=itemgetter(0, 1))
        shift = self.centring(layout, [box for _, box in placed])
        self.layout = self.moved(layout, shift)
        self.paint(self.layout, [(note, box._replace(x=box.x + shift)) for note, box in placed], shift)

    def fit(self, share: float) -> Layout:
        """Return the layout with the stated share of the largest scale, the wheel against the left margin."""
        wheel, motor = self.wheel_pulley_diameter / 2, self.motor_diameter / 2
        outline = self.wheel_diameter / 2
        margin, belt = dp(MARGIN), dp(3)
        left, half = max(wheel, outline), max(wheel, motor, outline)
        across = left + max(self.centre + motor, outline)
        foot = (
            margin
            + belt
            + (self.measure(self.centre_text, theme.small)[1] + dp(10) if self.centre_text else 0)
        )
        lean = asin((wheel - motor) / self.centre)
        tallest = self.height - foot - margin - belt
        scale = min((self.width - 2 * (margin + belt)) / across, tallest / (2 * half))
        if self.show_pull:
            # The arrow may stand higher than the pulleys.
            above = (wheel + motor) / 2 * cos(lean)
            scale = min(scale, (tallest - dp(ARROW) * cos(lean)) / (half + above))
        scale = max(scale, 1.0) * share
        level = foot + half * scale
        level += max(0.0, (tallest - max(2 * half * scale, 0)) / 2)
        start = margin + belt + left * scale
        return Layout(
            scale,
            (start, level),
            (start + self.centre * scale, level),
            wheel * scale,
            motor * scale,
            outline * scale,
            lean,
        )

    def level(self) -> float:
        """Return the height at which the centre distance's dimension line stands."""
        return dp(MARGIN + 5) + self.measure(self.centre_text, theme.small)[1]

    def notes(self, layout: Layout) -> list[Note]:
        """Return the labels that have a text, the most important first, each with the places it may take."""
        wanted = []
        gap, small = dp(8), theme.small
        beyond = layout.motor[0] + layout.motor_radius + gap

        def size(texts: Sequence[str]) -> tuple[float, float]:
            sizes = [self.measure(text, small, bold=text == texts[0] and len(texts) > 1) for text in texts]
            return max(wide for wide, _ in sizes), sum(tall for _, tall in sizes)

        if self.show_pull:
            pull = f"{self.pull_word} {self.pull_text}".strip()
            texts = (pull, self.depth_text) if self.depth_text else (pull,)
            wide, tall = size(texts)
            x, y = layout.middle(1, dp(ARROW))
            wanted.append(
                Note(
                    "pull",
                    texts,
                    (x, y),
                    (
                        (x + gap, y - tall / 2),
                        (x + gap, y - tall),
                        (x + gap, y),
                        (x - wide / 2, y + gap / 2),
                        *(
                            (max(x + gap, beyond - 2 * gap), y - tall / 2 + step * tall / 4)
                            for step in (0, 1, 2, 3, 4)
                        ),
                        *((beyond, y - tall - step * tall / 3) for step in range(6)),
                        (x - wide - gap, y - tall / 2),
                        (x - wide - gap, y),
                    ),
                )
            )
        if self.centre_text:
            wide, tall = size((self.centre_text,))
            x = (layout.wheel[0] + layout.motor[0]) / 2 - wide / 2
            left = min(max(dp(MARGIN), x), self.width - wide - dp(MARGIN))
            wanted.append(Note("centre", (self.centre_text,), (x + wide / 2, 0), ((left, dp(MARGIN)),)))
        (x0, y0), (x1, y1) = layout.tangents(-1)
        if self.span_text and hypot(x1 - x0, y1 - y0) > dp(24):
            wide, tall = size((self.span_text,))
            x, y = layout.middle(-1, dp(OFFSET))
            wanted.append(
                Note(
                    "span",
                    (self.span_text,),
                    (x, y),
                    (
                        (x + gap / 2, y - tall - gap / 4),
                        (x + gap, y - tall - gap / 2),
                        *(
                            (x + gap + step * gap, y - tall / 2 - gap / 2 - step * gap / 2)
                            for step in (1, 2, 3)
                        ),
                        (beyond, y - tall / 2),
                        (beyond, y - tall),
                        (beyond, y),
                        (beyond, y + tall),
                    ),
                )
            )
        for name, text, (x, y), radius in (
            ("wheel", self.wheel_text, layout.wheel, layout.wheel_radius),
            ("motor", self.motor_text, layout.motor, layout.motor_radius),
        ):
            if text:
                wide, tall = size((text,))
                inside = hypot(wide / 2, tall + dp(5)) < radius - dp(6)
                outside = (
                    (x + radius + gap, y - tall / 2),
                    (x + radius * 0.7 + gap, y - radius * 0.7 - tall),
                )
                places = ((x - wide / 2, y + dp(5)),) if inside else outside if name == "motor" else ()
                wanted.append(Note(name, (text,), (x, y), places))
        return wanted

    def place_notes(self, layout: Layout, notes: Sequence[Note]) -> list[tuple[Note, Box]]:
        """Return the labels that found a place inside, clear of the drive and of each other."""
        (x0, y0), (x1, y1) = layout.tangents(-1)
        across, up = dp(OFFSET) * sin(layout.lean), -dp(OFFSET) * cos(layout.lean)
        ink = [
            *pieces(layout.tangents(1), dp(8)),
            *pieces(layout.tangents(-1), dp(8)),
            *pieces([layout.middle(1), layout.middle(1, dp(ARROW))] if self.show_pull else [], dp(8)),
            *pieces([(x0 + across, y0 + up), (x1 + across, y1 + up)] if self.span_text else [], dp(6)),
        ]
        if self.centre_text:
            level = self.level()
            ink += pieces([(layout.wheel[0], level), (layout.motor[0], level)], dp(8))
        room = Box("", dp(2), dp(2), self.width - dp(4), self.height - dp(4))
        placed: list[tuple[Note, Box]] = []
        for note in notes:
            sizes = [
                self.measure(text, theme.small, bold=note.name == "pull" and at == 0 and len(note.texts) > 1)
                for at, text in enumerate(note.texts)
            ]
            wide, tall = max(one for one, _ in sizes), sum(two for _, two in sizes)
            least: float = 2.0
            found: Box | None = None
            for x, y in note.places:
                box = Box(note.name, x, y, wide, tall)
                if box.x < room.x or box.y < room.y or box.right > room.right or box.top > room.top:
                    continue
                if any(box.meets(other, dp(4)) for _, other in placed):
                    continue
                if note.name in {"pull", "span", "motor"} and (
                    any(box.meets(other, dp(2)) for other in ink)
                    or touches(box, layout.wheel, layout.wheel_radius + dp(4))
                    or (
                        touches(box, layout.motor, layout.motor_radius + dp(4))
                        and not within(box, layout.motor, layout.motor_radius)
                    )
                ):
                    continue
                crossed = 1.0 if crosses(box, layout.wheel, layout.wheel_outline) else 0.0
                if crossed < least:
                    least, found = crossed, box
                if not crossed:
                    break
            if found is not None:
                placed.append((note, found))
        return placed

    def centring(self, layout: Layout, boxes: Sequence[Box]) -> float:
        """Return how far everything moves right to stand in the middle of the width."""
        left = min(
            [layout.wheel[0] - max(layout.wheel_radius, layout.wheel_outline), *(box.x for box in boxes)]
        )
        right = max(
            [
                layout.motor[0] + layout.motor_radius,
                layout.wheel[0] + layout.wheel_outline,
                *(box.right for box in boxes),
            ]
        )
        return (self.width - left - right) / 2

    @staticmethod
    def moved(layout: Layout, shift: float) -> Layout:
        """Return the layout moved right."""
        (x0, y0), (x1, y1) = layout.wheel, layout.motor
        return layout._replace(wheel=(x0 + shift, y0), motor=(x1 + shift, y1))

    # Painting. Everything is worked out with the wheel at the left; a mirrored drawing turns x over at the last moment.

    def turned(self, x: float) -> float:
        """Return x as drawn."""
        return self.width - x if self.mirrored else x

    def segments(self, *segments: Segment) -> list[Segment]:
        """Return strokes as drawn."""
        return [(self.turned(x0), y0, self.turned(x1), y1) for x0, y0, x1, y1 in segments]

    def circle(self, centre: Point, radius: float, half: float) -> None:
        """Draw a circle."""
        self.add(
            Line(
                circle=(self.turned(centre[0]), centre[1], radius, 0, 360, max(24, min(120, int(radius)))),
                width=half,
            )
        )

    def paint(self, layout: Layout, placed: Sequence[tuple[Note, Box]], shift: float) -> None:
        """Draw wheel, pulleys, belt, dimensions, arrow and labels, in that order."""
        names = {note.name for note, _ in placed}
        if layout.wheel_outline > 0:
            self.ink(theme.outline)
            self.circle(layout.wheel, layout.wheel_outline, dp(0.6))
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
        self.paint_notes(layout, placed, shift)

    def paint_pulley(self, centre: Point, radius: float, teeth: int) -> None:
        """Draw a pulley's outside circle, its teeth as short ticks inwards and its centre as a cross."""
        x, y = centre
        self.ink(theme.text)
        self.circle(centre, radius, dp(0.6))
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
        (x0, y0), (x1, _) = layout.wheel, layout.motor
        self.ink(theme.outline)
        down = [(x, y0 - dp(6), x, level - dp(4)) for x in (x0, x1)]
        self.strokes(self.segments(*down), dp(0.5))
        self.dimension((x0, level), (x1, level))

    def paint_span(self, layout: Layout) -> None:
        """Draw the span's dimension line beside the lower span, from tangent point to tangent point."""
        (x0, y0), (x1, y1) = layout.tangents(-1)
        near, far = dp(4), dp(OFFSET + 4)
        lines = [
            (
                x + near * sin(layout.lean),
                y - near * cos(layout.lean),
                x + far * sin(layout.lean),
                y - far * cos(layout.lean),
            )
            for x, y in ((x0, y0), (x1, y1))
        ]
        self.ink(theme.outline)
        self.strokes(self.segments(*lines), dp(0.5))
        across, up = dp(OFFSET) * sin(layout.lean), -dp(OFFSET) * cos(layout.lean)
        self.dimension((x0 + across, y0 + up), (x1 + across, y1 + up))

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

    def paint_notes(self, layout: Layout, placed: Sequence[tuple[Note, Box]], shift: float) -> None:
        """Write the labels, with a thin line to those that stand away from what they name."""
        for note, box in placed:
            x, y = note.anchor[0] + shift, note.anchor[1]
            near = (min(max(x, box.x), box.right), min(max(y, box.y), box.top))
            if note.name in {"pull", "span"} and hypot(near[0] - x, near[1] - y) > dp(18):
                away = atan2(near[1] - y, near[0] - x)
                start = (x + dp(5) * cos(away), y + dp(5) * sin(away))
                end = (near[0] - dp(3) * cos(away), near[1] - dp(3) * sin(away))
                self.ink(theme.outline)
                self.strokes(self.segments((*start, *end)), dp(0.5))
            top = box.top
            for at, text in enumerate(note.texts):
                bold = note.name == "pull" and at == 0 and len(note.texts) > 1
                wide, tall = self.measure(text, theme.small, bold=bold)
                top -= tall
                left = self.turned(box.x + wide) if self.mirrored else box.x
                plate = note.name in {"span", "pull"}
                self.write(text, left, top, theme.small, theme.text, bold=bold, plate=plate)


def touches(box: Box, centre: Point, radius: float) -> bool:
    """Return whether a box reaches into a disc."""
    x = min(max(centre[0], box.x), box.right)
    y = min(max(centre[1], box.y), box.top)
    return hypot(x - centre[0], y - centre[1]) < radius


def within(box: Box, centre: Point, radius: float) -> bool:
    """Return whether a box lies wholly within a disc."""
    across = max(centre[0] - box.x, box.right - centre[0])
    up = max(centre[1] - box.y, box.top - centre[1])
    return hypot(across, up) < radius


def crosses(box: Box, centre: Point, radius: float) -> bool:
    """Return whether a circle's line runs through a box."""
    return radius > 0 and touches(box, centre, radius) and not within(box, centre, radius)
