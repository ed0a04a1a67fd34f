"""Words typed on the phone's own keyboard: a note, a search."""

from kivy.properties import StringProperty
from kivy.uix.textinput import TextInput

from screens.theme import theme
from screens.widgets.dress import Dressed
from screens.widgets.load import load_kv


class Writing(Dressed, TextInput):
    """A field for words. Give it an `a11y_label`: nothing else says in words what it is for."""

    a11y_label = StringProperty()

    def dress(self, *_: object) -> None:
        """Take colours and size from the theme."""
        self.font_size = theme.body
        self.background_color = theme.ground
        self.foreground_color = self.cursor_color = theme.text
        self.hint_text_color = theme.second
        self.selection_color = [*theme.main[:3], 0.35]


load_kv(__file__)
