"""Usual set-ups: invented boards of a common kind, every value a guess, to be taken and changed."""

import tomllib
from functools import cache

from logic.board import Board
from logic.exchange import board_from_text
from logic.frozen import frozen
from logic.tables import ASSETS
from logic.tongue import said

NAMES = ("short-trips", "street", "hills", "light")
"""The files of assets/set_ups, in the order they are offered."""


@frozen
class SetUp:
    """A set-up: what it is good for, and the board it makes, an example with an identity of its own to be given."""

    key: str
    about: str
    board: Board


@cache
def set_ups() -> tuple[SetUp, ...]:
    """Return the usual set-ups.

    >>> [one.board.name for one in set_ups()][:2]
    ['One motor, short trips', 'Two motors, street']
    """
    return tuple(map(_read, NAMES))


def _read(key: str) -> SetUp:
    with (ASSETS / "set_ups" / f"{key}.toml").open("rb") as file:
        page = said("set_ups", tomllib.load(file))
    values = {name: (text, "guess") for name, text in page["values"].items()}
    board = board_from_text({"name": page["name"], "values": values}, identity=key, example=True)
    return SetUp(key, page["about"], board)
