"""All boards: choose one, add one, bring one back from the bin."""

from collections.abc import Callable, Iterator
from typing import Any, TypeAlias

from kivy.properties import ObjectProperty

from logic.board import Board
from screens.app_page import AppPage
from screens.widgets.load import load_kv
from screens.widgets.refill import refill
from screens.widgets.row import Row, Section

Line: TypeAlias = tuple[str, str, str, str]
"""A row: the id of its board, its title, its detail, its picture."""


class BoardsPage(AppPage):
    """The list of boards, the one in use ticked, and the bin under it."""

    boards = ObjectProperty()

    def __init__(self, *args: Any, **kwargs: Any) -> None:  # noqa: ANN401  (as AppPage)
        """Name the page."""
        super().__init__(*args, title="Boards", nav=False, chip=False, **kwargs)

    def refresh(self) -> None:
        """List the boards."""
        state = self.state
        lines = [
            (board.id, board.name, self._detail(board), "tick" if board.id == state.saved.id else "")
            for board in state.boards()
        ]
        binned = [(board.id, board.name, "Tap to bring it back", "bin") for board in state.binned()]
        refill(self.boards, (lines, binned), lambda: self._rows(lines, binned))

    def _rows(self, lines: list[Line], binned: list[Line]) -> Iterator[Row | Section]:
        for line in lines:
            yield self._row(*line, self.choose)
        if binned:
            yield Section(title="In the bin")
        for line in binned:
            yield self._row(*line, self.restore)

    def _detail(self, board: Board) -> str:
        done, asked = board.filled()
        return ("Example, " if board.example else "") + f"{done} of {asked} filled"

    def _row(self, identity: str, name: str, detail: str, icon: str, act: Callable[[str], None]) -> Row:
        row = Row(title=name, detail=detail, icon=icon)
        row.bind(on_release=lambda *_: act(identity))
        return row

    def choose(self, identity: str) -> None:
        """Put a board in use and go back to what it was asked for."""
        self.state.choose(identity)
        self.shell.back()

    def restore(self, identity: str) -> None:
        """Bring a board back from the bin."""
        self.state.restore_board(identity)


load_kv(__file__)
