"""One value of the board: what to measure and where, the number, and how it is known."""

from collections.abc import Callable
from dataclasses import replace
from typing import Any

from kivy.properties import BooleanProperty, ListProperty, ObjectProperty, StringProperty

from logic.answers.reading import RIDER
from logic.board import Board, Field, Value, board_fields, field_of
from logic.errors import InputError
from screens.app_page import AppPage
from screens.entry import Entry
from screens.widgets.bar import Bar
from screens.widgets.keypad import Keypad
from screens.widgets.load import load_kv
from screens.words import HOW_KNOWN, KNOWN, refusal

CHOSEN = ("chosen", "Chosen")
"""Offered where a value of a trial was kept: what one picks is no guess."""


class ValuePage(AppPage):
    """Asks for `key`. When `guided`, saving or skipping goes on to the next gap."""

    ways = ListProperty(HOW_KNOWN)
    help = StringProperty()
    now = StringProperty()
    known = StringProperty()
    guided = BooleanProperty(defaultvalue=False)
    can_save = BooleanProperty(defaultvalue=False)
    entry = ObjectProperty()

    def __init__(self, *args: Any, **kwargs: Any) -> None:  # noqa: ANN401  (as AppPage)
        """Listen to the entry."""
        self.field: Field = RIDER
        self._value: Value | None = None
        self._others: dict[str, Value] = {}
        self._skipped: set[str] = set()
        super().__init__(*args, nav=False, chip=False, **kwargs)
        self.entry.bind(
            on_value=self._on_value,
            on_empty=lambda *_: self._hold(None),
            on_wrong=lambda *_: self._hold(None),
            on_typed=self._on_typed,
            on_enter=lambda *_: self.save(),
        )

    @property
    def board(self) -> Board:
        """Return the board that is written: the saved one, or the scratch board with its trial."""
        return self.state.board if self.state.is_scratch else self.state.saved

    @property
    def keypad(self) -> Keypad | None:
        """Return the keypad, unless this is a choice."""
        return self.entry.keypad

    def open(self, **args: Any) -> None:  # noqa: ANN401  (as AppPage)
        """Ask for a field; a guided entry started anew forgets what was skipped before."""
        if args.get("guided") and not args.get("going_on"):
            self._skipped = set()
        super().open(**args)
        self._ask()

    def _ask(self) -> None:
        key = self.args["key"]
        self.guided = bool(self.args.get("guided"))
        self.field = RIDER if key == RIDER.key else board_fields()[key]
        value = self.state.person.rider if key == RIDER.key else self.board.value(key)
        self.title = self.field.label
        self.help = self.field.help
        self.known = value.known if value is not None and value.known in KNOWN else self.field.known
        self.ways = (*HOW_KNOWN, CHOSEN) if self.known == CHOSEN[0] else HOW_KNOWN
        self.now = "Now: not set." if value is None else f"Now: {self._text(value)}, {KNOWN[value.known]}."
        self._offer("clear_slot", "Take this value out", self.clear, shown=value is not None)
        self._offer("skip_slot", "Skip, add it later", self.skip, shown=self.guided)
        self._hold(None)
        typed = self.state.typed.get(self._typed_key, "")
        self.entry.ask(self.field, value, self.style, typed, self.board)
        if self.field.kind == "choice" and value is not None:
            self._hold(value)

    def _offer(self, slot: str, text: str, act: Callable[[], None], *, shown: bool) -> None:
        """Show a second way on only where it leads somewhere."""
        column = self.ids[slot]
        column.clear_widgets()
        if shown:
            bar = Bar(text=text, kind="plain")
            bar.bind(on_release=lambda *_: act())
            column.add_widget(bar)

    @property
    def _typed_key(self) -> str:
        return f"board/{self.args['key']}"

    def _text(self, value: Value) -> str:
        if self.field.kind == "choice":
            return self.field.option(str(value.si)).label
        return self.style.typed(float(value.si), self.field.quantity, value.typed_unit)

    def _hold(self, value: Value | None) -> None:
        self._value, self._others = value, {}
        self.can_save = value is not None

    def _on_value(self, entry: Entry, value: Value) -> None:
        self._hold(value)
        self._others = entry.others

    def _on_typed(self, _entry: Entry, text: str) -> None:
        self.state.note_typed(self._typed_key, text)

    def choose_known(self, known: str) -> None:
        """Say how the value is known; a value that stands already takes it up when saved."""
        self.known = known
        value = self.state.person.rider if self.field is RIDER else self.board.value(self.field.key)
        if self._value is None and value is not None and not self.entry.text.strip():
            self._hold(value)

    def save(self) -> None:
        """Write the value and go on."""
        if self._value is None:
            self.entry.leave()
            return
        value = replace(self._value, known=self.known, on="")
        try:
            self._write(value)
        except InputError as problem:
            self.entry.sentence = refusal(problem, self.style)
            return
        self.go_on()

    def clear(self) -> None:
        """Take the value out: it is not set then, with undo."""
        self._write(None)
        self.go_on()

    def _write(self, value: Value | None) -> None:
        self.state.note_typed(self._typed_key, "")
        if self.field is RIDER:
            self.state.set_person(rider=value)
        else:
            others = {key: replace(one, known=field_of(key).known) for key, one in self._others.items()}
            self.state.set_values({self.field.key: value, **(others if value is not None else {})})

    def skip(self) -> None:
        """Leave this one for later."""
        self._skipped.add(self.field.key)
        self.go_on()

    def go_on(self) -> None:
        """Ask for the next gap when guided, else go back."""
        if self.guided:
            gaps = [field for field in self.board.missing() if field.key not in self._skipped]
            if gaps:
                self.shell.replace("board.value", key=gaps[0].key, guided=True, going_on=True)
                return
        self.shell.back()


load_kv(__file__)
