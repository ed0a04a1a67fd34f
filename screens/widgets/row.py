"""Rows of a list, headings, and the scaffold of a page: a scrolling column above a fixed foot."""

from typing import Any

from kivy.graphics import Color, Line
from kivy.metrics import dp
from kivy.properties import BooleanProperty, NumericProperty, ObjectProperty, OptionProperty, StringProperty
from kivy.uix.boxlayout import BoxLayout
from kivy.uix.scrollview import ScrollView

from screens.theme import theme
from screens.widgets.column import Column
from screens.widgets.icon import POINTS
from screens.widgets.load import load_kv
from screens.widgets.surface import Tap
from screens.widgets.text import TONES, longest_word, width_of

LEAST_CONTENT = 96
"""Height in dp that a foot must leave to what stands above it."""
WIDE, LOW = 600, 500
"""A page as wide as the first and lower than the second (dp) puts its foot beside the column."""


class Row(Tap, BoxLayout):
    """A line of a list: title, detail under it, value at the right or, when narrow, under the title."""

    title = StringProperty()
    detail = StringProperty()
    value = StringProperty()
    icon = OptionProperty("", options=("", *POINTS))
    icon_shown = OptionProperty("", options=("", *POINTS))
    tone = OptionProperty("text", options=TONES)
    value_tone = OptionProperty("text", options=TONES)
    chevron = BooleanProperty(defaultvalue=True)
    title_tone = OptionProperty("text", options=TONES)
    answer_tone = OptionProperty("text", options=TONES)
    need = NumericProperty(0)
    value_width = NumericProperty(0)

    def __init__(self, **kwargs: Any) -> None:  # noqa: ANN401 - Kivy passes property values through.
        """Start without a frame, over a thin line."""
        kwargs.setdefault("look", "bare")
        super().__init__(**kwargs)
        with self.canvas.after:
            self._line_colour = Color(*theme.outline)
            self._line = Line(width=dp(1) / 2)
        self.fbind("pos", self._underline)
        self.fbind("size", self._underline)
        self.dress()

    def _underline(self, *_: object) -> None:
        self._line.points = (self.x, self.y, self.x + self.width, self.y)

    def dress(self, *_: object) -> None:
        """Measure again: the text size may have changed."""
        super().dress()
        self.title_tone = "second" if self.disabled else self.tone
        self.answer_tone = "second" if self.disabled else self.value_tone
        self.measure()
        if hasattr(self, "_line_colour"):
            self._line_colour.rgba = theme.outline

    def measure(self, *_: object) -> None:
        """Side by side needs the value on one line and the title on two at most."""
        self.value_width = width_of(self.value, "body", bold=True)
        words = longest_word(f"{self.title} {self.detail}")
        room = self.width - dp(8) - (theme.title + dp(4 + 8) if self.chevron else 0)
        self.icon_shown = self.icon if words + theme.title + dp(4 + 12) <= room else ""
        self.need = self.value_width + dp(12 + 8) + max(words, width_of(self.title) / 2) if self.value else 0

    on_title = on_detail = on_value = on_icon = on_width = on_chevron = measure
    on_tone = on_value_tone = on_disabled = dress


class Section(Column):
    """The heading over a group of rows."""

    title = StringProperty()


class Scroll(ScrollView):
    """A vertical scroller without bounce that passes a short tap on at once.

    Kivy holds the release of a short tap back for 0.2 s, which feels like a missed key.
    """

    def on_touch_up(self, touch: Any) -> bool:  # noqa: ANN401 - Kivy's touches have no public type.
        """Give the release to the child in the same frame."""
        mine = touch.ud.get(self._get_uid())
        done = super().on_touch_up(touch)
        if mine and mine["mode"] == "unknown" and not mine.get("released"):
            self._do_touch_up(touch)
        return bool(done)

    def _do_touch_up(self, touch: Any, *_: object) -> None:  # noqa: ANN401 - as above.
        mine = touch.ud.setdefault(self._get_uid(), {"mode": "unknown"})
        if not mine.get("released"):
            mine["released"] = True
            super()._do_touch_up(touch)


