"""Strokes as SVG: a picture for a page that is printed or opened in a browser, in the colours of the day."""

import tomllib
from collections.abc import Iterator
from functools import cache
from html import escape
from pathlib import Path

from screens.pictures.laid import Placed, fixed_pen, height_of, lay
from screens.pictures.strokes import Drawing

COLOURS = Path(__file__).resolve().parents[2] / "assets" / "colours.toml"
WIDE = 640.0
NARROW, BROAD = ".,:;'|!iljtfr-()[] \u00a0\u202f", "mwMW%@"
SHARES = {"narrow": 0.34, "usual": 0.58, "broad": 0.9}
"""Width of a letter as a share of the size: what most plain fonts stay within, since the reader's is not known."""


def _wide(text: str, size: float, bold: bool) -> float:  # noqa: FBT001  (as a Pen is asked)
    kinds = ("narrow" if one in NARROW else "broad" if one in BROAD else "usual" for one in text)
    return size * sum(SHARES[kind] for kind in kinds) * (1.07 if bold else 1.0)


PEN = fixed_pen(1.0, _wide)


@cache
def day() -> dict[str, str]:
    """Return the colour of each tone by day, as #rrggbb."""
    with COLOURS.open("rb") as file:
        return dict(tomllib.load(file)["day"])


def svg(picture: Drawing, title: str, width: float = WIDE) -> str:
    """Return a drawing as one SVG element; `title` says what it shows."""
    height = height_of(picture, width, PEN)
    drawn = "".join(_one(stroke, height) for stroke in lay(picture, width, height, PEN))
    return (
        f'<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 {width:g} {height:.1f}" role="img">'
        f"<title>{escape(title)}</title>{drawn}</svg>"
    )


def _one(stroke: Placed, height: float) -> str:
    colour = day()["outline" if stroke.tone == "hair" else stroke.tone]
    faint = ' opacity="0.3"' if stroke.tone == "hair" else ""
    points = " ".join(f"{x:.1f},{height - y:.1f}" for x, y in stroke.points)
    if stroke.kind == "fill":
        return f'<polygon points="{points}" fill="{colour}"{faint}/>'
    x, y = stroke.points[0]
    if stroke.kind == "disc":
        return f'<circle cx="{x:.1f}" cy="{height - y:.1f}" r="{stroke.width:g}" fill="{colour}"/>'
    if stroke.kind == "text":
        return "".join(_text(stroke, x, height - y, colour))
    dashes = f' stroke-dasharray="{" ".join(f"{dash:g}" for dash in stroke.dashes)}"' if stroke.dashes else ""
    return f'<polyline points="{points}" fill="none" stroke="{colour}" stroke-width="{stroke.width:g}"{dashes}{faint}/>'


def _text(stroke: Placed, x: float, foot: float, colour: str) -> Iterator[str]:
    bold = ' font-weight="bold"' if stroke.bold else ""
    # A text is given by the foot of its line; letters stand a little above it.
    yield f'<text x="{x:.1f}" y="{foot - stroke.height * 0.24:.1f}" font-size="{stroke.width:g}" fill="{colour}"{bold}>'
    yield f"{escape(stroke.text)}</text>"
