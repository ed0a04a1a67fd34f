"""Joining two packs: same kind or not at all, and how far apart they may be."""

from typing import Any

from logic.answers.joining import PARALLEL, SECOND, SERIES, Joining, joining, like
from logic.answers.reading import Item, Open, Result
from logic.board import Board, Value
from screens.figures import FiguresPage
from screens.inputs import Inputs
from screens.widgets.row import Row, Section
from screens.widgets.text import Text
from screens.words.packs import JOINING

SHOWN = {name: JOINING[name] for name in (*PARALLEL, *SERIES) if name in JOINING}


class SecondPack(Inputs):
    """The second pack is like the first until it is said to differ."""

    def value(self, key: str) -> Value | None:
        """Return the present value."""
        found = super().value(key)
        if found is not None or key not in SECOND:
            return found
        same = like(self.page.board, key)
        return None if same is None else Value(same.si, "like the first", typed_unit=same.typed_unit)


class JoiningPage(FiguresPage):
    """The difference these packs allow first; packs that differ stop the page."""

    HEAD = "allowed"
    LABELS = SHOWN
    DETAILS = {  # noqa: RUF012  (as in FiguresPage)
        "allowed": "50 mV for each cell in series, or less where the lower pack's charge limit says so.",
        "joining_current": "From the fuller pack into the lower one, through both and the leads.",
        "settles": "Until a twentieth of the current is left. It is not over at once.",
    }
    INPUTS = SecondPack
    CONTROLS = ("ask.way", "ask.first_volts", "ask.second_volts")
    CHIPS = (
        "ask.second_series",
        "ask.second_chemistry",
        "ask.second_parallel",
        "ask.second_capacity",
        "ask.second_resistance",
        "ask.joining_leads",
        "pack.series",
        "pack.chemistry",
        "pack.parallel",
        "pack.cell_capacity",
        "pack.cell_resistance",
        "pack.cell_charge_current",
        "controller.voltage_limit",
    )
    FIXES = {  # noqa: RUF012  (as in FiguresPage)
        "series differ": "ask.second_series",
        "chemistry differs": "ask.second_chemistry",
        "amp-hours differ": "ask.second_capacity",
        "difference too large": "ask.second_volts",
        "charge differs": "ask.second_volts",
    }

    def __init__(self, *args: Any, **kwargs: Any) -> None:  # noqa: ANN401  (as AppPage)
        """Keep a column for the rules."""
        super().__init__(*args, title="Joining packs", **kwargs)
        self.chips_title = "The second pack and the board's: tap one to change it"

    def work_out(self, board: Board) -> Joining:
        """Return what joining does, for the chosen way."""
        return joining(board, self.asking)

    def show_figures(self) -> None:
        """Head the page by the figure of the way that was chosen."""
        self.HEAD = self.answer.head
        super().show_figures()

    def detail(self, name: str, item: Item) -> str:
        """Say that meter readings grow old, and what the controller stands."""
        if name == "full_in_series" and isinstance(item, Result):
            return self._against_the_controller(item.value)
        if name == "apart":
            return "" if isinstance(item, Open) and item.missing else "Readings count for half an hour."
        apart = self.answer.items.get("apart") if self.answer is not None else None
        if name == "allowed" and self.answer.outcome is not None and isinstance(apart, Result):
            # A difference that is too large stops the page before it comes to this.
            return f"{self.style.number(apart.value, 'voltage')} apart as measured: they may be joined."
        return super().detail(name, item)

    def _against_the_controller(self, full: float) -> str:
        limit = self.board.controller.voltage_limit
        if limit is None:
            return "The limit of the controller is not entered: look at its sheet."
        stands = self.style.typed(float(limit.si), "voltage")
        return f"The controller stands {stands}: {'too much' if full > float(limit.si) else 'not above it'}."

    def show(self, answer: Joining) -> None:
        """Show the rules of the way, in order; their hazard words stand in the notice, once."""
        self.advice.clear_widgets()
        self.advice.add_widget(Section(title="Before the plugs meet"))
        for number, rule in enumerate(answer.rules, start=1):
            self.advice.add_widget(Text(text=f"{number}. {rule.text('text')}"))
        if answer.way == "parallel":
            self.advice.add_widget(
                Text(
                    text="Too far apart: charge both full with their own charger, rest an hour, measure again.",
                    bold=True,
                )
            )
        signs = Row(title="Swollen or hot pack?", icon="battery", tone="bad")
        signs.bind(on_release=lambda *_: self.shell.go("ride.pack_signs"))
        self.advice.add_widget(signs)
