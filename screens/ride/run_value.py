"""The value that an item of a run asks for: entered, kept while half typed, refused when this pack cannot have it."""

from collections.abc import Callable

from kivy.clock import Clock

from logic.answers.checks import nearly_empty, volts_fault
from logic.board import Board, Field, Option, Value
from logic.checks.lists import Item
from screens.entry import PATIENCE, Entry
from screens.words import Style
from screens.words.checks import NEARLY_EMPTY, NEARLY_EMPTY_TOLD, REFUSALS

VOLTS = Field("check.volts", "Pack volts", "number", 0, "", quantity="voltage", low=1.0, high=150.0)


class RunValue:
    """Holds the entry of a run. `changed` is called when what can be said of the item may have changed."""

    def __init__(self, changed: Callable[[], None], enter: Callable[[], None]) -> None:
        """Begin with nothing asked; `enter` is called when Enter is pressed."""
        self.entry = Entry()
        self.problem = ""
        self.note = ""
        self._changed = changed
        self._item: Item | None = None
        self._board: Board | None = None
        self._value: Value | None = None
        self._fault = ""
        self._tell = Clock.create_trigger(lambda *_: self._say(), PATIENCE)
        self.entry.bind(
            on_value=lambda _, value: self._hold(value),
            on_empty=lambda *_: self._hold(None),
            on_wrong=lambda *_: self._hold(None),
            on_enter=lambda *_: enter(),
        )

    @property
    def ready(self) -> bool:
        """Tell whether the item can be confirmed: it asks for nothing, or what is entered can be used."""
        return self._item is None or (self._value is not None and not self._fault)

    @property
    def value(self) -> float | str | None:
        """Return what is entered (SI, or a choice), None when nothing is asked."""
        return None if self._item is None or self._value is None else self._value.si

    def ask(self, item: Item, board: Board, style: Style, typed: str) -> None:
        """Ask for the value of an item, or for nothing; `typed` is what was typed before the page was left."""
        self.clear()
        self._board = board
        if not item.ask:
            return
        self._item = item
        if item.ask == "choice":
            options = tuple(Option(text, text) for text in item.options)
            self.entry.ask(Field("check.choice", item.action, "choice", 0, "", options=options), None, style)
        else:
            self.entry.ask(VOLTS, Value(1.0, typed_unit="V"), style, typed)

    def clear(self) -> None:
        """Ask for nothing."""
        self._tell.cancel()
        self._item, self._value, self._fault, self.problem, self.note = None, None, "", "", ""

    def insist(self) -> None:
        """Say at once why what is entered cannot be used."""
        if self._value is None:
            self.entry.leave()
        else:
            self._say()

    def _hold(self, value: Value | None) -> None:
        self._value, self.problem, self.note = value, "", ""
        volts = self._item if value is not None and self._item and self._item.ask == "volts" else None
        self._fault = volts_fault(volts, float(value.si), self._board) if volts else ""
        self._tell.cancel()
        if self._fault:
            self._tell()
        elif volts and self._board and nearly_empty(volts, float(value.si), self._board):
            self.note, self.problem = NEARLY_EMPTY, NEARLY_EMPTY_TOLD
        self._changed()

    def _say(self) -> None:
        self._tell.cancel()
        self.problem = REFUSALS.get(self._fault, self.problem)
        self._changed()
