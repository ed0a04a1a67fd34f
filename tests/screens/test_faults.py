"""A fault that ends main.py, or one of its threads: written down, told at the next start, and the app goes on."""

import subprocess
import sys
from collections.abc import Callable
from datetime import UTC, datetime
from pathlib import Path

import pytest

from screens import faults
from tests.screens.session import Session

ROOT = Path(__file__).parents[2]

CHILD = """
import sys, threading
import tests.screens.conftest
import main
from kivy.clock import Clock
from screens import app, environment

environment.has_screen = lambda _window: True

def fault(*_):
    raise LookupError("made for the test")

def in_a_thread(self, *_):
    thread = threading.Thread(target=fault)
    thread.start()
    thread.join()
    Clock.schedule_once(self.stop, 0)

def at_once(self, *_):
    raise SystemExit(7)

def copied(*_):
    from logic.exchange import copies
    copies.keep_weekly = fault
    Clock.schedule_once(app.DeckhandApp.get_running_app().stop, 0)

app.DeckhandApp.{place} = {what}
sys.exit(main.main(["--data", sys.argv[1]]))
"""


def ended(folder: Path, place: str, what: str) -> subprocess.CompletedProcess[str]:
    """Run main.py in a process of its own with something put in the place of a step of the app."""
    return subprocess.run(  # noqa: S603  (our own interpreter and the text above)
        [sys.executable, "-c", CHILD.format(place=place, what=what), str(folder)],
        cwd=ROOT,
        capture_output=True,
        text=True,
        check=False,
        timeout=60,
    )


@pytest.mark.parametrize(
    ("place", "what", "status"),
    [
        ("build", "fault", 1),
        ("on_start", "fault", 1),
        ("on_start", "copied", 0),
        ("on_start", "in_a_thread", 0),
    ],
    ids=["before the first page", "at the start", "at the weekly copy", "in a thread"],
)
def test_a_fault_that_nobody_took_up_is_told_at_the_next_start(
    begin: Callable[..., Session], tmp_path: Path, place: str, what: str, status: int
) -> None:
    done = ended(tmp_path / "data", place, what)
    assert done.returncode == status, done.stderr
    app = begin(demo=True)
    assert app.front.page.title == "Last time"
    assert app.shows("Share the record")
    app.tap("Read the record")
    assert app.shows("made for the test")
    app.tap("Go on")
    assert app.shows("BEFORE A RIDE")
    app.restart()
    assert app.front.page.title != "Last time"


def test_what_ends_on_purpose_leaves_no_record(tmp_path: Path) -> None:
    done = ended(tmp_path / "data", "on_start", "at_once")
    assert done.returncode == 7, done.stderr
    assert faults.take(tmp_path / "data") == ""


def test_a_record_makes_its_folder_and_raises_nothing_where_there_can_be_none(tmp_path: Path) -> None:
    at = datetime(2026, 11, 25, 9, 30, tzinfo=UTC)
    (tmp_path / "file").write_text("")
    faults.keep(tmp_path / "file" / "data", ValueError("a fault"), at)
    faults.keep(tmp_path / "data", ValueError("a fault"), at)
    assert "ValueError: a fault" in faults.take(tmp_path / "data")
