"""Wheel wear and size: measured across or rolled out, and what it does against another diameter."""

from typing import Any

from kivy.properties import ObjectProperty, StringProperty

from logic.answers.reading import Result
from logic.answers.wheel import measured, wheel
from logic.board import Value, board_fields
from logic.errors import InputError
from logic.tables import pick
from screens.numbers.figures import FiguresPage
from screens.widgets.load import load_kv
from screens.words import refusal
from screens.words.wheel import HOW, LABELS, LOW

HEAD = "today"
KEY = "drive.wheel_diameter"


class WheelPage(FiguresPage):
    """The diameter of today, and the way to lay it over the board."""

    CHIPS = (
        "ask.wheel_measured",
        "ask.roll_way",
        "ask.roll_turns",
        "ask.wheel_other",
        "drive.wheel_diameter_new",
        "drive.wheel_teeth",
    )
    LABELS = LABELS

    told = StringProperty()
    head = ObjectProperty()
    flow = ObjectProperty()

    def __init__(self, *args: Any, **kwargs: Any) -> None:  # noqa: ANN401  (as AppPage)
        """Bind the main card once."""
        self.today: float | None = None
        super().__init__(*args, title="Wheel wear and size", **kwargs)
        self.head.bind(on_open=lambda *_: self.open_working(HEAD))

    def show(self) -> None:
        """Show the wheel."""
        items = wheel(self.state.board, self.state.person.rider, self.asking)
        self.items = dict(items)
        today = items.pop(HEAD)
        self.today = today.value if isinstance(today, Result) and measured(self.asking) else None
        self.fill(self.head, today)
        for name in set(self._card_of) - set(items):
            self.flow.remove_widget(self._card_of.pop(name))
        self.show_items(items, self.flow)
        clearance = items["clearance"]
        least = pick("pair_rules", name="ground clearance").cells["length"]
        low = isinstance(clearance, Result) and clearance.value < least
        self.told = f"{LOW} {HOW}" if low else HOW

    def bars(self) -> tuple[tuple[str, str, Any], ...]:
        """Offer the measured diameter, unless the board has it."""
        present = self.state.board.value(KEY)
        if self.today is None or (present is not None and present.si == self.today):
            return super().bars()
        try:
            board_fields()[KEY].check(self.today)
        except InputError as problem:
            self.problem = refusal(problem, self.style)
            return super().bars()
        return ((f"Try {self.style.number(self.today, 'length')} on the board", "main", self.try_it),)

    def try_it(self) -> None:
        """Lay the diameter over the board as a trial."""
        if self.today is not None:
            self.state.try_value(KEY, Value(self.today, "measured"))


load_kv(__file__)
