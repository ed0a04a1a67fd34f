"""A few options, each a full touch button; the chosen one is filled and has a tick."""

from typing import Any

from kivy.metrics import dp
from kivy.properties import BooleanProperty, ListProperty, OptionProperty, StringProperty
from kivy.uix.boxlayout import BoxLayout

from screens.theme import theme
from screens.widgets.column import Pair
from screens.widgets.load import load_kv
from screens.widgets.surface import Tap
from screens.widgets.text import width_of


class ChoiceButton(Tap, BoxLayout):
    """One option."""

    text = StringProperty()
    chosen = BooleanProperty(defaultvalue=False)
    key = StringProperty()
    mark = OptionProperty("", options=("", "tick"))

    def dress(self, *_: object) -> None:
        """Fill the chosen one."""
        self.look = "main" if self.chosen else "plain"
        self.mark = "tick" if self.chosen else ""
        super().dress()

    on_chosen = dress


class Choice(Pair):
    """Two to four options side by side, or one under the other when their words do not fit.

    `options` holds texts, or pairs of a key and a text; `chosen` is the key (the text itself without one),
    "" for none. Event: `on_choose(key)` when a person taps an option that is not the chosen one; the tap
    sets `chosen`.
    """

    options = ListProperty()
    chosen = StringProperty()
    __events__ = ("on_choose",)

    def __init__(self, **kwargs: Any) -> None:  # noqa: ANN401 - Kivy passes property values through.
        """Start with a gap between touch areas."""
        kwargs.setdefault("spacing", dp(8))
        super().__init__(**kwargs)
        self._build()
        self.fbind("options", self._build)

    def _build(self, *_: object) -> None:
        self.clear_widgets()
        for option in self.options:
            key, text = (option, option) if isinstance(option, str) else option
            button = ChoiceButton(text=text, key=key, chosen=key == self.chosen)
            button.bind(on_release=self._choose)
            self.add_widget(button)
        self.measure()

    def on_chosen(self, *_: object) -> None:
        """Move the tick."""
        for button in self.children:
            button.chosen = button.key == self.chosen

    def measure(self, *_: object) -> None:
        """All options on one line need the width of the widest, with its tick, each."""
        widest = max((width_of(button.text, "body", bold=True) for button in self.children), default=0)
        each = widest + theme.body + dp(4 + 4 + 24)
        self.need = len(self.children) * (each + dp(8)) - dp(8)

    def _choose(self, button: ChoiceButton) -> None:
        if button.key != self.chosen:
            self.chosen = button.key
            self.dispatch("on_choose", button.key)

    def on_choose(self, _key: str) -> None:
        """Another option was chosen."""


load_kv(__file__)
