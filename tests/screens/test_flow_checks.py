"""Before a ride at the kerb, by taps: the way through, what is not right, breaks, and the build."""

from collections.abc import Iterator
from pathlib import Path

import pytest

from logic.checks.lists import checklist
from screens.acts import Rerun
from screens.driver import Touch
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
    return app.page.world.session(app.page.args["list"]).under_way.at


def go_to(app: Session, key: str) -> None:
    """Put an item in front, as the whole list does."""
    app.page.world.session(app.page.args["list"]).go_to(key)
    app.page.refresh()
    app.frame(2)


def last_check(app: Session) -> dict:
    return app.state.last("check").body


def test_a_check_before_a_ride_takes_ninety_seconds_and_writes_the_log(app):
    app.tap("PRE-RIDE")
    for item in PRE.items:
        assert action(app) == item.action
        answer(app, item.key)
    assert app.shows("Fit to ride.")
    assert app.shows("9 of 9 right.")
    assert app.shows("A record of what you looked at, not a promise.")
    app.tap("FINISH")
    assert app.shell.trail == [("ride", {})]
    body = last_check(app)
    assert (body.verdict, body.right, body.values) == (
        "all right",
        9,
        {"charge": pytest.approx(40.2)},
    )
    assert body.seconds <= 90
    # Two taps to open and to sign off, one an item, four keys.
    assert app.taps == 2 + 9 + 4
    assert app.state.store.run(app.state.saved.id, "before_ride") is None
    assert app.shows("Pack: 40.2\u00a0V read")


def test_one_finger_too_fast_passes_one_card_only(app):
    app.tap("PRE-RIDE")
    press(app, PRE.items[0].state.upper())
    app.frame(seconds=0.4)
    spot = app.find(PRE.items[1].state.upper())
    place = (spot.x + spot.width / 2, spot.y + spot.height / 2)
    for _ in range(2):
        finger = Touch(app, *place)
        app.frame(2)
        finger.up()
        app.frame(2)
    assert action(app) == PRE.items[2].action


def test_a_failed_stop_item_has_no_way_on_and_ends_in_not_riding(app):
    app.tap("PRE-RIDE")
    answer_before(app, "wheels")
    press(app, "NOT RIGHT")
    assert app.shows("WARNING")
    assert not app.shows("Note it and go on")
    app.tap("FIXED: CHECK IT AGAIN")
    assert action(app) == PRE.item("wheels").action
    assert app.page.world.session("before_ride").under_way.place == 1
    press(app, "NOT RIGHT")
    app.tap("Stop: not riding")
    assert app.shows("Say what is not right")
    app.tap("Wobbles")
    app.tap("Stop: not riding")
    assert app.shows("Do not ride: wheels: Wobbles.")
    body = last_check(app)
    assert (body.verdict, body.reason, body.halted) == ("stopped", "Wobbles", "Not riding")
    app.tap("CLOSE")
    # Ride keeps it in sight until the item is found right, and leads there.
    app.settle()
    app.tap("Do not ride: wheels: Wobbles")
    assert action(app) == PRE.item("wheels").action
    assert app.shows("Last time: Wobbles")
    press(app, PRE.item("wheels").state.upper())
    app.page.perform(Rerun(again=True))
    app.shell.place("ride")
    app.settle()
    assert not app.shows("Do not ride")


def test_another_item_can_be_noted_and_the_sign_off_says_so(app):
    app.tap("PRE-RIDE")
    for item in PRE.items:
        if item.key == "mounts":
            press(app, "NOT RIGHT")
            app.tap("Line broken")
            app.tap("Note it and go on")
        else:
            answer(app, item.key)
    assert app.shows("With care: mounts: Line broken.")
    assert app.shows("8 of 9 right, 1 noted.")
    app.tap("FINISH")
    assert last_check(app).verdict == "with notes"
    app.settle()
    assert app.shows("With care: mounts: Line broken")
    app.tap("Log")
    assert app.shows("With care: mounts: Line broken. 8 of 9 right, 1 noted")


def test_a_nearly_empty_pack_is_told_at_once_and_makes_the_verdict(app):
    app.tap("PRE-RIDE")
    for item in PRE.items:
        if item.ask:
            app.frame(seconds=0.4)
            app.keys("30.1")
            assert app.shows("Nearly empty, short ride only")
            press(app, item.state.upper())
        else:
            answer(app, item.key)
    assert app.shows("With care: nearly empty, short ride only.")
    app.tap("FINISH")
    assert (last_check(app).fit, last_check(app).faults) == ("with care", ())


@pytest.mark.parametrize("sign", ["Mount moves", "Screw missing"])
def test_a_stop_sign_on_another_item_leaves_no_way_on(app, sign):
    app.tap("PRE-RIDE")
    go_to(app, "mounts")
    press(app, "NOT RIGHT")
    assert app.shows("Note it and go on")
    assert not app.shows("WARNING")
    app.tap(sign)
    assert app.shows("WARNING")
    assert not app.shows("Note it and go on")
    app.tap("Line broken")
    assert app.shows("Note it and go on")
    app.tap(sign)
    app.tap("Stop: not riding")
    assert (last_check(app).verdict, last_check(app).reason) == ("stopped", sign)


