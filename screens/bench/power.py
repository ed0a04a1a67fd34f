"""First power: polarity by meter, then the capacitors through a resistor."""

from typing import Any

from logic.answers.reading import Result
from logic.answers.wiring import FirstPower, first_power
from logic.board import Board
from logic.tables import rows
from screens.figures import SavedFiguresPage
from screens.widgets.text import Text
from screens.words.packs import WIRING

NAMES = (
    "precharge_time",
    "full",
    "empty",
    "spark_energy",
    "spark_current",
    "precharge_current",
    "precharge_power",
)


class PowerPage(SavedFiguresPage):
    """How long the resistor is held on first, then the steps in order."""

    HEAD = "precharge_time"
    LABELS = {name: WIRING[name] for name in NAMES}  # noqa: RUF012  (as in FiguresPage)
    DETAILS = {  # noqa: RUF012  (as in FiguresPage)
        "precharge_time": "Five time constants of resistor and capacitors. By hand: two seconds.",
        "spark_current": "Without a resistor; the wire's inductance rounds the peak off.",
        "precharge_power": "For a moment only. If it stays hot there is a short: pull the plug.",
    }
    CHIPS = (
        "controller.capacitance",
        "ask.precharge",
        "pack.series",
        "pack.chemistry",
        "pack.cell_resistance",
        "pack.parallel",
        "pack.packs",
    )

    def __init__(self, *args: Any, **kwargs: Any) -> None:  # noqa: ANN401  (as AppPage)
        """Write the steps once."""
        super().__init__(*args, title="First power", **kwargs)
        self.chips_title = "From the board: tap one to change it"
        self.meter = Text(bold=True)
        self.picture.add_widget(self.meter)
        for number, row in enumerate(rows("power_up"), start=1):
            self.picture.add_widget(Text(text=f"{number}. {row.text('text')}"))

    def work_out(self, board: Board) -> FirstPower:
        """Return the figures of first power."""
        return first_power(board, self.asking)

    def show(self, answer: FirstPower) -> None:
        """Say what the meter must show at the plug."""
        low, high = answer.items["empty"], answer.items["full"]
        self.meter.text = (
            f"Plus on plus, {self.style.number(low.value, 'voltage')} to"
            f" {self.style.number(high.value, 'voltage')} on the meter. A minus sign: stop, leads are swapped."
            if isinstance(low, Result) and isinstance(high, Result)
            else ""
        )
