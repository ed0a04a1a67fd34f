"""A few words to tap, one of them chosen, in as many columns as fit: a filter."""

from functools import partial
from typing import Any

from kivy.metrics import dp
from kivy.properties import BooleanProperty, ListProperty, NumericProperty, OptionProperty, StringProperty
from kivy.uix.boxlayout import BoxLayout

from screens.theme import theme
from screens.widgets.column import Flow
from screens.widgets.load import load_kv
from screens.widgets.surface import Tap
from screens.widgets.text import width_of


class WordChip(Tap, BoxLayout):
    """One word; the chosen one is filled and ticked."""

    text = StringProperty()
    chosen = BooleanProperty(defaultvalue=False)
    mark = OptionProperty("", options=("", "tick"))
    least_width = NumericProperty(dp(64))
    least_height = NumericProperty(dp(48))

    def dress(self, *_: object) -> None:
        """Fill the chosen one, and measure."""
        self.look = "main" if self.chosen else "plain"
        self.mark = "tick" if self.chosen else ""
        super().dress()
        self.least_width = width_of(self.text, "body", bold=True) + theme.body + dp(28)

    on_chosen = on_text = dress


class WordChips(Flow):
    """`options` holds pairs of a key and a text; `chosen` is the key. Event: `on_choose(key)`."""

    options = ListProperty()
    chosen = StringProperty()
    __events__ = ("on_choose",)

    def __init__(self, **kwargs: Any) -> None:  # noqa: ANN401 - Kivy passes property values through.
        """Start even."""
        kwargs.setdefault("stretch", True)
        kwargs.setdefault("least", dp(64))
        super().__init__(**kwargs)

    def on_options(self, *_: object) -> None:
        """Build a chip for each."""
        self.clear_widgets()
        for key, text in self.options:
            chip = WordChip(text=text, chosen=key == self.chosen)
            chip.key = key
            chip.bind(on_release=partial(self._choose, key))
            self.add_widget(chip)

    def on_chosen(self, *_: object) -> None:
        """Move the tick."""
        for chip in self.children:
            chip.chosen = chip.key == self.chosen

    def _choose(self, key: str, *_: object) -> None:
        if key != self.chosen:
            self.chosen = key
            self.dispatch("on_choose", key)

    def on_choose(self, _key: str) -> None:
        """Say that another one was chosen."""


load_kv(__file__)
