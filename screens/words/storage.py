"""What is said when the data cannot be opened or written: one sentence for each cause, with what to do."""

from logic.store import NewerFile, NotAStore, NotSaved
from logic.store.errors import Busy, CannotStore, Damaged, Full, NoFolder, NoRight
from screens.tongue import _

SENTENCES: dict[type[Exception], str] = {
    NewerFile: _(
        "The saved data was written by a newer Deckhand. It is left untouched: update this app to open it."
    ),
    NotAStore: _(
        "The file deckhand.db is not readable as Deckhand's data. It is left untouched: move it away, or put a copy back."
    ),
    NoFolder: _(
        "The data cannot be kept where it was asked for: a file stands there, or a link leads nowhere. Choose another folder."
    ),
    NoRight: _("The folder of the data may not be written to. Allow it, or choose another folder."),
    Full: _("The storage is full. Nothing was lost that was saved before. Free some space and try again."),
    Busy: _(
        "Another program holds the data. Nothing was lost that was saved before. Close it and try again."
    ),
    Damaged: _(
        "Part of the file is damaged. Start the app again: what can be read is read then, and the old file is kept."
    ),
    NotSaved: _(
        "The storage does not answer. Nothing was lost that was saved before. Try again in a moment."
    ),
}
STATUSES: dict[type[Exception], int] = {kind: 4 + place for place, kind in enumerate(SENTENCES)}
"""The exit status of the program for each cause; 1 to 3 have other meanings."""

CANNOT_OPEN = (NewerFile, NotAStore, CannotStore)


def sentence(problem: Exception) -> str:
    """Return what is said of a problem with the storage."""
    return SENTENCES[_kind(problem)]


def status(problem: Exception) -> int:
    """Return the exit status of the program for a problem with the storage."""
    return STATUSES[_kind(problem)]


def _kind(problem: Exception) -> type[Exception]:
    return next((kind for kind in type(problem).__mro__ if kind in SENTENCES), NotSaved)
