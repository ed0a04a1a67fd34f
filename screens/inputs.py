"""The inputs of a page of figures: values of the board, the rider and the page's own questions, by key."""

from dataclasses import replace
from typing import TYPE_CHECKING, Any

from logic.answers.asked import questions
from logic.answers.joining import SECOND, like
from logic.answers.reading import RIDER, stand_in
from logic.board import Field, Value, board_fields
from logic.errors import InputError
from screens.asked import answer
from screens.widgets.choice import Choice
from screens.widgets.column import Column
from screens.widgets.stepper import Stepper
from screens.widgets.text import Text

if TYPE_CHECKING:
    from screens.figures import FiguresPage

STEPS = {
    "ask.cells_at": 5.0,
    "ask.charge": 0.1,
    "ask.target": 0.05,
    "ask.start_charge": 0.05,
    "ask.drop": 10.0,
    "ask.range_speed": 5 / 3.6,
    "ask.range_grade": 0.01,
    "ask.first_volts": 0.1,
    "ask.second_volts": 0.1,
}
"""What a step button adds, in SI; counts step by one."""


def field_of(key: str) -> Field:
    """Return a field of the board, the rider or a question."""
    if key == RIDER.key:
        return RIDER
    question = questions().get(key)
    return question.field if question is not None else board_fields()[key]


class Inputs:
    """Reads and changes values by key for a page."""

    def __init__(self, page: "FiguresPage") -> None:
        """Serve a page."""
        self.page = page

    def value(self, key: str) -> Value | None:
        """Return the present value; of a question its usual one until it is answered."""
        page = self.page
        if key == RIDER.key:
            return page.state.person.rider
        question = questions().get(key)
        if question is None:
            return page.board.value(key)
        found = page.asking.get(key)
        if found is not None:
            return found
        if key in SECOND:
            same = like(page.board, key)
            return None if same is None else Value(same.si, "like the first", typed_unit=same.typed_unit)
        return question.begins

    def text(self, field: Field, value: Value | None) -> tuple[str, str]:
        """Return a value and how it is known, in words."""
        style = self.page.style
        if value is None and field.stand_in:
            return style.typed(float(stand_in(field).cells[field.stand_in]), field.quantity), "assumed"
        if value is None:
            return "not set", ""
        if field.kind == "choice":
            return field.option(str(value.si)).label, value.known
        if value.typed_unit:
            return style.typed(float(value.si), field.quantity, value.typed_unit), value.known
        return style.number(float(value.si), field.quantity), value.known

    def put(self, key: str, value: Value | None) -> None:
        """Try a value, or take it back by None. Raises InputError outside its limits."""
        state = self.page.state
        if key.startswith("ask."):
            answer(state, key, value)
            self.page.soon()
        elif key == RIDER.key:
            if value is not None:
                state.set_person(rider=value)
        elif not self.page.TRIES:
            state.set_value(key, value and replace(value, known="label"))
        elif value is None:
            state.untry(key)
        else:
            state.try_value(key, value)


class Control:
    """A question that stands on the page itself: a stepper for a number, a choice for options."""

    def __init__(self, page: "FiguresPage", key: str) -> None:
        """Build the widget for a key."""
        self.page, self.key, self.field = page, key, field_of(key)
        if self.field.kind == "choice":
            self._choice = Choice(options=[(option.key, option.label) for option in self.field.options])
            self._choice.bind(on_choose=lambda _, chosen: page.inputs.put(key, Value(chosen)))
            self.widget: Any = Column(spacing=4)
            self.widget.add_widget(Text(text=self.field.label, tone="second"))
            self.widget.add_widget(self._choice)
        else:
            self.widget = Stepper(label=self.field.label)
            self.widget.bind(on_step=lambda _, sign: self._step(sign), on_edit=lambda *_: page.edit(key))

    @property
    def _size(self) -> float:
        return STEPS.get(self.key, 1.0)

    def refresh(self) -> None:
        """Show the present value."""
        value = self.page.inputs.value(self.key)
        if self.field.kind == "choice":
            self._choice.chosen = "" if value is None else str(value.si)
            return
        stepper = self.widget
        state = self.page.state
        stepper.trial = self.page.TRIES and self.key in state.trial and not state.is_scratch
        stepper.selected = self.page.field is not None and self.page.field.key == self.key
        if value is None:
            stepper.value, stepper.unit = "–", ""
            return
        shown = self.page.style.shown(float(value.si), self.field.quantity)
        stepper.value, stepper.unit = shown.number, shown.unit
        stepper.can_less = self._next(-1, float(value.si)) is not None
        stepper.can_more = self._next(1, float(value.si)) is not None

    def _next(self, sign: int, present: float) -> float | None:
        """Return the next value on the grid of steps, None past the limits."""
        start = (self.field.low or 0.0) if self.field.quantity == "temperature" else 0.0
        place = round((present - start) / self._size, 6)
        whole = int(place // 1)
        wanted = start + self._size * (whole + sign if place == whole or sign > 0 else whole)
        wanted = round(wanted, 9)
        low, high = self.field.low, self.field.high
        if (low is not None and wanted < low - 1e-9) or (high is not None and wanted > high + 1e-9):
            return None
        return wanted

    def _step(self, sign: int) -> None:
        value = self.page.inputs.value(self.key)
        if value is None:
            self.page.edit(self.key)
            return
        wanted = self._next(sign, float(value.si))
        if wanted is None:
            return
        try:
            self.page.inputs.put(self.key, Value(wanted, typed_unit=value.typed_unit))
        except InputError:
            return
