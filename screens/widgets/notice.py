"""A hazard or a note in an outlined panel, under a signal word of the standards."""

from typing import Any

from kivy.graphics import Color, Ellipse, Rectangle, Triangle
from kivy.properties import ColorProperty, OptionProperty, StringProperty
from kivy.uix.boxlayout import BoxLayout
from kivy.uix.widget import Widget

from screens.theme import theme
from screens.widgets.column import Column
from screens.widgets.load import load_kv
from screens.widgets.surface import NOTHING, Surface
from screens.widgets.text import Text

WORDS = ("", "danger", "warning", "caution", "notice")
AT_NIGHT = {"danger": "bad", "warning": "trial", "caution": "trial", "notice": "main"}
"""At night the word is drawn in a light tone inside a frame: a filled strip would dazzle."""


class AlertSign(Widget):
    """The triangle with the exclamation mark, drawn."""

    ink = ColorProperty()
    paper = ColorProperty()

    def __init__(self, **kwargs: Any) -> None:  # noqa: ANN401 - Kivy passes property values through.
        """Lay out the drawing once; later only its places change."""
        super().__init__(**kwargs)
        with self.canvas:
            self._ink = Color(*self.ink)
            self._triangle = Triangle()
            self._paper = Color(*self.paper)
            self._stroke = Rectangle()
            self._dot = Ellipse()
        for name in ("pos", "size", "ink", "paper"):
            self.fbind(name, self.draw)
        self.draw()

    def draw(self, *_: object) -> None:
        """Fit the drawing to the widget."""
        self._ink.rgba, self._paper.rgba = self.ink, self.paper
        width, height = self.size
        self._triangle.points = (self.x, self.y, self.right, self.y, self.center_x, self.top)
        thick = width * 0.11
        self._stroke.pos, self._stroke.size = (
            (self.center_x - thick / 2, self.y + height * 0.33),
            (thick, height * 0.36),
        )
        self._dot.pos, self._dot.size = (self.center_x - thick / 2, self.y + height * 0.14), (thick, thick)


class SignalText(Text):
    """The word itself, in the ink of its signal and not in a tone of the theme."""

    ink = ColorProperty(NOTHING)

    def dress(self, *_: object) -> None:
        """Take the size from the theme, the colour from the signal."""
        super().dress()
        self.color = self.disabled_color = self.ink

    on_ink = dress


class SignalWord(Surface, BoxLayout):
    """The word on its colour, with its sign."""

    word = OptionProperty("", options=WORDS)
    ink = ColorProperty(NOTHING)
    paper = ColorProperty(NOTHING)

    def dress(self, *_: object) -> None:
        """Take the signal's colours."""
        if not self.word:
            return
        if theme.name == "night":
            self.ink = self.edge = getattr(theme, AT_NIGHT[self.word])
            self.paper = self.fill = theme.panel
        else:
            self.fill, self.ink = theme.signal(self.word)
            self.paper = self.edge = self.fill
        self.edge_width = 2

    on_word = dress


class Notice(Surface, Column):
    """What can happen and what to do. `word` is a signal word, or "" for a plain note."""

    word = OptionProperty("", options=WORDS)
    text = StringProperty()

    def dress(self, *_: object) -> None:
        """Outline the panel."""
        self.fill, self.edge = theme.panel, theme.outline
        if self.word:
            strong = theme.name == "night"
            self.edge = getattr(theme, AT_NIGHT[self.word]) if strong else theme.signal(self.word)[0]
            self.edge_width = 2
        else:
            self.edge_width = 1

    on_word = dress


load_kv(__file__)
