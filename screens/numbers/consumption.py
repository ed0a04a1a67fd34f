"""Wh/km and range at a speed, with what the coefficients rest on."""

from kivy.properties import ObjectProperty, StringProperty

from logic.answers.consumption import Consumption, consumption
from logic.answers.reading import RIDER, stand_in
from logic.board import Board, board_fields
from logic.units import quantities
from screens.answering import AnsweringPage
from screens.widgets.chart import Curve
from screens.widgets.load import load_kv
from screens.words.consumption import ASSUMED, ENTERED, FROM_BOARD, LABELS


class ConsumptionPage(AnsweringPage):
    """What a kilometre takes at a speed, and how far the charge goes there."""

    HEAD = "per_distance"
    CONTROLS = ("ask.cruise_speed",)
    CHIPS = (
        "ask.cruise_speed",
        "load.rolling",
        "load.drag_area",
        "load.efficiency",
        "load.board_mass",
        RIDER.key,
        "pack.cell_capacity",
        "pack.packs",
        "motor.no_load_current",
    )
    LABELS = LABELS

    title = StringProperty("Wh/km and range")
    rests_on = StringProperty()
    chart = ObjectProperty()

    def work_out(self, board: Board) -> Consumption:
        """Return the figures at the speed."""
        return consumption(board, self.rider, self.asking)

    def show(self, answer: Consumption) -> None:
        """Say what the figures rest on, and draw them over speed."""
        style = self.style
        self.rests_on = self._rests_on()
        speed, energy = (
            quantities()[name].home(style.system).shown for name in ("speed", "energy_per_distance")
        )
        self.chart.x_title, self.chart.y_title = f"Speed, {speed}", energy
        self.chart.empty_text = "The chart needs the values that are missing above."
        points = [(style.scale(x, "speed"), style.scale(y, "energy_per_distance")) for x, y in answer.curve]
        self.chart.lines = (Curve("held steady", points),) if points else ()

    def label(self, name: str) -> str:
        """Return the words of a result at the speed."""
        speed = self.style.number(self.asked("ask.cruise_speed") or 0.0, "speed")
        return super().label(name).replace("{speed}", speed)

    def _rests_on(self) -> str:
        found = {}
        for key in ("load.rolling", "load.drag_area"):
            field, value = board_fields()[key], self.board.value(key)
            number = float(stand_in(field).cells[field.stand_in]) if value is None else float(value.si)
            found[key] = self.style.number(number, field.quantity)
        load = self.board.load
        known = ASSUMED if load.rolling is None and load.drag_area is None else ENTERED
        return FROM_BOARD.format(rolling=found["load.rolling"], area=found["load.drag_area"], known=known)


load_kv(__file__)
