"""Prints how long the log takes to open with a thousand and with a hundred thousand entries.

Run it by hand: `uv run python -m tests.benchmarks.log_pages`. Reads are the median of many.
"""

import sqlite3
import statistics
import tempfile
import time
from collections.abc import Callable
from contextlib import closing
from dataclasses import replace
from datetime import UTC, datetime, timedelta
from pathlib import Path

from logic.ledger import Ledger
from logic.log import Check, Note, Ride, Tension, text_of
from logic.store import Store
from logic.store.file import utc_text
from logic.upkeep import upkeep
from screens.log.home import REACH, find
from screens.world import LogBook

START = datetime(2016, 1, 1, tzinfo=UTC)
SIZES = (1_000, 100_000)
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
        began = time.perf_counter()
        act()
        found.append((time.perf_counter() - began) * 1000.0)
    return statistics.median(found)


def main() -> None:
    """Fill both logs and print the times and their ratios."""
    times: dict[str, list[float]] = {}
    with tempfile.TemporaryDirectory() as folder:
        for entries in SIZES:
            path = Path(folder) / f"{entries}.db"
            fill(path, entries)
            with Store(path, lambda: START + timedelta(days=3000)) as store:
                middle = entries // 2
                acts: dict[str, Callable[[], object]] = {
                    "first page": lambda store=store: store.page("b1", limit=SHOWN),
                    "first page, one kind": lambda store=store: store.page("b1", "tension", limit=SHOWN),
                    "first page, all boards": lambda store=store: store.page(limit=SHOWN),
                    "a page in the middle": lambda store=store, middle=middle: store.page(
                        "b1", before=middle, limit=SHOWN
                    ),
                    "search, common word": lambda store=store: find(
                        LogBook(store, "b1"), "b1", "", 0, "belt", REACH
                    ),
                    "search, word not there": lambda store=store: find(
                        LogBook(store, "b1"), "b1", "", 0, "zeppelin", REACH
                    ),
                }
                for name, act in acts.items():
                    times.setdefault(name, []).append(timed(act, 5 if "not there" in name else 25))
                times.setdefault("upkeep, first look", []).append(
                    timed(lambda store=store: Ledger(store, "b1").read(), 3)
                )
                history = Ledger(store, "b1").read()
                now = START + timedelta(days=3000)
                times.setdefault("upkeep, rules", []).append(
                    timed(lambda history=history, now=now: upkeep(history, ("left", "right"), now))
                )
    print(f"{'':26}{SIZES[0]:>12,}{SIZES[1]:>12,}   ratio")
    for name, (few, many) in times.items():
        print(f"{name:26}{few:>9.2f} ms{many:>9.2f} ms{many / few:>8.2f}")


if __name__ == "__main__":
    main()
