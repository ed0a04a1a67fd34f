"""Colours and text scale of the app, changed while it runs. The paper binds to `theme`; nothing else holds a colour."""

import tomllib
from functools import cache
from pathlib import Path
from typing import Any

from kivy.event import EventDispatcher
from kivy.properties import BooleanProperty, ColorProperty, NumericProperty, OptionProperty
from kivy.utils import get_color_from_hex

ASSETS = Path(__file__).resolve().parent.parent / "assets"
NAMES = ("day", "night", "sun")
ICON_FONT = "Icons"


@cache
def palettes() -> dict[str, Any]:
    """Return the palettes of assets/colours.toml."""
    with (ASSETS / "colours.toml").open("rb") as file:
        return tomllib.load(file)


class Theme(EventDispatcher):
    """The palette and the text scale in force."""

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
    tint = ColorProperty()
    good = ColorProperty()
    bad = ColorProperty()
    trial = ColorProperty()
    chart_a = ColorProperty()
    chart_b = ColorProperty()
    chart_c = ColorProperty()
    code = ColorProperty()
    code_ground = ColorProperty()

    def __init__(self) -> None:
        """Start with the Day palette at normal text."""
        super().__init__()
        self.apply()

    def apply(self, name: str | None = None, scale: float | None = None) -> None:
        """Set the palette and the text scale. Who hears of another name or scale paints at once: the colours go first."""
        name = name or self.name
        for token, colour in palettes()[name].items():
            setattr(self, token, get_color_from_hex(colour))
        self.dark = name == "night"
        self.scale = scale or self.scale
        self.name = name

    def signal(self, word: str) -> tuple[list[float], list[float]]:
        """Return the panel colour and the text colour of a signal word."""
        colours = palettes()["signal"]
        return get_color_from_hex(colours[word]), get_color_from_hex(colours[f"on_{word}"])


theme = Theme()
