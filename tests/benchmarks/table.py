"""The table of speed: `python -m tests.benchmarks.table [--quick]`. CPU, so that a busy machine does not matter.

Each row stands beside its bar or what is run beside it: a bare app for start and memory, a log of 1,000 entries for the long
logs, a fixed piece of plain Python for sums. `--quick` leaves out the log of 1,000,000 entries and starts fewer apps.
"""

import json
import random
import sqlite3
import sys
import tempfile
import time
from collections.abc import Callable
from contextlib import closing
from datetime import UTC, datetime
from pathlib import Path
from statistics import median

from logic.answers.pairs import pair_table
from logic.belt.pitch import pitch
from logic.belt.recording import Recording
from logic.board import Value
from logic.board_saved import to_dict
from logic.exchange import demo_boards
from logic.store import Store
from tests.benchmarks.feel import ROOT, run
from tests.benchmarks.log_pages import table as log_table
from tests.benchmarks.start import compare
from tests.plucks import Pluck, noise_for, pluck, recorded, white

RIDER = Value(80.0, "measured")


def cost(act: Callable[[], object], times: int = 9) -> float:
    """Return the median CPU of an act in ms."""
    took = []
    for _ in range(times):
        began = time.thread_time()
        act()
        took.append((time.thread_time() - began) * 1000)
    return median(took)


def yard() -> float:
    """Return the CPU of a fixed piece of plain Python in ms: what sums are held beside."""
    return cost(lambda: json.loads(json.dumps([{"a": place / 7, "b": str(place)} for place in range(5000)])))


def plain_commit(path: Path, text: str) -> float:
    """Return the CPU of one committed row of a text in a file of SQLite's own, kept as ours is: what saving is held beside."""
    with closing(sqlite3.connect(path, isolation_level=None)) as connection:
        connection.execute("PRAGMA journal_mode = WAL")
        connection.execute("PRAGMA synchronous = FULL")
        connection.execute("CREATE TABLE kept (id TEXT PRIMARY KEY, body TEXT)")
        return cost(lambda: connection.execute("INSERT OR REPLACE INTO kept VALUES ('b', ?)", (text,)), 51)


def saving() -> None:
    """Print what it costs to save a board, on the disk when it returns, beside a plain committed row."""
    board = demo_boards()[0]
    body = to_dict(board)
    with tempfile.TemporaryDirectory() as folder:
        with Store(Path(folder) / "ours.db", lambda: datetime.now(UTC)) as store:
            kept = cost(lambda: store.save_board(board.id, board.name, to_dict(board)), 51)
        plain = plain_commit(Path(folder) / "plain.db", json.dumps(body))
    print(f"saving a board: {kept:.2f} ms; a plain committed row {plain:.2f} ms: {kept / plain:.1f}")


def sums() -> None:
    """Print the table of pairs and a second of sound beside the fixed piece."""
    beside, board = yard(), demo_boards()[0]
    pair_table(board, RIDER, {})
    pairs = cost(lambda: pair_table(board, RIDER, {}))
    sound = pluck(Pluck(123.0), 0.75)
    noise = white(noise_for(sound, 10), 1.0, random.Random(1))
    recording = Recording(recorded(sound, lead=0.25, seconds=1.0, noise=noise), 44100)
    heard = cost(lambda: pitch(recording))
    print(f"a fixed piece of plain Python: {beside:.1f} ms")
    print(f"pairs of pulleys: {pairs:.1f} ms (bar 25), {pairs / beside:.2f} of the piece")
    print(f"pitch of a second of sound: {heard:.1f} ms (bar 40), {heard / beside:.2f} of the piece")


def main(*, quick: bool) -> None:
    """Run each part and print it."""
    said = run("ours").splitlines()
    place = next(number for number, line in enumerate(said) if line.startswith("memory"))
    kept, alone = (float(line.split()[-1]) for line in (said.pop(place), run("bare").strip()))
    print("\n".join(said))
    print(
        f"memory after every page {kept:.0f} MB, bare KivyMD app {alone:.0f} MB: {kept / alone:.2f} (bar 1.3)"
    )
    mine, kivymd, kivy = compare(3 if quick else 7)
    print(
        f"start: {mine:.0f} ms; a bare KivyMD app {kivymd:.0f} ms: {mine / kivymd:.2f} (bar 0.85)", end="; "
    )
    print(f"a bare Kivy app {kivy:.0f} ms: {mine / kivy:.2f} (bar 1.3)")
    saving()
    sums()
    print("\n".join(log_table((1_000, 100_000) if quick else (1_000, 100_000, 1_000_000))))
    lines = sum(len(path.read_text("utf-8").splitlines()) for path in (ROOT / "screens").rglob("*.py"))
    print(f"lines of screens: {lines}")


if __name__ == "__main__":
    main(quick="--quick" in sys.argv)
