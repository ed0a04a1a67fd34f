"""Where the parts of a belt drive and their labels stand, in pixels, before anything is drawn."""

from collections.abc import Iterator, Sequence
from math import asin, ceil, cos, hypot, pi, sin
from typing import NamedTuple

from kivy.metrics import dp

from screens.widgets.plane import Box, Point, crosses, pieces, touches, within

MARGIN = 8
ARROW = 34
"""How far the pull arrow reaches from the span in dp: it shows a direction, not an amount."""
OFFSET = 14
"""Distance of the span's dimension line from the span in dp."""
BELT = 3
"""Room for half the belt's thickness in dp."""
DISTINCT = 24
"""Spans and centre distances shorter than this in dp are too small to draw a dimension on."""


class Drive(NamedTuple):
    """The drive to draw: centre distance and radii in metres; the wheel's radius is 0 for none."""

    centre: float
    wheel_pulley: float
    motor_pulley: float
    wheel: float

    @property
    def lean(self) -> float:
        """Return the angle of the upper span to the line of centres, in radians."""
        return asin((self.wheel_pulley - self.motor_pulley) / self.centre)


class Layout(NamedTuple):
    """The drive in pixels, wheel at the left: pixels per metre, both centres, the radii."""

    scale: float
    wheel: Point
    motor: Point
    wheel_radius: float
    motor_radius: float
    wheel_outline: float
    lean: float
    """Angle of the upper span to the line of centres in radians; positive when it falls to the motor."""

    def tangents(self, side: int) -> tuple[Point, Point]:
        """Return where a span leaves the wheel and the motor pulley; 1 is the upper span, -1 the lower."""
        across, up = sin(self.lean), side * cos(self.lean)
        return (
            (self.wheel[0] + self.wheel_radius * across, self.wheel[1] + self.wheel_radius * up),
            (self.motor[0] + self.motor_radius * across, self.motor[1] + self.motor_radius * up),
        )

    def beside(self, side: int, out: float) -> tuple[Point, Point]:
        """Return a span moved out square to itself."""
        (x0, y0), (x1, y1) = self.tangents(side)
        across, up = out * sin(self.lean), side * out * cos(self.lean)
        return (x0 + across, y0 + up), (x1 + across, y1 + up)

    def middle(self, side: int, out: float = 0.0) -> Point:
        """Return the middle of a span, moved out square to it."""
        (x0, y0), (x1, y1) = self.beside(side, out)
        return (x0 + x1) / 2, (y0 + y1) / 2

    def span(self) -> float:
        """Return the length of a span."""
        (x0, y0), (x1, y1) = self.tangents(1)
        return hypot(x1 - x0, y1 - y0)

    def belt(self) -> list[Point]:
        """Return the belt's pitch line as a closed row of points."""
        points = []
        for (x, y), radius, start, turn in (
            (self.wheel, self.wheel_radius, pi / 2 - self.lean, pi + 2 * self.lean),
            (self.motor, self.motor_radius, self.lean - pi / 2, pi - 2 * self.lean),
        ):
            steps = max(8, ceil(turn * radius / 4))
            angles = [start + turn * step / steps for step in range(steps + 1)]
            points += [(x + radius * cos(angle), y + radius * sin(angle)) for angle in angles]
        return points

    def moved(self, right: float) -> "Layout":
        """Return the layout moved right."""
        (x0, y0), (x1, y1) = self.wheel, self.motor
        return self._replace(wheel=(x0 + right, y0), motor=(x1 + right, y1))

    def edges(self) -> tuple[float, float]:
        """Return the leftmost and the rightmost x of the drive."""
        left = self.wheel[0] - max(self.wheel_radius, self.wheel_outline)
        return left, max(self.motor[0] + self.motor_radius, self.wheel[0] + self.wheel_outline)


def fit(  # noqa: PLR0913 - the room has that many sides
    drive: Drive, *, width: float, height: float, foot: float, arrow: bool, share: float, under: float
) -> Layout:
    """Return the layout at a share of the largest scale, the wheel at the left margin, above the foot.

    Under is the share of the height left over that goes under the drive.
    """
    edge = dp(MARGIN + BELT)
    left, half = (
        max(drive.wheel_pulley, drive.wheel),
        max(drive.wheel_pulley, drive.motor_pulley, drive.wheel),
    )
    across = left + max(drive.centre + drive.motor_pulley, drive.wheel)
    low, tall = foot + edge, height - foot - 2 * edge
    rise = (drive.wheel_pulley + drive.motor_pulley) / 2 * cos(drive.lean)
    reach = dp(ARROW) * cos(drive.lean) if arrow else 0.0
    scale = share * min((width - 2 * edge) / across, tall / (2 * half), (tall - reach) / (half + rise))
    top = max(half * scale, rise * scale + reach)
    level = low + half * scale + (tall - half * scale - top) * under
    start = edge + left * scale
    return Layout(
        scale=scale,
        wheel=(start, level),
        motor=(start + drive.centre * scale, level),
        wheel_radius=drive.wheel_pulley * scale,
        motor_radius=drive.motor_pulley * scale,
        wheel_outline=drive.wheel * scale,
        lean=drive.lean,
    )


