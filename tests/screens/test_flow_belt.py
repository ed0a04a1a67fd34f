"""Belts by touch and key: choosing, fitting, every way to a tension, two ways together, history."""

import io
import wave
from collections.abc import Callable
from typing import Any

import pytest

from logic.belt.recording import Recording
from logic.exchange import demo_boards
from logic.log import Tension
from screens.phone.microphone import NONE_HERE
from screens.scenes.bench import _pluck
from screens.words import Style
from tests.screens.session import Session, gaps

GAP = "\u00a0"
TOWPATH = {
    f"drive.{key}": getattr(demo_boards()[0].drive, key)
    for key in ("profile", "belt_width", "belt_teeth", "motor_teeth", "wheel_teeth")
}
"""The drive of an example board: what a tension rests on."""


class Ears:
    """A microphone that gives what it is told to, at once."""

    def __init__(self, *recordings: Recording | None) -> None:
        self.recordings = list(recordings)
        self.asked = 0

    def record(self, heard: Any) -> None:
        """Give the next recording, or say that there is no microphone."""
        self.asked += 1
        found = self.recordings.pop(0)
        heard(found, "" if found is not None else NONE_HERE)


@pytest.fixture
def bench(app: Session) -> Session:
    """Give the app where setting a belt begins."""
    app.tap("Bench")
    app.tap("Set a belt")
    return app


def enter(app: Session) -> None:
    app.key(13)
    app.frame(3)


def last(app: Session) -> Tension:
    return app.state.last("tension").body


def test_two_belts_within_reach_of_a_thumb(app: Session) -> None:
    """At most six taps besides the digits, all in the lower 420 dp, nothing scrolled, both verdicts saved."""
    app.resize(412, 915)
    app.taps = 0
    heights, moved = [], []

    def tap(text: str) -> None:
        spot = app.find(text)
        heights.append(spot.middle[1] if hasattr(spot, "middle") else spot.to_window(*spot.center)[1])
        pane = app.page.panes[0] if getattr(app.page, "data", False) else None
        moved.append(app.page.scroll.scroll_y == 1 if pane is None else pane.offset == 0)
        app.tap(spot)

    tap("TENSION CHECK")
    before = app.taps
    app.keys("0.92")
    digits = app.taps - before
    tap("SAVE LEFT, GO TO RIGHT")
    before = app.taps
    app.keys("0.95")
    digits += app.taps - before
    tap("SAVE RIGHT")
    assert app.taps - digits <= 6
    assert max(heights) <= 420
    assert all(moved)
    words = [record.body.word for record in app.state.store.page(app.state.saved.id, kind="tension")]
    assert words == ["in window", "in window"]


def test_four_wheel_positions(bench: Session) -> None:
    bench.tap("Spring scale")
    for number, pull in enumerate(("0.92", "0.98", "0.9", "0.95"), start=1):
        assert bench.page.asked == f"pull{number}"
        bench.keys(pull)
        bench.tap("NEXT" if number < 4 else "SAVE")
    assert bench.page.title == "Tension saved"
    body = last(bench)
    assert body.method == "scale"
    assert body.pulls == pytest.approx([pull * 9.80665 for pull in (0.92, 0.98, 0.9, 0.95)])
    assert body.tension > body.least > 0
    bench.tap("Finish")
    assert bench.shows("by scale, just now")


def test_one_low_place_round_the_wheel_proves_nothing(bench: Session) -> None:
    bench.tap("Spring scale")
    for number in range(1, 5):
        bench.keys("0.55")
        bench.settle()
        assert bench.shows("SLACK") is (number == 4)
        assert bench.shows(f"{number} of 4 places so far") is (number < 4)
        if number < 4:
            bench.tap("NEXT")


def test_one_tight_place_is_told_at_once(bench: Session) -> None:
    bench.tap("Spring scale")
    bench.keys("1.9")
    bench.settle()
    assert bench.shows("TIGHT")


def test_half_filled_positions_are_kept_over_a_restart(bench: Session) -> None:
    bench.tap("Spring scale")
    bench.keys("0.92")
    bench.tap("NEXT")
    bench.keys("0.9")
    bench.restart(minutes=5)
    assert bench.page.title == "Four wheel positions, LEFT"
    assert bench.shows(f"0.92{GAP}kg")
    assert bench.shows(f"0.9{GAP}kg")
    bench.tap("Forget these numbers")
    assert bench.page.values == {}
    bench.tap("Undo")
    assert bench.shows(f"0.92{GAP}kg")


