"""Paints marks into a canvas: boxes, text, and pictures of strokes."""

from itertools import pairwise
from math import ceil, cos, hypot, pi, sin
from typing import Any

from kivy.graphics import Color, Ellipse, Line, Mesh, Rectangle, RoundedRectangle
from kivy.metrics import dp

from screens.paper.colours import colour
from screens.paper.ink import broken, texture
from screens.paper.picture import Placed, lay
from screens.paper.sheet import Box, Drawing, Ink, Laid

DASHES = (9.0, 6.0)


def paint(canvas: Any, laid: Laid) -> None:  # noqa: ANN401  (Kivy's canvas has no types)
    """Paint a block, its lower left corner at the origin."""
    for mark in laid.marks:
        if isinstance(mark, Ink):
            _ink(canvas, mark, laid.height)
        elif isinstance(mark, Box):
            _box(canvas, mark, laid.height)
        else:
            _drawing(canvas, mark, laid.height)


def _tint(canvas: Any, tone: str) -> None:  # noqa: ANN401
    canvas.add(Color(*colour(tone)))


def _ink(canvas: Any, mark: Ink, height: float) -> None:  # noqa: ANN401
    found = texture(mark.lines, mark.size, mark.bold, mark.align, mark.font)
    wide, tall = found.size
    x = mark.x + (mark.width - wide) / 2 if mark.align != "left" else mark.x
    _tint(canvas, mark.tone)
    canvas.add(Rectangle(texture=found, pos=(round(x), round(height - mark.y - tall)), size=(wide, tall)))


def _box(canvas: Any, mark: Box, height: float) -> None:  # noqa: ANN401
    pos, size = (mark.x, height - mark.y - mark.height), (mark.width, mark.height)
    radius = min(mark.radius, min(size) / 2)
    if mark.fill:
        _tint(canvas, mark.fill)
        if radius:
            canvas.add(RoundedRectangle(pos=pos, size=size, radius=(radius,), segments=8))
        else:
            canvas.add(Rectangle(pos=pos, size=size))
    if mark.edge:
        _tint(canvas, mark.edge)
        half = mark.line / 2
        x, y, wide, tall = pos[0] + half, pos[1] + half, size[0] - mark.line, size[1] - mark.line
        if mark.dashed:
            corners = ((x, y), (x + wide, y), (x + wide, y + tall), (x, y + tall), (x, y))
            for x0, y0, x1, y1 in dashes(corners, DASHES):
                canvas.add(Line(points=(x0, y0, x1, y1), width=max(1.0, half), cap="none"))
        elif radius:
            canvas.add(Line(rounded_rectangle=(x, y, wide, tall, radius, 24), width=max(1.0, half)))
        else:
            canvas.add(Line(rectangle=(x, y, wide, tall), width=max(1.0, half), joint="miter"))


def dashes(points: Any, pattern: tuple[float, ...]) -> list[tuple[float, float, float, float]]:  # noqa: ANN401
    """Return the inked parts of a line through points; the pattern is ink, gap, ink, gap in dp."""
    found, at, left = [], 0, dp(pattern[0])
    for (x0, y0), (x1, y1) in pairwise(points):
        length, done = hypot(x1 - x0, y1 - y0), 0.0
        while length - done > 1e-6:  # noqa: PLR2004  (what rounding leaves)
            step = min(left, length - done)
            if at % 2 == 0:
                start, end = done / length, (done + step) / length
                found.append(
                    (
                        x0 + (x1 - x0) * start,
                        y0 + (y1 - y0) * start,
                        x0 + (x1 - x0) * end,
                        y0 + (y1 - y0) * end,
                    )
                )
            done, left = done + step, left - step
            if left <= 1e-6:  # noqa: PLR2004
                at = (at + 1) % len(pattern)
                left = dp(pattern[at])
    return found


def _drawing(canvas: Any, mark: Drawing, height: float) -> None:  # noqa: ANN401
    placed = lay(mark.picture, mark.width, mark.height, mark.scale)
    x, y = mark.x, height - mark.y - mark.height
    for stroke in placed:
        _stroke(canvas, stroke, x, y)


def _stroke(canvas: Any, stroke: Placed, x: float, y: float) -> None:  # noqa: ANN401
    points = [(px + x, py + y) for px, py in stroke.points]
    flat = [part for point in points for part in point]
    _tint(canvas, stroke.tone)
    if stroke.kind == "line":
        if stroke.dashes:
            for piece in dashes(points, stroke.dashes):
                canvas.add(Line(points=piece, width=dp(stroke.width) / 2, cap="none"))
        else:
            canvas.add(Line(points=flat, width=max(1.0, dp(stroke.width) / 2), joint="round"))
    elif stroke.kind == "fill":
        vertices = [part for px, py in points for part in (px, py, 0, 0)]
        canvas.add(Mesh(vertices=vertices, indices=list(range(len(points))), mode="triangle_fan"))
    elif stroke.kind == "disc":
        (px, py), radius = points[0], stroke.width
        canvas.add(Ellipse(pos=(px - radius, py - radius), size=(2 * radius, 2 * radius), segments=24))
    else:
        text = broken(stroke.text, stroke.width, stroke.bold, 1e6)
        found = texture(text.lines, text.size, stroke.bold, "left")
        canvas.add(Rectangle(texture=found, pos=(round(points[0][0]), round(points[0][1])), size=found.size))


def circle(
    centre: tuple[float, float], radius: float, start: float = 0.0, end: float = 2 * pi
) -> list[tuple[float, float]]:
    """Return points along an arc."""
    steps = max(12, ceil(abs(end - start) * radius / 5))
    return [
        (
            centre[0] + radius * cos(start + (end - start) * n / steps),
            centre[1] + radius * sin(start + (end - start) * n / steps),
        )
        for n in range(steps + 1)
    ]
