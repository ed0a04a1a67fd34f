"""Charging: what this charger does to these cells."""

from typing import Any

from logic.answers.care import advice
from logic.answers.charging import Charging, charging
from logic.answers.reading import Item, Result
from logic.board import Board
from screens.figures import FiguresPage
from screens.widgets.row import Row, Section
from screens.widgets.text import Text
from screens.words.packs import CHARGING, about_hours


class ChargingPage(FiguresPage):
    """How long it takes first, then temperature and charge, then amps and energy. A wrong charger stops it all."""

    HEAD = "time"
    LABELS = CHARGING
    DETAILS = {  # noqa: RUF012  (as in FiguresPage)
        "heat": "A pack that gets hot on slow charge is faulty.",
        "wall": "Losses of charger and cells.",
    }
    CONTROLS = ("ask.cells_at", "ask.charge", "ask.target")
    CHIPS = (
        "pack.charger_voltage",
        "pack.charger_current",
        "pack.series",
        "pack.chemistry",
        "pack.parallel",
        "pack.packs",
        "ask.charged",
        "pack.cell_capacity",
        "pack.cell_charge_current",
        "pack.bms_charge_current",
        "pack.cell_resistance",
    )
    FIXES = {  # noqa: RUF012  (as in FiguresPage)
        f"charger {outcome}": "pack.charger_voltage"
        for outcome in ("other series", "other chemistry", "too high", "too low")
    }

    def __init__(self, *args: Any, **kwargs: Any) -> None:  # noqa: ANN401  (as AppPage)
        """Add the advice and the way to the stop signs."""
        super().__init__(*args, title="Charging", **kwargs)
        self.advice.add_widget(Section(title="While it charges"))
        for row in advice("charge"):
            self.advice.add_widget(Text(text=row.text))
        self.advice.add_widget(
            Text(
                text="Below 100 % is kinder to the cells; a full charge now and then balances them.",
                tone="second",
            )
        )
        signs = Row(title="Swollen or hot pack?", icon="battery", tone="bad")
        signs.bind(on_release=lambda *_: self.shell.go("ride.pack_signs"))
        self.advice.add_widget(signs)

    def work_out(self, board: Board) -> Charging:
        """Return what the charger does."""
        return charging(board, self.asking)

    def detail(self, name: str, item: Item) -> str:
        """Say the most amps and the time in one sentence, and how the amps lie against the cells' limit."""
        answer = self.answer
        if name == "time" and answer is not None and isinstance(item, Result):
            return self._in_short(answer, item)
        if name == "most" and self.board.pack.cell_charge_current is None:
            return "Half the amp-hours, as is usual: no limit of the cells is entered."
        if name == "cell_amps" and answer is not None:
            return {
                "within limit": "Within what the cells take.",
                "look at the cell sheet": "No limit entered: look at the cell's sheet.",
                "over any limit": "More than cells usually stand, and no limit entered.",
                "over cell limit": "Over what the cells take.",
            }.get(answer.amps, "")
        if name == "full" and answer is not None and answer.check is not None:
            low, high = (self.style.number(end, "voltage") for end in (answer.check.low, answer.check.high))
            return f"{low} to {high} is right. This charger matches." if not answer.check.danger else ""
        return super().detail(name, item)

    def _in_short(self, answer: Charging, time: Result) -> str:
        amps, most = self.board.pack.charger_current, answer.items["most"]
        upto = f"Up to {self.style.number(most.value, 'current')}; " if isinstance(most, Result) else ""
        given = (
            ""
            if amps is None
            else f"{'with' if upto else 'With'} {self.style.number(float(amps.si), 'current')} "
        )
        return f"{upto}{given}about {about_hours(time.value)}. The last fifth is slow."
