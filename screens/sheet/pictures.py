"""Pictures of the build sheet: the same strokes as on the pages, to be drawn or as SVG."""

from collections.abc import Sequence

from logic.answers.tension import BeltPlan
from logic.board import Board
from logic.store import Record
from screens.pictures.drive import drive
from screens.pictures.history import Reading, history
from screens.pictures.strokes import Picture
from screens.pictures.svg import svg
from screens.tongue import _
from screens.words import Style


def drive_svg(board: Board, style: Style, scale_unit: str, plan: BeltPlan) -> str:
    """Return the drive with its belt, teeth counts, centre distance and pull; "" while it is not known."""
    drawn = drive_drawing(board, style, scale_unit, plan)
    return "" if drawn is None else svg(drawn, _("The drive to scale"))


def history_svg(readings: Sequence[Record], style: Style) -> str:
    """Return the readings as `history_drawing` draws them; "" without any."""
    drawn = history_drawing(readings, style)
    return "" if drawn is None else svg(drawn, _("Tension history, oldest at the left"))


def drive_drawing(board: Board, style: Style, scale_unit: str, plan: BeltPlan) -> Picture | None:
    """Return the drive with its belt, teeth counts, centre distance and pull; None while it is not known."""
    return drive(board, plan, style, scale_unit)


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
    return history(points, window, y_title=title)
