"""Choose a belt: those in stock near the wanted centre distance, and what the board's own can carry."""

from functools import partial

from kivy.properties import ObjectProperty, StringProperty

from logic.answers.belt_choice import BeltChoice, BeltRow, belt_choice
from logic.answers.reading import RIDER, Item, Result
from logic.board import Board, Value
from screens.answering import AnsweringPage
from screens.widgets.load import load_kv
from screens.widgets.row import Row
from screens.words.belt import BEYOND, CHOICE, LACKS, makers, stock_title

DRIVE = ("span", "wrap", "teeth_in_mesh", "mesh_factor")
TRAVEL = ("lay_on", "take_up", "tolerance", "slot_inner", "slot_outer")
LOAD = (
    "rated_start",
    "peak_torque",
    "used_start",
    "rated_top",
    "steady_torque",
    "used_top",
    "angular_speed_loaded",
    "belt_speed",
    "smallest",
)


class BeltPage(AnsweringPage):
    """The belt's centre first, then teeth, then what is in stock, the drawing, and what it carries."""

    HEAD = "centre"
    CONTROLS = ("drive.motor_teeth", "drive.wheel_teeth", "drive.belt_teeth")
    CHIPS = (
        "ask.wanted_centre",
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
    LABELS = CHOICE

    title = StringProperty("Belt")
    near = StringProperty()
    notes = StringProperty()
    beyond = StringProperty(BEYOND)
    stock = ObjectProperty()
    drive = ObjectProperty()
    travel = ObjectProperty()
    load = ObjectProperty()

    def work_out(self, board: Board) -> BeltChoice:
        """Return the belt and what is in stock around the wanted centre."""
        return belt_choice(board, self.rider, self.asked("ask.wanted_centre"))

    def control_label(self, key: str) -> str:
        """Name the belt shortly."""
        return "Belt" if key == "drive.belt_teeth" else super().control_label(key)

    def detail(self, name: str, item: Item) -> str:
        """Say of the board's own belt who makes it and what it lacks."""
        if name != self.HEAD:
            return super().detail(name, item)
        own = (line for line in self.answer.rows if self._on_board(line))
        return next(
            (" ".join(part for part in (makers(line.belt), LACKS[line.lacks]) if part) for line in own), ""
        )

    def _on_board(self, line: BeltRow) -> bool:
        teeth = self.board.drive.belt_teeth
        return teeth is not None and teeth.si == line.belt.teeth

    def show_figures(self) -> None:
        """Show the centre distance, then the drive, the mount and the load."""
        self.show_head()
        for flow, names in ((self.flow, DRIVE), (self.travel, TRAVEL), (self.load, LOAD)):
            self.cards.show(flow, *names)

    def show(self, answer: BeltChoice) -> None:
        """Show what is in stock, what is worth a word, and the drawing."""
        self._show_stock(answer)
        self._show_notes(answer)
        self._show_drive(answer)

    def _show_stock(self, answer: BeltChoice) -> None:
        self.stock.clear_widgets()
        if answer.wanted is None or not answer.rows:
            self.near = (
                "In stock: the list needs profile, both pulleys and a belt or a wanted centre distance."
            )
            return
        self.near = f"In stock near {self.style.number(answer.wanted, 'length')}"
        for line in answer.rows:
            here = self._on_board(line)
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
        drawing, board = self.drive, self.board
        teeth = (board.drive.motor_teeth, board.drive.wheel_teeth)
        centre, span = answer.items["centre"], answer.items["span"]
        if not isinstance(centre, Result) or not isinstance(span, Result) or None in teeth:
            drawing.centre, drawing.empty_text = 0, "The drawing needs both pulleys and the belt."
            return
        drawing.motor_teeth, drawing.wheel_teeth = (int(value.si) for value in teeth)
        drawing.motor_diameter, drawing.wheel_pulley_diameter = map(float, answer.diameters)
        wheel = board.drive.wheel_diameter
        drawing.wheel_diameter = float(wheel.si) if wheel is not None else 0
        drawing.centre = float(centre.value)
        drawing.motor_text, drawing.wheel_text = (self.style.plain(float(value.si)) for value in teeth)
        drawing.centre_text = self.style.number(centre.value, "length")
        drawing.span_text = self.style.number(span.value, "length")


load_kv(__file__)
