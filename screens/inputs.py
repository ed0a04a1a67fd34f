"""The values a page works with, by key: of the board, of the rider and of questions."""

from typing import TYPE_CHECKING

from logic.answers.asked import questions
from logic.answers.reading import RIDER, stand_in
from logic.board import Field, Value, board_fields
from logic.entries import entered
from logic.errors import InputError
from logic.units import quantities
from screens.asked import answer

if TYPE_CHECKING:
    from screens.answering import AnsweringPage

NEAR = 1e-9
"""How far past a limit a step may come out by rounding."""


def field_of(key: str) -> Field:
    """Return a field of the board, of the rider or of a question."""
    if key in questions():
        return questions()[key].field
    return RIDER if key == RIDER.key else board_fields()[key]


class Inputs:
    """Reads and changes values. One of the board is a trial; the answer to a question is kept with the board."""

    def __init__(self, page: "AnsweringPage") -> None:
        """Serve a page."""
        self.page = page

    def value(self, key: str) -> Value | None:
        """Return the present value; of a question what it begins at until it is answered."""
        if key in questions():
            return self.page.asking.get(key) or questions()[key].begins
        return self.page.rider if key == RIDER.key else self.page.board.value(key)

    def text(self, key: str) -> tuple[str, str]:
        """Return a value and how it is known, in words."""
        style, field, value = self.page.style, field_of(key), self.value(key)
        if value is None and field.stand_in:
            return style.typed(float(stand_in(field).cells[field.stand_in]), field.quantity), "assumed"
        if value is None:
            return "not set", ""
        if field.kind == "choice":
            return field.option(str(value.si)).label, value.known
        if value.typed_unit:
            return style.typed(float(value.si), field.quantity, value.typed_unit), value.known
        return style.number(float(value.si), field.quantity), value.known

    def on_trial(self, key: str) -> bool:
        """Tell whether a value is tried over the saved one."""
        return key in self.page.state.trial and not self.page.state.is_scratch

    def put(self, key: str, value: Value | None, typed: str = "") -> None:
        """Try a value with the text it was typed as, or take it back by None. Raises InputError outside its limits."""
        state = self.page.state
        if key in questions():
            self.note(key, typed)
            answer(state, key, value)
            self.page.soon()
        elif key == RIDER.key:
            self.note(key, typed)
            if value is not None:
                state.set_person(rider=value)
        elif value is None:
            state.untry(key)
        else:
            state.try_value(key, value, typed)

    def changed(self, key: str) -> Value | None:
        """Return what was put for a key: a trial's value, an answer; None where nothing was."""
        if key in questions():
            return self.page.asking.get(key)
        return self.page.rider if key == RIDER.key else self.page.state.trial.get(key)

    def put_back(self, key: str, value: Value | None) -> None:
        """Put what `changed` returned, and nothing where it was nothing."""
        if value != self.changed(key):
            self.put(key, value)

    def unused(self, key: str) -> str:
        """Return the text that was typed for a value and cannot be used, nothing where there is none."""
        typed, value, field = self.page.state.typed.get(key, ""), self.value(key), field_of(key)
        if not typed or field.kind == "choice" or self.page.entering.asks_for(key):
            return ""
        unit = value.typed_unit if value is not None else ""
        try:
            entered(field, typed, unit or self.page.style.unit(field.quantity), self.page.board)
        except InputError:
            return typed
        return ""

    def note(self, key: str, typed: str) -> None:
        """Remember text that is typed for a value."""
        state = self.page.state
        if typed != state.typed.get(key, ""):
            state.note_typed(key, typed)

    def stepped(self, key: str, sign: int) -> Value | None:
        """Return the next value on the grid of steps, which is even in the reader's unit; None past the limits."""
        field, value = field_of(key), self.value(key)
        if value is None:
            return None
        quantity = quantities()[field.quantity]
        unit = quantity.home(self.page.style.system)
        size = questions()[key].step if key in questions() else 1.0
        place = round(unit.of_si(float(value.si), quantity.si) / size, 6)
        whole = int(place // 1)
        at = round(size * (whole + sign if place == whole or sign > 0 else whole), 9)
        si = unit.to_si(at, quantity.si)
        low = si if field.low is None else field.low
        high = si if field.high is None else field.high
        if not low - NEAR <= si <= high + NEAR:
            return None
        return Value(min(max(si, low), high), typed_unit=unit.shown)
