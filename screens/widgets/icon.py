"""Pictures from the icon font, by our own short names."""

from kivy.metrics import dp
from kivy.properties import OptionProperty, StringProperty
from kivy.uix.label import Label

from screens.paper.icons import ICON_FONT, POINTS
from screens.theme import theme
from screens.widgets.dress import SIZES, Dressed
from screens.widgets.text import TONES, tone_colour


class Icon(Dressed, Label):
    """One picture, square, in a text role's size. Shows nothing and takes no width without a name."""

    icon = OptionProperty("", options=("", *POINTS))
    role = OptionProperty("title", options=SIZES)
    tone = OptionProperty("text", options=TONES)
    a11y_label = StringProperty()

    def __init__(self, **kwargs: object) -> None:
        """Start as a square that does not stretch."""
        kwargs.setdefault("font_name", ICON_FONT)
        kwargs.setdefault("size_hint", (None, None))
        super().__init__(**kwargs)

    def dress(self, *_: object) -> None:
        """Take the picture, its size and its colour."""
        self.text = chr(POINTS[self.icon]) if self.icon else ""
        self.font_size = getattr(theme, self.role)
        self.color = self.disabled_color = tone_colour(self.tone)
        side = self.font_size + dp(4)
        self.size = (side, side) if self.icon else (0, 0)

    on_icon = on_role = on_tone = dress