def test_back_goes_one_level_and_takes_nothing_away(app):
    app.tap("PRE-RIDE")
    answer(app, "pack")
    app.key(27)
    assert app.shell.trail == [("ride", {})]
    app.tap("PRE-RIDE")
    assert app.shows("You stopped at 2 of 9, just now.")
    app.tap("Go on")
    assert action(app) == PRE.item("wheels").action
    app.frame(seconds=0.4)
    app.tap("Back one")
    assert action(app) == PRE.item("pack").action


@pytest.mark.parametrize(
    ("minutes", "first", "at"),
    [(5, "Go on", "wheels"), (15, "Start again", "pack"), (40, "", "pack")],
)
def test_a_broken_off_check_goes_on_begins_again_or_lapses(app, minutes, first, at):
    app.tap("PRE-RIDE")
    answer(app, "pack")
    app.restart(minutes=minutes)
    app.shell.place("ride")
    app.settle()
    app.tap("PRE-RIDE")
    if first:
        assert app.page.page.foot.main.text == first
        app.tap(first)
    else:
        assert last_check(app).verdict == "not finished"
        assert app.shows("That run lapsed")
    assert action(app) == PRE.item(at).action


def test_volts_that_this_pack_cannot_have_are_refused_and_kept(app):
    app.tap("PRE-RIDE")
    answer_before(app, "charge")
    app.frame(seconds=0.4)
    text = PRE.item("charge").state.upper()

    def disabled() -> bool:
        return app.page.page.foot.main.act is None

    for typed in "58":
        app.keys(typed)
        assert disabled()
    assert not app.shows("above this pack's full volts")
    app.frame(60)
    assert app.shows("above this pack's full volts")
    app.tap(text)
    app.key(13)
    assert item(app) == "charge"
    assert app.page.entry.text == "58"
    app.tap("Clear")
    assert disabled()
    app.keys("40.2")
    assert not disabled()
    assert not app.shows("above this pack's full volts")
    press(app, text)
    assert item(app) == "remote"


def test_enter_tells_at_once_why_volts_are_refused(app):
    app.tap("PRE-RIDE")
    answer_before(app, "charge")
    app.frame(seconds=0.4)
    app.keys("58")
    app.key(13)
    assert app.shows("above this pack's full volts")


def test_typed_volts_survive_a_restart(app):
    app.tap("PRE-RIDE")
    answer_before(app, "charge")
    app.frame(seconds=0.4)
    app.keys("40.")
    app.restart(minutes=1)
    app.tap("Go on")
    assert app.page.entry.text == "40."


def test_the_tension_check_opens_from_the_item_and_comes_back_to_it(app):
    app.tap("Bench")
    app.tap("Build, stage by stage")
    app.tap("E: Belt and tension")
    go_to(app, "set")
    app.tap("Tension check")
    app.key(27)
    assert action(app) == checklist("build.belt").item("set").action


def test_where_the_phone_has_no_voice_the_card_says_so(app, monkeypatch):
    monkeypatch.setattr("screens.phone.speech.say", lambda _: False)
    app.tap("PRE-RIDE")
    app.tap("Say it")
    assert app.shows("This phone has no offline voice")
    said = []
    monkeypatch.setattr("screens.phone.speech.say", lambda text: said.append(text) or True)
    go_to(app, "charge")
    app.tap("Say it")
    assert said == [
        "Volts. Wheels off the ground, remote first, then the board. Read and enter them."
        " Pack when full: 42 volts. Controller holds back below: 33 volts. Pack when empty: 30 volts."
    ]
    assert not app.shows("This phone has no offline voice")


def test_the_screen_stays_awake_only_while_a_run_is_in_front(app):
    app.tap("PRE-RIDE")
    assert not app.window.allow_screensaver
    app.frame(seconds=16 * 60)
    assert app.window.allow_screensaver
    app.key(27)
    app.tap("PRE-RIDE")
    assert not app.window.allow_screensaver
    app.key(27)
    assert app.window.allow_screensaver


def test_an_own_list_is_copied_changed_run_and_counts_for_the_original(app):
    app.state.copy_list("before_ride")
    app.shell.go("settings.lists")
    app.frame(2)
    app.tap("Before a ride, own")
    app.tap("Helmet, gloves, shoes, lights")
    app.tap("Take it out")
    app.tap("Add an item")
    app.page.action.text, app.page.good.text = "Look at the lights", "Both lit"
    app.tap("SAVE")
    app.tap("Spin the wheels, then brake")
    assert not app.shows("Take it out")
    app.key(27)
    app.tap("RUN THIS LIST")
    for item in app.state.checklist("own/1").items:
        app.frame(seconds=0.4)
        if item.ask:
            app.keys("40")
        app.tap(item.state.upper())
    app.tap("FINISH")
    body = last_check(app)
    assert (body.list, body.base, body.right) == ("own/1", "before_ride", 9)
    assert app.state.history().last("check", "before_ride") is not None
    assert app.state.history().ridden(-1)[0] == 0
    assert len(checklist("before_ride").items) == len(PRE.items)


def test_a_run_left_through_another_page_is_broken_off(app):
    app.tap("PRE-RIDE")
    answer(app, "pack")
    go_to(app, "mounts")
    app.tap("Joint: torque and locker")
    app.tap("Back")
    assert action(app) == PRE.item("mounts").action
    app.tap("Joint: torque and locker")
    app.time = app.time.__class__.fromtimestamp(app.time.timestamp() + 14 * 60, app.time.tzinfo)
    app.shell.go("board")
    app.settle()
    app.tap("Ride")
    app.tap("PRE-RIDE")
    assert app.shows("You stopped at 5 of 9, 14\u00a0min ago.")
