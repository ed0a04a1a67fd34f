"""Speed and push in full: the curves, a step along them, a grade, a wind, and which limit rules where."""

from typing import Any

from kivy.properties import ObjectProperty, StringProperty

from logic.answers.push import Pushing, pushing
from logic.answers.reading import RIDER
from logic.board import Value
from logic.units import quantities
from screens.numbers.figures import FiguresPage, field_of
from screens.widgets.chart import Curve, Mark
from screens.widgets.load import load_kv
from screens.words.push import CHARGE, LABELS, LIMITS

HEAD = "meeting_nominal"
MEETINGS = ("meeting_full", "meeting_empty", "time_20", "time_30", "way_20", "way_30")
STEP = {"ask.speed": 1.0, "ask.grade": 1.0, "ask.wind": 5.0}
"""One step of each, in the unit the person reads."""


class PushPage(FiguresPage):
    """The top speed on this road, its curves, then what happens along them."""

    CHIPS = (
        "ask.speed",
        "ask.grade",
        "ask.wind",
        "controller.motor_current",
        "controller.battery_current",
        "controller.duty",
        "controller.erpm_limit",
        "motor.kv",
        "motor.resistance",
        "drive.motor_teeth",
        "drive.wheel_teeth",
        "drive.wheel_diameter",
        "load.board_mass",
        RIDER.key,
        "load.rolling",
        "load.drag_area",
        "load.efficiency",
        "ask.axle",
    )
    LABELS = LABELS

    speed_text = StringProperty()
    grade_text = StringProperty()
    wind_text = StringProperty()
    rules = StringProperty()
    at_title = StringProperty()
    head = ObjectProperty()
    flow = ObjectProperty()
    meetings = ObjectProperty()
    chart = ObjectProperty()

    def __init__(self, *args: Any, **kwargs: Any) -> None:  # noqa: ANN401  (as AppPage)
        """Bind the main card once."""
        super().__init__(*args, title="Speed and push", **kwargs)
        self.head.bind(on_open=lambda *_: self.open_working(HEAD))

    def show(self) -> None:
        """Show curves and figures."""
        answer = pushing(self.state.board, self.state.person.rider, self.asking)
        self.show_faults(answer.faults)
        items = dict(answer.items)
        self.items = dict(items)
        style = self.style
        self.speed_text = style.number(self.asked("ask.speed") or 0.0, "speed")
        self.grade_text = style.number(self.asked("ask.grade") or 0.0, "share")
        self.wind_text = style.number(self.asked("ask.wind") or 0.0, "speed")
        self.at_title = f"At {self.speed_text}"
        self.fill(self.head, items.pop(HEAD))
        self.show_items({name: items.pop(name) for name in MEETINGS}, self.meetings)
        for name in set(self._card_of) - set(self.items):
            self.flow.remove_widget(self._card_of.pop(name))
        self.show_items(items, self.flow)
        self.rules = self._rules(answer)
        self._show_chart(answer)

    def label(self, name: str) -> str:
        """Return the words of a result, with the speeds in the person's unit."""
        style = self.style
        words = super().label(name).replace("{speed}", self.speed_text)
        for kmh in (20, 30):
            words = words.replace("{" + str(kmh) + "}", style.number(kmh / 3.6, "speed"))
        return words

    def step(self, key: str, sign: int) -> None:
        """Go one step along the curve, up the grade or against the wind."""
        field = field_of(key)
        unit = quantities()[field.quantity].home(self.style.system)
        now = unit.of_si(self.asked(key) or 0.0, quantities()[field.quantity].si)
        at = (round(now / STEP[key]) + sign) * STEP[key]
        si = unit.to_si(at, quantities()[field.quantity].si)
        low, high = field.low or 0.0, field.high or 0.0
        self.ask_for(key, Value(min(max(si, low), high), "chosen", typed_unit=unit.shown))

    def _rules(self, answer: Pushing) -> str:
        style = self.style
        parts = [
            f"{LIMITS[part.limit]} up to {style.number(part.high, 'speed')}" for part in answer.stretches
        ]
        return "What rules at full remote: " + ", then ".join(parts) + "." if parts else ""

    def _show_chart(self, answer: Pushing) -> None:
        chart, style = self.chart, self.style
        if answer.curves is None:
            chart.lines, chart.marks, chart.cursor = (), (), None
            chart.empty_text = "The chart needs the values that are missing above."
            return
        speed, force = (quantities()[name].home(style.system).shown for name in ("speed", "force"))
        chart.x_title, chart.y_title = f"Speed, {speed}", f"Push, {force}"

        def scaled(points: tuple[tuple[float, float], ...]) -> list[tuple[float, float]]:
            return [(style.scale(x, "speed"), style.scale(y, "force")) for x, y in points]

        curves = answer.curves
        chart.lines = (
            *(Curve(CHARGE[charge], scaled(points)) for charge, points in curves.push.items()),
            Curve("load", scaled(curves.load)),
        )
        met = scaled(tuple(point for point in curves.meetings.values() if point is not None))
        chart.marks = tuple(Mark(x, y, style.plain(x)) for x, y in met)
        chart.cursor, chart.cursor_text = None, ""
        if curves.cursor is not None:
            at, push, load = curves.cursor
            chart.cursor = style.scale(at, "speed")
            chart.cursor_text = f"push {style.number(push, 'force')}, load {style.number(load, 'force')}"


load_kv(__file__)
