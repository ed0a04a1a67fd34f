"""What the log costs at a thousand and at many entries, part of the table: CPU, the median of many."""

import sqlite3
import statistics
import tempfile
import time
from collections.abc import Callable, Iterator
from contextlib import closing
from dataclasses import replace
from datetime import UTC, datetime, timedelta
from pathlib import Path

from logic.ledger import Ledger
from logic.log import Check, Note, Ride, Tension, text_of
from logic.store import Store
from logic.store.file import utc_text
from screens.log.home import REACH, Found, find
from screens.log_book import LogBook

START = datetime(2016, 1, 1, tzinfo=UTC)
SHOWN = 21
BOARDS = ("b1", "b2", "b3")


def fill(path: Path, entries: int) -> None:
    """Write a log of rides, checks, tensions, notes and a correction for each fiftieth entry."""
    Store(path, lambda: START).close()
    entries_of_a_ride = (
        Ride(distance=8400.0, energy=331200.0),
        Check(
            list="before_ride",
            base="before_ride",
            title="Before a ride",
            verdict="all right",
            right=9,
            total=9,
        ),
        Tension(belt="left", tension=104.0, error=11.0, word="in window"),
        Note(note="Left belt sounds brighter than the right one"),
    )
    with closing(sqlite3.connect(path)) as connection, connection:
        for number in range(1, entries + 1):
            entry = entries_of_a_ride[number % len(entries_of_a_ride)]
            kind, replaces = entry.KIND, None
            if number % 50 == 0:
                # Four entries before stands one of the same kind.
                kind, replaces = "correction", number - 4
                entry = replace(entry, note="read again")
            at = utc_text(START + timedelta(minutes=30 * number))
            connection.execute(
                "INSERT INTO log (board, kind, at, offset, version, replaces, body) VALUES (?, ?, ?, 0, 1, ?, ?)",
                (BOARDS[0], kind, at, replaces, text_of(entry)),
            )


def timed(act: Callable[[], object], times: int = 25) -> float:
    """Return the median time of an act in ms."""
    found = []
    for _ in range(times):
        began = time.thread_time()
        act()
        found.append((time.thread_time() - began) * 1000.0)
    return statistics.median(found)


def table(sizes: tuple[int, ...]) -> Iterator[str]:
    """Yield what each read of the log costs at each size, and the ratio of the last to the first."""
    times: dict[str, list[float]] = {}
    now = START + timedelta(days=30_000)
    with tempfile.TemporaryDirectory() as folder:
        for entries in sizes:
            path = Path(folder) / f"{entries}.db"
            fill(path, entries)
            with Store(path, lambda: now) as store:
                for name, act in _acts(store, entries).items():
                    times.setdefault(name, []).append(timed(act, 15))
    yield f"{'log, entries':28}" + "".join(f"{size:>12,}" for size in sizes) + "   last over first"
    for name, took in times.items():
        yield f"{name:28}" + "".join(f"{ms:>9.2f} ms" for ms in took) + f"{took[-1] / took[0]:>8.2f}"


def _acts(store: Store, entries: int) -> dict[str, Callable[[], object]]:
    def look(word: str) -> Found:
        return find(LogBook(store, "b1"), "b1", "", 0, word, REACH)

    return {
        "first page": lambda: store.page("b1", limit=SHOWN),
        "first page, one kind": lambda: store.page("b1", "tension", limit=SHOWN),
        "a page in the middle": lambda: store.page("b1", before=entries // 2, limit=SHOWN),
        "search, common word": lambda: look("belt"),
        "search, word not there": lambda: look("zeppelin"),
        "upkeep, first look": lambda: Ledger(store, "b1").read(),
        "an entry saved": lambda: store.append("b1", Note(note="oil")),
    }
