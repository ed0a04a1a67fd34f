"""The belt drive to scale, wheel at the left, with the pull at the middle of the free span."""

from math import asin, cos, pi, sin

from logic.answers.belt_choice import BeltChoice
from logic.answers.reading import Result
from logic.answers.tension import BeltPlan
from logic.board import Board
from screens.pictures.strokes import Arc, Arrow, Disc, Label, Path, Picture, Point, Stroke, flipped, frame
from screens.tongue import _
from screens.words import Style

THICK = 0.0016
"""How far the belt's outside stands off its pitch line, in metres; the drawing's."""


def drive(
    board: Board, plan: BeltPlan | BeltChoice, style: Style, scale_unit: str = "", *, mirrored: bool = False
) -> Picture | None:
    """Return the drive of a board, with the pull of a plan for a check; None where it has no pulleys or no belt."""
    teeth = (board.drive.motor_teeth, board.drive.wheel_teeth)
    centre, span = plan.items["centre"], plan.items["span"]
    if not isinstance(centre, Result) or not isinstance(span, Result) or None in teeth:
        return None
    motor, wheel = (diameter / 2 for diameter in plan.diameters)
    tyre = float(board.drive.wheel_diameter.si) / 2 if board.drive.wheel_diameter is not None else 0.0
    apart = centre.value
    lean = asin((wheel - motor) / apart)
    hub, shaft = (0.0, 0.0), (apart, 0.0)
    upper, lower = (
        _middle(_tangent(hub, wheel + THICK, lean, side), _tangent(shaft, motor + THICK, lean, side))
        for side in (1, -1)
    )
    reach = max(wheel, tyre) * 0.52
    tip = (upper[0] + reach * sin(lean), upper[1] + reach * cos(lean))
    strokes: list[Stroke] = []
    if tyre:
        strokes.append(Arc(hub, tyre, tone="outline", width=1.0))
    strokes += [
        frame(_belt(hub, shaft, wheel + THICK, motor + THICK, lean), "text", 4.0),
        Arc(hub, wheel - THICK, tone="text", width=1.5),
        Arc(shaft, motor - THICK, tone="text", width=1.5),
        Disc(hub, 3.0, "text"),
        Disc(shaft, 3.0, "text"),
        Path((hub, shaft), "second", 1.0, (7.0, 4.0, 1.0, 4.0)),
    ]
    low = -max(wheel, tyre, motor) - 0.004
    # Behind the belt, not on it.
    back = apart + motor + 2 * THICK
    strokes += [
        Path(((0.0, -wheel * 0.2), (0.0, low)), "outline", 0.8),
        Path(((apart, -motor * 0.2), (apart, low)), "outline", 0.8),
        Arrow((0.0, low), (apart, low), "second", 1.0, both=True),
        Label(
            _("centres {length}").format(length=style.number(apart, "length")),
            (apart / 2, low),
            ("b",),
            must=True,
        ),
        Label(style.plain(float(teeth[1].si)), hub, ("lt", "t"), bold=True, must=True),  # type: ignore[union-attr]
        Label(style.plain(float(teeth[0].si)), (back, 0.0), ("r",), bold=True, must=True),  # type: ignore[union-attr]
        Label(
            _("free span {length}").format(length=style.number(span.value, "length")),
            lower,
            ("rb", "b", "r"),
        ),
    ]
    pull = plan.items.get("pull_target")
    if isinstance(plan, BeltPlan) and isinstance(pull, Result) and plan.depth is not None:
        reads = style.shown(pull.value, "force", unit=scale_unit)
        strokes += [
            Arrow(upper, tip, "main", 3.0),
            Label(
                _("pull {reads}, {depth} aside").format(
                    reads=reads, depth=style.number(plan.depth, "length")
                ),
                tip,
                ("r", "rt", "t", "lt"),
                tone="main",
                bold=True,
                must=True,
            ),
        ]
    left, right = -max(wheel, tyre), max(back, tyre)
    if mirrored:
        strokes = [flipped(stroke) for stroke in strokes]
        left, right = -right, -left
    view = (left, low, right, max(tip[1], tyre, wheel))
    return Picture(tuple(strokes), view, height=200.0, margins=(8.0, 26.0, 40.0, 20.0))


def _tangent(point: Point, radius: float, lean: float, side: int) -> Point:
    return point[0] + radius * sin(lean), point[1] + side * radius * cos(lean)


def _middle(one: Point, other: Point) -> Point:
    return (one[0] + other[0]) / 2, (one[1] + other[1]) / 2


def _belt(hub: Point, shaft: Point, wheel: float, motor: float, lean: float) -> tuple[Point, ...]:
    points: list[Point] = []
    for (x, y), radius, start, turn in (
        (hub, wheel, pi / 2 - lean, pi + 2 * lean),
        (shaft, motor, lean - pi / 2, pi - 2 * lean),
    ):
        angles = [start + turn * step / 24 for step in range(25)]
        points += [(x + radius * cos(angle), y + radius * sin(angle)) for angle in angles]
    return tuple(points)
