"""What is said when the data cannot be opened or written: one sentence for each cause, with what to do."""

from logic.store import NewerFile, NotAStore
from logic.store.errors import CannotStore
from screens.tongue import texts

CANNOT_OPEN = (NewerFile, NotAStore, CannotStore)

STATUSES = {
    "NewerFile": 4,
    "NotAStore": 5,
    "NoFolder": 6,
    "NoRight": 7,
    "Full": 8,
    "Busy": 9,
    "Damaged": 10,
    "NotSaved": 11,
}
"""The exit status of each cause: 1 to 3 have other meanings, and one that a script knows never changes."""


def sentences() -> dict[str, str]:
    """Return the sentence of each cause by the name of its error; they are read when something is amiss."""
    return texts("storage")["sentences"]


def sentence(problem: Exception) -> str:
    """Return what is said of a problem with the storage."""
    return sentences()[_cause(problem)]


def status(problem: Exception) -> int:
    """Return the exit status of the program for a problem with the storage."""
    return STATUSES[_cause(problem)]


def _cause(problem: Exception) -> str:
    return next((kind.__name__ for kind in type(problem).__mro__ if kind.__name__ in sentences()), "NotSaved")


def not_taken(problem: Exception) -> str:
    """Return why a file from outside was not taken in."""
    return texts("files")["refusals"].get(type(problem).__name__) or sentence(problem)
