"""The tension gauge: the whole band, its edges drawn, what was read with its error, and what stood there before."""

from typing import TYPE_CHECKING

from logic.answers.reading import Result
from logic.log import Tension
from screens.pictures.strokes import Disc, Fill, Label, Path, Picture, Stroke, box, frame
from screens.tongue import _
from screens.words import Style

if TYPE_CHECKING:
    from logic.answers.tension import BeltPlan, BeltReading


def gauge(
    plan: "BeltPlan", reading: "BeltReading | None", last: float | None, style: Style
) -> Picture | None:
    """Return the window of a plan with a reading and the last tension (N); None where there is no window."""
    window = plan.window
    if window is None:
        return None

    def at(force: float) -> float:
        return style.scale(force, "force")

    floor, ceiling, aim = at(window.floor), at(window.ceiling), at(window.new_low)
    ends = [floor, ceiling, *([] if last is None else [at(last)])]
    tension = None if reading is None else reading.tension
    band = tension.band if isinstance(tension, Result) else None
    if band is not None:
        ends += [at(band[0]), at(band[1])]
    room = 0.42 * (ceiling - floor)
    low, high = min(ends) - room, max(ends) + room
    low = max(0.0, low) if min(ends) - room < 0.0 < min(ends) else low
    strokes: list[Stroke] = [
        *_bar((low, 0.22, high, 0.78), "panel", "outline", 1.0),
        *_bar((floor, 0.0, ceiling, 1.0), "key", "text", 2.5),
        Path(((aim, 0.72), (aim, 1.22)), "text", 2.0),
    ]
    edges = _("right from {low} to {high}").format(
        low=style.shown(window.floor, "force").number, high=style.number(window.ceiling, "force")
    )
    if last is not None:
        wide = (high - low) * 0.008
        strokes.append(frame(box(at(last) - wide, 0.1, at(last) + wide, 0.9), "second", 1.5))
    if isinstance(tension, Result) and band is not None:
        start, middle, end = at(band[0]), at(tension.value), at(band[1])
        # Its number may stand where the name of the mark would.
        edges = _("{edges}, set to {aim}").format(
            edges=edges, aim=style.shown(window.new_low, "force").number
        )
        strokes += [
            Path(((start, 0.5), (end, 0.5)), "main", 5.0),
            Path(((start, 0.28), (start, 0.72)), "main", 4.0),
            Path(((end, 0.28), (end, 0.72)), "main", 4.0),
            Path(((middle, 0.0), (middle, 1.12)), "main", 5.0),
            Disc((middle, 0.5), 7.0, "main", "ground"),
            Label(
                style.number(tension.value, "force"), (middle, 1.08), ("t",), bold=True, size=20, must=True
            ),
        ]
    strokes += [
        # One text for both edges: two would meet under a narrow band.
        Label(
            edges,
            ((floor + ceiling) / 2, 0.0),
            ("b",),
            must=True,
            gap=10.0,
        ),
        Label(_("set to"), (aim, 1.22), ("t", "lt", "rt")),
        Label(_("loose"), ((low + floor) / 2, 0.5), ("c",), bold=True),
        Label(_("tight"), ((ceiling + high) / 2, 0.5), ("c",), bold=True),
    ]
    if last is not None:
        strokes.append(Label(_("last"), (at(last), 1.0), ("t", "b"), tone="second"))
    return Picture(
        tuple(strokes),
        (low, 0.0, high, 1.0),
        to_scale=False,
        height=96.0,
        margins=(4.0, 26.0, 4.0, 34.0),
        fixed=True,
    )


def small_gauge(entry: Tension) -> Picture | None:
    """Return a recorded tension against its window without words, for a row; None where no window was recorded.

    What lies far outside stands at the end.
    """
    floor, ceiling, tension = entry.floor, entry.ceiling, entry.tension
    if floor is None or ceiling is None or tension is None or ceiling <= floor:
        return None
    room = 0.6 * (ceiling - floor)
    low, high = floor - room, ceiling + room
    error = entry.error or 0.0
    start, middle, end = (min(max(force, low), high) for force in (tension - error, tension, tension + error))
    strokes: tuple[Stroke, ...] = (
        *_bar((low, 0.3, high, 0.7), "panel", "outline", 1.0),
        *_bar((floor, 0.12, ceiling, 0.88), "key", "text", 2.0),
        Path(((start, 0.5), (end, 0.5)), "main", 4.0),
        Path(((middle, 0.0), (middle, 1.0)), "main", 5.0),
    )
    return Picture(
        strokes, (low, 0.0, high, 1.0), to_scale=False, height=32.0, margins=(4.0, 4.0, 4.0, 4.0), fixed=True
    )


def _bar(
    sides: tuple[float, float, float, float], fill: str, edge: str, width: float
) -> tuple[Stroke, Stroke]:
    """Return a filled bar with its edge."""
    return Fill(box(*sides), fill), frame(box(*sides), edge, width)


def steps(readings: list[float], floor: float, ceiling: float, style: Style) -> Picture | None:
    """Return the last readings (N) of a belt, oldest first, over its window; None for fewer than two."""
    if len(readings) < 2:  # noqa: PLR2004  (there is nothing to compare)
        return None
    values = [style.scale(force, "force") for force in readings]
    low_edge, high_edge = style.scale(floor, "force"), style.scale(ceiling, "force")
    ends = [*values, *([low_edge, high_edge] if ceiling else [])]
    low, high = min(ends), max(ends)
    air = ((high - low) or 1.0) * 0.12
    right = float(len(values))
    strokes: list[Stroke] = []
    if ceiling:
        strokes += [
            Fill(box(0.0, low_edge, right, high_edge), "key"),
            # No hairlines: a number does not stand on an edge.
            Path(((0.0, low_edge), (right, low_edge)), "outline", 1.2),
            Path(((0.0, high_edge), (right, high_edge)), "outline", 1.2),
        ]
    for place, value in enumerate(values):
        newest = place == len(values) - 1
        number = style.shown(readings[place], "force").number
        look = ("main", 5.0) if newest else ("text", 3.0)
        strokes += [
            Path(((place + 0.12, value), (place + 0.88, value)), *look),
            Label(number, (place + 0.5, value), ("t", "b"), bold=newest, must=newest),
        ]
    return Picture(
        tuple(strokes),
        (0.0, low - air, right, high + air),
        to_scale=False,
        height=104.0,
        margins=(4.0, 16.0, 4.0, 18.0),
        fixed=True,
    )
