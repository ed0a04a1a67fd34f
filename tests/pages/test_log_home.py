"""The log itself: what is due first, filters, search, and pages that stay fast in a long log."""

import sqlite3
from contextlib import closing
from datetime import timedelta

import pytest

from logic.log import Note, Ride, Work, text_of
from logic.store.file import utc_text
from screens.acts.entering import Write
from screens.acts.keeping import Record
from screens.acts.runs import Answer, Halt
from screens.log import home
from tests.pages.reader import Reader
from tests.pages.test_layout import SCALES, SIZES, faults, laids


def titles(pages: Reader) -> list[str]:
    return [block.title for block in pages.blocks() if block.key.startswith("entry ")]


def fill(pages: Reader, count: int) -> None:
    """Write so many notes at once, an hour apart."""
    board, rows = pages.world.saved.id, []
    for number in range(count):
        at = utc_text(pages.time - timedelta(hours=count - number))
        rows.append((board, "note", at, 60, 1, text_of(Note(note=f"note {number}"))))
    with closing(sqlite3.connect(pages.store.path)) as connection, connection:
        connection.executemany(
            "INSERT INTO log (board, kind, at, offset, version, body) VALUES (?, ?, ?, ?, ?, ?)", rows
        )
    pages.restart()


def test_a_check_that_ended_a_ride_is_one_sentence_with_one_colon(pages: Reader) -> None:
    """It read "Before a ride: Do not ride: wheels: Wobbles."."""
    pages.open("ride.run", list="before_ride")
    while pages.world.session("before_ride").under_way.at != "wheels":
        pages.act(Answer("right"))
    pages.act(Halt("Wobbles", "Wobbles"))
    pages.open("log")
    assert titles(pages) == ["Before a ride: do not ride, wheels (wobbles)"]


def test_an_empty_log_says_what_will_stand_there(bare: Reader) -> None:
    bare.open("log")
    assert bare.page.crown.word == "Nothing is due"
    assert bare.shows("Rides, checks and work on this board appear here.")
    assert bare.page.foot.main.text == "+ Add a ride"


def test_filters_and_search_show_what_they_say_and_pages_turn(pages: Reader) -> None:
    fill(pages, 45)
    pages.store.append("another", Work(note="bearings"))
    pages.restart()
    pages.open("log")
    assert titles(pages)[:2] == ["note 44", "note 43"]
    pages.tap("Older entries")
    assert titles(pages)[0] == "note 24"
    assert pages.page.card == "(26,)"
    pages.tap("Older entries")
    assert titles(pages) == ["note 4", "note 3", "note 2", "note 1", "note 0"]
    pages.tap("Newer entries")
    assert titles(pages)[0] == "note 24"
    pages.back()
    assert titles(pages)[0] == "note 44"
    pages.tap("Filter and search")
    pages.act(Write("log", "note 7"))
    assert titles(pages) == ["note 7"]
    assert pages["filter"].note == 'All kinds, this board, "note 7"'
    pages.act(Write("log", "bear"))
    assert pages.shows("Nothing in the log fits this filter.")
    pages.tap("All boards")
    assert titles(pages) == ["Work: bearings"]
    assert pages.shows("Another board.")
    pages.tap("Rides")
    assert titles(pages) == []
    assert pages["filter"].note == 'Rides, all boards, "bear"'


def test_what_is_due_is_pinned_and_opens_what_clears_it(pages: Reader) -> None:
    pages.act(Record(Ride(distance=8400.0, crash=True)))
    pages.open("log")
    assert (pages.page.crown.word, pages.page.crown.form) == ("Check after the crash", "wrong")
    assert pages.page.crown.text.endswith("more due.")
    pages.act(pages.page.crown.act)
    assert pages.name == "ride.run"


def test_a_word_that_is_not_there_costs_the_same_in_a_long_log(pages: Reader, monkeypatch) -> None:
    """A look goes through so many rows and no more; the next one goes on where it ended."""
    seen = []
    page = type(pages.store).page

    def watched(store, *given, **more):
        if more.get("text"):
            seen.append((given[2], more["after"]))
        return page(store, *given, **more)

    monkeypatch.setattr(type(pages.store), "page", watched)
    fill(pages, 6000)
    pages.open("log")
    pages.act(Write("log", "note 17"))
    assert titles(pages) == []
    assert pages.shows("Nothing in the newest part of the log fits.")
    assert seen[-1] == (6001, 6000 - home.REACH)
    pages.tap("Look further back")
    assert titles(pages)[:3] == ["note 1799", "note 1798", "note 1797"]
    assert seen[-1] == (5001, 5000 - home.REACH * home.WIDER)
    while "older" in pages:
        pages.act(pages["older"].act)
    assert titles(pages)[-1] == "note 17"


@pytest.mark.parametrize("folded", [True, False])
def test_a_full_log_is_shown_whole_at_every_size(pages: Reader, folded: bool) -> None:  # noqa: FBT001  (a case)
    fill(pages, 45)
    pages.act(Record(Ride(distance=8400.0, crash=True, wet=True, note="fell at the lock " * 9)))
    pages.open("log")
    if not folded:
        pages.tap("Filter and search")
    found = []
    for width, height in SIZES:
        for scale in SCALES:
            for part, laid in laids(pages.page, width, height, scale):
                found += [f"{width}x{height} {scale} {part}: {fault}" for fault in faults(laid)]
    assert found == []
