"""A label in one of the theme's sizes and tones that wraps to its width and is as high as its words."""

from functools import cache
from typing import Any

from kivy.core.text import Label as Ruler
from kivy.metrics import dp
from kivy.properties import BooleanProperty, OptionProperty
from kivy.uix.label import Label

from screens.theme import theme
from screens.widgets.dress import SIZES, Dressed

TONES = ("text", "second", "main", "good", "bad", "trial", "on_main")
LINE_HEIGHT = 1.12
ABOVE = 0.14
"""Share of the font size put above the first line.

Kivy adds a line's extra height under it, which looks off centre in a button.
"""


def tone_colour(tone: str) -> list[float]:
    """Return the theme's colour of a tone.

    Kivy would take a property `on_main` for a handler of `main`: hence `over_main`.
    """
    colour: list[float] = getattr(theme, "over_main" if tone == "on_main" else tone)
    return colour


class Text(Dressed, Label):
    """Words of one role and tone. Nothing is cut: long words break, and an empty text takes no height."""

    role = OptionProperty("body", options=SIZES)
    tone = OptionProperty("text", options=TONES)
    close = BooleanProperty(defaultvalue=False)
    """No extra height between and above lines: for one word on a key."""

    def __init__(self, **kwargs: Any) -> None:  # noqa: ANN401 - Kivy passes property values through.
        """Start left-aligned, full width, as high as the words."""
        kwargs.setdefault("halign", "left")
        kwargs.setdefault("size_hint_y", None)
        kwargs.setdefault("height", 0)
        super().__init__(**kwargs)

    def dress(self, *_: object) -> None:
        """Take size and colour from the theme; a disabled text stays as readable as any other."""
        self.font_size = getattr(theme, self.role)
        self.line_height = 1.0 if self.close else LINE_HEIGHT
        self.padding = (0, 0 if self.close else self.font_size * ABOVE, 0, 0)
        self.color = self.disabled_color = tone_colour(self.tone)

    on_role = on_tone = on_close = dress

    def on_width(self, _label: Label, width: float) -> None:
        """Wrap to the width."""
        self.text_size = (max(width, 1), None)

    def on_texture_size(self, _label: Label, size: list[float]) -> None:
        """Be as high as the words."""
        self.height = size[1]


@cache
def _ruler(size: float, bold: bool) -> Ruler:  # noqa: FBT001 - the cache wants plain arguments.
    return Ruler(font_size=size, bold=bold)


def width_of(text: str, role: str = "body", *, bold: bool = False) -> float:
    """Return how wide a text is on one line, in pixels, at the text scale in force."""
    ruler = _ruler(getattr(theme, role), bold)
    return max(ruler.get_extents(line)[0] for line in text.split("\n")) + dp(2) if text else 0.0


def longest_word(text: str, role: str = "body", *, bold: bool = False) -> float:
    """Return the width of the widest word of a text: narrower than this it would break inside a word."""
    return max((width_of(word, role, bold=bold) for word in text.split()), default=0.0)
