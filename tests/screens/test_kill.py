"""The app is killed the moment it has shown that something is saved: after a new start it is there."""

import sqlite3
import subprocess
import sys
import time
from collections.abc import Callable
from contextlib import closing
from pathlib import Path

import pytest

from logic import read_back
from tests.screens.session import Session

ROOT = Path(__file__).parents[2]

CHILD = """
import sys
from pathlib import Path
import tests.screens.conftest
from logic import read_back
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


def ride(app: Session) -> None:
    """Look for the ride that was entered."""
    app.tap("Log")
    assert app.shows("Ride: 8.4\u00a0km")


def joint(app: Session) -> None:
    """Look for the screw that was tightened, on its page and in the log."""
    assert app.state.store.count(kind="tightening") == 1
    app.front.go("bench.joint", joint="motor_face")
    app.settle()
    assert app.shows("Done again: 1.7\u00a0N·m, torque wrench")


def build_step(app: Session) -> None:
    """Look for the stage of the build that is under way, one item answered."""
    app.tap("Bench")
    assert app.shows("You stopped at 2 of 5")


def settings(app: Session) -> None:
    """Look for the theme, the text size and the units."""
    person = app.front.world.person
    assert (person.theme, person.text, person.system) == ("night", 1.6, "inch")


def taken_in(app: Session) -> None:
    """Look for the board that arrived as a file."""
    assert "Towpath 36 (2)" in {board.name for board in read_back.boards(app.state.store)}


def written(app: Session) -> None:
    """Look for the file that was said to be saved, and read it."""
    (path,) = (app.folder / "copies").glob("everything-*.db")
    with closing(sqlite3.connect(path)) as copied:
        assert copied.execute("PRAGMA integrity_check").fetchone() == ("ok",)
        assert copied.execute("SELECT count(*) FROM board").fetchone() == (4,)


TAKEN_IN = """
import json
from logic.exchange.board_file import board_text
from screens.acts.entering import Write
from screens.acts.boards import OpenText
body = json.loads(board_text(app.state.saved, at=app.time))
body["board"]["drive"]["motor_teeth"]["si"] = 13.0
app.front.go("settings.files"); app.front.perform(OpenText(json.dumps(body))); app.settle(); app.tap("Take it in")
assert app.shows("is here")
"""
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
    (
        'app.tap("Log"); app.tap("+ Add a ride"); app.settle(); app.keys("8.4"); app.tap("Save the ride")',
        ride,
    ),
    ('app.front.go("bench.joint", joint="motor_face"); app.settle(); app.tap("Done:")', joint),
    (
        'app.front.go("ride.run", list="build.wheels"); app.frame(3, seconds=0.4);'
        "app.tap(app.page.page.foot.main.text)",
        build_step,
    ),
    (
        'app.front.go("settings"); app.tap("Night"); app.tap("160\u202f%"); app.tap("Inch and pound")',
        settings,
    ),
    (TAKEN_IN, taken_in),
    ('app.front.go("settings.files"); app.tap("Copy of everything"); assert app.shows("Saved as")', written),
)
"""A walk that ends with something saved, and who looks for it after the kill."""


@pytest.mark.parametrize(("walk", "look"), CASES, ids=[look.__name__ for _, look in CASES])
def test_what_was_shown_as_saved_outlives_a_kill(
    begin: Callable[..., Session], tmp_path: Path, walk: str, look: Callable[[Session], None]
) -> None:
    kill_after(tmp_path / "data", walk)
    app = begin()
    assert app.state.saved.name.startswith("Towpath 36")
    app.front.place("ride")
    app.settle()
    look(app)
