"""How each page is written: bars for gloves one way, all others another; a verdict is a word, no sentence."""

import pytest
from kivy.metrics import dp

from logic.checks.lists import checklists
from logic.log import Ride
from screens.acts.runs import Answer
from screens.blocks import Verdict
from screens.page import Page
from screens.paper.measure import measure
from screens.paper.room import foot_blocks, look_of
from screens.paper.sheet import Ink
from tests.pages.reader import Reader
from tests.pages.states import names, states
from tests.pages.test_runs import begin, looked_over, right, right_until

GLOVED = ("ride", "ride.run", "ride.not_right", "ride.run_over")
"""Ride and the checklists: what is done outdoors."""


def astray(name: str, page: Page, *, none: bool = False) -> list[str]:
    """Return the bars that are written the other way. On Ride no board means an indoor choice of boards."""
    bars = page.foot.bars
    first = [bar.text.split("\n")[0] for bar in bars]
    if name in GLOVED and not none:
        return [text for text in first if text != text.upper()]
    return [text for text in first if text == text.upper() or not text.lstrip("+ ")[0].isupper()]


@pytest.mark.parametrize("name", names())
def test_bars_for_gloves_are_in_capitals_and_a_verdict_ends_without_a_stop(name: str) -> None:
    for what, page in states(name):
        if isinstance(page.crown, Verdict):
            assert not page.crown.word.endswith("."), what
        assert not astray(name, page, none=name == "ride" and "no board" in what), what


def test_a_run_that_was_left_goes_on_by_its_main_bar(pages: Reader) -> None:
    begin(pages)
    right(pages)
    pages.back()
    begin(pages)
    assert not astray(pages.name, pages.page)
    assert pages.page.foot.main is not None
    assert (pages.page.foot.main.text, pages.page.foot.beside[0].text) == ("GO ON", "START AGAIN")


@pytest.mark.parametrize("wet", [False, True])
def test_the_end_of_a_check_is_in_capitals(pages: Reader, wet: bool) -> None:  # noqa: FBT001  (a case)
    """Ready to sign off, and held up by what is due after water."""
    looked_over(pages)
    if wet:
        pages.store.append(pages.world.saved.id, Ride(distance=8000.0, wet=True))
    begin(pages)
    right_until(pages, "")
    assert pages.name == "ride.run_over"
    assert not astray(pages.name, pages.page)
    assert pages.shows("FINISH") != wet


def test_the_verdict_of_a_list_that_is_no_check_before_a_ride_ends_without_a_stop(pages: Reader) -> None:
    pages.open("ride.run", list="after_ride")
    while pages.name == "ride.run":
        pages.act(Answer("right", 37.0))
    assert isinstance(pages.page.crown, Verdict)
    assert pages.page.crown.word == "6 of 6 right"


@pytest.mark.parametrize("key", checklists())
def test_no_bar_of_a_list_takes_more_than_three_lines_of_the_largest_text(pages: Reader, key: str) -> None:
    """At five the item itself was out of sight on a small phone."""

    def lines() -> int:
        blocks = foot_blocks(pages.page.foot, low=False)
        marks = (mark for block in blocks for mark in measure(block, dp(320), look_of(dp(568), 2.0)).marks)
        return max(len(mark.lines) for mark in marks if isinstance(mark, Ink))

    begin(pages, key)
    while pages.name == "ride.run":
        assert lines() <= 3, pages.page.foot.main
        pages.tap("NOT RIGHT")
        assert lines() <= 3, pages.page.foot.beside
        pages.back()
        pages.act(Answer("right", 37.0))
