"""Speed and push in full: the curves, a step along them, a grade, a wind, and which limit rules where."""

from kivy.properties import ObjectProperty, StringProperty

from logic.answers.push import Pushing, pushing
from logic.answers.reading import RIDER
from logic.board import Board
from logic.units import quantities
from screens.answering import AnsweringPage
from screens.widgets.chart import Curve, Mark
from screens.widgets.load import load_kv
from screens.words.push import CHARGE, LABELS, LIMITS

MEETINGS = ("top_loaded_full", "top_loaded_empty", "time_20", "time_30", "way_20", "way_30")


class PushPage(AnsweringPage):
    """The top speed on this road, its curves, then what happens along them."""

    HEAD = "top_loaded"
    CONTROLS = ("ask.speed", "ask.grade", "ask.wind")
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

    title = StringProperty("Speed and push")
    rules = StringProperty()
    at_title = StringProperty()
    meetings = ObjectProperty()
    chart = ObjectProperty()

    def work_out(self, board: Board) -> Pushing:
        """Return curves and figures."""
        return pushing(board, self.rider, self.asking)

    def show_figures(self) -> None:
        """Show where the curves meet, then what happens at the speed asked about."""
        self.show_head()
        self.cards.show(self.meetings, *MEETINGS)
        self.cards.show(self.flow, *(name for name in self.items if name not in MEETINGS))

    def show(self, answer: Pushing) -> None:
        """Show the curves and which limit rules where."""
        self.at_title = f"At {self._speed()}"
        self.rules = self._rules(answer)
        self._show_chart(answer)

    def _speed(self) -> str:
        return self.style.number(self.asked("ask.speed") or 0.0, "speed")

    def control_label(self, key: str) -> str:
        """Say what the speed is: a place on the curves."""
        return "Along the curve" if key == "ask.speed" else super().control_label(key)

    def label(self, name: str) -> str:
        """Return the words of a result, with the speeds in the person's unit."""
        style = self.style
        words = super().label(name).replace("{speed}", self._speed())
        for kmh in (20, 30):
            words = words.replace("{" + str(kmh) + "}", style.number(kmh / 3.6, "speed"))
        return words

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
