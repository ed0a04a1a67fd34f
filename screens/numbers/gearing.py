"""Gearing and speed: change a value and see what it does, against the saved board."""

from kivy.properties import ObjectProperty, StringProperty

from logic.answers.gearing import Gearing, gearing
from logic.answers.reading import RIDER, Item, Result
from logic.board import Board
from logic.units import quantities
from screens.answering import AnsweringPage
from screens.widgets.chart import Curve, Mark
from screens.widgets.load import load_kv
from screens.words.gearing import ITEMS


class GearingPage(AnsweringPage):
    """Answers first, then teeth and chips, then the chart, then the rest."""

    HEAD = "top_loaded"
    LABELS = ITEMS
    DETAILS = {  # noqa: RUF012  (words, never changed)
        "top_loaded": "Nominal pack, level road, no wind.",
        "top_nominal": "No load at all: never quite reached.",
    }
    CONTROLS = ("drive.motor_teeth", "drive.wheel_teeth")
    CHIPS = (
        "drive.wheel_diameter",
        "motor.kv",
        "pack.series",
        "pack.chemistry",
        "drive.motors",
        "controller.motor_current",
        "controller.battery_current",
        "controller.current_meaning",
        "controller.duty",
        "motor.resistance",
        "motor.no_load_current",
        "motor.pole_pairs",
        "pack.cell_resistance",
        "pack.parallel",
        "pack.packs",
        "load.board_mass",
        RIDER.key,
        "load.rolling",
        "load.drag_area",
        "load.efficiency",
        "ask.gearing_speed",
    )

    title = StringProperty("Gearing and speed")
    chart = ObjectProperty()

    def work_out(self, board: Board) -> Gearing:
        """Return the figures at the chosen speed."""
        return gearing(board, self.rider, self.asked("ask.gearing_speed") or 0.0)

    def label(self, name: str) -> str:
        """Put the chosen speed into the label."""
        speed = self.style.number(self.asked("ask.gearing_speed") or 0.0, "speed")
        return super().label(name).format(speed=speed)

    def detail(self, name: str, item: Item) -> str:
        """Say what a band rests on."""
        words = self.DETAILS.get(name, "")
        if isinstance(item, Result) and item.band:
            return f"{self.figure(item, item.value)} if the printed motor constant is right. {words}".strip()
        return words

    def show(self, answer: Gearing) -> None:
        """Draw push against road load."""
        if answer.curves is None:
            self.chart.lines, self.chart.marks = (), ()
            self.chart.empty_text = "The chart needs the values that are missing above."
            return
        style = self.style
        speed, force = (quantities()[name].home(style.system).shown for name in ("speed", "force"))
        self.chart.x_title, self.chart.y_title = f"Speed, {speed}", f"Push, {force}"

        def scaled(points: tuple[tuple[float, float], ...]) -> list[tuple[float, float]]:
            return [(style.scale(x, "speed"), style.scale(y, "force")) for x, y in points]

        self.chart.lines = (
            Curve("push at full remote", scaled(answer.curves.push)),
            Curve("road load", scaled(answer.curves.load)),
        )
        marks = scaled((answer.curves.meeting,)) if answer.curves.meeting else []
        self.chart.marks = tuple(Mark(x, y, style.plain(x)) for x, y in marks)


load_kv(__file__)
