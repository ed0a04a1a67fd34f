"""Motor from the bench: Kv from a spin-up, resistance from volts and amps, pole pairs from magnets."""

from typing import Any

from kivy.properties import StringProperty

from logic.answers.bench_motor import bench_motor, mixings, to_lay_over
from logic.answers.reading import Item
from logic.board import Board, Value
from screens.answering import AnsweringPage
from screens.widgets.load import load_kv
from screens.words.bench_motor import CONVENTION, LABELS, SAFE


class BenchMotorPage(AnsweringPage):
    """What was measured, what follows, and the way to lay it over the board."""

    CHIPS = (
        "ask.spin_voltage",
        "ask.spin_duty",
        "ask.spin_rotation",
        "ask.bench_voltage",
        "ask.bench_current",
        "ask.magnets",
        "motor.no_load_current",
        "motor.resistance",
        "motor.kv",
        "controller.current_meaning",
    )
    LABELS = LABELS

    title = StringProperty("Motor from the bench")
    convention = StringProperty()
    safe = StringProperty(SAFE)

    def work_out(self, board: Board) -> dict[str, Item]:
        """Return what the bench tells."""
        return bench_motor(board, self.asking)

    def show(self, _answer: dict[str, Item]) -> None:
        """Say which convention is meant."""
        worst = mixings()[0]
        self.convention = CONVENTION.format(
            taken=worst.taken, meant=worst.meant, error=self.style.number(abs(worst.error), "share", 2)
        )

    def bars(self) -> list[tuple[str, str, Any]]:
        """Offer what was measured, unless the board has it."""
        if not to_lay_over(self.board, self.items):
            return super().bars()
        return [("Try the measured values on the board", "main", self.try_them)]

    def try_them(self) -> None:
        """Lay what was measured over the board as a trial."""
        for key, value in to_lay_over(self.board, self.items).items():
            self.state.try_value(key, Value(value, "measured"))


load_kv(__file__)
