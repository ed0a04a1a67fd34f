"""Plain layouts: a column as high as its children, a pair side by side when there is room, a flow."""

from math import ceil
from typing import Any

from kivy.metrics import dp
from kivy.properties import BooleanProperty, NumericProperty
from kivy.uix.boxlayout import BoxLayout
from kivy.uix.layout import Layout

from screens.widgets.dress import Dressed


class Column(BoxLayout):
    """Children one under the other; as high as they are together."""

    def __init__(self, **kwargs: Any) -> None:  # noqa: ANN401 - Kivy passes property values through.
        """Start vertical and as high as the children."""
        kwargs.setdefault("orientation", "vertical")
        kwargs.setdefault("size_hint_y", None)
        super().__init__(**kwargs)
        self.height = self.minimum_height

    def on_minimum_height(self, _column: BoxLayout, height: float) -> None:
        """Be as high as the children."""
        self.height = height


class Pair(Dressed, Column):
    """Children side by side when `need` pixels fit, else one under the other."""

    need = NumericProperty(0)
    beside = BooleanProperty(defaultvalue=False)

    def dress(self, *_: object) -> None:
        """Measure again: the text size may have changed."""
        self.measure()

    def measure(self, *_: object) -> None:
        """Set `need` from the words; for those who know theirs."""

    def arrange(self, *_: object) -> None:
        """Choose the direction by the measured width."""
        self.beside = self.need <= self.width
        self.orientation = "horizontal" if self.beside else "vertical"

    on_width = on_need = arrange


class Flow(Layout):
    """Equal columns, as many as fit; each row as high as its highest child, each child as high as its row.

    A child says how wide it must be by `least_width` and how high by `least_height`. With `stretch` the
    rows are evened out and the last one fills the width too.
    """

    spacing = NumericProperty(dp(8))
    most = NumericProperty(99)
    least = NumericProperty(dp(96))
    stretch = BooleanProperty(defaultvalue=False)

    def __init__(self, **kwargs: Any) -> None:  # noqa: ANN401 - Kivy passes property values through.
        """Start as high as the rows."""
        kwargs.setdefault("size_hint_y", None)
        kwargs.setdefault("height", 0)
        super().__init__(**kwargs)
        for name in ("pos", "size", "children", "least", "most"):
            self.fbind(name, self._trigger_layout)

    def add_widget(self, widget: Any, *args: Any, **kwargs: Any) -> None:  # noqa: ANN401 - as Kivy's own.
        """Lay out again when a child asks for more room."""
        for name in ("least_width", "least_height"):
            widget.fbind(name, self._trigger_layout)
        super().add_widget(widget, *args, **kwargs)

    def remove_widget(self, widget: Any, *args: Any, **kwargs: Any) -> None:  # noqa: ANN401 - as Kivy's own.
        """Let go of the child."""
        for name in ("least_width", "least_height"):
            widget.funbind(name, self._trigger_layout)
        super().remove_widget(widget, *args, **kwargs)

    def columns(self) -> int:
        """Return how many columns fit the widest child."""
        need = max([self.least, *(child.least_width for child in self.children)])
        fit = int((self.width + self.spacing + 0.5) // (need + self.spacing))
        columns = max(1, min(fit, int(self.most), len(self.children) or 1))
        if self.stretch and self.children:
            rows = ceil(len(self.children) / columns)
            columns = ceil(len(self.children) / rows)
        return columns

    def do_layout(self, *_: object) -> None:
        """Place the children row by row from the top."""
        columns = self.columns()
        shown = self.children[::-1]
        rows = [shown[first : first + columns] for first in range(0, len(shown), columns)]
        heights = [max(child.least_height for child in row) for row in rows]
        self.height = sum(heights) + self.spacing * max(0, len(rows) - 1)
        top = self.y + self.height
        for row, high in zip(rows, heights, strict=True):
            share = len(row) if self.stretch else columns
            wide = (self.width - self.spacing * (share - 1)) / share
            for place, child in enumerate(row):
                child.size = (wide, high)
                child.pos = (self.x + place * (wide + self.spacing), top - high)
            top -= high + self.spacing
