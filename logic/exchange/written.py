"""A board written as a person would type it, value and unit, in TOML."""

import tomllib
from pathlib import Path
from typing import Any
from uuid import uuid4

from logic.board import Board, Value, field_of
from logic.tables import ASSETS
from logic.units import read


def board_from_text(page: dict[str, Any], *, identity: str, example: bool = False) -> Board:
    """Return the board of a page whose values are pairs of typed text and how the value is known.

    Raises InputError for text that cannot be read or a value outside its limits.
    """
    board = Board(identity, page["name"], example)
    for key, (text, known) in page["values"].items():
        field = field_of(key)
        if field.kind in ("choice", "named"):
            value = Value(text, known)
        else:
            typed = read(text, field.quantity)
            value = Value(typed.si, known, typed_unit=typed.unit)
        board = board.with_value(key, value)
    return board


def demo_boards() -> tuple[Board, ...]:
    """Return the invented boards of assets/boards, marked as examples, each with a new identity."""
    names = ("towpath-36", "lock-keeper", "weir", "ferry")
    return tuple(_demo(ASSETS / "boards" / f"{name}.toml") for name in names)


def _demo(path: Path) -> Board:
    with path.open("rb") as file:
        return board_from_text(tomllib.load(file), identity=uuid4().hex, example=True)
