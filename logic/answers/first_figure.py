"""A figure that stands before a board is known whole: how far its values go, and what is taken as usual."""

from typing import Literal

from logic.answers.first_speed import FIRST, WEIGHT
from logic.answers.reading import RIDER, Item
from logic.board import Board, Value
from logic.frozen import frozen

SEEN = (*FIRST, *WEIGHT)
"""Values one reads off the board and the scale: with them drive and road are modelled."""

Level = Literal["nothing", "by usual", "modelled"]


@frozen
class FirstFigure:
    """The best figure so far, how far the values go, and which of them are taken as usual.

    `nothing` is an Open figure that names the values it lacks.
    """

    level: Level
    item: Item
    assumed: tuple[str, ...] = ()


def lacking(board: Board, rider: Value | None, keys: tuple[str, ...]) -> tuple[str, ...]:
    """Return those of some values that are not entered.

    >>> lacking(Board("a", "A"), None, ("rider.mass",))
    ('rider.mass',)
    """
    return tuple(key for key in keys if (rider if key == RIDER.key else board.value(key)) is None)
