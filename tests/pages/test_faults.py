"""The fault guide and the wear of a belt: searching, causes in order, and where each leads."""

import pytest

from logic.checks.faults import faults
from logic.tables import rows
from screens.acts import Go
from screens.acts.entering import Write
from screens.blocks import Line, Notice, Section, Words
from screens.register import PAGES
from tests.pages.reader import Reader


def test_the_search_puts_the_best_match_first(pages: Reader) -> None:
    pages.open("bench.faults")
    assert len([one for one in pages.page.blocks if isinstance(one, Line)]) == len(faults()) + 1
    pages.act(Write("faults", "belt noise"))
    first = next(one for one in pages.page.blocks if isinstance(one, Line))
    assert first.key == "skips"
    pages.restart()
    assert pages["faults"].text == "belt noise"
    pages.act(Write("faults", "zebra"))
    assert pages.shows("Nothing fits these words.")
    pages.tap("Wear of a belt")
    assert pages.name == "bench.wear"


def test_the_words_of_a_fault_are_explained(pages: Reader) -> None:
    pages.open("bench.fault", fault="hot_motor")
    pages.tap("Words on this page")
    assert pages.name == "glossary"
    assert "Bearing" in [getattr(block, "title", "") for block in pages.blocks()]


def test_a_fault_shows_its_causes_the_easiest_first(pages: Reader) -> None:
    pages.open("bench.faults")
    pages.tap("Brake weak or none")
    found = next(one for one in faults() if one.key == "brake")
    assert [one.title for one in pages.blocks() if isinstance(one, Section)] == [c.name for c in found.causes]
    assert pages["cause 0"].note == "To check: look and feel"
    assert isinstance(pages.blocks()[0], Notice) == bool(found.hazard)
    told = [
        one for one in pages.blocks() if isinstance(one, Words) and one.text.startswith("Do not ride until")
    ]
    assert len(told) == sum(cause.danger for cause in found.causes)
    pages.tap("Tension check")
    assert pages.name == "ride.tension"


@pytest.mark.parametrize("key", [one.key for one in faults()])
def test_each_cause_leads_where_it_says(pages: Reader, key: str) -> None:
    pages.open("bench.fault", fault=key)
    wanted = [cause.opens for one in faults() if one.key == key for cause in one.causes if cause.opens]
    links = [one for one in pages.blocks() if isinstance(one, Line) and one.key.startswith("link ")]
    assert len(links) == len(wanted)
    for link, opens in zip(links, wanted, strict=True):
        assert link.title
        assert isinstance(link.act, Go)
        assert link.act.page in PAGES
        assert list(link.act.args.values()) == ([opens.partition(":")[2]] if ":" in opens else [])


def test_a_sign_of_wear_says_what_to_do(pages: Reader) -> None:
    pages.open("bench.wear")
    assert len(pages.blocks()) == len(rows("belt_wear")) + 1
    pages.tap("Worn edge")
    assert pages.name == "bench.wear_sign"
    # assets/tables/belt_wear.toml, the row of a worn edge.
    assert pages.shows("Lay a straight edge across both pulleys.")
    pages.back()
    assert pages.name == "bench.wear"
