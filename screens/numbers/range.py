"""Range: from the log or by the drive, and how cold, speed and hills take it."""

from typing import Any

from logic.answers.range import RangeAnswer, range_answer
from logic.answers.reading import RIDER, Item, Open
from logic.answers.riding import FREEZING
from logic.board import Board
from screens.asked import logged_rides
from screens.figures import FiguresPage
from screens.widgets.chart import Chart, Curve, Mark
from screens.widgets.text import Text
from screens.words.packs import OUTCOMES, RANGE


class RangePage(FiguresPage):
    """A range with its band first, then temperature, speed and climb."""

    HEAD = "range"
    LABELS = RANGE
    CONTROLS = ("ask.cells_at", "ask.range_speed", "ask.range_grade")
    CHIPS = (
        "ask.usual_speed",
        "pack.window",
        "pack.series",
        "pack.parallel",
        "pack.packs",
        "pack.chemistry",
        "pack.cell_capacity",
        "drive.wheel_diameter",
        "load.board_mass",
        RIDER.key,
        "load.rolling",
        "load.drag_area",
        "load.efficiency",
    )
    MINDS_PACK = False

    def __init__(self, *args: Any, **kwargs: Any) -> None:  # noqa: ANN401  (as AppPage)
        """Add the chart and the line about rides."""
        super().__init__(*args, title="Range", **kwargs)
        self.chart = Chart(size_hint_y=None, from_zero=True)
        self.chart.bind(wanted_height=self.chart.setter("height"))
        self.rides = Text(tone="second")
        self.picture.add_widget(self.rides)
        self.picture.add_widget(self.chart)
        self.advice.add_widget(
            Text(
                text="Modelled: steady speed, no wind, no stops. Starts, stops, wind and rough ground take more."
                " A flat pack is no way home: turn round at half the range.",
                tone="second",
            )
        )

    def work_out(self, board: Board) -> RangeAnswer:
        """Return the range of a board."""
        return range_answer(board, self.rider, self.asking, logged_rides(self.state))

    def label(self, name: str) -> str:
        """Put speed or temperature into the label."""
        value = self.inputs.value("ask.range_speed")
        speed = self.style.number(float(value.si), "speed") if value is not None else ""
        text = RANGE[name].format(speed=speed, cold=self.style.number(FREEZING, "temperature"))
        if name == "range" and self.answer is not None:
            return f"{text}, learnt from the log" if self.answer.learnt else f"{text}, modelled at {speed}"
        return text

    def detail(self, name: str, item: Item) -> str:
        """Say what stands in the way, or what the band holds."""
        if isinstance(item, Open):
            return OUTCOMES.get(item.outcome, "")
        middle = self.style.number(item.value, "distance")
        if name == "range" and item.band and self.answer is not None and self.answer.learnt:
            return f"{middle} in the middle. Nearly all rides of this kind end within the band."
        if name in ("range", "range_modelled"):
            spread = "The band is what rolling and drag leave open. " if item.band else ""
            return f"{middle} as assumed. {spread}Steady speed, no wind, no stops."
        return super().detail(name, item)

    def show(self, answer: RangeAnswer) -> None:
        """Draw range over speed on the level and on climbs."""
        style, chart = self.style, self.chart
        chart.x_title = f"Speed, {style.shown(1.0, 'speed').unit}"
        chart.y_title = f"As modelled, {style.shown(1.0, 'distance').unit}"
        chart.empty_text = "The chart needs the values that are missing above."
        chart.lines = tuple(
            Curve(
                f"{style.number(grade, 'share')} climb" if grade else "level",
                [(style.scale(x, "speed"), style.scale(y, "distance")) for x, y in points],
            )
            for grade, points in answer.curves
        )
        modelled, speed = answer.modelled, self.inputs.value("ask.range_speed")
        chart.marks = (
            ()
            if isinstance(modelled, Open) or speed is None
            else (
                Mark(
                    style.scale(float(speed.si), "speed"),
                    style.scale(modelled.value, "distance"),
                    style.number(modelled.value, "distance"),
                ),
            )
        )
        left = f" {answer.left_out} tell no energy." if answer.left_out else ""
        self.rides.text = (
            f"{answer.counted} rides of the log tell it.{left}" if answer.counted or left else ""
        )