def test_a_working_in_between_loses_nothing(bench: Session) -> None:
    bench.tap("A known weight")
    bench.keys("1")
    bench.tap("NEXT")
    bench.keys("1.2")
    bench.frame(2)
    tension = bench.page.tension
    bench.tap("Working of this reading")
    assert gaps(bench.page) == []
    bench.key(27)
    assert bench.page.tension == tension


def test_a_unit_other_than_the_scales_is_kept(bench: Session) -> None:
    bench.tap("A known weight")
    bench.type("1000 g")
    bench.frame(2)
    assert bench.page.number("weight") == pytest.approx(9.80665)
    bench.restart(minutes=1)
    assert bench.page.number("weight") == pytest.approx(9.80665)


def test_several_pulls_can_be_saved_from_two_on(bench: Session) -> None:
    bench.tap("Several pulls")
    for text in ("1", "0.85", "2"):
        bench.type(text)
        enter(bench)
    bench.type("2.3")
    bench.frame(2)
    assert bench.page.save_text == "SAVE"
    assert bench.page.tension
    assert bench.shows("Depth 3")
    bench.tap("SAVE")
    assert last(bench).method == "pulls"
    assert len(last(bench).pulls) == 2


def test_pulling_the_motor_is_set_and_not_verified(bench: Session) -> None:
    bench.tap("Pull the motor")
    assert bench.shows("Two people, power off.")
    assert bench.shows("CAUTION")
    bench.keys("20")
    bench.tap("SAVE")
    assert last(bench).verified is False
    assert bench.shows("Set, not verified.")


def test_plucks_their_median_and_the_calibration(bench: Session) -> None:
    bench.tap("Spring scale")
    for _ in range(4):
        bench.keys("0.9")
        bench.tap("NEXT" if bench.page.next_field() else "SAVE")
    bench.tap("Finish")
    bench.tap("Pluck and listen")
    page = bench.page
    page.microphone = ears = Ears(_pluck(362.0), _pluck(366.0), None, _pluck(364.0))
    assert ears.asked == 0
    bench.tap("RECORD A PLUCK")
    assert bench.shows(f"Heard 362{GAP}Hz.")
    bench.tap("RECORD A PLUCK")
    bench.tap("RECORD A PLUCK")
    assert bench.shows(NONE_HERE)
    bench.tap("RECORD A PLUCK")
    assert bench.shows(f"Plucks: 362, 366, 364 Hz. Median 364{GAP}Hz.")
    assert page.verdict == ""
    assert bench.shows("Bending stiffness makes a short belt sound too high")
    assert len(page.lines) == 1
    assert page.marks[0].x == pytest.approx(364.0, abs=0.5)
    bench.tap("Set this pitch against that pull")
    assert page.verdict in ("IN WINDOW", "SLACK", "TIGHT")
    bench.tap("SAVE")
    assert last(bench).calibrated
    assert last(bench).pitch == pytest.approx(364.0, abs=0.3)


def test_a_bad_recording_says_what_to_do(bench: Session) -> None:
    bench.tap("Pluck and listen")
    bench.page.microphone = Ears(_pluck(362.0, loud=3.0), _pluck(900.0))
    bench.tap("RECORD A PLUCK")
    assert bench.shows("Too loud")
    bench.tap("RECORD A PLUCK")
    assert bench.shows("Not where this belt can sound")
    assert bench.page.heard == []
    assert not bench.page.can_go


def test_a_pitch_of_another_meter(bench: Session) -> None:
    bench.tap("Pluck and listen")
    bench.tap("Type the pitch of another meter")
    bench.keys("358")
    bench.tap("SAVE")
    assert last(bench).pitch == 358.0


