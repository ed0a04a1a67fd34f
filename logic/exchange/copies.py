"""Copies of everything: one whole SQLite file each, one kept aside every week, and the way back from one."""

import shutil
from collections.abc import Iterator
from contextlib import contextmanager
from datetime import date, datetime, timedelta
from pathlib import Path
from tempfile import TemporaryDirectory
from typing import Final

from logic.exchange.errors import Foreign, Later
from logic.frozen import frozen
from logic.store import NewerFile, NotAStore, Store
from logic.store.errors import NoRight
from logic.store.file import Clock

FOLDER: Final = "copies"
WEEKLY: Final = "weekly"
EVERY: Final = timedelta(days=7)
KEPT: Final = 3


@frozen
class CopyLook:
    """What a copy holds: names of its boards, entries of its log, and when the last of them was made."""

    boards: tuple[str, ...]
    entries: int
    newest: datetime | None


def write_copy(store: Store, path: Path) -> None:
    """Write everything saved so far to one file at `path`; one that is there stays until the new one is whole.

    Raises CannotStore.
    """
    part = path.with_name(path.name + ".part")
    part.unlink(missing_ok=True)
    try:
        store.copy_to(part)
        part.replace(path)
    finally:
        part.unlink(missing_ok=True)


def keep_weekly(store: Store, now: datetime) -> Path | None:
    """Keep a copy aside when the last is a week old, and the newest three; return it, None when none was due.

    A copy dated after `now`, from a clock that was set ahead, does not count.
    """
    folder = store.path.parent / FOLDER
    kept = weekly_copies(folder)
    today = folder / f"{WEEKLY}-{now:%Y-%m-%d}.db"
    last = max((path for path in kept if path.name <= today.name), default=None)
    if last is not None and now.date() - _day(last) < EVERY:
        return None
    folder.mkdir(mode=0o700, exist_ok=True)
    write_copy(store, today)
    for old in weekly_copies(folder)[:-KEPT]:
        old.unlink()
    return today


def weekly_copies(folder: Path) -> list[Path]:
    """List the copies that were kept aside, the oldest first."""
    found = []
    for path in sorted(folder.glob(f"{WEEKLY}-*.db")):
        try:
            _day(path)
        except ValueError:
            continue
        found.append(path)
    return found


def look_at_copy(path: Path, clock: Clock) -> CopyLook:
    """Return what a copy holds; neither it nor the present data is changed. Raises Foreign, Later, CannotStore."""
    with _opened(path, clock) as copy:
        newest = copy.page(limit=1)
        return CopyLook(
            tuple(stored.name for stored in copy.boards()), copy.count(), newest[0].at if newest else None
        )


def bring_back(store: Store, path: Path, clock: Clock) -> Path:
    """Put a copy in the place of everything, all of it or nothing; return where the present data is kept.

    Raises Foreign, Later, CannotStore.
    """
    folder = store.path.parent / FOLDER
    folder.mkdir(mode=0o700, exist_ok=True)
    before = folder / f"before-{clock():%Y-%m-%d-%H%M%S}.db"
    with _opened(path, clock) as copy:
        write_copy(store, before)
        store.become(copy)
    return before


@contextmanager
def _opened(path: Path, clock: Clock) -> Iterator[Store]:
    """Open a twin of a copy, brought up to date: the copy itself stays as it is."""
    with TemporaryDirectory(prefix="deckhand-") as folder:
        twin = Path(folder) / "twin.db"
        try:
            if path.stat().st_size == 0:
                raise Foreign(f"{path.name} is empty")
            shutil.copyfile(path, twin)
        except OSError as problem:
            raise NoRight(str(problem)) from problem
        try:
            with Store(twin, clock) as copy:
                yield copy
        except NotAStore as problem:
            raise Foreign(str(problem)) from problem
        except NewerFile as problem:
            raise Later(str(problem)) from problem


def _day(path: Path) -> date:
    return date.fromisoformat(path.stem.removeprefix(f"{WEEKLY}-"))
