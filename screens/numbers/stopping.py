"""Stopping and descents: the whole way of a stop, what holds the brake down, and what the pack takes back."""

from kivy.properties import ObjectProperty, OptionProperty, StringProperty

from logic.answers.reading import RIDER, Item, Open
from logic.answers.stopping import REACTIONS, SURFACES, Stopping, stop_curves, stopping
from logic.board import Board
from logic.units import quantities
from screens.answering import AnsweringPage
from screens.widgets.chart import Curve
from screens.widgets.load import load_kv
from screens.widgets.notice import WORDS
from screens.words.stopping import (
    ANY_CHARGE,
    CUTS_OUT,
    FULL_PACK,
    LABELS,
    RULERS,
    RUNS_ON,
    SURFACE,
    THIS_PACK,
)

STOPS = tuple(f"stop_{surface}_{reaction}" for surface in SURFACES for reaction in REACTIONS)[1:]


class StoppingPage(AnsweringPage):
    """The dry stop of someone who does not expect it comes first."""

    CHIPS = (
        "ask.stop_speed",
        "ask.stop_grade",
        "ask.rest_voltage",
        "controller.brake_current",
        "controller.regen_current",
        "pack.cell_charge_current",
        "ask.axle",
        "ask.wheelbase",
        "ask.mass_behind_front",
        "ask.mass_height",
        "load.board_mass",
        RIDER.key,
    )
    HEAD = "stop_dry_design"
    LABELS = LABELS

    title = StringProperty("Stopping")
    rules = StringProperty()
    word = OptionProperty("", options=WORDS)
    warning = StringProperty()
    stops = ObjectProperty()
    pack = ObjectProperty()
    chart = ObjectProperty()

    def work_out(self, board: Board) -> Stopping:
        """Return the figures of the stop."""
        return stopping(board, self.rider, self.asking)

    def show_figures(self) -> None:
        """Show the stops, then what tyre and pack allow."""
        self.show_head()
        self.cards.show(self.stops, *STOPS)
        self.cards.show(self.pack, *(name for name in self.items if name not in STOPS))

    def show(self, answer: Stopping) -> None:
        """Say what rules, and draw the ways."""
        first = self.items[self.HEAD]
        runs_on = isinstance(first, Open) and first.outcome == "does not stop"
        self.rules = "" if runs_on else self._rules(answer)
        warning = RUNS_ON if runs_on else self._cut_out() if answer.cuts_out else ""
        self.word, self.warning = ("warning", warning) if warning else ("", self._assumed())
        self._show_chart()

    def label(self, name: str) -> str:
        """Return the words of a result; the compared speed is in the person's unit."""
        if name == self.HEAD:
            speed = self.style.number(self.asked("ask.stop_speed") or 0.0, "speed")
            return f"Whole way from {speed}: dry, 2.5 s to react"
        return super().label(name).replace("20 km/h", self.style.number(20 / 3.6, "speed"))

    def detail(self, name: str, item: Item) -> str:
        """Say for which charge the way is told."""
        if name == self.HEAD and self.asked("ask.rest_voltage") is None:
            return ANY_CHARGE
        return super().detail(name, item)

    def _cut_out(self) -> str:
        return CUTS_OUT.format(pack=FULL_PACK if self.asked("ask.rest_voltage") is None else THIS_PACK)

    def _assumed(self) -> str:
        return "Motors alone, no foot brake. The slower of controller, pack and one braked axle decides."

    def _rules(self, answer: Stopping) -> str:
        style = self.style
        parts = [
            f"{RULERS[part.ruler]} from {style.number(part.high, 'speed')} down"
            + (f" to {style.number(part.low, 'speed')}" if part.low else "")
            for part in reversed(answer.stretches)
        ]
        return "On a dry road the brake is held down by " + ", then ".join(parts) + "." if parts else ""

    def _show_chart(self) -> None:
        curves = stop_curves(self.board, self.rider, self.asking)
        style = self.style
        speed, way = (quantities()[name].home(style.system).shown for name in ("speed", "way"))
        self.chart.x_title, self.chart.y_title = f"Speed, {speed}", f"Whole way with 2.5 s, {way}"
        self.chart.empty_text = "The chart needs the values that are missing above."
        self.chart.lines = tuple(
            Curve(SURFACE[surface], [(style.scale(x, "speed"), style.scale(y, "way")) for x, y in points])
            for surface, points in curves.items()
        )


load_kv(__file__)
