"""The board in use: every value, how it is known, and what is missing."""

from functools import partial
from typing import Any

from kivy.properties import BooleanProperty, ObjectProperty, StringProperty

from logic.board import Field, board_fields, groups
from screens.app_page import AppPage
from screens.widgets.load import load_kv
from screens.widgets.row import Row, Section
from screens.words import KNOWN
from screens.words.typed import not_used


class BoardHome(AppPage):
    """Values by part, the guided entry, and what can be done with the whole board."""

    filled = StringProperty()
    trial_note = StringProperty()
    unread = StringProperty()
    scratch = BooleanProperty(defaultvalue=False)
    complete = BooleanProperty(defaultvalue=False)
    values = ObjectProperty()

    def __init__(self, *args: Any, **kwargs: Any) -> None:  # noqa: ANN401  (as AppPage)
        """Build a row for each field once; later only their words change."""
        self._rows: dict[str, Row] = {}
        super().__init__(*args, title="Board", **kwargs)

    def refresh(self) -> None:
        """Show the saved values."""
        if not self._rows:
            self._build()
        board = self.state.board if self.state.is_scratch else self.state.saved
        self.scratch = self.state.is_scratch
        done, asked = board.filled()
        gaps = board.missing()
        self.complete = not gaps
        self.filled = f"{done} of {asked} filled." + ("" if self.complete else ' The rest show "not set".')
        self.trial_note = (
            "A trial is open. This page shows the saved board."
            if self.state.trial and not self.scratch
            else ""
        )
        kept = ", ".join(".".join(place) for place, _ in board.kept)
        self.unread = f"Could not be read, and kept as it is: {kept}." if kept else ""
        for key, row in self._rows.items():
            row.value, row.detail = self._words(board_fields()[key])
            row.detail = not_used(self.state.typed.get(f"board/{key}", "")) or row.detail

    def _build(self) -> None:
        for group, heading in groups().items():
            self.values.add_widget(Section(title=heading))
            for field in board_fields().values():
                if field.group == group:
                    row = Row(title=field.label)
                    row.bind(on_release=partial(self._open, field.key))
                    self._rows[field.key] = row
                    self.values.add_widget(row)

    def _words(self, field: Field) -> tuple[str, str]:
        board = self.state.board if self.state.is_scratch else self.state.saved
        value = board.value(field.key)
        if value is None and not board.applies(field):
            return "–", "for a board with one motor"
        if value is None:
            stands_in = "a usual value is assumed" if field.stand_in else ""
            return "not set", "" if field.need else stands_in or "optional"
        date = f", {value.on}" if value.on else ""
        if field.kind == "choice":
            return field.option(str(value.si)).label, f"{KNOWN[value.known]}{date}"
        text = self.style.typed(float(value.si), field.quantity, value.typed_unit)
        return text, f"{KNOWN[value.known]}{date}"

    def _open(self, key: str, *_: object) -> None:
        self.shell.go("board.value", key=key)

    def bin(self) -> None:
        """Put the board in the bin and show the list of boards, where it lies with a way back.

        The next board is not shown here: its own bin would stand under the same thumb.
        """
        self.state.bin_board()
        self.shell.replace("board.boards")

    def add_next(self) -> None:
        """Ask for the gap that unlocks most."""
        gaps = (self.state.board if self.state.is_scratch else self.state.saved).missing()
        if gaps:
            self.shell.go("board.value", key=gaps[0].key, guided=True)


load_kv(__file__)
