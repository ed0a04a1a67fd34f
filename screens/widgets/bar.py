"""The main act of a screen as one full-width bar, and the small button with a picture."""

from kivy.metrics import dp
from kivy.properties import BooleanProperty, OptionProperty, StringProperty
from kivy.uix.anchorlayout import AnchorLayout
from kivy.uix.boxlayout import BoxLayout

from screens.widgets.icon import POINTS
from screens.widgets.load import load_kv
from screens.widgets.surface import Tap


class Bar(Tap, BoxLayout):
    """A full-width button; `on_release` is its event.

    `kind`: main is filled, plain looks like a key, bad-outline is for refusing.
    """

    text = StringProperty()
    detail = StringProperty()
    icon = OptionProperty("", options=("", *POINTS))
    kind = OptionProperty("main", options=("main", "plain", "bad-outline"))
    tall = BooleanProperty(defaultvalue=False)
    squeezed = BooleanProperty(defaultvalue=False)

    @property
    def saved(self) -> float:
        """Return the height that squeezing has saved."""
        return max(0.0, dp(96) - self.height) if self.tall and self.squeezed else 0.0

    def dress(self, *_: object) -> None:
        """Dress for the kind."""
        self.look = self.kind.removesuffix("-outline")
        super().dress()

    on_kind = dress


class IconButton(Tap, AnchorLayout):
    """A picture to tap, 48 dp. Give it an `a11y_label`: nothing else says in words what it does."""

    icon = OptionProperty("", options=("", *POINTS))

    def __init__(self, **kwargs: object) -> None:
        """Start without a frame."""
        kwargs.setdefault("look", "bare")
        kwargs.setdefault("size_hint", (None, None))
        kwargs.setdefault("size", (dp(48), dp(48)))
        super().__init__(**kwargs)


load_kv(__file__)
