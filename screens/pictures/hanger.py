"""A truck seen from behind with its motors: where room is looked for when the deck leans. Not to any board's scale."""

from collections.abc import Sequence

from screens.pictures.strokes import Arrow, Fill, Label, Path, Picture, Point, Stroke, box, frame
from screens.tongue import _

WHEEL, MOTOR = (118.0, 165.0, 0.0, 90.0), (40.0, 100.0, 22.0, 78.0)
"""Left, right, foot and top in mm of the right wheel and motor; the left ones are mirrored."""
DECK, AXLE = 112.0, 45.0


def hanger(sides: Sequence[str]) -> Picture:
    """Return the rear truck with a motor on each of the sides, "left" or "right" as seen from behind."""
    strokes: list[Stroke] = [
        Path(((-175.0, 0.0), (175.0, 0.0)), "text", 2.0),
        Path(((-150.0, DECK), (150.0, DECK)), "text", 5.0),
        Fill(box(-118.0, AXLE - 7.0, 118.0, AXLE + 7.0), "second"),
        Fill(((-30.0, AXLE), (30.0, AXLE), (16.0, DECK), (-16.0, DECK)), "second"),
        *(frame(_mirrored(WHEEL, side), "text", 2.0) for side in (-1.0, 1.0)),
    ]
    for one in sides:
        side = -1.0 if one == "left" else 1.0
        body = _mirrored(MOTOR, side)
        middle = side * (MOTOR[0] + MOTOR[1]) / 2
        strokes += [
            Fill(body, "ground"),
            frame(body, "main", 3.0),
            Label(_("motor"), (middle, (MOTOR[2] + MOTOR[3]) / 2), ("c",), bold=True),
            Arrow((middle, MOTOR[3]), (middle, DECK - 3.0), "bad", 2.0, both=True),
            Arrow((middle, 0.0), (middle, MOTOR[2]), "bad", 2.0, both=True),
        ]
    if len(sides) > 1:
        strokes.append(Arrow((-MOTOR[0], AXLE - 14.0), (MOTOR[0], AXLE - 14.0), "bad", 2.0, both=True))
    strokes += [
        Label(_("deck"), (-150.0, DECK), ("rt", "t"), must=True),
        Label(_("ground"), (-175.0, 0.0), ("rb", "b"), must=True),
        Label(_("seen from behind"), (150.0, 0.0), ("lb", "b")),
    ]
    return Picture(tuple(strokes), (-175.0, 0.0, 175.0, DECK), height=130.0, margins=(8.0, 24.0, 8.0, 26.0))


def _mirrored(sides: tuple[float, float, float, float], side: float) -> tuple[Point, ...]:
    left, right, foot, top = sides
    return box(left, foot, right, top) if side > 0 else box(-right, foot, -left, top)
