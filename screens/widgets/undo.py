"""What was just done, with a way back."""

from typing import Any

from kivy.clock import Clock
from kivy.metrics import dp
from kivy.properties import NumericProperty, ObjectProperty, StringProperty
from kivy.uix.boxlayout import BoxLayout

from screens.theme import theme
from screens.widgets.bar import IconButton  # noqa: F401 - undo.kv names it.
from screens.widgets.column import Pair
from screens.widgets.load import load_kv
from screens.widgets.surface import Surface, Tap
from screens.widgets.text import width_of

SECONDS = 10
"""How long a step can be taken back, unless it stays until it is dismissed."""


SECONDS = 10
"""How long a step can be taken back, unless it stays until it is dismissed."""


class WordButton(Tap, BoxLayout):
    """A word to tap, as wide as the word."""

    text = StringProperty()
    word_width = NumericProperty(0)

    def dress(self, *_: object) -> None:
        """Dress and measure again."""
        super().dress()
        self.word_width = max(width_of(self.text, "body", bold=True) + dp(24), dp(64))

    on_text = dress


class UndoBar(Surface, Pair):
    """A text, the word Undo and a cross. Events: `on_undo()`, `on_dismiss()`.

    It stays until the cross is tapped, or `stay` seconds of the clock given to it; none by default below
    ten. Nobody loses the way back by reading slowly: put `stay` to 0 and it stays until it is dismissed.
    """

    text = StringProperty()
    action = StringProperty("Undo")
    stay = NumericProperty(SECONDS)
    clock = ObjectProperty(Clock)
    __events__ = ("on_undo", "on_dismiss")

    def __init__(self, **kwargs: Any) -> None:  # noqa: ANN401 - Kivy passes property values through.
        """Start to count."""
        self._event: Any = None
        super().__init__(**kwargs)
        self.restart()

    def restart(self) -> None:
        """Count the stay anew."""
        self.stop()
        if self.stay > 0:
            self._event = self.clock.schedule_once(self._over, max(self.stay, SECONDS))

    def stop(self) -> None:
        """No longer count."""
        if self._event is not None:
            self._event.cancel()
            self._event = None

    def _over(self, _elapsed: float) -> None:
        self.dispatch("on_dismiss")

    def measure(self, *_: object) -> None:
        """Side by side needs half the text and the two buttons."""
        self.need = width_of(self.text) / 2 + width_of(self.action, bold=True) + dp(24 + 48 + 12 + 24)

    on_text = on_action = measure

    def dress(self, *_: object) -> None:
        """Dress and measure again."""
        self.fill, self.edge, self.edge_width = theme.panel, theme.text, 2
        self.measure()

    def on_undo(self) -> None:
        """Stop counting: the way back was taken."""
        self.stop()

    def on_dismiss(self) -> None:
        """Stop counting: the bar is to go."""
        self.stop()


load_kv(__file__)
