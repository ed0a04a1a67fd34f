"""A fault that nobody took up: written beside the data, shown at the next start with the way to send it."""

import sys
import threading
import traceback
from collections.abc import Callable
from datetime import datetime
from pathlib import Path
from types import TracebackType

from logic.store.errors import CannotStore
from logic.store.opening import make_folder

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
        make_folder(folder)
        (folder / NAME).write_text(record(problem, at), "utf-8")
    except (OSError, CannotStore):
        return


def watch(folder: Path, clock: Callable[[], datetime]) -> None:
    """Keep a record of what ends the program or one of its threads from now on; it is told on as before.

    What ends a program on purpose is no fault.
    """

    def ended(kind: type[BaseException], problem: BaseException, trace: TracebackType | None) -> None:
        if isinstance(problem, Exception):
            keep(folder, problem, clock())
        sys.__excepthook__(kind, problem, trace)

    def thread_ended(told: threading.ExceptHookArgs) -> None:
        if isinstance(told.exc_value, Exception):
            keep(folder, told.exc_value, clock())
        in_thread(told)

    in_thread = threading.excepthook
    sys.excepthook, threading.excepthook = ended, thread_ended


def take(folder: Path) -> str:
    """Return the record of the last fault, "" where there is none. It is shown once: a fault in showing it is the last one."""
    try:
        (folder / NAME).replace(folder / SHOWN)
        return (folder / SHOWN).read_text("utf-8", "replace")
    except OSError:
        return ""
