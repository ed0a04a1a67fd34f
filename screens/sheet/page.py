"""The build sheet as one HTML file with its pictures inside: no network, no script."""

from html import escape

from logic.answers.tension import belt_plan
from logic.board import Board
from logic.person import Person
from screens.sheet.content import CLOSING, Sheet
from screens.sheet.pictures import drive_svg, history_svg
from screens.words import Style

STYLE = (
    "body{font-family:sans-serif;max-width:46em;margin:1em auto;padding:0 1em;color:#1b1c1f;background:#fff}"
    "table{border-collapse:collapse;width:100%}td{border-bottom:1px solid #999;padding:.3em .5em .3em 0;"
    "vertical-align:top}td+td{font-weight:bold}td+td+td{font-weight:normal}h2{margin:1.4em 0 .3em}"
    "svg{max-width:100%;height:auto}@media print{h2{break-after:avoid}tr{break-inside:avoid}}"
)


def as_page(sheet: Sheet, board: Board, style: Style, person: Person) -> str:
    """Return the sheet as a whole HTML document."""
    body = [f"<h1>Build sheet: {escape(sheet.name)}</h1>", f"<p>Made {escape(sheet.made)}</p>"]
    drive = drive_svg(board, style, person.scale_unit, belt_plan(board, person))
    if drive:
        body += ["<h2>The drive, to scale</h2>", drive]
    for part in sheet.parts:
        body.append(f"<h2>{escape(part.title)}</h2>")
        side = part.title.removeprefix("Tension, ").removesuffix(" belt")
        if side in sheet.readings and part.title.startswith("Tension"):
            body.append(history_svg(sheet.readings[side], style))
        body.append("<table>")
        body += [_line(line) for line in part.lines]
        body.append("</table>")
    body.append(f"<p>{escape(CLOSING)}</p>")
    head = f'<meta charset="utf-8"><title>Build sheet: {escape(sheet.name)}</title><style>{STYLE}</style>'
    return (
        f'<!DOCTYPE html>\n<html lang="en"><head>{head}</head><body>\n'
        + "\n".join(body)
        + "\n</body></html>\n"
    )


def _line(line: tuple[str, str, str]) -> str:
    return "<tr>" + "".join(f"<td>{escape(cell)}</td>" for cell in line) + "</tr>"
