"""Colours and text scale of the app, changed while it runs. The paper binds to `theme`; nothing else holds a colour."""

import tomllib
from functools import cache
from pathlib import Path
from typing import Any

from kivy.event import EventDispatcher
from kivy.properties import NumericProperty, OptionProperty
from kivy.utils import get_color_from_hex

ASSETS = Path(__file__).resolve().parent.parent / "assets"
NAMES = ("day", "night", "sun")


@cache
def palettes() -> dict[str, Any]:
    """Return the palettes of assets/colours.toml."""
    with (ASSETS / "colours.toml").open("rb") as file:
        return tomllib.load(file)


class Theme(EventDispatcher):
    """The palette and the text scale in force."""

    name = OptionProperty("day", options=NAMES)
    scale = NumericProperty(1.0)

    def __init__(self) -> None:
        """Start with the Day palette at normal text."""
        super().__init__()
        self._colours: dict[str, list[float]] = {}
        self.apply()

    def apply(self, name: str | None = None, scale: float | None = None) -> None:
        """Set the palette and the text scale. Who hears of another name or scale paints at once: the colours go first."""
        name = name or self.name
        named = {**palettes()[name], **palettes()["signal"]}
        self._colours = {tone: get_color_from_hex(shade) for tone, shade in named.items()}
        self._colours["hair"] = [*self._colours["outline"][:3], 0.45 if name == "sun" else 0.3]
        self.scale = scale or self.scale
        self.name = name

    def colour(self, tone: str) -> list[float]:
        """Return the colour of a tone: of the palette, of a signal word, of the text `on_` its panel, or of a "hair"line."""
        return self._colours[tone]


theme = Theme()
