"""Entering one value: what is typed, what it is read as or why it cannot be, the keypad, and how it is known."""

from typing import Any

from kivy.clock import Clock
from kivy.properties import BooleanProperty, ListProperty, ObjectProperty, StringProperty

from logic.board import Board, Field, Value
from logic.entries import entered
from logic.errors import InputError
from logic.units import quantities
from screens.widgets.bar import Bar
from screens.widgets.choice import Choice
from screens.widgets.column import Column, Pair
from screens.widgets.keypad import Keypad
from screens.widgets.load import load_kv
from screens.widgets.text import width_of
from screens.words import Style, refusal
from screens.words.typed import offered, read_back

PATIENCE = 0.8
"""Seconds without a key after which a refusal is told: not while the number is half typed."""


class TypedLine(Pair):
    """The label and what is typed."""

    label = StringProperty()
    typed = StringProperty()
    unit = StringProperty()
    shown = StringProperty()
    wrong = BooleanProperty(defaultvalue=False)

    def on_typed(self, *_: object) -> None:
        """Add the unit, unless one is typed with the number."""
        ends_in_digit = not self.typed or self.typed.strip()[-1:] in "0123456789.,"
        self.shown = f"{self.typed or '–'} {self.unit if ends_in_digit else ''}".strip()

    def measure(self, *_: object) -> None:
        """Side by side needs the label on one line and eight digits."""
        self.need = width_of(self.label) + width_of("00000000 " + self.unit, "title", bold=True)

    def on_unit(self, *_: object) -> None:
        """Show and measure again."""
        self.on_typed()
        self.measure()

    on_label = measure


class Entry(Column):
    """Asks for the value of one field.

    Events: `on_value(Value)` at each key that makes a value, `on_empty()` when nothing is typed, `on_wrong(InputError)`
    when what is typed cannot be used, `on_typed(text)` at each key. The text itself is never altered. `others` are the
    values of other fields that the same text says, by key.
    """

    field = ObjectProperty(None, allownone=True)
    label = StringProperty()
    text = StringProperty()
    unit = StringProperty()
    sentence = StringProperty()
    told = BooleanProperty(defaultvalue=False)
    options = ListProperty()
    chosen = StringProperty()
    refused = ObjectProperty(None, allownone=True)
    style = ObjectProperty(Style())
    __events__ = ("on_value", "on_empty", "on_wrong", "on_typed", "on_enter", "on_next")

    def __init__(self, **kwargs: Any) -> None:  # noqa: ANN401  (Kivy's properties)
        """Build the keypad and the choice; one of them is shown."""
        self.first_unit = ""
        self._tell = Clock.create_trigger(self._say, PATIENCE)
        self._keypad = Keypad()
        self._choice = Choice()
        self._meant = Bar(kind="plain")
        self._board: Board | None = None
        self.others: dict[str, Value] = {}
        self._offered: Value | None = None
        super().__init__(**kwargs)
        self._keypad.bind(
            text=self._read,
            unit=self._read,
            on_enter=lambda *_: self.dispatch("on_enter"),
            on_next=lambda _, step: self.dispatch("on_next", step),
        )
        self._choice.bind(on_choose=self._choose)
        self._meant.bind(on_release=lambda *_: self._take_offer())

    @property
    def keypad(self) -> Keypad | None:
        """Return the keypad while a number is asked for."""
        return self._keypad if self._keypad.parent is not None else None

    def ask(
        self,
        field: Field,
        value: Value | None,
        style: Style,
        typed: str = "",
        board: Board | None = None,
    ) -> None:
        """Ask for a field. `value` is the present one, `typed` what was typed before the page was left.

        `board` says what a print or a length in mm is read with.
        """
        self.field, self.style, self.label, self._board, self.others = None, style, field.label, board, {}
        for widget in (self._keypad, self._choice, self._meant):
            self.remove_widget(widget)
        self.refused, self.sentence, self.text = None, "", typed
        if field.kind == "choice":
            self.options = [(option.key, option.label) for option in field.options]
            self._choice.chosen = "" if value is None else str(value.si)
            self._choice.options = self.options
            self.add_widget(self._choice)
            self.unit = ""
            self.text = "" if value is None else field.option(str(value.si)).label
        else:
            quantity = quantities()[field.quantity]
            units = [unit.shown for unit in quantity.units if unit.shown]
            home = quantity.home(style.system).shown
            self._keypad.units = units
            self._keypad.signed = field.quantity == "temperature" or (field.low or 0.0) < 0.0
            self._keypad.unit = value.typed_unit if value is not None and value.typed_unit in units else home
            self.first_unit = self._keypad.unit
            self._keypad.mark, self._keypad.signs = style.mark, field.signs
            unit = quantity.unit(self._keypad.unit)
            self._keypad.signed = field.low is not None and unit.of_si(field.low, quantity.si) < 0.0
            self._keypad.text = typed
            self.add_widget(self._keypad)
            self.unit = self._keypad.unit
        self.field = field
        if typed:
            self._read()

    def leave(self) -> None:
        """Tell a refusal at once: the field is left."""
        self._tell.cancel()
        self._say()

    def _choose(self, _choice: Choice, key: str) -> None:
        self.text = self.field.option(key).label
        self.dispatch("on_value", Value(key))

    def _read(self, *_: object) -> None:
        if self.field is None:
            return
        self.text, self.unit = self._keypad.text, self._keypad.unit
        self.dispatch("on_typed", self.text)
        self.refused, self.sentence, self.others = None, "", {}
        self._tell.cancel()
        self._offer("")
        if not self.text.strip():
            self.dispatch("on_empty")
            return
        try:
            found = entered(self.field, self.text, self.unit, self._board)
        except InputError as problem:
            self.refused = problem
            self._tell()
            self.dispatch("on_wrong", problem)
            return
        self.sentence, self.others = read_back(self.field, found, self.style), found.values
        self._offered = found.offer
        self._offer(offered(self.field, found, self.text, self.style))
        self.dispatch("on_value", found.value)

    def _offer(self, question: str) -> None:
        """Ask over the keypad whether something else was meant."""
        self._meant.text = question
        if question and self._meant.parent is None:
            self.add_widget(self._meant, index=1)
        elif not question:
            self.remove_widget(self._meant)

    def _take_offer(self) -> None:
        """Type what was meant instead; it stands in the unit of the keypad."""
        if self._offered is not None:
            self._keypad.text = f"{self._offered.si:g}"

    def _say(self, *_: object) -> None:
        if self.refused is not None:
            self.sentence = refusal(self.refused, self.style)

    def on_value(self, _value: Value) -> None:
        """Say that a value stands."""

    def on_empty(self) -> None:
        """Nothing is typed."""

    def on_wrong(self, _problem: InputError) -> None:
        """Say that what is typed cannot be used."""

    def on_typed(self, _text: str) -> None:
        """Say that a key changed the text."""

    def on_enter(self) -> None:
        """Enter was pressed."""

    def on_next(self, _step: int) -> None:
        """Say that the next field was asked for, or the last one."""


load_kv(__file__)
