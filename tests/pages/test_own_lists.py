"""Lists of one's own: copied, changed, run, taken out, taken back."""

from dataclasses import replace

import pytest

from logic.checks.lists import checklist
from screens.acts import Place, Undo
from screens.acts.entering import Write
from screens.settings.lists import GONE
from tests.pages.reader import Reader

KEY = "own/1"


@pytest.fixture
def copied(pages: Reader) -> Reader:
    """Give a copy of the pre-ride, open."""
    pages.open("settings")
    pages.tap("My lists")
    assert pages.shows("No list of your own yet.")
    pages.tap("Before a ride")
    assert (pages.name, pages.page.title) == ("settings.list", "Before a ride, own")
    return pages


def test_a_copy_is_changed_and_ours_stays(copied: Reader) -> None:
    count = len(checklist("before_ride").items)
    copied.tap("Helmet, gloves, shoes, lights")
    copied.tap("Take it out")
    copied.tap("Add an item")
    assert copied.page.foot.main.act is None
    copied.act(Write(f"list/{KEY}//action", "Look at the lights"))
    copied.act(Write(f"list/{KEY}//good", "Both lit"))
    copied.tap("Save")
    items = copied.world.own_lists()[KEY].items
    assert (items[-1].action, items[-1].state, len(items)) == ("Look at the lights", "Both lit", count)
    assert len(checklist("before_ride").items) == count
    copied.tap("Look at the lights")
    copied.tap("Move up")
    assert copied.world.own_lists()[KEY].items[-2].action == "Look at the lights"
    copied.tap("Run this list")
    assert copied.page.title == "Before a ride, own"
    assert copied["progress"].text.startswith("1 of ")


def test_a_stop_item_can_be_reworded_and_not_taken_out(copied: Reader) -> None:
    copied.tap("Spin the wheels, then brake")
    assert not any(text == "Take it out" for text, _act in copied.parts())
    copied.act(Write(f"list/{KEY}/{copied.world.args['item']}/good", ""))
    assert copied.page.foot.main.why == "Write 1 to 80 letters."
    copied.back()
    copied.tap("Spin the wheels, then brake")
    assert copied.page.blocks[1].text == "Brake stops the wheels"


def test_undo_of_a_copy_leaves_its_pages(copied: Reader) -> None:
    """It ended on a page of a list that was not there."""
    copied.tap("Add an item")
    copied.act(Undo())
    assert copied.world.own_lists() == {}
    assert copied.name == "settings.lists"


def test_undo_of_a_copy_that_is_run_leaves_the_run(copied: Reader) -> None:
    step = copied.world.undo
    copied.act(Place("ride"))
    copied.open("ride.run", list=KEY)
    assert copied.world.undo is step
    copied.act(Undo())
    assert copied.name == "ride"


def test_taken_out_comes_back_by_undo_whatever_was_changed_beside_it(copied: Reader) -> None:
    copied.back()
    copied.tap("Before a ride, own")
    copied.tap("Take this list out")
    assert copied.name == "settings.lists"
    step = copied.world.undo
    copied.tap("After a ride")
    copied.world = replace(copied.world, undo=step)
    copied.act(Undo())
    assert sorted(copied.world.own_lists()) == [KEY, "own/2"]


def test_a_list_that_is_gone_says_so(pages: Reader) -> None:
    pages.open("settings.list", key=KEY)
    assert pages.page is GONE
    pages.open("settings.item", key=KEY, item="volts")
    assert pages.page is GONE


def test_a_run_of_a_copy_counts_for_the_original(copied: Reader) -> None:
    copied.tap("Run this list")
    for item in copied.world.checklist(KEY).items:
        if item.ask:
            copied.type("40")
        copied.tap(item.state.upper())
    copied.tap("FINISH")
    body = copied.records("check")[0].body
    assert (body.list, body.base, body.right) == (KEY, "before_ride", 9)
    assert copied.world.history().last("check", "before_ride") is not None
