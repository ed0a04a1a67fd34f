"""Our own number pad: phones' pads drop the decimal mark, and gloves need big keys."""

from collections.abc import Callable
from functools import partial
from typing import Any

from kivy.clock import Clock
from kivy.metrics import dp
from kivy.properties import (
    BooleanProperty,
    ListProperty,
    NumericProperty,
    OptionProperty,
    StringProperty,
)
from kivy.uix.floatlayout import FloatLayout

from logic.entries import LONGEST, MINUS, key_refused
from screens.theme import theme
from screens.widgets.column import Column, Flow
from screens.widgets.icon import POINTS
from screens.widgets.load import load_kv
from screens.widgets.surface import Surface, Tap
from screens.widgets.text import width_of

BOUNCE = 0.08
"""The same key within so many seconds counts once: a gloved finger trembles."""
SHOWN = 0.5
"""Seconds a refusal stays over the keys."""
MARKS = ".,"
WHOLE = 2 * LONGEST
"""Characters of a text that are taken from a keyboard: far more than any that is read, so none is cut to a right one."""
SECOND_MARK = "There is already a decimal mark."
TOO_LONG = f"At most {LONGEST} characters."
MINUS_FIRST = "The minus comes first."
NO_MINUS = "This value has no minus."
REFUSED = {
    "two marks": SECOND_MARK,
    "too long": TOO_LONG,
    "minus first": MINUS_FIRST,
    "no minus": NO_MINUS,
}


class Key(Tap, FloatLayout):
    """One key. Its frame is drawn inside its touch area, so that no dead strip is left between two keys."""

    text = StringProperty()
    icon = OptionProperty("", options=("", *POINTS))
    role = OptionProperty("title", options=("title", "body"))
    least_width = NumericProperty(dp(48))
    least_height = NumericProperty(dp(60))

    def __init__(self, **kwargs: Any) -> None:  # noqa: ANN401 - Kivy passes property values through.
        """Start with a frame set back a little."""
        kwargs.setdefault("inset", dp(2))
        super().__init__(**kwargs)

    def dress(self, *_: object) -> None:
        """Dress and measure again."""
        super().dress()
        beside = theme.strong + dp(4) if self.text and self.icon else 0
        self.least_width = max(dp(48), width_of(self.text, self.role) + dp(16) + beside)

    on_text = on_role = on_icon = dress


class Refusal(Surface, Column):
    """Why a key was not taken, shown over the keys for half a second."""

    text = StringProperty()

    def dress(self, *_: object) -> None:
        """Stand out from the keys."""
        self.fill, self.edge, self.edge_width = theme.ground, theme.bad, 2


