"""A value with large buttons to go one up or one down."""

from typing import Any

from kivy.clock import Clock
from kivy.metrics import dp
from kivy.properties import BooleanProperty, NumericProperty, StringProperty
from kivy.uix.anchorlayout import AnchorLayout
from kivy.uix.boxlayout import BoxLayout

from screens.widgets.column import Pair
from screens.widgets.load import load_kv
from screens.widgets.surface import Tap
from screens.widgets.text import longest_word, width_of

WAIT, PACE = 0.5, 0.25
"""Seconds a button is held before it repeats, and between two repeats."""


class StepButton(Tap, AnchorLayout):
    """Minus or plus. Held, it repeats four times a second; its own release then no longer counts."""

    sign = NumericProperty(1)
    __events__ = ("on_step",)

    def __init__(self, **kwargs: Any) -> None:  # noqa: ANN401 - Kivy passes property values through.
        """Start at rest."""
        self._repeats = 0
        self._event: Any = None
        super().__init__(**kwargs)

    def on_press(self) -> None:
        """Start to wait for a hold."""
        self._repeats = 0
        self._event = Clock.schedule_once(self._repeat, WAIT)

    def _repeat(self, _elapsed: float) -> None:
        if self.state == "down" and not self.disabled:
            self._repeats += 1
            self.dispatch("on_step")
            self._event = Clock.schedule_once(self._repeat, PACE)

    def on_state(self, *_: object) -> None:
        """End the hold on a release or a slide off."""
        self.dress()
        if self.state == "normal" and self._event is not None:
            self._event.cancel()

    def on_release(self) -> None:
        """Step once, unless holding has stepped already."""
        if not self._repeats:
            self.dispatch("on_step")

    def on_step(self) -> None:
        """One step."""


class ValueButton(Tap, BoxLayout):
    """The value between the two buttons; tapping it asks for the keypad."""

    text = StringProperty()


class Stepper(Pair):
    """Label, minus, value, plus. Events: `on_step(+1 or -1)`, `on_edit()` when the value is tapped."""

    label = StringProperty()
    value = StringProperty()
    unit = StringProperty()
    can_less = BooleanProperty(defaultvalue=True)
    can_more = BooleanProperty(defaultvalue=True)
    selected = BooleanProperty(defaultvalue=False)
    trial = BooleanProperty(defaultvalue=False)
    controls_width = NumericProperty(dp(208))
    __events__ = ("on_step", "on_edit")

    def measure(self, *_: object) -> None:
        """Side by side needs the buttons and the widest word of the label."""
        value = max(width_of(f"{self.value} {self.unit}".strip(), "strong", bold=True) + dp(24), dp(72))
        self.controls_width = 2 * dp(64) + 2 * dp(8) + value
        self.need = self.controls_width + dp(12) + max(longest_word(self.label), width_of(self.label) / 2)

    on_label = on_value = on_unit = measure

    def on_step(self, _sign: int) -> None:
        """One step up or down was asked for."""

    def on_edit(self) -> None:
        """Say that the value was tapped."""


load_kv(__file__)
