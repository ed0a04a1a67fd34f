"""Acts of entering: a value is asked for, typed, put, forgotten."""

from collections.abc import Mapping

from logic.board import Value
from logic.fields import Field
from screens.acts import Act, Both


class Ask(Act):
    """Ask for a value with the keypad or a choice, under the page."""

    key: str


def asks(act: Act | None) -> str:
    """Return the key that an act asks for, "" for one that does not ask."""
    if isinstance(act, Both):
        return next((key for one in act.acts if (key := asks(one))), "")
    return act.key if isinstance(act, Ask) else ""


class Done(Act):
    """Close what is being entered. Text that is no value stays typed and counts for nothing."""


class Type(Act):
    """The text of a field changed to this, read in a unit. `keeps` says where a value of it goes (see blocks.Entry)."""

    key: str
    field: Field
    text: str
    unit: str = ""
    keeps: str = "trial"


class Write(Act):
    """Free text of a Field block changed to this."""

    key: str
    text: str


class Put(Act):
    """Put a value: on trial over the board, onto the board itself, as the answer to a question, or as the rider."""

    key: str
    value: Value | None
    keeps: str = "trial"


class Forget(Act):
    """Take back the text typed for some fields; `undo` is what is said beside the way back, "" offers none."""

    keys: tuple[str, ...]
    undo: str = ""


class Retype(Act):
    """Put text typed for some fields back; what Undo holds after Forget."""

    texts: Mapping[str, str]
