"""Where the numbers come from: from Settings and from a working to each source and what was held against it."""

from logic import checked
from logic.tables import sources
from tests.pages.reader import Reader


def test_settings_lead_to_a_source_and_to_what_was_checked(pages: Reader) -> None:
    pages.open("settings")
    pages.tap("Where the numbers come from")
    outside = sum(check.numbers for check in checked.checks() if check.outside)
    assert pages.page.crown.number == str(outside)
    assert outside > 500
    key = checked.used()[0]
    pages.tap(sources()[key].title)
    first = next(check for check in checked.checks() if check.key == key)
    assert pages.shows("What was checked")
    assert pages.shows(f"Printed {first.printed}, ours {first.ours}")


def test_a_working_says_what_it_was_held_against(pages: Reader) -> None:
    pages.open("ride.tension")
    pages.tap("Working of the target")
    pages.tap("What it was held against")
    assert pages.shows("formulas here have an outside check.")
    pages.tap(sources()["sdpsi-2017"].title)
    assert pages.shows("Handbook of Timing Belts")
    pages.back()
    assert pages.name == "working"


def test_what_is_habit_or_memory_or_unchecked_is_said(pages: Reader) -> None:
    pages.open("settings.sources", key="practice")
    pages.tap("Tables that rest on it")
    assert any(block.key.startswith("table ") for block in pages.blocks())
    pages.open("settings.sources", key="memory")
    assert pages.shows("from memory")
    pages.open("settings.sources")
    pages.tap("Formulas with no outside check")
    unheld = sum(not one.held for one in checked.formulas())
    assert sum(block.key.startswith("unheld ") for block in pages.blocks()) == unheld > 0
    pages.tap("Looked for and not found")
    for one in checked.not_found():
        assert pages.shows(one["text"])


def test_every_source_in_use_can_be_read(pages: Reader) -> None:
    for key in checked.used():
        pages.open("settings.sources", key=key)
        assert pages.shows(sources()[key].title)
