"""A belt's print and what its numbers mean; and the motor pulled away from the wheel, as strokes."""

from screens.pictures.strokes import Arc, Arrow, Disc, Label, Path, Picture, Stroke, box, frame
from screens.tongue import _

TEETH = 12
"""Teeth drawn on the belt; the drawing's."""
WHEEL, MOTOR, APART = 24.0, 11.0, 52.0
"""Radii of both pulleys and the distance of their middles; the drawing's."""


def belt_print() -> Picture:
    """Return a piece of belt with the print on its back: length, pitch and width."""
    strokes: list[Stroke] = [frame(box(2.0, 0.0, 98.0, 16.0), "text", 2.5)]
    each = 96.0 / TEETH
    for tooth in range(TEETH):
        x = 2.0 + (tooth + 0.5) * each
        strokes.append(Path(((x - 2.2, 0.0), (x - 1.6, -4.0), (x + 1.6, -4.0), (x + 2.2, 0.0)), width=2.0))
    for text, x in (("280", 18.0), ("-", 34.0), ("5M", 50.0), ("-", 66.0), ("15", 82.0)):
        strokes.append(Label(text, (x, 8.0), ("c",), bold=True, size=20.0, must=True))
    strokes += [
        Path(((18.0, 17.0), (18.0, 46.0)), "main", 1.2),
        Path(((82.0, 17.0), (82.0, 24.0)), "main", 1.2),
        Path(((50.0, -5.0), (50.0, -10.0)), "main", 1.2),
        Label(_("280 mm long"), (18.0, 46.0), ("t",), tone="main", bold=True, must=True),
        Label(_("15 mm wide"), (82.0, 24.0), ("t",), tone="main", bold=True, must=True),
        Label(_("teeth 5 mm apart"), (50.0, -10.0), ("b",), tone="main", bold=True, must=True),
    ]
    return Picture(
        tuple(strokes),
        (0.0, -10.0, 100.0, 46.0),
        to_scale=False,
        height=190.0,
        margins=(4.0, 26.0, 4.0, 26.0),
        fixed=True,
    )


def motor_pulled(reads: str) -> Picture:
    """Return the motor pulled along the line from axle to shaft; `reads` is what the scale shows, "" for nothing."""
    end = APART + MOTOR + 34.0
    strokes: tuple[Stroke, ...] = (
        Arc((0.0, 0.0), WHEEL, width=1.5),
        Arc((APART, 0.0), MOTOR, width=1.5),
        *(Path(((0.0, side * WHEEL), (APART, side * MOTOR)), width=4.0) for side in (1, -1)),
        Disc((0.0, 0.0), 3.0),
        Disc((APART, 0.0), 3.0),
        Path(((0.0, 0.0), (end, 0.0)), "second", 1.0, (7.0, 4.0, 1.0, 4.0)),
        Arrow((APART + 3.0, 0.0), (end, 0.0), "main", 3.0),
        Label(reads or _("pull"), (end - 12.0, 0.0), ("t", "b"), tone="main", bold=True, must=True, gap=12.0),
        Label(_("axle"), (0.0, 0.0), ("lb", "b", "l"), gap=6.0),
        Label(_("shaft"), (APART, 0.0), ("b", "lb"), gap=12.0),
    )
    return Picture(strokes, (-WHEEL, -WHEEL, end, WHEEL), height=130.0, margins=(8.0, 8.0, 8.0, 8.0))
