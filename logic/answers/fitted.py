"""A checklist on a board: which items apply, and the values that are kept with it. Needs no figure."""

from logic.board import Board, board_fields
from logic.checks.lists import Checklist, Lookup, fitted


def lookup(board: Board) -> Lookup:
    """Return how a list asks a board: the value of a field, None for one not set or not known here."""

    def value_of(key: str) -> float | str | None:
        value = board.value(key) if key in board_fields() else None
        return None if value is None else value.si

    return value_of


def for_board(of: Checklist, board: Board) -> Checklist:
    """Return the list with the items that apply to a board: one motor or two, one pack or more."""
    return fitted(of, lookup(board))


def snapshot(board: Board) -> dict[str, float | str]:
    """Return the values of a board as they are kept with a check: field and SI value or option."""
    found = {key: board.value(key) for key in board_fields()}
    return {key: value.si for key, value in found.items() if value is not None}
