"""The app on one World: from act to page, back, the bar, what outlives a restart, and a page that fails."""

from collections.abc import Iterator
from datetime import datetime, timedelta
from pathlib import Path
from typing import Any

import pytest
from kivy.app import App

from logic.board_saved import to_dict
from logic.exchange import demo_boards
from logic.log import Note
from logic.store import Store
from screens.acts.entering import Ask
from screens.acts.keeping import Record, Settle
from screens.acts.outside import Share
from screens.driver import Driver
from screens.front import CLOSE, NOT_COME_BACK_TO, UNDO_FOR, Front
from screens.phone import share
from screens.register import page_function
from screens.theme import theme
from screens.world import open_world
from tests.screens.session import CANAL_TIME


class Pages(App):
    """The front alone, on the example boards."""

    def __init__(self, folder: Path, clock: Any, **kwargs: Any) -> None:
        super().__init__(**kwargs)
        folder.mkdir(exist_ok=True)
        self.store = Store(folder / "deckhand.db", clock)
        if not self.store.boards():
            boards = demo_boards()
            for board in boards:
                self.store.save_board(board.id, board.name, to_dict(board))
            self.store.put("board", boards[0].id)
        self.clock = clock

    def build(self) -> Any:
        self.front = Front(open_world(self.store, self.clock))
        return self.front.paper

    def on_stop(self) -> None:
        self.front.release()
        self.store.close()


class Person(Driver):
    """One person with the app."""

    def __init__(self, folder: Path) -> None:
        self.folder, self.time = folder, datetime(2026, 11, 25, 9, 30, tzinfo=CANAL_TIME)
        super().__init__(Pages(folder, lambda: self.time))
        self.resize(412, 915)

    def again(self, **later: float) -> None:
        self.stop()
        self.time += timedelta(**later)
        super().__init__(Pages(self.folder, lambda: self.time))
        self.settle()

    @property
    def front(self) -> Front:
        return self.app.front


@pytest.fixture
def one(tmp_path: Path) -> Iterator[Person]:
    """Give the app at the gearing page, by way of the tension check."""
    person = Person(tmp_path)
    person.front.go("ride.tension")
    person.front.go("numbers.gearing")
    person.settle()
    yield person
    person.stop()


def test_a_touch_is_an_act_and_the_page_follows(one: Person) -> None:
    one.tap("Motor pulley, one more")
    one.settle()
    assert one.front.world.trial["drive.motor_teeth"].si == 17.0
    assert one.shows("17\u00a0teeth")
    assert one.front.world.store.trial(one.front.world.saved.id) is not None


def test_keys_type_and_back_closes_the_keypad_before_the_page(one: Person) -> None:
    one.front.perform(Ask("drive.wheel_diameter"))
    one.type("97")
    assert one.front.world.trial["drive.wheel_diameter"].si == 0.097
    one.key(27)
    assert one.front.page.foot.entry is None
    assert one.front.page.title == "Gearing and speed"
    one.key(27)
    assert one.front.world.trail[-1].page == "ride.tension"


def test_at_the_end_of_the_way_back_leaves_the_app(one: Person) -> None:
    one.front.place("bench")
    assert one.front.back()
    assert [step.page for step in one.front.world.trail] == ["ride"]
    assert not one.front.back()


def test_a_step_can_be_taken_back_for_ten_seconds_and_a_notice_stays(one: Person) -> None:
    one.front.perform(Record(Note(note="dry"), undo="Noted"))
    one.frame(seconds=UNDO_FOR - 1.0)
    assert one.shows("Undo")
    one.frame(2, seconds=1.0)
    assert not one.shows("Undo")
    one.front.tell("The storage is full.")
    one.frame(seconds=60.0)
    assert one.shows("The storage is full.")
    one.tap(CLOSE)
    assert not one.shows("The storage is full.")


def test_taken_back_by_the_bar(one: Person) -> None:
    one.tap("Motor pulley, one more")
    one.tap("Drop the trial")
    assert not one.front.world.trial
    one.tap("Undo")
    assert one.front.world.trial["drive.motor_teeth"].si == 17.0


def test_half_an_hour_later_the_way_is_still_there_and_after_it_is_not(one: Person) -> None:
    one.again(minutes=29)
    assert [step.page for step in one.front.world.trail] == ["ride", "ride.tension", "numbers.gearing"]
    one.again(minutes=31)
    assert [step.page for step in one.front.world.trail] == ["ride"]


def test_a_way_from_a_clock_set_ahead_is_not_come_back_to(one: Person) -> None:
    one.again(days=-2)
    assert [step.page for step in one.front.world.trail] == ["ride"]


def test_a_page_that_failed_is_not_come_back_to(one: Person, monkeypatch: pytest.MonkeyPatch) -> None:
    def fails(_world: Any) -> None:
        raise ValueError("a fault made for the test")

    real = page_function
    monkeypatch.setattr(
        "screens.front.page_function", lambda name: fails if name == "numbers.gearing" else real(name)
    )
    one.again(minutes=1)
    assert one.front.world.trail[-1].page == "ride"
    assert one.shows(NOT_COME_BACK_TO)
    one.front.place("bench")
    one.front.go("numbers.gearing")
    assert one.front.page.lost
    one.front.back()
    assert not one.front.page.lost
    one.front.go("ride.tension")
    one.front.cannot_show(ValueError("a fault made for the test"))
    assert one.front.page.lost
    one.again(minutes=1)
    assert one.front.world.trail[-1].page == "bench"


def test_what_goes_out_is_done_by_the_phone(one: Person, monkeypatch: pytest.MonkeyPatch) -> None:
    said: list[str] = []
    monkeypatch.setattr(share, "share", lambda text, title: said.append(f"{title}: {text}") or "Copied.")
    one.front.perform(Share("Gearing", "2.5"))
    assert said == ["Gearing: 2.5"]
    assert one.front.world.args["_said"] == "Copied."
    assert one.front.world.out == ()


def test_the_page_is_handed_on_as_text(one: Person, monkeypatch: pytest.MonkeyPatch) -> None:
    said: list[str] = []
    monkeypatch.setattr(share, "share", lambda text, title: said.append(f"{title}: {text}") or "Copied.")
    one.tap("Share")
    assert said[0].startswith("Gearing and speed: Gearing and speed\n")
    assert "Gear ratio: 2.5" in said[0]
    assert one.shows("Copied.")


def test_theme_and_text_follow_the_settings(one: Person) -> None:
    one.front.perform(Settle({"theme": "night", "text": 1.3}))
    assert (theme.name, theme.scale) == ("night", 1.3)
    one.front.perform(Settle({"theme": "day", "text": 1.0}))
    assert (theme.name, theme.scale) == ("day", 1.0)


def test_another_page_fades_in_and_stands_after_150_ms_unless_it_is_switched_off(one: Person) -> None:
    one.settle()
    one.front.go("numbers.units")
    assert one.front.veil.cover == 1.0
    one.frame(seconds=0.08)
    assert 0.2 < one.front.veil.cover < 0.8
    one.frame(2, seconds=0.05)
    assert one.front.veil.cover == 0.0
    one.front.perform(Settle({"fade": False}))
    one.front.go("numbers.gearing")
    assert one.front.veil.cover == 0.0
