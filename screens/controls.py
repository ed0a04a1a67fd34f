"""Where values are changed on a page: steppers and choices for a few, chips for the rest."""

from functools import partial
from typing import TYPE_CHECKING

from logic.board import Value
from screens.inputs import field_of
from screens.widgets.chip import ValueChip
from screens.widgets.choice import Choice
from screens.widgets.column import Column
from screens.widgets.stepper import Stepper
from screens.widgets.text import Text
from screens.words.typed import not_used

if TYPE_CHECKING:
    from screens.answering import AnsweringPage


class Controls:
    """The controls and chips of a page."""

    def __init__(self, page: "AnsweringPage") -> None:
        """Build them once; later only their words change."""
        self.page = page
        self._controls = [
            ChoiceControl(page, key) if _is_choice(key) else StepControl(page, key) for key in page.CONTROLS
        ]
        for control in self._controls:
            page.controls.add_widget(control.widget)
        self.chip_of: dict[str, ValueChip] = {}
        for key in page.CHIPS:
            chip = ValueChip(label=field_of(key).label)
            chip.bind(on_release=partial(self._tap, key))
            self.chip_of[key] = chip
            page.chips.add_widget(chip)

    def show(self) -> None:
        """Show the present values."""
        for control in self._controls:
            control.show()
        page = self.page
        for key, chip in self.chip_of.items():
            chip.value, chip.known = page.inputs.text(key)
            chip.trial = page.inputs.on_trial(key)
            chip.selected = page.entering.asks_for(key)
            left = not_used(page.inputs.unused(key))
            chip.known = left or chip.known
            chip.error = bool(left) or (chip.selected and page.entering.refused is not None)

    def _tap(self, key: str, *_: object) -> None:
        if self.page.entering.asks_for(key):
            self.page.done()
        else:
            self.page.edit(key)


class ChoiceControl:
    """A choice that stands on the page itself."""

    def __init__(self, page: "AnsweringPage", key: str) -> None:
        """Build the options under their label."""
        self.page, self.key, field = page, key, field_of(key)
        self._choice = Choice(options=[(option.key, option.label) for option in field.options])
        self._choice.bind(on_choose=lambda _, chosen: page.inputs.put(key, Value(chosen)))
        self.widget = Column(spacing=4)
        self.widget.add_widget(Text(text=field.label, tone="second"))
        self.widget.add_widget(self._choice)

    def show(self) -> None:
        """Show which is chosen."""
        value = self.page.inputs.value(self.key)
        self._choice.chosen = "" if value is None else str(value.si)


class StepControl:
    """A number that is stepped on the page itself; tapping it asks for the keypad."""

    def __init__(self, page: "AnsweringPage", key: str) -> None:
        """Build the stepper."""
        self.page, self.key = page, key
        self.widget = Stepper(label=page.control_label(key))
        self.widget.bind(on_step=lambda _, sign: self._step(sign), on_edit=lambda *_: page.edit(key))

    def show(self) -> None:
        """Show the present value and which way it can go."""
        page, key, stepper = self.page, self.key, self.widget
        value = page.inputs.value(key)
        stepper.trial = page.inputs.on_trial(key)
        stepper.selected = page.entering.asks_for(key)
        if value is None:
            stepper.value, stepper.unit = "–", ""
            stepper.can_less = stepper.can_more = True
            return
        shown = page.style.shown(float(value.si), field_of(key).quantity)
        stepper.value, stepper.unit = shown.number, shown.unit
        stepper.can_less = page.inputs.stepped(key, -1) is not None
        stepper.can_more = page.inputs.stepped(key, 1) is not None

    def _step(self, sign: int) -> None:
        if self.page.inputs.value(self.key) is None:
            self.page.edit(self.key)
            return
        value = self.page.inputs.stepped(self.key, sign)
        if value is not None:
            self.page.inputs.put(self.key, value)


def _is_choice(key: str) -> bool:
    return field_of(key).kind == "choice"
