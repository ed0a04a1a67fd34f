"""The rows of Numbers that are about packs, each with its present answer."""

from functools import partial
from typing import Any

from kivy.properties import ObjectProperty

from logic.answers.charging import charging, wrong_charger
from logic.answers.descents import descent
from logic.answers.energy import pack_energy
from logic.answers.joining import joining
from logic.answers.range import range_alone
from logic.answers.reading import Item, Result
from logic.answers.wiring import wiring
from screens.asked import asked, logged_rides
from screens.page import AppPage
from screens.widgets.column import Column
from screens.widgets.row import Row
from screens.words import Style

ROWS = (
    ("numbers.packs", "Pack energy and limits", "battery", "Energy, sag, heat, the weakest limit."),
    ("numbers.range", "Range", "road", "By speed, climb and cold, or from the log."),
    ("numbers.charging", "Charging", "battery", "Amps into each cell, time, temperature."),
    ("numbers.joining", "Joining packs", "swap", "Difference these packs allow."),
    ("numbers.wiring", "Wiring and fuse", "wires", "Riding current against the wire."),
    ("numbers.descents", "Long descents", "road", "Drop the packs take back."),
    ("numbers.care", "Storage and care", "battery", ""),
)


class PackRows(Column):
    """Asks for the answers when its page is shown, and only then."""

    page: AppPage = ObjectProperty()

    def __init__(self, **kwargs: Any) -> None:  # noqa: ANN401  (Kivy's properties)
        """Build the rows once."""
        super().__init__(**kwargs)
        self._rows: dict[str, Row] = {}
        for name, title, icon, detail in ROWS:
            row = Row(title=title, icon=icon, detail=detail)
            row.bind(on_release=partial(self._open, name))
            self._rows[name] = row
            self.add_widget(row)

    def _open(self, name: str, *_: object) -> None:
        self.page.shell.go(name)

    def refresh(self) -> None:
        """Show the present answers."""
        state = self.page.state
        board, rider, answers, style = state.board, state.person.rider, asked(state), self.page.style
        found: dict[str, Item | None] = {
            "numbers.packs": pack_energy(board),
            "numbers.range": range_alone(board, rider, answers, logged_rides(state)),
            "numbers.charging": charging(board, answers).items["cell_amps"],
            "numbers.joining": joining(board, answers).items.get("allowed"),
            "numbers.wiring": wiring(board, answers).items["riding"],
            "numbers.descents": descent(board, rider, answers).items["drop_back"],
        }
        for name, item in found.items():
            self._rows[name].value, self._rows[name].value_tone = _value(item, style), "text"
        if wrong_charger(board):
            row = self._rows["numbers.charging"]
            row.value, row.value_tone = "wrong charger", "bad"


def _value(item: Item | None, style: Style) -> str:
    return style.number(item.value, item.quantity) if isinstance(item, Result) else ""
