"""A fault that nobody took up: written beside the data, shown at the next start with the way to send it."""

import traceback
from datetime import datetime
from pathlib import Path

NAME, SHOWN = "fault.txt", "fault-shown.txt"
LONGEST = 20_000
"""Characters of a record that are kept, from its end: what went wrong stands last."""
READ = 2000
"""Characters of a record that a page shows; the shared one is whole."""


def record(problem: BaseException, at: datetime) -> str:
    """Return what went wrong and when."""
    text = "".join(traceback.format_exception(problem))[-LONGEST:]
    return f"Deckhand, {at.isoformat(timespec='seconds')}\n\n{text}"


def broken(text: str) -> str:
    """Return the end of a record as it is read on a page: its long names can be broken between lines."""
    return text.replace("/", "/ ").replace(".", ". ").replace("_", "_ ")[-READ:]


def keep(folder: Path, problem: BaseException, at: datetime) -> None:
    """Write down what went wrong and when. Raises nothing: there may be no room, or no folder."""
    try:
        (folder / NAME).write_text(record(problem, at), "utf-8")
    except OSError:
        return


def take(folder: Path) -> str:
    """Return the record of the last fault, "" where there is none. It is shown once: a fault in showing it is the last one."""
    try:
        (folder / NAME).replace(folder / SHOWN)
        return (folder / SHOWN).read_text("utf-8", "replace")
    except OSError:
        return ""
