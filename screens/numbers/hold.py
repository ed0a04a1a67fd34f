"""Hold for how long: the time until a motor is too hot on a climb, with its band, and the grade held for good."""

from kivy.properties import ObjectProperty, StringProperty

from logic.answers.hold import Holding, holding
from logic.answers.reading import RIDER, Item, Open, Result
from logic.board import Board
from logic.units import Shown, quantities
from screens.answering import AnsweringPage
from screens.widgets.chart import Curve
from screens.widgets.load import load_kv
from screens.words.hold import CURVES, LABELS, MODEL

MINUTE = 60.0


class HoldPage(AnsweringPage):
    """The time first, then the grade that is held for good."""

    CHIPS = (
        "ask.hold_grade",
        "ask.hold_speed",
        "ask.start_temperature",
        "ask.air_temperature",
        "ask.limit_temperature",
        "ask.motor_mass",
        "ask.thermal_resistance",
        "motor.resistance",
        "motor.no_load_current",
        "controller.motor_current",
        "drive.motor_teeth",
        "drive.wheel_teeth",
        "load.board_mass",
        RIDER.key,
    )
    HEAD = "hold_time"
    LABELS = LABELS

    title = StringProperty("Hold for how long")
    model = StringProperty(MODEL)
    chart = ObjectProperty()

    def work_out(self, board: Board) -> Holding:
        """Return the figures of the climb."""
        return holding(board, self.rider, self.asking)

    def label(self, name: str) -> str:
        """Return the words of a result with the limit and the speed asked for."""
        limit = self.style.number(self.asked("ask.limit_temperature") or 0.0, "temperature")
        speed = self.style.number(self.asked("ask.hold_speed") or 0.0, "speed")
        grade = self.style.number(self.asked("ask.hold_grade") or 0.0, "share")
        words = super().label(name).replace("{limit}", limit).replace("{speed}", speed)
        return f"{words} on a climb of {grade}" if name == self.HEAD else words

    def figure(self, item: Result, si: float) -> Shown:
        """Write the time as one reads it: seconds up to two minutes, then minutes."""
        return self._time(si) if item.name == self.HEAD else super().figure(item, si)

    def _time(self, time: float) -> Shown:
        return self.style.shown(time, "time", 2, "min" if time >= 2.0 * MINUTE else "s")

    def detail(self, name: str, item: Item) -> str:
        """Tell both ends of the band; an end that never comes is said in words."""
        if name != self.HEAD or isinstance(item, Open):
            return super().detail(name, item)
        badly, well = ("never" if time is None else self._time(time) for time in self.answer.times)
        return f"{badly} if it cools badly, {well} if it cools well."

    def show(self, answer: Holding) -> None:
        """Draw the temperature over time."""
        chart, style = self.chart, self.style
        chart.x_title = "Time, min"
        chart.y_title = f"Motor, {quantities()['temperature'].home(style.system).shown}"
        chart.empty_text = "The chart needs the values that are missing above."
        lines = [
            Curve(CURVES[name], [(time / MINUTE, style.scale(hot, "temperature")) for time, hot in points])
            for name, points in answer.curves.items()
        ]
        if lines:
            end = max(x for line in lines for x, _ in line.points)
            limit = style.scale(answer.limit, "temperature")
            lines.append(Curve("limit", [(0.0, limit), (end, limit)]))
            chart.y_range = (min(0.0, *(y for line in lines for _, y in line.points)), 1.6 * limit)
        chart.lines = tuple(lines)


load_kv(__file__)
