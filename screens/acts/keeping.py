"""Acts that keep something: values of the board in use, entries of its log, settings of the person."""

from collections.abc import Mapping
from typing import Any

from logic.board import Value
from logic.log import Entry
from screens.acts import Act


class Set(Act):
    """Write values onto the saved board as they are given, with how they are known and one undo; None takes one out.

    Where no board is saved they join its trial.
    """

    values: Mapping[str, Value | None]


class Keep(Act):
    """Make the trial's values the board's."""


class Drop(Act):
    """Put the saved values back."""


class Save(Act):
    """Put a whole board back as it was; what Undo holds after a change of it."""

    board: Any


class Retry(Act):
    """Open a dropped trial again; what Undo holds after Drop."""

    trial: Mapping[str, Value]


class Record(Act):
    """Write into the log of the board; `then` follows once it is on the disk."""

    entry: Entry
    then: tuple[Act, ...] = ()
    key: str = ""
    """Name of the parameter of the page that is given the number of the entry."""
    undo: str = ""
    """What is said beside the way back; "" offers none."""


class Void(Act):
    """Hide a row of the log: an entry, a correction, or a row that hid one, which shows that one again."""

    entry: int
    undo: str = ""
    """What is said beside the way back; "" offers none."""


class Correct(Act):
    """Give a log entry another body, what it was kept; `then` follows once it is on the disk."""

    entry: int
    body: Entry
    then: tuple[Act, ...] = ()


class Settle(Act):
    """Change settings of the person."""

    changes: Mapping[str, Any]


class Remember(Act):
    """Keep a setting that no page shows, such as the tool that was used last."""

    key: str
    value: Any


class TakeOut(Act):
    """Take the pack of the board in use out of use, for a sign that was seen."""

    sign: str


class PutBack(Act):
    """Put that pack into use again, for a reason."""

    why: str
