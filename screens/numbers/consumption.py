"""Wh/km and range at a speed, with what the coefficients rest on."""

from typing import Any

from kivy.properties import ObjectProperty, StringProperty

from logic.answers.consumption import consumption
from logic.answers.reading import RIDER, stand_in
from logic.board import Value, board_fields
from logic.units import quantities
from screens.numbers.figures import FiguresPage, field_of
from screens.widgets.chart import Curve
from screens.widgets.load import load_kv
from screens.words.consumption import ASSUMED, ENTERED, FROM_BOARD, LABELS

HEAD = "per_distance"


class ConsumptionPage(FiguresPage):
    """What a kilometre takes at a speed, and how far the charge goes there."""

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

    speed_text = StringProperty()
    rests_on = StringProperty()
    head = ObjectProperty()
    flow = ObjectProperty()
    chart = ObjectProperty()

    def __init__(self, *args: Any, **kwargs: Any) -> None:  # noqa: ANN401  (as AppPage)
        """Bind the main card once."""
        super().__init__(*args, title="Wh/km and range", **kwargs)
        self.head.bind(on_open=lambda *_: self.open_working(HEAD))

    def show(self) -> None:
        """Show the figures at the speed."""
        style = self.style
        answer = consumption(self.state.board, self.state.person.rider, self.asking)
        self.show_faults(answer.faults)
        self.speed_text = style.number(self.asked("ask.cruise_speed") or 0.0, "speed")
        items = dict(answer.items)
        self.items = dict(items)
        self.fill(self.head, items.pop(HEAD))
        self.show_items(items, self.flow)
        self.rests_on = self._rests_on()
        speed, energy = (
            quantities()[name].home(style.system).shown for name in ("speed", "energy_per_distance")
        )
        self.chart.x_title, self.chart.y_title = f"Speed, {speed}", energy
        self.chart.empty_text = "The chart needs the values that are missing above."
        points = [(style.scale(x, "speed"), style.scale(y, "energy_per_distance")) for x, y in answer.curve]
        self.chart.lines = (Curve("held steady", points),) if points else ()

    def step(self, sign: int) -> None:
        """Go one step faster or slower."""
        unit, si = quantities()["speed"].home(self.style.system), quantities()["speed"].si
        field = field_of("ask.cruise_speed")
        now = unit.of_si(self.asked(field.key) or 0.0, si)
        wanted = unit.to_si(round(now) + sign, si)
        low, high = field.low or 0.0, field.high or 0.0
        self.ask_for(field.key, Value(min(max(wanted, low), high), "chosen", typed_unit=unit.shown))

    def label(self, name: str) -> str:
        """Return the words of a result at the speed."""
        return super().label(name).replace("{speed}", self.speed_text)

    def _rests_on(self) -> str:
        found = {}
        for key in ("load.rolling", "load.drag_area"):
            field, value = board_fields()[key], self.state.board.value(key)
            number = float(stand_in(field).cells[field.stand_in]) if value is None else float(value.si)
            found[key] = self.style.number(number, field.quantity)
        load = self.state.board.load
        known = ASSUMED if load.rolling is None and load.drag_area is None else ENTERED
        return FROM_BOARD.format(rolling=found["load.rolling"], area=found["load.drag_area"], known=known)


load_kv(__file__)
