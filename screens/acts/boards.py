"""Acts on whole boards: choose, add, bin, copy, take in."""

from logic.board import Board
from screens.acts import Act


class Choose(Act):
    """Put another board in use. Its own trial comes back with it; the other's is parked."""

    board: str


class AddBoard(Act):
    """Save a new board and put it in use; `like` is what it begins as, else it is empty."""

    name: str
    like: Board | None = None


class Rename(Act):
    """Give the board in use another name."""

    name: str


class KeepAs(Act):
    """Save what was tried without a board as a new board, and put it in use."""

    name: str


class Bin(Act):
    """Put the board in use into the bin; the next one comes in front."""


class Unbin(Act):
    """Take a board out of the bin and put it in use."""

    board: str


class Examples(Act):
    """Save the example boards and put the first in use."""


class NotKnown(Act):
    """Say that nobody knows a value of the board in use: it is not asked for again. `again` takes that back."""

    key: str
    again: bool = False


class Copy(Act):
    """Make a copy for others: "share" hands the build sheet on, the others write a file (`screens.update.copies`)."""

    what: str


class OpenFile(Act):
    """Look into a file that came from outside, by its path: a board, or a copy of everything. Nothing is changed."""

    path: str


class OpenText(Act):
    """Look into the text of a board's file. Nothing is changed."""

    text: str


class TakeIn(Act):
    """Take in what was looked into: add a board with its log, or put a copy in the place of everything."""
