"""A table whose rows are pairs: as many columns as fit the width, the sorted one always among them."""

from functools import partial
from typing import Any

from kivy.metrics import dp
from kivy.properties import BooleanProperty, ListProperty, NumericProperty, StringProperty
from kivy.uix.boxlayout import BoxLayout

from screens.widgets.column import Column
from screens.widgets.dress import Dressed
from screens.widgets.load import load_kv
from screens.widgets.surface import Tap
from screens.widgets.text import Text, longest_word, width_of

SHOWN = 10
"""Rows on the page at a time: enough to choose from, few enough to lay out within a frame or two."""


class Head(Tap, BoxLayout):
    """The head of a column: a tap sorts by it, another turns the order."""

    text = StringProperty()


class PairRow(Tap, BoxLayout):
    """One pair: what it is, its figures in columns, and a line under them."""

    texts = ListProperty()
    note = StringProperty()
    present = BooleanProperty(defaultvalue=False)
    first = NumericProperty(0)
    each = NumericProperty(0)

    def __init__(self, **kwargs: Any) -> None:  # noqa: ANN401  (Kivy's properties)
        """Start without cells."""
        self._cells: list[Text] = []
        super().__init__(**kwargs)
        self.fill_cells()

    def fill_cells(self, *_: object) -> None:
        """Write the texts into cells, the first of them bold."""
        if "cells" not in self.ids:
            return
        holder = self.ids.cells
        while len(self._cells) < len(self.texts):
            cell = Text(
                bold=not self._cells, size_hint_x=None, width=1, halign="right" if self._cells else "left"
            )
            self._cells.append(cell)
            holder.add_widget(cell)
        while len(self._cells) > len(self.texts):
            holder.remove_widget(self._cells.pop())
        for place, (cell, text) in enumerate(zip(self._cells, self.texts, strict=True)):
            cell.text = text
            cell.width = self.each if place else self.first

    on_texts = on_first = on_each = fill_cells

    def dress(self, *_: object) -> None:
        """Frame the board's own pair."""
        self.look = "plain" if self.present else "bare"
        super().dress()

    on_present = dress


class PairRows(Dressed, Column):
    """Heads and rows. `columns` are (key, head, widest text); events: `on_sort(key)`, `on_pick(index)`."""

    columns = ListProperty()
    rows = ListProperty()
    """For each row: name, texts by column key, note, whether it is the board's own."""
    sorted_by = StringProperty()
    offset = NumericProperty(0)
    """How many columns are moved out of view to the left."""
    hidden = NumericProperty(0)
    """How many columns do not fit."""
    name_head = StringProperty("Motor : wheel")
    __events__ = ("on_sort", "on_pick")

    def __init__(self, **kwargs: Any) -> None:  # noqa: ANN401  (Kivy's properties)
        """Build the holder of the heads and the rows once."""
        self._rows: list[PairRow] = []
        self._heads: list[Head] = []
        self._shown: list[str] = []
        self._past = 0
        super().__init__(**kwargs)
        self._heads_box = BoxLayout(size_hint_y=None, height=dp(48), spacing=dp(4))
        self.add_widget(self._heads_box)
        for name in ("columns", "rows", "sorted_by", "offset", "width"):
            self.fbind(name, self.lay_out)
        self.lay_out()

    def dress(self, *_: object) -> None:
        """Measure again: the text size may have changed."""
        if hasattr(self, "_heads_box"):
            self.lay_out()

    def widths(self) -> tuple[float, float]:
        """Return the width of the first column and of each other one."""
        names = [row[0] for row in self.rows] or [""]
        first = max(width_of(max(names, key=len), "body", bold=True), longest_word(self.name_head, "small"))
        each = max(
            (
                max(width_of(widest, "body"), longest_word(head, "small", bold=True)) + dp(10)
                for _, head, widest in self.columns
            ),
            default=dp(60),
        )
        return first + dp(4), max(each, dp(56))

    def lay_out(self, *_: object) -> None:
        """Choose the columns and write heads and rows."""
        if self.width <= 1:
            return
        first, each = self.widths()
        fit = max(1, int((self.width - first - dp(16)) // (each + dp(4))))
        each = (self.width - first - dp(24)) / fit - dp(4)
        keys = [key for key, *_ in self.columns]
        shown = keys[int(self.offset) : int(self.offset) + fit]
        if self.sorted_by in keys and self.sorted_by not in shown and fit > 1:
            # The sorted column stays in view, and takes the place of one of the others.
            shown = [self.sorted_by, *shown[: fit - 1]]
        self._past = sum(key in keys[int(self.offset) :] for key in shown)
        self.hidden = max(0, len(keys) - fit)
        self._show_heads(shown, first, each)
        self._show_rows(shown, first, each)

    def next_columns(self) -> None:
        """Bring the next figures into view, after the last the first."""
        offset = self.offset + self._past
        self.offset = 0 if offset >= len(self.columns) else offset

    def _show_heads(self, shown: list[str], first: float, each: float) -> None:
        head_of = {key: head for key, head, _ in self.columns}
        if self._shown != shown or not self._heads:
            self._heads_box.clear_widgets()
            name = Text(text=self.name_head, role="small", tone="second", size_hint_x=None, width=1)
            name.pos_hint = {"center_y": 0.5}
            self._heads_box.add_widget(name)
            self._name = name
            name.bind(height=self._fit_heads)
            self._heads = []
            for key in shown:
                head = Head(text=head_of[key], size_hint=(None, 1), a11y_label=f"Sort by {head_of[key]}")
                head.bind(on_release=partial(self._sort, key))
                head.bind(minimum_height=self._fit_heads)
                self._heads.append(head)
                self._heads_box.add_widget(head)
            self._shown = list(shown)
        self._name.width = first + dp(8)
        for key, head in zip(shown, self._heads, strict=True):
            head.width = each
            head.selected = key == self.sorted_by
        self._fit_heads()

    def _fit_heads(self, *_: object) -> None:
        """Be as high as the highest head, which knows its height only once its width is set."""
        tallest = max((head.minimum_height for head in self._heads), default=0.0)
        self._heads_box.height = max(dp(48), self._name.height, tallest)

    def _show_rows(self, shown: list[str], first: float, each: float) -> None:
        while len(self._rows) < len(self.rows):
            row = PairRow()
            row.bind(on_release=self._pick)
            self._rows.append(row)
            self.add_widget(row)
        while len(self._rows) > len(self.rows):
            self.remove_widget(self._rows.pop())
        for widget, (name, texts, note, present) in zip(self._rows, self.rows, strict=True):
            widget.first, widget.each = first, each
            widget.texts = [name, *(texts[key] for key in shown)]
            widget.note, widget.present = note, present

    def _sort(self, key: str, *_: object) -> None:
        self.dispatch("on_sort", key)

    def _pick(self, row: PairRow) -> None:
        self.dispatch("on_pick", self._rows.index(row))

    def on_sort(self, _key: str) -> None:
        """Say that a head was tapped."""

    def on_pick(self, _index: int) -> None:
        """Say that a row was tapped."""


load_kv(__file__)
