"""The drive of a board drawn to scale, wherever a page shows it."""

from logic.answers.reading import Result
from logic.answers.tension import BeltPlan
from logic.board import Board
from screens.widgets.drive_drawing import DriveDrawing
from screens.words import Style


def fill_drive(drawing: DriveDrawing, board: Board, style: Style, scale_unit: str, plan: BeltPlan) -> bool:
    """Give a drawing the board's drive with a plan's pull for its target; return whether there is one to draw."""
    teeth = (board.drive.motor_teeth, board.drive.wheel_teeth)
    centre, span, pull = (plan.items[name] for name in ("centre", "span", "pull_target"))
    if not isinstance(centre, Result) or not isinstance(span, Result) or None in teeth:
        return False
    drawing.motor_teeth, drawing.wheel_teeth = (int(value.si) for value in teeth)
    drawing.motor_diameter, drawing.wheel_pulley_diameter = map(float, plan.diameters)
    wheel = board.drive.wheel_diameter
    drawing.wheel_diameter = float(wheel.si) if wheel is not None else 0
    drawing.centre = float(centre.value)
    drawing.motor_text, drawing.wheel_text = (style.plain(float(value.si)) for value in teeth)
    drawing.centre_text = style.number(centre.value, "length")
    drawing.span_text = style.number(span.value, "length")
    drawing.show_pull = isinstance(pull, Result)
    if isinstance(pull, Result) and plan.depth is not None:
        drawing.depth_text = style.number(plan.depth, "length")
        drawing.pull_text = str(style.shown(pull.value, "force", unit=scale_unit))
    return True
