"""A value as a chip to tap, and the layout chips stand in."""

from typing import Any

from kivy.metrics import dp
from kivy.properties import BooleanProperty, NumericProperty, StringProperty
from kivy.uix.boxlayout import BoxLayout

from screens.theme import theme
from screens.widgets.column import Flow
from screens.widgets.load import load_kv
from screens.widgets.surface import NOTHING, Surface, Tap
from screens.widgets.text import longest_word, width_of


class Mark(Surface, BoxLayout):
    """A letter in a small frame: how a value is known."""

    letter = StringProperty()

    def dress(self, *_: object) -> None:
        """Frame the letter."""
        self.edge = theme.outline if self.letter else NOTHING

    on_letter = dress


class ValueChip(Tap, BoxLayout):
    """Label, value and how it is known. Tapping selects it (`on_release`).

    `known` is the word (measured, label, guess ...); its first letter stands framed before it. A trial has
    a dashed frame and its word, an error the tone and frame of an error and a cross.
    """

    label = StringProperty()
    value = StringProperty()
    known = StringProperty()
    letter = StringProperty()
    trial = BooleanProperty(defaultvalue=False)
    trial_word = StringProperty("trial")
    error = BooleanProperty(defaultvalue=False)
    least_width = NumericProperty(dp(136))
    least_height = NumericProperty(dp(64))

    def dress(self, *_: object) -> None:
        """Dress and measure again."""
        super().dress()
        self.dashed = self.trial and self.state == "normal"
        if self.state == "normal":
            if self.error:
                self.edge, self.edge_width, self.ink = theme.bad, 3.0 if self.selected else 2.0, "bad"
            elif self.trial:
                self.edge, self.edge_width, self.ink = theme.trial, 3.0 if self.selected else 2.0, "trial"
        # An error says in words what was not used; no letter stands for that.
        self.letter = "" if self.error else self.known[:1].upper()
        words = max(
            longest_word(self.label, "small") + (theme.small + dp(4) if self.error else 0),
            width_of(self.value, "strong", bold=True),
            width_of(self.known, "small") + theme.small * 1.5 + dp(4) if self.known else 0,
            width_of(self.trial_word, "small") if self.trial else 0,
        )
        self.least_width = max(dp(136), words + dp(24 + 4))

    on_label = on_value = on_known = on_trial = on_trial_word = on_error = dress


class ChipFlow(Flow):
    """Chips in as many columns as their words allow."""

    def __init__(self, **kwargs: Any) -> None:  # noqa: ANN401 - Kivy passes property values through.
        """Start with the gap of touch areas."""
        kwargs.setdefault("least", dp(136))
        super().__init__(**kwargs)


load_kv(__file__)
