"""The app is killed the moment it has shown that something is saved: after a new start it is there."""

import subprocess
import sys
import time
from collections.abc import Callable
from pathlib import Path

import pytest

from tests.screens.session import Session

ROOT = Path(__file__).parents[2]

CHILD = """
import sys
from pathlib import Path
import tests.screens.conftest
from tests.screens.session import Session

app = Session(Path(sys.argv[1]), demo=True)
{walk}
print("saved", flush=True)
while True:
    app.frame()
"""


def kill_after(folder: Path, walk: str, wait: float = 0.0) -> None:
    """Run the app in a process of its own, walk, and kill it as soon as the walk is done."""
    with subprocess.Popen(  # noqa: S603  (our own interpreter and the text above)
        [sys.executable, "-c", CHILD.format(walk=walk), str(folder)],
        cwd=ROOT,
        stdout=subprocess.PIPE,
        stderr=subprocess.PIPE,
        text=True,
    ) as child:
        assert child.stdout is not None
        assert child.stderr is not None
        said = child.stdout.readline()
        time.sleep(wait)
        child.kill()
        assert said == "saved\n", child.stderr.read()
    assert child.returncode < 0


def tension(app: Session) -> None:
    """Look for the saved tension."""
    assert app.row("Left belt: 102\u00a0N").detail.startswith("just right")
    app.tap("Log")
    assert app.shows("Tension, left belt: 102\u00a0N")


def trial(app: Session) -> None:
    """Look for the trial."""
    app.tap("Numbers")
    app.tap("Gearing and speed")
    assert app.row("Wheel diameter").value == "97\u00a0mm"
    assert app.row("Wheel diameter").trial


def typed(app: Session) -> None:
    """Look for a key that was typed and is no value yet."""
    app.tap("Numbers")
    app.tap("Gearing and speed")
    app.tap("Wheel diameter")
    assert app.page.entry.text == "9"


def board_value(app: Session) -> None:
    """Look for the board's value."""
    assert app.state.saved.drive.wheel_diameter.si == 0.096
    assert app.state.saved.drive.wheel_diameter.known == "measured"


CASES = (
    ('app.tap("TENSION CHECK"); app.type("0.92"); app.tap("Save left, go to right")', tension),
    (
        'app.tap("Numbers"); app.tap("Gearing and speed"); app.tap("Wheel diameter"); app.type("97")',
        trial,
    ),
    ('app.tap("Numbers"); app.tap("Gearing and speed"); app.tap("Wheel diameter"); app.type("9")', typed),
    (
        'app.tap("Board Towpath 36"); app.tap("Wheel diameter"); app.type("96"); app.tap("Save")',
        board_value,
    ),
)
"""A walk that ends with something saved, and who looks for it after the kill."""


@pytest.mark.parametrize(("walk", "look"), CASES, ids=["tension", "trial", "typed key", "board value"])
def test_what_was_shown_as_saved_outlives_a_kill(
    begin: Callable[..., Session], tmp_path: Path, walk: str, look: Callable[[Session], None]
) -> None:
    kill_after(tmp_path / "data", walk)
    app = begin()
    assert app.state.saved.name == "Towpath 36"
    app.front.place("ride")
    app.settle()
    look(app)
