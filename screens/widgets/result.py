"""A worked-out value with what it holds for; tapping it opens the working."""

from typing import Any

from kivy.metrics import dp
from kivy.properties import BooleanProperty, NumericProperty, OptionProperty, StringProperty
from kivy.uix.boxlayout import BoxLayout

from screens.theme import theme
from screens.widgets.column import Flow
from screens.widgets.dress import SIZES
from screens.widgets.load import load_kv
from screens.widgets.surface import NOTHING, Tap
from screens.widgets.text import longest_word, width_of


class Result(Tap, BoxLayout):
    """Label, value, unit; under it the difference to the saved board, a detail and how sure it is.

    Event: `on_open()`. `compact` has a smaller value, for two columns in a `ResultFlow`. `greyed` marks the
    last good result while an input is refused: second tone and the word old.
    """

    label = StringProperty()
    value = StringProperty()
    unit = StringProperty()
    detail = StringProperty()
    difference = StringProperty()
    standing = StringProperty()
    compact = BooleanProperty(defaultvalue=False)
    role = OptionProperty("value", options=SIZES)
    value_role = OptionProperty("value", options=SIZES)
    greyed = BooleanProperty(defaultvalue=False)
    old_word = StringProperty("old")
    tone = StringProperty("text")
    has_working = BooleanProperty(defaultvalue=True)
    value_width = NumericProperty(0)
    need = NumericProperty(0)
    least_width = NumericProperty(dp(160))
    least_height = NumericProperty(dp(64))
    __events__ = ("on_open",)

    def dress(self, *_: object) -> None:
        """Dress and measure again."""
        super().dress()
        if self.state == "normal":
            self.fill = theme.panel if theme.name != "sun" else NOTHING
            if not self.selected:
                self.edge = theme.outline
        self.tone = "second" if self.greyed else "text"
        self.value_role = "title" if self.compact else self.role
        self.value_width = width_of(self.value, self.value_role, bold=True)
        unit = width_of(self.unit, "strong")
        self.need = self.value_width + dp(8) + unit
        words = max(self.value_width, unit, longest_word(self.label, "small") + theme.strong + dp(12))
        self.least_width = max(dp(160), words + dp(28))

    on_value = on_unit = on_label = on_greyed = on_compact = on_role = on_has_working = dress

    def on_release(self) -> None:
        """Ask for the working."""
        if self.has_working:
            self.dispatch("on_open")

    def on_open(self) -> None:
        """Say that the working was asked for."""


class ResultFlow(Flow):
    """Results in two columns from 400 dp of page width, else one under the other."""

    def __init__(self, **kwargs: Any) -> None:  # noqa: ANN401 - Kivy passes property values through.
        """Allow for margins: a page of 400 dp leaves 368 to its column."""
        kwargs.setdefault("least", dp(180))
        kwargs.setdefault("most", 2)
        super().__init__(**kwargs)


load_kv(__file__)