class Note(NamedTuple):
    """A label line by line, its size, and the point it belongs to."""

    name: str
    texts: tuple[str, ...]
    wide: float
    tall: float
    anchor: Point


def places(note: Note, layout: Layout, width: float) -> Iterator[Point]:
    """Yield the lower left corners where a label may stand, the best first."""
    (x, y), wide, tall = note.anchor, note.wide, note.tall
    gap = dp(8)
    beyond = layout.motor[0] + layout.motor_radius + gap
    if note.name == "centre":
        yield min(max(dp(MARGIN), x - wide / 2), width - wide - dp(MARGIN)), dp(MARGIN)
    elif note.name == "pull":
        yield from ((x + gap, y - tall / 2), (x + gap, y - tall), (x + gap, y), (x - wide / 2, y + gap / 2))
        yield from ((x + gap + step * gap, y - tall / 2) for step in (1, 2, 4, 6))
        yield from ((max(x + gap, beyond - 2 * gap), y + (step - 2) * tall / 4) for step in range(5))
        yield from ((beyond, y - tall - step * tall / 3) for step in range(6))
        yield from ((x - wide - gap, y - tall / 2), (x - wide - gap, y))
    elif note.name == "span":
        yield from ((x + gap / 2, y - tall - gap / 4), (x + gap, y - tall - gap / 2))
        yield from ((x + gap + step * gap, y - (tall + gap + step * gap) / 2) for step in (1, 2, 3))
        yield from ((beyond, y + step * tall / 2) for step in (-1, -2, 0, 2))
        yield from ((x - wide / 2, y - tall - step * gap) for step in range(1, 9))
    else:
        radius = layout.wheel_radius if note.name == "wheel" else layout.motor_radius
        if hypot(wide / 2, tall + dp(5)) < radius - dp(6):
            yield x - wide / 2, y + dp(5)
        elif note.name == "motor":
            yield x + radius + gap, y - tall / 2
            yield x + radius * 0.7 + gap, y - radius * 0.7 - tall


def place_notes(
    layout: Layout, notes: Sequence[Note], *, width: float, height: float, level: float
) -> list[tuple[Note, Box]]:
    """Return the labels that found a place inside, clear of the drive, of its dimensions and of each other.

    Level is the height of the centre distance's dimension line.
    """
    names = {note.name for note in notes}
    ink = [*pieces(layout.tangents(1), dp(8)), *pieces(layout.tangents(-1), dp(8))]
    if "pull" in names:
        ink += pieces((layout.middle(1), layout.middle(1, dp(ARROW))), dp(8))
    if "span" in names:
        ink += pieces(layout.beside(-1, dp(OFFSET)), dp(6))
    if "centre" in names:
        ink += pieces(((layout.wheel[0], level), (layout.motor[0], level)), dp(8))
    placed: list[tuple[Note, Box]] = []
    for note in notes:
        found: Box | None = None
        for x, y in places(note, layout, width):
            left = max(dp(2), min(x, width - dp(2) - note.wide))
            foot = max(dp(2), min(y, height - dp(2) - note.tall))
            box = Box(note.name, left, foot, note.wide, note.tall)
            inside = box.right <= width and box.top <= height
            if not inside or any(box.meets(other, dp(4)) for _, other in placed) or hits(box, layout, ink):
                continue
            found = found or box
            # A place that the wheel's thin outline runs through is taken only if there is no other.
            if not crosses(box, layout.wheel, layout.wheel_outline):
                found = box
                break
        if found is not None:
            placed.append((note, found))
    return placed


def hits(box: Box, layout: Layout, ink: Sequence[Box]) -> bool:
    """Return whether a label's box would lie over a line, a pulley's rim or, from outside, over a pulley."""
    if any(box.meets(other, dp(2)) for other in ink):
        return True
    return any(
        touches(box, centre, radius + dp(4)) and not within(box, centre, radius)
        for centre, radius in ((layout.wheel, layout.wheel_radius), (layout.motor, layout.motor_radius))
    )
