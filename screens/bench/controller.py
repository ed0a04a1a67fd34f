"""What to set in the controller: one card, worked out from the board."""

from typing import Any

from logic.answers.braking import FROM_SPEED
from logic.answers.controller_card import ControllerCard, controller_card
from logic.answers.reading import Item
from logic.board import Board
from screens.figures import SavedFiguresPage
from screens.widgets.column import Column
from screens.widgets.row import Section
from screens.widgets.text import Text
from screens.words.packs import AFTER_REACTION, AT_WORST, CARD, PARTS, TEMPERATURES


class ControllerPage(SavedFiguresPage):
    """What each controller is set to first, braking never without what it does, then volts, temperatures, words."""

    HEAD = "limit_drive_each"
    LABELS = CARD
    DETAILS = {  # noqa: RUF012  (as in FiguresPage)
        "motor_drive": "Motor amps, not battery amps. As on the board; heat in the motor decides.",
        "motor_brake": "Motor amps, not battery amps. As on the board.",
        "limit_burst": "Where the controller has a limit for a time. Set what holds for long, this is no setting.",
        "slows_for_long": AT_WORST,
        "stop_for_long": AFTER_REACTION,
        "low_start": "At rest, whole pack.",
        "low_end": "At rest, whole pack.",
        "full": "Above this the brake may cut out at once.",
    }
    CHIPS = (
        "drive.motors",
        "controller.motor_current",
        "controller.brake_current",
        "controller.battery_current",
        "controller.regen_current",
        "pack.cell_discharge_current",
        "pack.cell_charge_current",
        "pack.cell_brake_current",
        "pack.bms_discharge_current",
        "pack.bms_charge_current",
        "pack.fuse",
        "pack.connector_current",
        "pack.series",
        "pack.chemistry",
    )
    MINDS_PACK = False

    def __init__(self, *args: Any, **kwargs: Any) -> None:  # noqa: ANN401  (as AppPage)
        """Keep a column for temperatures and words."""
        super().__init__(*args, title="Set the controller", **kwargs)
        self.more_title, self.chips_title = "The rest of the card", "From the board: tap one to change it"
        self.card = Column(spacing=8)
        self.advice.add_widget(self.card)

    def work_out(self, board: Board) -> ControllerCard:
        """Return the card of a board."""
        return controller_card(board, self.rider, self.asking)

    def label(self, name: str) -> str:
        """Put the speed into the label."""
        return CARD[name].format(speed=self.style.number(FROM_SPEED, "speed"))

    def detail(self, name: str, item: Item) -> str:
        """Say which part holds a current down."""
        part = self.answer.held_by.get(name.removesuffix("_each"), "") if self.answer is not None else ""
        return f"Held by {PARTS[part]}." if part else super().detail(name, item)

    def show(self, answer: ControllerCard) -> None:
        """Write temperatures and settings."""
        style = self.style
        self.card.clear_widgets()
        self.card.add_widget(Section(title="Temperatures"))
        for row in answer.temperatures:
            start, end = (
                style.number(float(row.cells[column]), "temperature") for column in ("start", "end")
            )
            name = TEMPERATURES[row.text("name")]
            self.card.add_widget(Text(text=f"{name}: hold back from {start}, stop at {end}."))
        self.card.add_widget(Section(title="Settings"))
        for row in answer.words:
            self.card.add_widget(Text(text=row.text("text")))
