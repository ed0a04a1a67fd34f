"""A page as one HTML document with its pictures inside: no network, no script."""

from collections.abc import Iterator
from html import escape

from screens.blocks import Picture
from screens.page import Page
from screens.pictures.svg import svg
from screens.told.lines import Told, told

STYLE = (
    "body{font-family:sans-serif;max-width:40em;margin:1em auto;padding:0 1em;color:#1b1c1f;background:#fff}"
    "dl{display:grid;grid-template-columns:1fr auto;margin:0}dt,dd{border-bottom:1px solid #999;padding:.3em 0;margin:0}"
    "dd{font-weight:bold;text-align:right}small{display:block;font-weight:normal}"
    "svg{max-width:100%;height:auto}@media print{h2{break-after:avoid}dl,svg{break-inside:avoid}}"
)


def as_html(page: Page) -> str:
    """Return a whole document."""
    title = escape(page.title)
    head = f'<meta charset="utf-8"><title>{title}</title><style>{STYLE}</style>'
    body = "\n".join(_body(page))
    return f'<!DOCTYPE html>\n<html lang="en"><head>{head}</head><body>\n{body}\n</body></html>\n'


def _body(page: Page) -> Iterator[str]:
    listed = False
    for one in told(page):
        pair = bool(one.label)
        if pair != listed:
            yield "<dl>" if pair else "</dl>"
            listed = pair
        yield _one(one)
    if listed:
        yield "</dl>"


def _one(one: Told) -> str:
    note = f"<small>{escape(one.note)}</small>" if one.note else ""
    if one.label:
        return f"<dt>{escape(one.label)}</dt><dd>{escape(one.text)}{note}</dd>"
    if one.level:
        return f"<h{one.level}>{escape(one.text)}{note}</h{one.level}>"
    if isinstance(one.block, Picture):
        return (
            f"<figure>{svg(one.block.strokes, one.text)}<figcaption>{escape(one.text)}</figcaption></figure>"
        )
    text = escape(one.text).replace("\n", "<br>")
    return f"<p>{f'<strong>{text}</strong>' if one.strong else text}{note}</p>"
