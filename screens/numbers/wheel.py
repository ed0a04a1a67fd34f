"""Wheel wear and size: measured across or rolled out, and what it does against another diameter."""

from typing import Any

from kivy.properties import StringProperty

from logic.answers.reading import Item, Result
from logic.answers.wheel import measured, wheel
from logic.board import Board, Value, board_fields
from logic.errors import InputError
from logic.tables import pick
from screens.answering import AnsweringPage
from screens.widgets.load import load_kv
from screens.words import refusal
from screens.words.wheel import HOW, LABELS, LOW

KEY = "drive.wheel_diameter"


class WheelPage(AnsweringPage):
    """The diameter of today, and the way to lay it over the board."""

    CHIPS = (
        "ask.wheel_measured",
        "ask.roll_way",
        "ask.roll_turns",
        "ask.wheel_other",
        "drive.wheel_diameter_new",
        "drive.wheel_teeth",
    )
    HEAD = "today"
    LABELS = LABELS

    title = StringProperty("Wheel wear and size")
    told = StringProperty()

    def work_out(self, board: Board) -> dict[str, Item]:
        """Return the figures of the wheel."""
        return wheel(board, self.rider, self.asking)

    @property
    def today(self) -> float | None:
        """Return the diameter that was measured, None until it is."""
        found = self.items[self.HEAD]
        return found.value if isinstance(found, Result) and measured(self.asking) else None

    def show(self, _answer: dict[str, Item]) -> None:
        """Say how to measure, and whether the wheel has grown too small."""
        clearance = self.items["clearance"]
        least = pick("pair_rules", name="ground clearance").cells["length"]
        low = isinstance(clearance, Result) and clearance.value < least
        self.told = f"{LOW} {HOW}" if low else HOW

    def bars(self) -> list[tuple[str, str, Any]]:
        """Offer the measured diameter, unless the board has it."""
        present = self.board.value(KEY)
        if self.today is None or (present is not None and present.si == self.today):
            return super().bars()
        try:
            board_fields()[KEY].check(self.today)
        except InputError as problem:
            self.problem = refusal(problem, self.style)
            return super().bars()
        return [(f"Try {self.style.number(self.today, 'length')} on the board", "main", self.try_it)]

    def try_it(self) -> None:
        """Lay the diameter over the board as a trial."""
        if self.today is not None:
            self.state.try_value(KEY, Value(self.today, "measured"))


load_kv(__file__)
