"""Colours and text sizes of the app, changed while it runs. Widgets bind to `theme`; nothing else holds a colour."""

import tomllib
from functools import cache
from pathlib import Path
from typing import Any

from kivy.event import EventDispatcher
from kivy.metrics import dp
from kivy.properties import BooleanProperty, ColorProperty, NumericProperty, OptionProperty
from kivy.utils import get_color_from_hex

ASSETS = Path(__file__).resolve().parent.parent / "assets"
NAMES = ("day", "night", "sun")
ICON_FONT = "Icons"

GENTLE, GENTLER = 20, 45
"""Above these sizes text grows by half, then by a quarter, of what was asked: large text is large already."""


@cache
def palettes() -> dict[str, Any]:
    """Return the palettes of assets/colours.toml."""
    with (ASSETS / "colours.toml").open("rb") as file:
        return tomllib.load(file)


def scaled(size: float, scale: float) -> float:
    """Return a text size in pixels for a wanted text scale, along the gentle curve."""
    share = 1.0 if size <= GENTLE else 0.5 if size <= GENTLER else 0.25
    return dp(size * (1.0 + (scale - 1.0) * share))


class Theme(EventDispatcher):
    """The palette and the text sizes in force.

    Sizes: small 14, body 18, strong 20, title 24, value 36, big 57 (dp at scale 1).
    """

    name = OptionProperty("day", options=NAMES)
    scale = NumericProperty(1.0)
    dark = BooleanProperty(defaultvalue=False)

    ground = ColorProperty()
    panel = ColorProperty()
    text = ColorProperty()
    second = ColorProperty()
    main = ColorProperty()
    over_main = ColorProperty()  # Not on_main: Kivy takes that for the handler of changes of main.
    outline = ColorProperty()
    key = ColorProperty()
    good = ColorProperty()
    bad = ColorProperty()
    trial = ColorProperty()
    chart_a = ColorProperty()
    chart_b = ColorProperty()
    chart_c = ColorProperty()

    small = NumericProperty()
    body = NumericProperty()
    strong = NumericProperty()
    title = NumericProperty()
    value = NumericProperty()
    big = NumericProperty()

    def __init__(self) -> None:
        """Start with the Day palette at normal text."""
        super().__init__()
        self.apply()

    def apply(self, name: str | None = None, scale: float | None = None) -> None:
        """Set the palette and the text scale."""
        self.name = name or self.name
        self.scale = scale or self.scale
        self.dark = self.name == "night"
        for token, colour in palettes()[self.name].items():
            setattr(self, token, get_color_from_hex(colour))
        # Light text on a dark ground reads worse: Night adds two points.
        more = 2 if self.dark else 0
        for role, size in (
            ("small", 14),
            ("body", 18),
            ("strong", 20),
            ("title", 24),
            ("value", 36),
            ("big", 57),
        ):
            setattr(self, role, scaled(size + more, self.scale))

    def signal(self, word: str) -> tuple[list[float], list[float]]:
        """Return the panel colour and the text colour of a signal word."""
        colours = palettes()["signal"]
        return get_color_from_hex(colours[word]), get_color_from_hex(colours[f"on_{word}"])


theme = Theme()
