"""Hold for how long: the time until a motor is too hot on a climb, with its band, and the grade held for good."""

from typing import Any

from kivy.properties import ObjectProperty, StringProperty

from logic.answers.hold import Holding, holding
from logic.answers.reading import RIDER, Item, Open
from logic.units import quantities
from screens.numbers.figures import FiguresPage
from screens.widgets.chart import Curve
from screens.widgets.load import load_kv
from screens.words.hold import CURVES, LABELS, MODEL

HEAD = "time"
MINUTE = 60.0


class HoldPage(FiguresPage):
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
    LABELS = LABELS

    model = StringProperty(MODEL)
    head = ObjectProperty()
    flow = ObjectProperty()
    chart = ObjectProperty()

    def __init__(self, *args: Any, **kwargs: Any) -> None:  # noqa: ANN401  (as AppPage)
        """Bind the main card once."""
        super().__init__(*args, title="Hold for how long", **kwargs)
        self.head.bind(on_open=lambda *_: self.open_working(HEAD))

    def show(self) -> None:
        """Show the climb."""
        answer = holding(self.state.board, self.state.person.rider, self.asking)
        self.show_faults(answer.faults)
        items = dict(answer.items)
        self.items = dict(items)
        time = items.pop(HEAD)
        self.fill(self.head, time)
        self._tell_time(answer, time)
        self.show_items(items, self.flow)
        self._show_chart(answer)

    def label(self, name: str) -> str:
        """Return the words of a result with the limit and the speed asked for."""
        limit = self.style.number(self.asked("ask.limit_temperature") or 0.0, "temperature")
        speed = self.style.number(self.asked("ask.hold_speed") or 0.0, "speed")
        grade = self.style.number(self.asked("ask.hold_grade") or 0.0, "share")
        words = super().label(name).replace("{limit}", limit).replace("{speed}", speed)
        return f"{words} on a climb of {grade}" if name == HEAD else words

    def _minutes(self, time: float) -> str:
        """Return a time as one reads it: seconds up to two minutes, then minutes."""
        return str(self.style.shown(time, "time", 2, "min" if time >= 2.0 * MINUTE else "s"))

    def _tell_time(self, answer: Holding, item: Item) -> None:
        """Show the time with both ends of its band; an end that never comes is said in words."""
        if isinstance(item, Open):
            return
        shown = self.style.shown(item.value, "time", 2, "min" if item.value >= 2.0 * MINUTE else "s")
        self.head.value, self.head.unit = shown.number, shown.unit
        badly, well = ("never" if time is None else self._minutes(time) for time in answer.times)
        self.head.detail = f"{badly} if it cools badly, {well} if it cools well."

    def _show_chart(self, answer: Holding) -> None:
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
