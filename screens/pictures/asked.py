"""Where a value of the board is counted, measured or read off: a sketch for each that has one. Prints and sizes are made up."""

from functools import cache
from math import cos, pi, sin

from screens.pictures.belts import belt_print
from screens.pictures.strokes import Arc, Arrow, Disc, Fill, Label, Path, Picture, Stroke, box, frame
from screens.tongue import _

HEIGHT = 120.0


@cache
def picture_of(key: str) -> Picture | None:
    """Return the sketch for a value of the board, None where there is none."""
    made = {
        "drive.motor_teeth": lambda: _pulleys(wheel=False),
        "drive.wheel_teeth": lambda: _pulleys(wheel=True),
        "drive.wheel_diameter": _wheel,
        "drive.profile": belt_print,
        "drive.belt_teeth": belt_print,
        "drive.belt_width": belt_print,
        "motor.kv": _motor,
        "mount.can_diameter": _motor,
        "mount.can_length": _motor,
        "pack.series": _pack,
        "pack.parallel": _pack,
    }.get(key)
    return None if made is None else made()


def _pulley(x: float, radius: float, teeth: int, *, asked: bool) -> list[Stroke]:
    """Return a pulley whose tooth at the top is marked where it is the one that is asked for."""
    tone = "text" if asked else "outline"
    points = []
    for tooth in range(teeth):
        for part, deep in ((-0.3, 0.88), (-0.2, 1.0), (0.2, 1.0), (0.3, 0.88)):
            angle = pi / 2 - (tooth + part) * 2 * pi / teeth
            points.append((x + radius * deep * cos(angle), radius * deep * sin(angle)))
    strokes: list[Stroke] = [
        frame(tuple(points), tone, 2.0 if asked else 1.0),
        Disc((x, 0.0), 3.0, tone),
    ]
    if asked:
        around = radius * 1.18
        strokes += [
            Disc((x, radius * 0.94), 5.0, "main"),
            Arc((x, 0.0), around, pi * 0.08, pi * 0.42, "main", 2.0),
            Arrow(
                (x + around * cos(pi * 0.12), around * sin(pi * 0.12)),
                (x + around * cos(pi * 0.06), around * sin(pi * 0.06)),
                "main",
                2.0,
            ),
        ]
    return strokes


def _pulleys(*, wheel: bool) -> Picture:
    """Return both pulleys, the one that is asked for marked at a tooth to begin counting at."""
    strokes = [*_pulley(-1.5, 1.0, 24, asked=wheel), *_pulley(1.1, 0.55, 13, asked=not wheel)]
    name = _("wheel") if wheel else _("motor")
    at = (-1.5, -1.0) if wheel else (1.1, -0.55)
    strokes += [Label(name, at, ("b",), must=True)]
    return Picture(tuple(strokes), (-2.7, -1.0, 2.0, 1.25), height=HEIGHT, margins=(8.0, 24.0, 8.0, 8.0))


def _wheel() -> Picture:
    """Return a wheel seen from its side, measured through the axle from tread to tread."""
    strokes: tuple[Stroke, ...] = (
        Arc((0.0, 0.0), 1.0, tone="text", width=3.0),
        Arc((0.0, 0.0), 0.5, tone="outline"),
        Disc((0.0, 0.0), 4.0, "text"),
        Arrow((-1.0, 0.0), (1.0, 0.0), "main", 2.0, both=True),
        Label(_("tread to tread"), (1.0, 0.0), ("r",), must=True, gap=12.0),
    )
    return Picture(strokes, (-1.05, -1.05, 1.05, 1.05), height=HEIGHT, margins=(120.0, 6.0, 120.0, 6.0))


def _motor() -> Picture:
    """Return a motor's can with its print, and what the four digits measure."""
    strokes: tuple[Stroke, ...] = (
        Fill(box(0.0, 0.0, 1.74, 1.5), "key"),
        frame(box(0.0, 0.0, 1.74, 1.5), "text", 2.0),
        Path(((1.74, 0.75), (2.2, 0.75)), "text", 5.0),
        Label("6374", (0.87, 1.15), ("c",), bold=True, size=14.0, must=True),
        Label("170KV", (0.87, 0.35), ("c",), bold=True, size=14.0, must=True),
        Arrow((0.0, -0.14), (1.74, -0.14), "main", 1.5, both=True),
        Label(_("74 mm long"), (0.87, -0.14), ("b",), must=True),
        Arrow((-0.14, 0.0), (-0.14, 1.5), "main", 1.5, both=True),
        # Over its arrow: beside it the words would leave large text no room for what is printed on the can.
        Label(_("63 mm"), (-0.14, 1.5), ("t",), must=True),
    )
    return Picture(strokes, (-0.2, -0.2, 2.2, 1.5), height=132.0, margins=(30.0, 24.0, 12.0, 24.0))


def _pack() -> Picture:
    """Return a pack's label over its cells: rows beside each other in series, two of them in parallel."""
    cells = [(column + 0.5, row + 0.5) for column in range(10) for row in range(2)]
    strokes: list[Stroke] = [
        *(Arc(cell, 0.45) for cell in cells),
        Arrow((0.0, 2.3), (10.0, 2.3), "main", 1.5, both=True),
        Label(_("10S: ten in series"), (5.0, 2.3), ("t",), must=True),
        Label(_("2P"), (10.0, 1.0), ("r",), bold=True, must=True),
    ]
    return Picture(tuple(strokes), (0.0, 0.0, 10.0, 2.4), height=HEIGHT, margins=(40.0, 6.0, 40.0, 26.0))
