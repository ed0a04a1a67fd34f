"""A real process is killed while it writes: what it said was saved is in the file, nothing is half there."""

import sqlite3
import subprocess
import sys
from contextlib import closing
from pathlib import Path

import pytest

from logic.store import Store

ROOT = Path(__file__).parents[2]
SAID = 12  # How many times the child says "saved" before it is killed, in the middle of whatever comes next.

CHILD = """
import sys
from datetime import UTC, datetime
from itertools import count
from pathlib import Path
from logic.log import BoardChanged, Check, Ride
from logic.store import Store

CHECK = Check(list="before_ride", base="before_ride", verdict="all right")
store = Store(Path(sys.argv[1]), lambda: datetime(2026, 11, 25, tzinfo=UTC))
for n in count(1):
    {write}
    print("saved", n, flush=True)
"""


def kill_while_writing(path: Path, write: str) -> int:
    """Start the child, kill it once it has said "saved" a few times, and return the last number it said."""
    with subprocess.Popen(  # noqa: S603  (our own interpreter and the text above)
        [sys.executable, "-c", CHILD.format(write=write), str(path)],
        cwd=ROOT,
        stdout=subprocess.PIPE,
        text=True,
    ) as child:
        assert child.stdout is not None
        for _ in range(SAID):
            assert child.stdout.readline().startswith("saved")
        child.kill()
        rest = child.stdout.read()
    assert child.returncode < 0
    # The pipe may hold more that was said before the kill; a line cut short was not said.
    said = [line for line in rest.split("\n")[:-1] if line.startswith("saved")]
    return SAID + len(said)


def log_append(store: Store) -> int:
    bodies = [int(record.body.note) for record in store.page(limit=-1)]
    assert bodies == list(range(len(bodies), 0, -1))
    return len(bodies)


def trial(store: Store) -> int:
    return store.trial("b1")["n"]


def board(store: Store) -> int:
    return store.board("b1").body["n"]


def setting(store: Store) -> int:
    return store.get("n")


def keep(store: Store) -> int:
    kept = store.board("b1").body["n"]
    assert store.latest("b1", "board_changed").body.note == str(kept)
    assert store.count() == kept
    # Either the trial of the next round was saved by itself, or there is none.
    assert store.trial("b1") in (None, {"n": kept + 1})
    return kept


def run(store: Store) -> int:
    finished = store.count(kind="check")
    left = store.run("b1", "before a ride")
    assert left is None or left.body == {"n": finished + 1}
    return finished


@pytest.mark.parametrize(
    ("write", "read"),
    [
        ('store.append("b1", Ride(note=str(n)))', log_append),
        ('store.save_trial("b1", {"n": n})', trial),
        ('store.save_board("b1", "Weir", {"n": n})', board),
        ('store.put("n", n)', setting),
        (
            'store.save_trial("b1", {"n": n}); store.keep_trial("b1", "Weir", {"n": n}, BoardChanged(note=str(n)))',
            keep,
        ),
        (
            'store.save_run("b1", "before a ride", {"n": n}); store.finish_run("b1", "before a ride", CHECK)',
            run,
        ),
    ],
    ids=["log append", "trial", "board", "setting", "keep", "finished run"],
)
def test_what_was_said_to_be_saved_outlives_a_kill(path, clock, write, read):
    last = kill_while_writing(path, write)
    with Store(path, clock) as store:
        # The write in progress at the kill may have been committed without being said.
        assert read(store) in (last, last + 1)
    with closing(sqlite3.connect(path)) as connection:
        assert connection.execute("PRAGMA integrity_check").fetchall() == [("ok",)]
