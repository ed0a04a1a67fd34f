"""The build sheet as one HTML file with its pictures inside: no network, no script."""

from html import escape

from screens.pictures.svg import svg
from screens.sheet.content import CLOSING, Sheet

STYLE = (
    "body{font-family:sans-serif;max-width:46em;margin:1em auto;padding:0 1em;color:#1b1c1f;background:#fff}"
    "table{border-collapse:collapse;width:100%}td{border-bottom:1px solid #999;padding:.3em .5em .3em 0;"
    "vertical-align:top}td+td{font-weight:bold}td+td+td{font-weight:normal}h2{margin:1.4em 0 .3em}"
    "svg{max-width:100%;height:auto}@media print{h2{break-after:avoid}tr{break-inside:avoid}}"
)


def as_page(sheet: Sheet) -> str:
    """Return the sheet as a whole HTML document."""
    name = escape(sheet.name)
    body = [f"<h1>{name}</h1>", f"<p>{escape(sheet.made)}</p>"]
    for part in sheet.parts:
        body.append(f"<h2>{escape(part.title)}</h2>")
        if part.drawn is not None:
            body.append(svg(part.drawn, part.shows))
        if part.lines:
            body += ["<table>", *map(_line, part.lines), "</table>"]
    body.append(f"<p>{escape(CLOSING)}</p>")
    head = f'<meta charset="utf-8"><title>{name}</title><style>{STYLE}</style>'
    lines = "\n".join(body)
    return f'<!DOCTYPE html>\n<html lang="en"><head>{head}</head><body>\n{lines}\n</body></html>\n'


def _line(line: tuple[str, str, str]) -> str:
    return "<tr>" + "".join(f"<td>{escape(cell)}</td>" for cell in line) + "</tr>"
