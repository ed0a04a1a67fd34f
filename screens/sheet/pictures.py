"""Pictures of the build sheet as SVG: the drive to scale, and the tension readings against their window."""

from collections.abc import Sequence
from html import escape

from logic.answers.reading import Result
from logic.answers.tension import BeltPlan
from logic.board import Board
from logic.store import Record
from screens.widgets.drive_layout import Drive, Layout, fit
from screens.words import Style

WIDE, HIGH, FOOT = 640, 320, 40
INK, FAINT = "#1b1c1f", "#6e7178"


def drive_svg(board: Board, style: Style, scale_unit: str, plan: BeltPlan) -> str:
    """Return the drive with its belt, teeth counts, centre distance and pull; "" while it is not known."""
    centre, pull = plan.items["centre"], plan.items["pull_target"]
    motor, wheel = plan.diameters
    if not isinstance(centre, Result) or not min(motor, wheel):
        return ""
    outline = board.drive.wheel_diameter
    drive = Drive(centre.value, wheel / 2, motor / 2, float(outline.si) / 2 if outline is not None else 0.0)
    layout = fit(drive, width=WIDE, height=HIGH, foot=FOOT, arrow=True, share=0.9, under=0.5)
    parts = [
        _ring(layout, layout.wheel, layout.wheel_outline, FAINT),
        _ring(layout, layout.wheel, layout.wheel_radius, INK),
        _ring(layout, layout.motor, layout.motor_radius, INK),
        _belt(layout),
    ]
    for teeth, at in ((board.drive.wheel_teeth, layout.wheel), (board.drive.motor_teeth, layout.motor)):
        if teeth is not None:
            parts.append(_text(at[0], HIGH - at[1], style.plain(float(teeth.si))))
    middle = (layout.wheel[0] + layout.motor[0]) / 2
    parts.append(
        f'<line x1="{layout.wheel[0]:.1f}" y1="{HIGH - 28}" x2="{layout.motor[0]:.1f}" y2="{HIGH - 28}"'
        f' stroke="{FAINT}"/>'
    )
    parts.append(_text(middle, HIGH - 10, f"centres {style.number(centre.value, 'length')}"))
    if isinstance(pull, Result) and plan.depth is not None:
        (x, y), (far_x, far_y) = layout.middle(1), layout.middle(1, 34)
        parts.append(
            f'<line x1="{x:.1f}" y1="{HIGH - y:.1f}" x2="{far_x:.1f}" y2="{HIGH - far_y:.1f}" stroke="{INK}"'
            ' stroke-width="3"/>'
        )
        said = (
            f"pull {style.shown(pull.value, 'force', unit=scale_unit)}, {style.number(plan.depth, 'length')}"
        )
        parts.append(_text(far_x + 10, HIGH - far_y - 6, said, anchor="start"))
    return _svg("The drive to scale", parts)


def history_svg(readings: Sequence[Record], style: Style) -> str:
    """Return the readings in their order, each with its error and the window it was judged by."""
    kept = [one.body for one in readings if one.body.tension is not None]
    if not kept:
        return ""
    top = 1.1 * max(max(one.tension, one.ceiling or 0.0) for one in kept)
    step = (WIDE - 80) / max(len(kept), 1)
    parts = []
    for place, one in enumerate(kept):
        x = 60 + step * (place + 0.5)
        if one.floor is not None and one.ceiling is not None:
            high, low = _level(one.ceiling, top), _level(one.floor, top)
            parts.append(
                f'<rect x="{x - step / 2:.1f}" y="{high:.1f}" width="{step:.1f}" height="{low - high:.1f}"'
                ' fill="#e6e3da"/>'
            )
    for place, one in enumerate(kept):
        x, y = 60 + step * (place + 0.5), _level(one.tension, top)
        error = one.error or 0.0
        parts.append(
            f'<line x1="{x:.1f}" y1="{_level(one.tension + error, top):.1f}" x2="{x:.1f}"'
            f' y2="{_level(one.tension - error, top):.1f}" stroke="{INK}"/>'
        )
        parts.append(f'<circle cx="{x:.1f}" cy="{y:.1f}" r="4" fill="{INK}"/>')
        parts.append(_text(x, y - 10, style.number(one.tension, "force")))
    parts.append(_text(60, HIGH - 8, "shaded: the window; oldest at the left", anchor="start"))
    return _svg("Tension history", parts)


def _level(force: float, top: float) -> float:
    return HIGH - 30 - (HIGH - 50) * max(force, 0.0) / top


def _ring(_layout: Layout, centre: tuple[float, float], radius: float, ink: str) -> str:
    if radius <= 0:
        return ""
    x, y = centre
    return f'<circle cx="{x:.1f}" cy="{HIGH - y:.1f}" r="{radius:.1f}" fill="none" stroke="{ink}"/>'


def _belt(layout: Layout) -> str:
    points = " ".join(f"{x:.1f},{HIGH - y:.1f}" for x, y in layout.belt())
    return f'<polygon points="{points}" fill="none" stroke="#1b4858" stroke-width="4"/>'


def _text(x: float, y: float, words: str, *, anchor: str = "middle") -> str:
    place = f'x="{x:.1f}" y="{y:.1f}" text-anchor="{anchor}"'
    return f'<text {place} font-size="14" fill="{INK}">{escape(words)}</text>'


def _svg(title: str, parts: Sequence[str]) -> str:
    return (
        f'<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 {WIDE} {HIGH}" role="img">'
        f"<title>{escape(title)}</title>{''.join(parts)}</svg>"
    )
