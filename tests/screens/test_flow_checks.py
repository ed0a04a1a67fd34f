"""Before a ride at the kerb, by taps: the way through, what is not right, breaks, and the build."""

from collections.abc import Iterator
from pathlib import Path

import pytest

from logic.checks.lists import checklist
from screens.acts.runs import Answer
from screens.driver.finger import Finger
from screens.phone.speech import NO_VOICE
from screens.theme import theme
from tests.screens.session import Session

PRE = checklist("before_ride")


@pytest.fixture
def app(tmp_path: Path) -> Iterator[Session]:
    """Give the app with the example boards."""
    session = Session(tmp_path, demo=True)
    session.settle()
    yield session
    session.stop()
    theme.apply("day", 1.0)


def press(app: Session, text: str, seconds: float = 8.0) -> None:
    """Tap once the card has stood for a while; the clock on the wall goes on as well."""
    app.frame(seconds=0.4)
    app.tap(text)
    app.time = app.time.__class__.fromtimestamp(app.time.timestamp() + seconds, app.time.tzinfo)


def answer(app: Session, item: str) -> None:
    """Say that an item is as wanted."""
    one = PRE.item(item)
    if one.ask:
        app.frame(seconds=0.4)
        app.keys("40.2")
    press(app, one.state.upper())


def answer_before(app: Session, item: str) -> None:
    """Say of every item before one that it is as wanted."""
    for one in PRE.items:
        if one.key == item:
            return
        answer(app, one.key)


def action(app: Session) -> str:
    """What the item in front asks for."""
    return next(block.text for block in app.page.page.blocks if block.key == "action")


def item(app: Session) -> str:
    """The key of the item in front."""
    return app.front.world.session(app.front.world.args["list"]).under_way.at


def go_to(app: Session, key: str) -> None:
    """Put an item in front, as the whole list does."""
    app.front.world.session(app.front.world.args["list"]).go_to(key)
    app.state.changed()
    app.frame(2)


def last_check(app: Session) -> dict:
    return app.state.last("check").body


def test_one_finger_too_fast_passes_one_card_only(app):
    app.tap("BEFORE A RIDE")
    press(app, PRE.items[0].state.upper())
    app.frame(seconds=0.4)
    spot = app.find(PRE.items[1].state.upper())
    place = (spot.x + spot.width / 2, spot.y + spot.height / 2)
    for _ in range(2):
        finger = Finger(app, *place)
        app.frame(2)
        finger.up()
        app.frame(2)
    assert action(app) == PRE.items[2].action


def test_enter_tells_at_once_why_volts_are_refused(app):
    app.tap("BEFORE A RIDE")
    answer_before(app, "charge")
    app.frame(seconds=0.4)
    app.keys("58")
    app.key(13)
    assert app.shows("above this pack's full volts")


def test_where_the_phone_has_no_voice_the_card_says_so(app, monkeypatch):
    monkeypatch.setattr("screens.phone.speech.say", lambda _, told: told(NO_VOICE))
    app.tap("BEFORE A RIDE")
    app.tap("Say it")
    assert app.shows("This phone has no offline voice")
    said = []
    monkeypatch.setattr("screens.phone.speech.say", lambda text, told: said.append(text) or told(""))
    go_to(app, "charge")
    app.tap("Say it")
    assert said == [
        "Volts. Wheels off the ground, remote first, then the board. Read and enter them."
        " Pack when full: 42 volts. Controller holds back below: 33 volts. Pack when empty: 30 volts."
    ]
    assert not app.shows("This phone has no offline voice")


def test_the_screen_stays_awake_only_while_a_run_is_in_front(app):
    app.tap("BEFORE A RIDE")
    assert not app.window.allow_screensaver
    app.frame(seconds=16 * 60)
    assert app.window.allow_screensaver
    app.key(27)
    app.tap("BEFORE A RIDE")
    assert not app.window.allow_screensaver
    app.key(27)
    assert app.window.allow_screensaver


@pytest.mark.parametrize("bar", ["FINISH", "BEFORE A RIDE"])
def test_the_second_touch_of_a_trembling_glove_is_not_for_the_page_that_comes(app: Session, bar: str) -> None:
    """On a small phone it went from Finish to Numbers, and from Before a ride to the voice, which it turned on."""
    app.resize(360, 640)
    if bar == "FINISH":
        app.front.go("ride.run", list="before_ride")
        while app.front.world.trail[-1].page == "ride.run":
            app.front.perform(Answer("right", 39.0))
    app.settle()
    place = app.find(bar).middle
    for _ in range(2):
        finger = Finger(app, *place)
        app.frame(2)
        finger.up()
        app.frame(seconds=0.1)
    app.settle()
    assert [step.page for step in app.front.world.trail] == ["ride"] + ["ride.run"] * (bar != "FINISH")
    assert not app.state.world.person.say
