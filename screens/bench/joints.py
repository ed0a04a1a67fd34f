"""The joints of this board, in the order of building, each with its present answer."""

from functools import partial
from typing import Any

from kivy.properties import ObjectProperty

from logic.answers.joints import joints_of
from logic.board_joints import joint_places
from screens.app_page import AppPage
from screens.bench.joint import board_of, rides_since
from screens.widgets.load import load_kv
from screens.widgets.row import Row
from screens.words.joints import answer_text, is_due, summary, tightened_text


class JointsPage(AppPage):
    """One row for each joint; built once, later only its words change."""

    rows = ObjectProperty()

    def __init__(self, *args: Any, **kwargs: Any) -> None:  # noqa: ANN401  (as AppPage)
        """Build the rows."""
        self._rows: dict[str, Row] = {}
        super().__init__(*args, title="Joints", **kwargs)
        for key in joint_places():
            row = Row()
            row.bind(on_release=partial(self._open, key))
            self._rows[key] = row
            self.rows.add_widget(row)

    def refresh(self) -> None:
        """Show what each joint is set to, and when it was."""
        now = self.state.clock()
        for card in joints_of(board_of(self), self.state.person):
            row = self._rows[card.key]
            record = self.state.last("tightening", joint=card.key)
            row.title, row.value = card.kind.text("name"), answer_text(card, self.style)
            due = is_due(record, now, rides_since(self, record))
            said = "Look at it again now." if due else tightened_text(record, now, self.style)
            row.detail = f"{summary(card.joint, self.style)}. {said}"
            row.icon = "cross" if card.notice[0] == "warning" else "due" if due else "tick" if record else ""

    def _open(self, key: str, *_: object) -> None:
        self.shell.go("bench.joint", joint=key)


load_kv(__file__)