class PageScroll(Scroll):
    """One of the two parts of a page."""


class Foot(Column):
    """What stays at the bottom of a page: bars, a keypad."""


class Page(BoxLayout):
    """A scrolling column above a fixed foot.

    Children go into the column, a `Foot` among them (or a widget given to `foot`) goes below. When the foot
    would leave less than 96 dp to the column, its children with a `squeezed` and a `saved` property are
    squeezed; if that is not enough the foot scrolls too, so that nothing is ever out of reach.
    """

    foot = ObjectProperty(None, allownone=True)
    column = ObjectProperty(None)
    scroll = ObjectProperty(None)
    margin = NumericProperty(dp(16))
    aside = BooleanProperty(defaultvalue=False)

    def __init__(self, **kwargs: Any) -> None:  # noqa: ANN401 - Kivy passes property values through.
        """Build the column and an empty foot."""
        self._placed: Any = None
        self._foot_scroll: Any = None
        self._foot_holder: Any = None
        self._waiting: list[Any] = []
        foot = kwargs.pop("foot", None)
        super().__init__(**kwargs)
        self._foot_scroll = self.ids.foot_scroll.__self__
        self._foot_holder = self.ids.foot_holder.__self__
        self.scroll = self.ids.scroll.__self__
        self.column = self.ids.column.__self__
        waiting, self._waiting = self._waiting, []
        for widget in waiting:
            self.add_widget(widget)
        self._foot_holder.fbind("height", self.fit)
        if foot is not None or self.foot is None:
            self.foot = foot or Foot()
        else:
            self.on_foot(self, self.foot)
        self.fbind("size", self.fit)
        self.fit()

    def add_widget(self, widget: Any, *args: Any, **kwargs: Any) -> None:  # noqa: ANN401 - as Kivy's own.
        """Route a child to the column or to the foot."""
        if isinstance(widget, PageScroll):
            super().add_widget(widget, *args, **kwargs)
        elif self.column is None:
            self._waiting.append(widget)
        elif isinstance(widget, Foot):
            self.foot = widget
        else:
            self.column.add_widget(widget, *args, **kwargs)

    def on_foot(self, _page: "Page", foot: Any) -> None:  # noqa: ANN401 - any widget may be a foot.
        """Put the foot in its place."""
        if self._foot_scroll is None:
            return
        if self._placed is not None:
            self._placed.funbind("height", self.fit)
            self._foot_holder.clear_widgets()
        self._placed = foot
        if foot is not None:
            # A foot as high as the one before moves nothing else that would ask for the fit.
            foot.fbind("height", self.fit)
            self._foot_holder.add_widget(foot)
        self.fit()

    def fit(self, *_: object) -> None:
        """Share the height out between column and foot."""
        if self._foot_scroll is None or self.height <= 1:
            return
        self.margin = dp(12) if self.width < dp(360) else dp(16)
        high = self._foot_holder.height if self._placed is not None and self._placed.height > 0 else 0
        self.aside = bool(high) and self.width >= dp(WIDE) and self.height < dp(LOW)
        room = self.height if self.aside else max(self.height - dp(LEAST_CONTENT), dp(48))
        if self._placed is not None:
            self._squeeze(on=high + self._saved() > room)
        self._foot_scroll.height = min(high, room)
        # While the foot fits there is nothing to scroll, and a key must feel the touch at once.
        self._foot_scroll.do_scroll_y = high > room + 1

    def _saved(self) -> float:
        return sum(getattr(widget, "saved", 0.0) for widget in self._placed.walk(restrict=True))

    def _squeeze(self, *, on: bool) -> None:
        for widget in self._placed.walk(restrict=True):
            if hasattr(widget, "squeezed"):
                widget.squeezed = on


load_kv(__file__)
