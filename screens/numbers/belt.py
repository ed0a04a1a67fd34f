"""Choose a belt: those in stock near the wanted centre distance, and what the board's own can carry."""

from functools import partial
from typing import Any

from kivy.properties import BooleanProperty, ObjectProperty, StringProperty

from logic.answers.belt_choice import BeltChoice, BeltRow, belt_choice
from logic.answers.reading import RIDER, Result
from logic.board import Field, Value
from screens.trying import TryingPage
from screens.widgets.load import load_kv
from screens.widgets.row import Row
from screens.words.belt import BEYOND, CHOICE, LACKS, makers, stock_title

WANTED = Field(
    "wanted_centre",
    "Wanted centre distance",
    "number",
    0,
    "",
    quantity="length",
    low=0.03,
    high=0.4,
)
DRIVE = ("span", "wrap", "teeth_in_mesh", "mesh_factor")
TRAVEL = ("lay_on", "take_up", "tolerance", "slot_inner", "slot_outer")
LOAD = (
    "rated_start",
    "peak_torque",
    "used_start",
    "rated_top",
    "steady_torque",
    "used_top",
    "rotation",
    "belt_speed",
    "smallest",
)


class BeltPage(TryingPage):
    """The belt's centre first, then teeth, then what is in stock, the drawing, and what it carries."""

    chip_keys = (
        WANTED.key,
        "drive.profile",
        "drive.belt_width",
        "mount.centre_least",
        "mount.centre_most",
        "mount.flanged",
        "drive.wheel_diameter",
        "motor.kv",
        "controller.motor_current",
        "controller.brake_current",
        "drive.motors",
        RIDER.key,
    )
    own_fields = {WANTED.key: WANTED}  # noqa: RUF012  (declared as a ClassVar above)
    labels = CHOICE

    motor_teeth = StringProperty("\N{EN DASH}")
    wheel_teeth = StringProperty("\N{EN DASH}")
    belt_teeth = StringProperty("\N{EN DASH}")
    motor_trial = BooleanProperty(defaultvalue=False)
    wheel_trial = BooleanProperty(defaultvalue=False)
    belt_trial = BooleanProperty(defaultvalue=False)
    near = StringProperty()
    notes = StringProperty()
    beyond = StringProperty(BEYOND)
    head = ObjectProperty()
    stock = ObjectProperty()
    drive = ObjectProperty()
    travel = ObjectProperty()
    load = ObjectProperty()

    def __init__(self, *args: Any, **kwargs: Any) -> None:  # noqa: ANN401  (as AppPage)
        """Name the page."""
        super().__init__(*args, title="Belt", **kwargs)
        self.head.bind(on_open=lambda *_: self.open_working("centre"))

    def show(self) -> None:
        """Show the belt and what is in stock around the wanted centre."""
        board = self.state.board
        answer = belt_choice(board, self.state.person.rider, self.own_value(WANTED.key))
        self.items = dict(answer.items)
        self.fill(self.head, answer.items["centre"])
        self._show_present(answer)
        self.show_cards(answer.items, DRIVE, self.flow)
        self.show_cards(answer.items, TRAVEL, self.travel)
        self.show_cards(answer.items, LOAD, self.load)
        for name in ("motor", "wheel", "belt"):
            key = f"drive.{name}_teeth"
            value = board.value(key)
            text = "\N{EN DASH}" if value is None else self.style.plain(float(value.si))
            setattr(self, f"{name}_teeth", text)
            setattr(self, f"{name}_trial", self.on_trial(key))
        self._show_stock(answer)
        self._show_notes(answer)
        self._show_drive(answer)

    def _show_present(self, answer: BeltChoice) -> None:
        teeth = self.state.board.drive.belt_teeth
        for line in answer.rows:
            if teeth is not None and teeth.si == line.belt.teeth:
                self.head.detail = " ".join(part for part in (makers(line.belt), LACKS[line.lacks]) if part)

    def _show_stock(self, answer: BeltChoice) -> None:
        self.stock.clear_widgets()
        if answer.wanted is None or not answer.rows:
            self.near = (
                "In stock: the list needs profile, both pulleys and a belt or a wanted centre distance."
            )
            return
        self.near = f"In stock near {self.style.number(answer.wanted, 'length')}"
        for line in answer.rows:
            teeth = self.state.board.drive.belt_teeth
            here = teeth is not None and teeth.si == line.belt.teeth
            row = Row(
                title=stock_title(line.belt, self.style) + (", on the board" if here else ""),
                detail=self._row_text(line),
                value=self.style.number(line.centre, "length"),
                icon="tick" if here else "",
            )
            row.bind(on_release=partial(self._take, line))
            self.stock.add_widget(row)

    def _row_text(self, line: BeltRow) -> str:
        off = self.style.change(line.centre, line.centre - line.off, "length")
        return " ".join(
            part for part in (f"{off} against wanted.", LACKS[line.lacks], makers(line.belt)) if part
        )

    def _take(self, line: BeltRow, *_: object) -> None:
        self.state.try_value("drive.belt_teeth", Value(float(line.belt.teeth), "label"))

    def _show_notes(self, answer: BeltChoice) -> None:
        notes = []
        if isinstance(answer.items["centre"], Result) and answer.rows and not answer.in_stock:
            notes.append("This length is in none of the lists near here.")
        if answer.few_teeth:
            notes.append("Fewer than 6 teeth in mesh: the rating falls, and the belt climbs more easily.")
        if answer.small_pulley:
            notes.append(
                "The motor pulley is smaller than suggested for a long life; most boards do that, and change"
                " belts more often. 20 teeth beside a 97 mm wheel is the usual middle way."
            )
        self.notes = " ".join(notes)

    def _show_drive(self, answer: BeltChoice) -> None:
        drawing, board = self.drive, self.state.board
        teeth = (board.drive.motor_teeth, board.drive.wheel_teeth)
        centre, span = answer.items["centre"], answer.items["span"]
        if not isinstance(centre, Result) or not isinstance(span, Result) or None in teeth:
            drawing.centre, drawing.empty_text = 0, "The drawing needs both pulleys and the belt."
            return
        drawing.motor_teeth, drawing.wheel_teeth = (int(value.si) for value in teeth)
        drawing.motor_diameter, drawing.wheel_pulley_diameter = answer.diameters
        wheel = board.drive.wheel_diameter
        drawing.wheel_diameter = float(wheel.si) if wheel is not None else 0
        drawing.centre = centre.value
        drawing.motor_text, drawing.wheel_text = (self.style.plain(float(value.si)) for value in teeth)
        drawing.centre_text = self.style.number(centre.value, "length")
        drawing.span_text = self.style.number(span.value, "length")


load_kv(__file__)
