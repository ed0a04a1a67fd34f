"""Acts of checklists: a run of one, and lists of one's own."""

from logic.checks.lists import Checklist
from screens.acts import Act


class Answer(Act):
    """Say what an item of the run in front is."""

    state: str
    value: float | str | None = None
    note: str = ""
    sign: str = ""


class Rerun(Act):
    """Go on with a broken-off run, or begin it again."""

    again: bool


class BackOne(Act):
    """Put the item before in front; its answer is taken back."""


class PutInFront(Act):
    """Put an item of the run in front; what was said of it is taken back."""

    item: str


class Halt(Act):
    """End the run at the item in front, for what is not right with it."""

    note: str
    sign: str = ""


class Finish(Act):
    """Sign the run off: it goes into the log, and the page gives way to what follows."""


class CopyList(Act):
    """Make a list of one's own from another one and open it."""

    key: str


class KeepList(Act):
    """Keep a list of one's own, changed."""

    list: Checklist


class DropList(Act):
    """Take a list of one's own out."""

    key: str


class PutList(Act):
    """Put a list of one's own back as it was, or away again; what Undo holds after a change of it."""

    key: str
    list: Checklist | None
