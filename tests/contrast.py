"""Contrast as WCAG 2.2 defines it, and the palettes it is measured in."""

import tomllib
from pathlib import Path

COLOURS = tomllib.loads((Path(__file__).parents[1] / "assets" / "colours.toml").read_text("utf-8"))
THEMES = ("day", "sun", "night")
SIGNALS = ("danger", "warning", "caution", "notice")


def luminance(colour: str) -> float:
    """Return the relative luminance of an sRGB colour, 0 to 1."""
    parts = [int(colour[place : place + 2], 16) / 255 for place in (1, 3, 5)]
    red, green, blue = (
        part / 12.92 if part <= 0.04045 else ((part + 0.055) / 1.055) ** 2.4 for part in parts
    )
    return 0.2126 * red + 0.7152 * green + 0.0722 * blue


def contrast(one: str, two: str) -> float:
    """Return the contrast ratio of two colours, 1 to 21."""
    dark, light = sorted((luminance(one), luminance(two)))
    return (light + 0.05) / (dark + 0.05)


def shade(tone: str, theme: str) -> str:
    """Return the colour of a tone of the paper in a theme."""
    return str(COLOURS["signal" if tone.removeprefix("on_") in SIGNALS else theme][tone])
