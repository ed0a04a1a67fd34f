"""Packs: energy, volts, sag and heat, and which part limits first."""

from typing import Any

from logic.answers.braking import FROM_SPEED
from logic.answers.energy import PackFigures, pack_figures
from logic.answers.reading import RIDER, Item, Open
from logic.board import Board
from screens.figures import FiguresPage
from screens.widgets.row import Row
from screens.words.packs import AFTER_REACTION, AT_WORST, ENERGY, OUTCOMES, PARTS

WAYS = {"limit_drive": "drive", "limit_brake": "brake", "limit_burst": "burst"}


class PacksPage(FiguresPage):
    """Watt-hours first, then what the parts allow; braking amps never without what they do to the board."""

    HEAD = "energy"
    LABELS = ENERGY
    DETAILS = {  # noqa: RUF012  (as in FiguresPage)
        "energy": "Nominal volts times rated amp-hours. Cheap cells hold less than their label says.",
        "slows_as_set": AT_WORST,
        "stop_as_set": AFTER_REACTION,
        "full_braking": "Above full charge the brake may cut out at once.",
        "packs_mass": "Cells with case, leads and BMS.",
        "short": "What a fuse must be able to break.",
    }
    CONTROLS = ("pack.series", "pack.parallel", "pack.packs")
    CHIPS = (
        "pack.chemistry",
        "pack.cell_capacity",
        "pack.cell_resistance",
        "pack.cell_mass",
        "ask.current",
        "pack.cell_discharge_current",
        "pack.cell_charge_current",
        "pack.cell_brake_current",
        "pack.bms_discharge_current",
        "pack.bms_charge_current",
        "pack.fuse",
        "pack.connector_current",
        "controller.battery_current",
        "controller.regen_current",
        "controller.brake_current",
        "load.board_mass",
        RIDER.key,
    )
    MINDS_PACK = False

    def __init__(self, *args: Any, **kwargs: Any) -> None:  # noqa: ANN401  (as AppPage)
        """Offer what to set in the controller at the end."""
        super().__init__(*args, title="Pack energy and limits", **kwargs)
        row = Row(title="What to set in the controller", icon="settings")
        row.bind(on_release=lambda *_: self.shell.go("bench.controller"))
        self.advice.add_widget(row)

    def work_out(self, board: Board) -> PackFigures:
        """Return the figures of the packs."""
        return pack_figures(board, self.rider, self.asking)

    def label(self, name: str) -> str:
        """Put the current or the speed into the label."""
        style = self.style
        value = self.inputs.value("ask.current") or self.board.controller.battery_current
        current = "the battery limit" if value is None else style.number(float(value.si), "current")
        return ENERGY[name].format(current=current, speed=style.number(FROM_SPEED, "speed"))

    def detail(self, name: str, item: Item) -> str:
        """Name the part that limits first."""
        if name in WAYS and self.answer is not None:
            part = self.answer.weakest.get(WAYS[name])
            return f"Whole board. Held by {PARTS[part]}." if part else ""
        if isinstance(item, Open) and item.problem is not None and item.problem.reason == "no braking":
            return OUTCOMES["no braking"]
        return super().detail(name, item)
