"""Belts by real touch: two belts within reach of a thumb, and a pluck that the phone's microphone hears."""

from collections.abc import Callable
from typing import Any

import pytest

from logic.belt.recording import Recording
from screens.scenes.bench import pluck
from tests.screens.session import Session


class Ears:
    """A microphone that gives what it is told to, at once."""

    def __init__(self, *recordings: Recording) -> None:
        self.recordings = list(recordings)

    def record(self, heard: Any) -> None:
        """Give the next recording."""
        heard(self.recordings.pop(0), "")


def test_two_belts_within_reach_of_a_thumb(app: Session) -> None:
    """At most six taps besides the digits, all in the lower 420 dp, nothing scrolled, both verdicts saved."""
    app.resize(412, 915)
    app.taps = 0
    heights, moved = [], []

    def tap(text: str) -> None:
        spot = app.find(text)
        heights.append(spot.middle[1])
        moved.append(app.page.parts.panes[0].offset == 0)
        app.tap(spot)

    tap("TENSION CHECK")
    before = app.taps
    app.keys("0.92")
    digits = app.taps - before
    tap("Save left, go to right")
    before = app.taps
    app.keys("0.95")
    digits += app.taps - before
    tap("Save right")
    assert app.taps - digits <= 6
    assert max(heights) <= 420
    assert all(moved)
    words = [record.body.word for record in app.state.store.page(app.state.saved.id, kind="tension")]
    assert words == ["in window", "in window"]


@pytest.mark.parametrize("size", [(320, 568), (360, 640), (412, 915)], ids=str)
def test_from_an_empty_app_a_finger_finds_out_whether_a_belt_is_right(
    begin: Callable[..., Session], size: tuple[int, int]
) -> None:
    app = begin(width=size[0], height=size[1])
    app.taps = digits = 0
    app.tap("A belt")
    for value in ("280-5M-15", "16", "40", "170", "45"):
        app.keys(value)
        digits += len(value)
        app.tap("Next")
    app.keys("0.92")
    digits += len("0.92")
    app.settle()
    print(f"{size[0]}x{size[1]}: 6 values, {digits} keys, {app.taps - digits} taps beside them")  # noqa: T201
    assert app.taps - digits <= 10
    assert app.page.parts.panes[0].offset == 0
    assert app.shows("JUST RIGHT")


def test_a_pluck_is_heard_through_the_microphone(app: Session) -> None:
    app.tap("Bench")
    app.tap("Set a belt")
    app.tap("Other ways")
    app.tap("Pluck and listen")
    app.front.outside.microphone = Ears(pluck(362.0))
    app.tap("Record a pluck")
    assert app.shows("Heard 362\u00a0Hz.")
    app.tap("Save")
    assert app.state.last("tension").body.pitch == pytest.approx(362.0, abs=0.5)


def test_a_recording_dropped_on_the_window_is_opened(app: Session) -> None:
    app.front.go("bench.sound", side="left")
    app.frame(2)
    app.window.dispatch("on_drop_file", b"/nowhere/pluck.wav", 0, 0)
    app.frame(2)
    assert app.shows("There is no file at this path.")


def test_the_chip_says_that_there_is_no_board(begin: Callable[..., Session]) -> None:
    """The name of a board that is none was cut on a small phone."""
    app = begin(width=360, height=640)
    app.tap("Numbers")
    assert app.shows("No board yet")
    app.tap("Gearing and speed")
    app.tap("Cells in series")
    app.keys("10")
    app.tap("Done")
    app.tap("Numbers")
    assert app.shows("Not saved yet")
