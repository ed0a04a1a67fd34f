"""Long descents: volts first, then how much height this charge can take back."""

from typing import Any

from logic.answers.braking import FROM_SPEED
from logic.answers.descents import Descent, descent
from logic.answers.reading import RIDER
from logic.board import Board
from screens.figures import FiguresPage
from screens.widgets.text import Text
from screens.words.packs import AFTER_REACTION, AT_WORST, DESCENT


class DescentsPage(FiguresPage):
    """The drop this charge takes back, under the warning when the brake may cut out at once."""

    HEAD = "drop_back"
    LABELS = DESCENT
    DETAILS = {  # noqa: RUF012  (as in FiguresPage)
        "drop_back": "By energy alone: above full volts the brake may cut out before.",
        "volts": "At rest by a straight line from empty to full, plus the brake's amps through the pack.",
        "comes_back": "Rolling and air make the real figure lower.",
        "slows_as_set": AT_WORST,
        "stop_as_set": AFTER_REACTION,
    }
    CONTROLS = ("ask.start_charge", "ask.drop")
    CHIPS = (
        "controller.regen_current",
        "controller.brake_current",
        "pack.series",
        "pack.chemistry",
        "pack.cell_capacity",
        "pack.cell_resistance",
        "pack.parallel",
        "pack.packs",
        "load.board_mass",
        RIDER.key,
    )
    MINDS_PACK = False

    def __init__(self, *args: Any, **kwargs: Any) -> None:  # noqa: ANN401  (as AppPage)
        """Add what holds on every hill."""
        super().__init__(*args, title="Long descents", **kwargs)
        for line in (
            "Try the brake on the flat before the hill. Cold packs accept less.",
            "A snapped belt or an open fuse takes the motor brake away: know how to brake by foot.",
        ):
            self.advice.add_widget(Text(text=line))

    def work_out(self, board: Board) -> Descent:
        """Return the figures of the hill."""
        return descent(board, self.rider, self.asking)

    def label(self, name: str) -> str:
        """Put the speed into the label."""
        return DESCENT[name].format(speed=self.style.number(FROM_SPEED, "speed"))
