"""All boards: choose one, add one, bring one back from the bin."""

from functools import partial
from typing import Any

from kivy.properties import ObjectProperty

from logic.board import Board
from screens.page import AppPage
from screens.widgets.load import load_kv
from screens.widgets.row import Row, Section


class BoardsPage(AppPage):
    """The list of boards, the one in use ticked, and the bin under it."""

    boards = ObjectProperty()

    def __init__(self, *args: Any, **kwargs: Any) -> None:  # noqa: ANN401  (as AppPage)
        """Name the page."""
        super().__init__(*args, title="Boards", nav=False, chip=False, **kwargs)

    def refresh(self) -> None:
        """List the boards."""
        self.boards.clear_widgets()
        boards, binned = self.state.boards(), self.state.binned()
        for board in boards:
            self._add(
                board, self._detail(board), "tick" if board.id == self.state.saved.id else "", self.choose
            )
        if binned:
            self.boards.add_widget(Section(title="In the bin"))
        for board in binned:
            self._add(board, "Tap to bring it back", "bin", self.restore)

    def _detail(self, board: Board) -> str:
        done, asked = board.filled()
        return ("Example, " if board.example else "") + f"{done} of {asked} filled"

    def _add(self, board: Board, detail: str, icon: str, act: Any) -> None:  # noqa: ANN401  (a function of an id)
        row = Row(title=board.name, detail=detail, icon=icon)
        row.bind(on_release=partial(self._act, act, board.id))
        self.boards.add_widget(row)

    def _act(self, act: Any, identity: str, *_: object) -> None:  # noqa: ANN401  (as above)
        act(identity)

    def choose(self, identity: str) -> None:
        """Put a board in use and go back to what it was asked for."""
        self.state.choose(identity)
        self.shell.back()

    def restore(self, identity: str) -> None:
        """Bring a board back from the bin."""
        self.state.restore_board(identity)


load_kv(__file__)
