"""All checks: the order of use, where each list stands, and one's own."""

from logic.log import Check
from tests.pages.reader import Reader


def test_each_list_says_where_it_stands(pages: Reader) -> None:
    pages.open("ride.lists")
    lines = [block for block in pages.page.blocks if block.icon == "checklist"]
    assert [line.key for line in lines[:4]] == ["before_ride", "after_ride", "first_recheck", "after_crash"]
    assert {line.key for line in lines} == {
        key for key, of in pages.world.lists().items() if of.place == "ride"
    }
    assert " items, " in pages["after_water"].detail
    found = Check(list="after_water", base="after_water", verdict="all right", right=5, total=5)
    pages.store.append(pages.world.saved.id, found)
    pages.restart(hours=2)
    assert pages["after_water"].detail == "5 of 5 right, today, 09:30."


def test_a_run_that_was_broken_off_says_so(pages: Reader) -> None:
    pages.open("ride.lists")
    title = pages["before_ride"].title
    pages.tap(title)
    assert pages.world.args == {"list": "before_ride", "_seen": True}
    pages.enter()
    pages.back()
    pages.restart(minutes=20)
    pages.open("ride.lists")
    assert pages["before_ride"].detail == "You stopped at 2 of 9, 20\u00a0min ago."
    pages.tap("My own lists")
    assert pages.name == "settings.lists"
