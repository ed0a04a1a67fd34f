"""The page beside the bars of the system and above its keyboard, on the app itself."""

from collections.abc import Iterator

import pytest
from kivy.metrics import Metrics

from screens.acts.entering import Ask
from screens.paper.edges import FIRST
from screens.phone import bars
from screens.phone.bars import Covered, Sides
from tests.screens.session import Session

UPRIGHT, LYING = Sides(0, 24, 0, 48), Sides(0, 0, 48, 0)
"""Bars in dp, which are pixels here: with three buttons, and on its side."""
PAGES = ("ride", "ride.tension", "numbers.gearing", "bench.joints", "log", "log.note", "settings", "board")


@pytest.fixture
def covered(monkeypatch: pytest.MonkeyPatch) -> Iterator[dict[str, Covered]]:
    """Give what the phone says is covered, to be changed."""
    now = {"is": Covered()}
    monkeypatch.setattr(bars, "covered", lambda: now["is"])
    monkeypatch.setattr(bars, "tells_keyboard", lambda: True)
    return now


def under(app: Session, sides: Sides, keyboard: float = 0.0) -> list[str]:
    """Return what can be touched or read and stands under a bar or the keyboard."""
    paper, low = app.app.front.paper, max(sides.bottom, keyboard)
    left, right, top = sides.left, paper.width - sides.right, paper.height - sides.top
    spots = [
        spot.text
        for spot in paper.spots()
        if spot.x < left - 1
        or spot.x + spot.width > right + 1
        or (spot.part not in paper.parts.panes and (spot.y < low - 1 or spot.y + spot.height > top + 1))
    ]
    panes = [
        "pane" for pane in paper.parts.panes if pane.opacity and (pane.y < low - 1 or pane.top > top + 1)
    ]
    return spots + panes


@pytest.mark.parametrize("page", PAGES)
def test_nothing_stands_under_the_bars(app, covered, page):
    for size, sides in (((412, 915), UPRIGHT), ((320, 568), UPRIGHT), ((915, 412), LYING)):
        covered["is"] = Covered(sides)
        app.resize(*size)
        app.app.front.go(page)
        app.frame(3, seconds=0.2)
        assert app.app.front.paper.free == sides
        assert under(app, sides) == []


def test_on_a_phone_without_bars_the_page_has_the_whole_window(app, covered):
    app.resize(412, 915)
    paper = app.app.front.paper
    assert (paper.parts.header.top, paper.parts.places.y) == (915, 0)
    covered["is"] = Covered(UPRIGHT)
    app.app.front.edges.read()
    assert (paper.parts.header.top, paper.parts.places.y) == (915 - 24, 48)


def test_what_is_written_and_save_stand_above_the_keyboard(app, covered):
    app.resize(412, 915)
    covered["is"] = Covered(UPRIGHT)
    app.app.front.go("log.note")
    app.frame(3, seconds=0.2)
    paper = app.app.front.paper
    app.tap("A few words")
    assert paper.keyboard == 915 * FIRST
    covered["is"] = Covered(UPRIGHT, keyboard=380)
    app.frame(4, seconds=0.2)
    assert paper.keyboard == 380
    assert under(app, UPRIGHT, 380) == []
    assert paper.writing.y >= 380
    save = app.find("Save")
    assert save.y >= 380
    paper.writing.text = "Belt squeaks"
    app.tap("Save")
    assert app.app.front.world.last("note") is not None
    covered["is"] = Covered(UPRIGHT)
    app.frame(4, seconds=0.2)
    assert (paper.keyboard, paper.parts.places.y) == (0, 48)


def test_the_keyboard_goes_only_once_the_finger_is_up(app, covered):
    app.resize(412, 915)
    app.app.front.go("log.note")
    app.tap("A few words")
    covered["is"] = Covered(keyboard=380)
    app.frame(4, seconds=0.2)
    paper = app.app.front.paper
    paper.writing.text = "Belt squeaks"
    touch = app.touch("Save")
    assert paper.writing is None
    app.frame(5, seconds=0.2)
    assert paper.keyboard == 380
    touch.up()
    app.frame(5, seconds=0.2)
    assert paper.keyboard == 0


def test_what_is_written_wants_words_and_a_number_wants_none_of_it(app, covered):
    app.app.front.go("log.note")
    app.tap("A few words")
    writing = app.app.front.paper.writing
    assert (writing.input_type, writing.keyboard_suggestions) == ("text", True)
    assert app.window.softinput_mode == "below_target"
    app.key(27)
    app.app.front.go("numbers.gearing")
    app.app.front.perform(Ask("drive.motor_teeth"))
    assert app.app.front.paper.writing is None


def test_on_a_screen_of_another_density_the_page_is_laid_out_anew(app, covered, monkeypatch):
    app.resize(412, 915)
    paper, before = app.app.front.paper, Metrics.density
    height = paper.parts.header.height
    monkeypatch.setattr(
        "screens.environment.phone_metrics", lambda: setattr(Metrics, "density", 1.25 * before)
    )
    try:
        app.app.dispatch("on_resume")
        app.frame(3)
        assert paper.parts.header.height == pytest.approx(1.25 * height, rel=0.03)
    finally:
        Metrics.density = before


def test_coming_back_reads_the_bars_what_is_due_and_the_motor_anew(app, covered):
    front = app.app.front
    covered["is"] = Covered(UPRIGHT)
    before = front.world
    app.app.dispatch("on_pause")
    app.app.dispatch("on_resume")
    assert front.world is before
    app.frame(2)
    assert front.world is not before
    assert front.world.log is not before.log
    assert front.paper.free == UPRIGHT