def test_a_recording_from_a_file(bench: Session, tmp_path: Any) -> None:
    recording = _pluck(362.0)
    body = io.BytesIO()
    with wave.open(body, "wb") as file:
        file.setnchannels(1)
        file.setsampwidth(2)
        file.setframerate(recording.rate)
        file.writeframes(recording.samples.tobytes())
    path = tmp_path / "pluck.wav"
    path.write_bytes(body.getvalue())
    bench.tap("Pluck and listen")
    bench.tap("Open a recording")
    bench.page.path_input.text = str(tmp_path / "none.wav")
    bench.tap("Open")
    assert bench.shows("There is no file at this path.")
    (tmp_path / "text.wav").write_text("no sound")
    bench.page.path_input.text = str(tmp_path / "text.wav")
    bench.tap("Open")
    assert bench.shows("This is not a WAV file.")
    bench.page.path_input.text = str(path)
    bench.tap("Open")
    assert bench.page.title == "Pluck and listen, LEFT"
    assert bench.shows(f"Heard 362{GAP}Hz.")


def test_two_ways_together(bench: Session) -> None:
    bench.tap("Spring scale")
    for _ in range(4):
        bench.keys("0.85")
        bench.tap("NEXT" if bench.page.next_field() else "SAVE")
    bench.tap("Finish")
    assert not bench.page.can_combine
    bench.tap("Pull the motor")
    bench.keys("19")
    bench.tap("SAVE")
    bench.tap("Finish")
    bench.tap("Two ways together")
    assert bench.shows("They agree within their errors.")
    bench.tap("Working")
    assert gaps(bench.page) == []
    bench.key(27)
    bench.tap("SAVE")
    assert last(bench).method == "together"


def test_a_new_belt_begins_a_new_history(bench: Session) -> None:
    bench.tap("Pull the motor")
    bench.keys("19")
    bench.tap("SAVE")
    bench.tap("Finish")
    bench.tap("History of this belt")
    assert bench.shows("No trend yet: 1 of 3 readings.")
    bench.key(27)
    bench.tap("A new belt is on")
    bench.tap("History of this belt")
    assert bench.shows("No trend yet: 0 of 3 readings.")
    bench.key(27)
    bench.tap("Undo")
    bench.tap("History of this belt")
    assert bench.shows("No trend yet: 1 of 3 readings.")


@pytest.mark.parametrize("way", ["Spring scale", "Pull the motor"])
def test_no_tension_is_saved_without_the_belt(bench: Session, way: str) -> None:
    saved = bench.state.saved
    bench.state.set_value("drive.belt_teeth", None)
    bench.tap(way)
    for _ in range(4 if way == "Spring scale" else 1):
        bench.type("0.9")
        enter(bench)
    assert not bench.page.savable
    assert not bench.page.can_go
    assert bench.state.last("tension") is None
    assert bench.state.saved.id == saved.id


def test_no_tension_is_saved_without_a_board(begin: Callable[..., Session]) -> None:
    app = begin()
    app.app.shell.go("bench.positions", side="left")
    app.frame(3)
    for key, value in TOWPATH.items():
        app.state.try_value(key, value)
    for text in ("0.9", "0.92", "0.95", "0.9"):
        app.type(text)
        enter(app)
    assert app.page.reading.known
    assert app.shows("Nothing is kept without a board")
    assert app.page.save_text == "SAVE"
    assert not app.page.can_go
    app.page.go_on()
    assert app.state.store.page(app.state.saved.id, kind="tension") == []


def test_ride_and_bench_pull_to_the_same_depth(bench: Session) -> None:
    for tool in ("steel rule", "calliper", "feeler gauge"):
        bench.state.set_person(depth_tool=tool)
        bench.tap("Spring scale")
        bench.settle()
        on_bench = bench.page.depth
        bench.key(27)
        bench.app.shell.go("ride.tension")
        bench.frame(3)
        assert bench.row("Pull depth").value == Style().number(on_bench, "length")
        bench.key(27)


def test_the_other_belt_is_one_tap_away(bench: Session) -> None:
    bench.tap("Right")
    bench.tap("Pull the motor")
    assert bench.page.title == "Pull the motor, RIGHT"
    bench.keys("19")
    bench.tap("SAVE")
    assert last(bench).belt == "right"
    bench.tap("The left belt")
    assert bench.page.side == "left"


def test_the_view_from_a_metre(bench: Session) -> None:
    bench.tap("Read from a metre away")
    assert bench.shows(f"0.959{GAP}kg")
    bench.tap("Back")
    assert bench.page.title == "Set a belt"
