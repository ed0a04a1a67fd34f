"""The readings of a belt, drawn for the build sheet."""

from collections.abc import Sequence

from logic.store import Record
from screens.pictures.history import Reading, history
from screens.pictures.strokes import Picture
from screens.tongue import _
from screens.words import Style


def history_drawing(readings: Sequence[Record], style: Style) -> Picture | None:
    """Return the readings in their order, each with its error, over the window of the last; None without any."""
    kept = [one.body for one in readings if one.body.tension is not None]

    def newton(force: float) -> float:
        return style.scale(force, "force")

    points = [
        Reading(float(place), newton(one.tension), newton(one.error or 0.0))
        for place, one in enumerate(kept, start=1)
    ]
    edges = [newton(one) for one in (kept[-1].floor, kept[-1].ceiling) if one is not None] if kept else []
    window = (edges[0], edges[1]) if len(edges) == 2 else None  # noqa: PLR2004  (floor and ceiling)
    title = _("Belt tension, {unit}").format(unit=style.unit("force"))
    return history(points, window, y_title=title, mark=style.mark)