class Keypad(FloatLayout):
    """Digits with 7-8-9 on top, a decimal mark, delete; unit, minus, fraction and clear below.

    `text` is what was typed, letter by letter; it is never rewritten. Events: `on_text` and `on_unit` (the
    properties changed), `on_enter()`, `on_next(+1 or -1)` for the next or the last field,
    `on_refused(sentence)`.
    """

    text = StringProperty()
    mark = OptionProperty(".", options=tuple(MARKS))
    unit = StringProperty()
    units = ListProperty()
    signed = BooleanProperty(defaultvalue=False)
    signs = StringProperty()
    glove = BooleanProperty(defaultvalue=False)
    squeezed = BooleanProperty(defaultvalue=False)
    choosing = BooleanProperty(defaultvalue=False)
    key_height = NumericProperty(dp(60))
    clear_word = StringProperty("Clear")
    undo_word = StringProperty("Undo")
    space_word = StringProperty("Space")
    __events__ = ("on_enter", "on_next", "on_refused")

    def __init__(self, **kwargs: Any) -> None:  # noqa: ANN401 - Kivy passes property values through.
        """Build the keys."""
        kwargs.setdefault("size_hint_y", None)
        self._cleared = ""
        self._last: tuple[str, float] = ("", -1.0)
        super().__init__(**kwargs)
        self._digits = Flow(spacing=0, most=3, least=dp(48))
        self._others = Flow(spacing=0, least=dp(48), stretch=True)
        self._column = Column(pos_hint={"x": 0, "y": 0})
        self._column.bind(height=self.setter("height"))
        self._refusal = Refusal(pos_hint={"x": 0, "top": 1}, opacity=0)
        for widget in (self._digits, self._others):
            self._column.add_widget(widget)
        self.add_widget(self._column)
        self.add_widget(self._refusal)
        self._hide = Clock.create_trigger(self._hide_refusal, SHOWN)
        # A page sets several of these one after the other: the keys are laid out once for all of them.
        soon = Clock.create_trigger(self._build, -1)
        for name in ("mark", "unit", "units", "signed", "signs", "choosing", "clear_word", "space_word"):
            self.fbind(name, soon)
        for name in ("glove", "squeezed"):
            self.fbind(name, self._fit)
        self._clear = self._key(self.clear_word, self.clear, role="body")
        soon()

    @property
    def _full_height(self) -> float:
        return float(dp(80) if self.glove else dp(60))

    @property
    def saved(self) -> float:
        """Return the height that squeezing has saved."""
        return float(self.height / self.key_height * (self._full_height - self.key_height))

    def _fit(self, *_: object) -> None:
        self.key_height = dp(48) if self.squeezed else self._full_height
        for key in (*self._digits.children, *self._others.children):
            key.least_height = self.key_height

    def _key(self, text: str, act: Callable[[], object], **look: Any) -> Key:  # noqa: ANN401 - Key's properties.
        key = Key(text=text, **look)
        key.bind(on_release=lambda tapped: self._once(tapped.text or tapped.icon, act))
        return key

    def _once(self, name: str, act: Callable[[], object]) -> None:
        now = Clock.time()
        before, self._last = self._last, (name, now)
        if before[0] != name or now - before[1] >= BOUNCE:
            act()

    def _build(self, *_: object) -> None:
        """Lay the keys out anew: digits, or the units while one is chosen."""
        self._digits.clear_widgets()
        self._others.clear_widgets()
        if self.choosing:
            for unit in self.units:
                key = self._key(unit, partial(self._choose, unit), role="body", selected=unit == self.unit)
                self._digits.add_widget(key)
        else:
            for character in (*"789456123", self.mark, "0"):
                self._digits.add_widget(self._key(character, partial(self.tap, character)))
            self._digits.add_widget(
                self._key("", lambda: self.press("backspace"), icon="delete", a11y_label="Delete")
            )
        if self.unit and self.choosing:
            self._others.add_widget(self._key("", self._toggle, icon="cross", a11y_label="Keep the unit"))
        elif self.unit:
            some = len(self.units) > 1
            look = {"role": "body", "icon": "open" if some else "", "disabled": not some}
            self._others.add_widget(self._key(self.unit, self._toggle, **look))
        if self.unit == "in" and not self.choosing:
            self._others.add_widget(self._key("/", lambda: self.tap("/")))
            self._others.add_widget(self._key(self.space_word, lambda: self.tap(" "), role="body"))
        if self.signed and not self.choosing:
            self._others.add_widget(self._key(MINUS, lambda: self.tap(MINUS)))
        for sign in "" if self.choosing else self.signs:
            self._others.add_widget(self._key(sign, partial(self.sign, sign)))
        if not self.choosing:
            self._clear.text = self.undo_word if self._cleared else self.clear_word
            self._others.add_widget(self._clear)
        self._fit()

    def _toggle(self) -> None:
        self.choosing = not self.choosing

    def _choose(self, unit: str) -> None:
        self.choosing = False
        self.unit = unit

    def feed(self, characters: str) -> bool:
        """Take what a hardware keyboard types or what is pasted, whole: reading it refuses what is wrong.

        Returns whether all was taken; it is not where it is longer than anything that could be read.
        """
        if not characters.isprintable():
            return False
        if len(self.text) + len(characters) > WHOLE:
            return self._refuse(TOO_LONG)
        self._add(characters)
        return True

    def tap(self, character: str) -> None:
        """Type a digit or a mark by a key of ours, unless no number could have it there."""
        reason = key_refused(self.text, character, signed=self.signed)
        if reason:
            self._refuse(REFUSED[reason])
        else:
            self._add(character)

    def sign(self, character: str) -> None:
        """Type a character of a print."""
        if len(self.text) < LONGEST:
            self._add(character)

    def _add(self, characters: str) -> None:
        self._cleared = ""
        self._clear.text = self.clear_word
        self.text += characters

    def press(self, name: str) -> bool:
        """Obey backspace, enter, next, previous or escape. Returns whether it meant anything here."""
        if name == "backspace":
            self.text = self.text[:-1]
        elif name == "enter":
            self.dispatch("on_enter")
        elif name in ("next", "previous"):
            self.dispatch("on_next", 1 if name == "next" else -1)
        elif name == "escape" and self.choosing:
            self.choosing = False
        else:
            return False
        return True

    def clear(self) -> None:
        """Empty the text, or bring back what was cleared."""
        if self._cleared:
            self.text, self._cleared = self._cleared, ""
        else:
            self.text, self._cleared = "", self.text
        self._clear.text = self.undo_word if self._cleared else self.clear_word

    def _refuse(self, sentence: str) -> bool:
        self._refusal.text = sentence
        self._refusal.opacity = 1
        self._hide.cancel()
        self._hide()
        self.dispatch("on_refused", sentence)
        return False

    def _hide_refusal(self, _elapsed: float) -> None:
        self._refusal.opacity = 0
        self._refusal.text = ""

    def on_enter(self) -> None:
        """Enter was pressed."""

    def on_next(self, _step: int) -> None:
        """Say that the next field was asked for, or the last one."""

    def on_refused(self, _sentence: str) -> None:
        """Say why a key was not taken."""


load_kv(__file__)
