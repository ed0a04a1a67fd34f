"""Wire and fuse between pack and controller, and the spark at the plug."""

from typing import Any

from logic.answers.reading import Item
from logic.answers.wiring import INRUSH, LEAD, Wiring, wiring
from logic.board import Board, Value
from logic.errors import InputError
from logic.tables import rows
from screens.figures import FiguresPage
from screens.widgets.result import Result as ResultCard
from screens.widgets.row import Row
from screens.widgets.stepper import Stepper
from screens.widgets.text import Text
from screens.words import sureness
from screens.words.packs import WIRE, WIRING

NO_FUSE = (
    "None lies between the ride and what this wire carries for long in a closed deck. A larger one helps against a"
    " short only, and must open sooner than the wire stands it."
)


class WiringPage(FiguresPage):
    """The riding current first, against what the wire carries; then the fuse between both."""

    HEAD = "riding"
    LABELS = {name: WIRING[name] for name in (*LEAD, *INRUSH)}  # noqa: RUF012  (as in FiguresPage)
    DETAILS = {  # noqa: RUF012  (as in FiguresPage)
        "closed_low": "Half the column for hot, still surroundings.",
        "free_low": "Continuous, about 30 °C air, one wire.",
        "spark_current": "The wire's inductance rounds the peak off.",
        "precharge_time": "Five time constants: under 1 % is missing then.",
        "stands_short": "The fuse must open sooner: see its time-current curve.",
    }
    CHIPS = (
        "pack.lead_area",
        "pack.lead_length",
        "pack.lead_insulation",
        "pack.fuse",
        "controller.battery_current",
        "ask.peak_share",
        "ask.cruise",
        "ask.wire_at",
        "pack.series",
        "pack.chemistry",
        "pack.cell_resistance",
        "controller.capacitance",
        "ask.precharge",
    )
    MINDS_PACK = False

    def __init__(self, *args: Any, **kwargs: Any) -> None:  # noqa: ANN401  (as AppPage)
        """Add the gauge stepper, the fuse and the way to first power."""
        super().__init__(*args, title="Wiring and fuse", **kwargs)
        self.gauge = Stepper(label="Gauge of the lead, AWG")
        self.gauge.bind(
            on_step=lambda _, sign: self._step_gauge(sign),
            on_edit=lambda *_: self.edit("pack.lead_area"),
        )
        self.controls.add_widget(self.gauge)
        self.verdict = Text(bold=True)
        self.fuse = ResultCard(label=WIRING["fuse"])
        self.fuse.bind(on_open=lambda *_: self.open_working("fuse"))
        self.fuse_text = Text(tone="second")
        for widget in (self.verdict, self.fuse, self.fuse_text):
            self.picture.add_widget(widget)
        row = Row(title="First power: polarity and pre-charge", icon="wires")
        row.bind(on_release=lambda *_: self.shell.go("bench.power"))
        self.advice.add_widget(row)

    def work_out(self, board: Board) -> Wiring:
        """Return the figures of lead, fuse and spark."""
        return wiring(board, self.asking)

    def label(self, name: str) -> str:
        """Return the label of a result, the fuse's among them."""
        return WIRING[name]

    def detail(self, name: str, item: Item) -> str:
        """Say what the riding current is made of."""
        if name == "riding":
            share, cruise = (self.inputs.value(key) for key in ("ask.peak_share", "ask.cruise"))
            texts = [
                self.style.number(float(value.si), quantity) if value else ""
                for value, quantity in ((share, "share"), (cruise, "current"))
            ]
            return (
                f"{texts[0]} of the time at the battery limit, {texts[1]} for the rest. Heating goes by it."
            )
        return super().detail(name, item)

    def show(self, answer: Wiring) -> None:
        """Say how the wire fares and which fuse fits."""
        style = self.style
        sizes = self._sizes()
        place = self._place(sizes)
        self.gauge.value = "–" if place is None else style.plain(sizes[place][0])
        self.gauge.trial = self.inputs.on_trial("pack.lead_area")
        # A smaller number is a thicker wire: plus steps along the numbers.
        self.gauge.can_less = place is None or place > 0
        self.gauge.can_more = place is None or place + 1 < len(sizes)
        least = answer.least_gauge
        enough = "" if least is None else f" AWG {style.plain(least)} stays cool in a closed deck."
        self.verdict.text = (WIRE.get(answer.wire, "") + enough).strip()
        fuse = answer.fuse
        if fuse is None or not fuse.fits:
            self.fuse.value, self.fuse.unit, self.fuse.standing = "–", "", ""
            self.fuse.has_working = fuse is not None
            self.fuse.detail = NO_FUSE if fuse else "Needs the lead, the pack and the battery limit."
            self.fuse_text.text = ""
            return
        low, high = (style.shown(end, "current") for end in (fuse.low, fuse.high))
        self.fuse.value, self.fuse.unit = f"over {low.number}, to {high.number}", high.unit
        self.fuse.detail = "Over what the ride asks, within what this wire carries for long in a closed deck."
        self.fuse.standing, self.fuse.has_working = sureness(answer.items["fuse"]), True
        self.fuse_text.text = (
            f"At least {style.number(fuse.voltage, 'voltage')} DC, able to break"
            f" {style.number(fuse.interrupt, 'current')}. It protects the wire against a short;"
            " the controller limits the ride. Compare its time-current curve with the time below."
        )

    def _sizes(self) -> list[tuple[float, float]]:
        return [(float(row.cells["gauge"]), float(row.cells["area"])) for row in rows("wire_ampacity")]

    def _place(self, sizes: list[tuple[float, float]]) -> int | None:
        value = self.board.pack.lead_area
        if value is None:
            return None
        return min(range(len(sizes)), key=lambda place: abs(sizes[place][1] - float(value.si)))

    def _step_gauge(self, sign: int) -> None:
        sizes = self._sizes()
        place = self._place(sizes)
        wanted = len(sizes) // 2 if place is None else place + sign
        if not 0 <= wanted < len(sizes):
            return
        try:
            self.inputs.put("pack.lead_area", Value(sizes[wanted][1], typed_unit="mm²"))
        except InputError:
            return
