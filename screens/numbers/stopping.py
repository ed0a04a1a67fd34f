"""Stopping and descents: the whole way of a stop, what holds the brake down, and what the pack takes back."""

from typing import Any

from kivy.properties import ObjectProperty, OptionProperty, StringProperty

from logic.answers.reading import RIDER
from logic.answers.stopping import REACTIONS, SURFACES, Stopping, stop_curves, stopping
from logic.units import quantities
from screens.numbers.figures import FiguresPage
from screens.widgets.chart import Curve
from screens.widgets.load import load_kv
from screens.widgets.notice import WORDS
from screens.words.stopping import CUTS_OUT, LABELS, RULERS, SURFACE

HEAD = "stop_dry_design"
STOPS = tuple(f"stop_{surface}_{reaction}" for surface in SURFACES for reaction in REACTIONS)[1:]


class StoppingPage(FiguresPage):
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
    LABELS = LABELS

    rules = StringProperty()
    word = OptionProperty("", options=WORDS)
    warning = StringProperty()
    head = ObjectProperty()
    stops = ObjectProperty()
    pack = ObjectProperty()
    chart = ObjectProperty()

    def __init__(self, *args: Any, **kwargs: Any) -> None:  # noqa: ANN401  (as AppPage)
        """Bind the main card once."""
        super().__init__(*args, title="Stopping", **kwargs)
        self.head.bind(on_open=lambda *_: self.open_working(HEAD))

    def show(self) -> None:
        """Show the stop."""
        state = self.state
        answer = stopping(state.board, state.person.rider, self.asking)
        self.show_faults(answer.faults)
        items = dict(answer.items)
        self.items = dict(items)
        speed = self.style.number(self.asked("ask.stop_speed") or 0.0, "speed")
        self.fill(self.head, items.pop(HEAD), f"Whole way from {speed}: dry, 2.5 s to react")
        self.show_items({name: items.pop(name) for name in STOPS}, self.stops)
        self.show_items(items, self.pack)
        self.rules = self._rules(answer)
        self.word, self.warning = ("warning", CUTS_OUT) if answer.cuts_out else ("", self._assumed())
        self._show_chart()

    def label(self, name: str) -> str:
        """Return the words of a result; the compared speed is in the person's unit."""
        return super().label(name).replace("20 km/h", self.style.number(20 / 3.6, "speed"))

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
        curves = stop_curves(self.state.board, self.state.person.rider, self.asking)
        style = self.style
        speed, way = (quantities()[name].home(style.system).shown for name in ("speed", "way"))
        self.chart.x_title, self.chart.y_title = f"Speed, {speed}", f"Whole way with 2.5 s, {way}"
        self.chart.empty_text = "The chart needs the values that are missing above."
        self.chart.lines = tuple(
            Curve(SURFACE[surface], [(style.scale(x, "speed"), style.scale(y, "way")) for x, y in points])
            for surface, points in curves.items()
        )


load_kv(__file__)
