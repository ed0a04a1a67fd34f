"""One joint of the board: how tight, how, with what, and that it was done."""

from typing import Any

from kivy.properties import BooleanProperty, StringProperty

from logic.answers.joint_entry import tightening
from logic.answers.joints import joint_card, kind_of
from logic.answers.reading import Open
from logic.board import Board
from logic.store import Record
from screens.bench.joint_column import CardPage
from screens.state import Undo
from screens.widgets.load import load_kv
from screens.widgets.row import Section
from screens.widgets.text import Text
from screens.words.joints import TOOLS, again_text, answer_text, is_due, summary, tightened_text


def board_of(page: Any) -> Board:  # noqa: ANN401  (any AppPage)
    """Return the board whose joints are shown: the saved one, or the scratch board with its trial."""
    state = page.state
    board: Board = state.board if state.is_scratch else state.saved
    return board


def rides_since(page: Any, record: Record | None) -> int:  # noqa: ANN401  (any AppPage)
    """Return how many rides the log has after an entry."""
    if record is None:
        return 0
    rides = page.state.store.page(page.state.saved.id, "ride", limit=50)
    return sum(ride.at > record.at for ride in rides)


class JointPage(CardPage):
    """Shows the joint with the key `joint`."""

    done_text = StringProperty()
    done_detail = StringProperty()
    can_record = BooleanProperty(defaultvalue=False)

    def refresh(self) -> None:
        """Work the joint out anew and show it."""
        key = self.args["joint"]
        board, record = board_of(self), self.state.last("tightening", joint=key)
        rides = rides_since(self, record)
        minute = self.state.clock().replace(second=0, microsecond=0)
        if self.same(key, board, record, rides, minute):
            return
        self.card = joint_card(board, key, self.state.person)
        self.title = kind_of(key).text("name")
        self.body.clear_widgets()
        self.add_answer()
        self._add_inputs()
        self.add_hold()
        self.add_notes()
        self.add_work()
        self.add_locker()
        self.add_pull()
        self._add_record(record, rides)
        self.add_alike()
        self.add_workings()
        self.can_record = bool(self.card.torque or self.card.feel)
        self.done_text, self.done_detail = "Not known yet", ""
        if self.can_record:
            tool, grade = self._tool(), "none" if self.card.locker is None else self.card.locker.grade
            by = f", {TOOLS[tool].lower()}" if self.card.torque else ""
            self.done_text = f"Done: {answer_text(self.card, self.style)}{by}"
            self.done_detail = f"Writes it into the log, {'no' if grade == 'none' else grade} locker"

    def _add_inputs(self) -> None:
        known = self.card.joint.known
        self.add(
            self.row(
                lambda: self.shell.go("bench.joint_edit", joint=self.args["joint"]),
                title=summary(self.card.joint, self.style),
                detail=f"Least sure value: {known}. Tap to change" if known else "Tap to describe this joint",
                icon="edit",
            )
        )
        item = self.card.items["wrench"]
        if isinstance(item, Open) and item.missing:
            first = item.missing[0]
            self.add(
                self.row(lambda: self.shell.go("bench.joint_value", key=first), title="Add it", icon="plus")
            )

    def _add_record(self, record: Record | None, rides: int) -> None:
        now = self.state.clock()
        due = is_due(record, now, rides)
        self.add(
            Section(title="Record"),
            Text(text=tightened_text(record, now, self.style), bold=True),
            Text(text=again_text(self.card, record, now, rides), tone="trial" if due else "text", bold=due),
            self.row(
                lambda: self.shell.go("bench.joint_done", joint=self.args["joint"]),
                title="Record other figures or tool, a look, who, a note",
                icon="log",
            ),
        )

    def _tool(self) -> str:
        """Return the tool that the tap names: the one last used, by feel where there is no torque."""
        tool: str = self.state.store.get("joint_tool", "torque wrench") if self.card.torque else "by feel"
        return tool

    def done(self) -> None:
        """Write into the log what the bar says: one tap, with undo."""
        number = self.state.record(tightening(self.card, torque=self.card.torque, tool=self._tool()))
        self.state.undo = Undo("Recorded", lambda: self.state.take_back(number))


load_kv(__file__)
