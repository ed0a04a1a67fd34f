"""Options as buttons in as many columns as their words allow; one of them is chosen."""

from typing import Any

from kivy.metrics import dp
from kivy.properties import ListProperty, NumericProperty, StringProperty

from screens.theme import theme
from screens.widgets.choice import ChoiceButton
from screens.widgets.column import Flow
from screens.widgets.text import longest_word


class PickButton(ChoiceButton):
    """One option, which tells the flow how much room it needs."""

    least_width = NumericProperty(dp(72))
    least_height = NumericProperty(dp(48))

    def dress(self, *_: object) -> None:
        """Dress and measure again; room for the tick is kept so that nothing moves when it comes."""
        super().dress()
        self.least_width = max(
            dp(72), longest_word(self.text, "body", bold=True) + theme.body + dp(4 + 24 + 4)
        )

    def on_minimum_height(self, _button: ChoiceButton, height: float) -> None:
        """Ask for the height of the words."""
        self.least_height = max(dp(48), height)

    on_text = dress


class Pick(Flow):
    """Many options in a flow. `options` holds pairs of key and text. Event: `on_choose(key)` at every tap."""

    options = ListProperty()
    chosen = StringProperty()
    __events__ = ("on_choose",)

    def __init__(self, **kwargs: Any) -> None:  # noqa: ANN401 - Kivy passes property values through.
        """Build the buttons."""
        kwargs.setdefault("least", dp(72))
        super().__init__(**kwargs)
        self._build()
        self.fbind("options", self._build)
        self.fbind("chosen", self._mark)

    def _build(self, *_: object) -> None:
        self.clear_widgets()
        for key, text in self.options:
            button = PickButton(text=text, key=key, chosen=key == self.chosen)
            button.bind(on_release=lambda pressed: self.dispatch("on_choose", pressed.key))
            self.add_widget(button)

    def _mark(self, *_: object) -> None:
        for button in self.children:
            button.chosen = button.key == self.chosen

    def on_choose(self, _key: str) -> None:
        """One was tapped."""
