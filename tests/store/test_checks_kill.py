"""A real process runs the check before a ride and is killed after each item: the run goes on at the right one."""

import subprocess
import sys
from pathlib import Path

import pytest

from logic.checks.lists import checklist
from logic.checks.run import RIGHT
from logic.checks.session import Session
from logic.store import Store

ROOT = Path(__file__).parents[2]
OF = checklist("before_ride")

CHILD = """
import sys, time
from datetime import UTC, datetime
from pathlib import Path
from logic.checks.lists import checklist
from logic.checks.session import Session
from logic.store import Store

clock = lambda: datetime(2026, 11, 25, 8, 30, tzinfo=UTC)
session = Session(Store(Path(sys.argv[1]), clock), "b1", checklist("before_ride"), clock)
if session.run is None:
    session.begin()
else:
    session.resume()
item = session.run.at
session.answer(item, "right", value=40.2 if item == "charge" else None)
print("saved", item, flush=True)
time.sleep(60)
"""


def killed_after_one_answer(path: Path) -> str:
    """Let a process answer the item in front, kill it once it says so, and return the item."""
    with subprocess.Popen(  # noqa: S603  (our own interpreter and the text above)
        [sys.executable, "-c", CHILD, str(path)], cwd=ROOT, stdout=subprocess.PIPE, text=True
    ) as child:
        assert child.stdout is not None
        said = child.stdout.readline().split()
        child.kill()
    assert child.returncode < 0
    assert said[0] == "saved"
    return said[1]


def test_a_run_killed_at_every_item_goes_on_at_the_next_and_is_logged_once(path, clock):
    for place, item in enumerate(OF.items):
        assert killed_after_one_answer(path) == item.key
        with Store(path, clock) as store:
            session = Session(store, "b1", OF, clock)
            run = session.under_way
            assert [key for key in run.order if key in run.answers] == [
                one.key for one in OF.items[: place + 1]
            ]
            assert run.at == (OF.items[place + 1].key if place + 1 < len(OF.items) else "")
            assert len(run.breaks) == place
    with Store(path, clock) as store:
        session = Session(store, "b1", OF, clock)
        number = session.finish({"drive.motors": "2"})
        body = store.entry(number).body
        assert (body.verdict, body.right, body.total) == ("all right", 9, 9)
        assert body.values == {"charge": 40.2}
        assert body.version == OF.version
        assert body.board == {"drive.motors": "2"}
        assert body.breaks == len(OF.items) - 1
        assert store.run("b1", OF.key) is None
        assert store.count(kind="check") == 1


@pytest.mark.parametrize("answers", [0, 3])
def test_a_run_given_up_is_logged_as_not_finished_if_anything_was_answered(store, clock, answers):
    session = Session(store, "b1", OF, clock)
    session.begin()
    for _ in range(answers):
        at = session.under_way.at
        session.answer(at, RIGHT, value=40.0 if at == "charge" else None)
    row = session.give_up({})
    assert store.run("b1", OF.key) is None
    if answers:
        assert store.entry(row).body.verdict == "not finished"
    else:
        assert store.count() == 0
