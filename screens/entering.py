"""The one value that a page asks for: its field, the keypad for it, and what is typed and cannot be used."""

from typing import TYPE_CHECKING

from logic.board import Field, Value
from logic.errors import InputError
from screens.entry import Entry
from screens.inputs import field_of
from screens.widgets.keypad import Keypad

if TYPE_CHECKING:
    from screens.answering import AnsweringPage


class Entering:
    """Hands on what is typed at each key. What is no value yet stays typed when the field is left."""

    def __init__(self, page: "AnsweringPage") -> None:
        """Serve a page; the keypad is built when it is first wanted."""
        self.page = page
        self.field: Field | None = None
        self.refused: InputError | None = None
        self._before: Value | None = None
        self.entry: Entry | None = None

    @property
    def keypad(self) -> Keypad | None:
        """Return the keypad while it is open."""
        return self.entry.keypad if self.field is not None and self.entry is not None else None

    def asks_for(self, key: str) -> bool:
        """Tell whether this is the value that is asked for."""
        return self.field is not None and self.field.key == key

    def ask(self, key: str) -> None:
        """Ask for a value."""
        page = self.page
        self.leave()
        self.field = field_of(key)
        if self.entry is None:
            self.entry = Entry()
            self.entry.bind(
                on_value=self._on_value,
                on_empty=self._on_empty,
                on_wrong=self._on_wrong,
                on_enter=lambda *_: page.done(),
                on_next=self._on_next,
            )
        self._before = page.inputs.changed(key)
        self.entry.ask(
            self.field, page.inputs.value(key), page.style, page.state.typed.get(key, ""), page.board
        )

    def leave(self) -> None:
        """Ask for nothing. What the text says of other fields is taken up now that it is whole."""
        if self.field is not None and self.refused is None:
            for key, value in self.entry.others.items():
                self.page.inputs.put(key, value)
            self.page.inputs.note(self.field.key, "")
        self.field, self.refused = None, None

    def _on_value(self, entry: Entry, value: Value) -> None:
        self.refused = None
        self.page.inputs.put(self.field.key, value, "" if self.field.kind == "choice" else entry.text)

    def _on_empty(self, *_: object) -> None:
        self.refused = None
        self.page.inputs.put(self.field.key, None)

    def _on_wrong(self, entry: Entry, problem: InputError) -> None:
        """Put back what stood before typing began: the first digits of a refused number are no value of anybody's."""
        self.refused = problem
        self.page.inputs.put_back(self.field.key, self._before)
        self.page.inputs.note(self.field.key, entry.text)
        self.page.soon()

    def _on_next(self, _entry: Entry, step: int) -> None:
        keys = self.page.keys
        if keys:
            place = keys.index(self.field.key) + step if self.field.key in keys else 0
            self.page.edit(keys[place % len(keys)])
