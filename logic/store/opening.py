"""Opening the file so that it always ends in an open store or one of the project's own errors.

A file of ours that is damaged is put beside, with its date, and what can be read of it goes into a new one.
"""

import os
from pathlib import Path
from typing import Final

from logic.store import Store
from logic.store.errors import Damaged, NoRight, os_errors
from logic.store.file import Clock

NAME: Final = "deckhand.db"
CHECK: Final = "check-at-next-start"
"""A file of this name asks for a look at the whole file when it is opened next: a read has failed."""


def open_store(folder: Path, clock: Clock) -> Store:
    """Return the open store of a folder, both made if need be. Raises NotAStore, NewerFile, CannotStore.

    What had to be salvaged stands in the setting "salvaged".
    """
    make_folder(folder)
    path = folder / NAME
    asked = folder / CHECK
    store = _opened(path, clock, whole=asked.exists())
    if store is None:
        from logic.store.salvage import salvage  # noqa: PLC0415  (most starts need none)

        saved = salvage(path, clock)
        store = Store(path, clock)
        store.put("salvaged", {"kept": saved.kept, "at": saved.at.isoformat(), "rows": saved.rows})
    asked.unlink(missing_ok=True)
    return store


def _opened(path: Path, clock: Clock, *, whole: bool) -> Store | None:
    """Return the store, None for a damaged one. By then nothing holds the file: what was raised held what read it."""
    try:
        store = Store(path, clock)
        try:
            _look(store, whole=whole)
        except BaseException:
            store.close()
            raise
    except Damaged:
        return None
    return store


def look_next_time(folder: Path) -> None:
    """Ask for a look at the whole file when it is opened next; for a read that failed as Damaged."""
    with os_errors():
        (folder / CHECK).touch()


def make_folder(folder: Path) -> None:
    """Make the folder of the data, for its owner only where the system knows owners. Raises CannotStore."""
    with os_errors():
        folder.mkdir(mode=0o700, parents=True, exist_ok=True)
        if not os.access(folder, os.R_OK | os.W_OK | os.X_OK):
            raise NoRight(f"{folder} may not be written to")


def _look(store: Store, *, whole: bool) -> None:
    """Read what a start reads, or the whole file. Raises Damaged."""
    connection = store._connection  # noqa: SLF001  (a room of the same house)
    if whole:
        (said,) = connection.execute("PRAGMA quick_check(1)").fetchone()
        if said != "ok":
            raise Damaged(said)
        return
    store.boards()
    store.newest()
    store.page(limit=1)
    for table in ("setting", "trial", "run"):
        connection.execute(f"SELECT * FROM {table}").fetchall()  # noqa: S608  (names of this file)
