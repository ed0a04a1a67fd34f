"""Looking for a word, what an entry was before, the table of the log, and the ledger that upkeep reads."""

import csv
import io
from dataclasses import replace
from datetime import UTC, datetime, timedelta

import pytest

from logic import history, ledger
from logic.ledger import Ledger
from logic.log import Note, Ride, Work, text_of
from logic.log_table import log_table

RIDE = Ride(distance=8400.0, energy=331200.0, volts_before=41.2)


def test_a_word_is_found_in_body_kind_and_date_and_wildcards_are_letters(store, clock):
    store.append("b1", Note(note='Belt "sings" at 50% speed'))
    store.append("b1", Work(note="New_bearings"))
    store.append("b2", Note(note="belt of another board"))
    assert [one.id for one in store.page("b1", text="BELT")] == [1]
    assert [one.id for one in store.page(text="belt")] == [3, 1]
    assert [one.id for one in store.page(text='"sings"')] == [1]
    assert [one.id for one in store.page(text="50%")] == [1]
    assert [one.id for one in store.page(text="w_b")] == [2]
    assert store.page(text="5%0") == []
    assert [one.id for one in store.page(text="work")] == [2]
    assert len(store.page(text="2026-11-25")) == 3


def test_a_corrected_entry_is_found_by_its_new_words_and_shows_its_old_ones(store):
    number = store.append("b1", Note(note="left belt"))
    store.correct(number, Note(note="right belt"))
    assert store.page(text="left") == []
    assert [one.body.note for one in store.versions(number)] == ["left belt", "right belt"]
    store.void(store.entry(number).corrected_by)
    assert [one.body.note for one in store.versions(number)] == ["left belt"]


def test_the_table_has_units_in_its_heads_and_keeps_everything(store):
    store.append("b1", RIDE)
    store.append("b1", Note(note='=cmd, "quoted"\nsecond line'))
    table = list(csv.DictReader(io.StringIO(log_table(store.page(), {"b1": "Weir"}))))
    note, ride = table
    assert (ride["distance [km]"], ride["energy [Wh]"], ride["before [V]"], ride["after [V]"]) == (
        "8.4",
        "92",
        "41.2",
        "",
    )
    assert (ride["board"], ride["at"]) == ("Weir", "2026-11-25T09:30:00+01:00")
    assert note["note"].startswith("'=cmd")
    assert ride["body"] == text_of(RIDE)


@pytest.mark.parametrize("change", ["append", "void", "correct"])
def test_the_ledger_follows_the_log(store, change):
    for _ in range(60):
        store.append("b1", RIDE)
    book = Ledger(store, "b1")
    assert book.read().ridden(-1) == (60, 60 * 8400.0)
    if change == "append":
        store.append("b1", replace(RIDE, crash=True))
        store.append("b2", RIDE)
        assert book.read().ridden(-1)[0] == 61
        assert book.read().last("ride", "crash") == 60
    elif change == "void":
        store.void(1)
        assert book.read().ridden(-1) == (59, pytest.approx(59 * 8400.0))
    else:
        store.correct(2, replace(RIDE, distance=400.0))
        assert book.read().ridden(-1) == (60, pytest.approx(59 * 8400.0 + 400.0))


def test_a_long_log_is_summed_up_in_the_file_and_the_summary_never_outlives_what_it_says(store, monkeypatch):
    """The first look after a start reads only what is newer; a void, another form or a date out of order reads all again."""
    monkeypatch.setattr(ledger, "LONG", 10)
    monkeypatch.setattr(history, "NEWEST", 3)
    start = datetime(2026, 3, 1, tzinfo=UTC)
    for day in range(40):
        store.append("b1", RIDE, start + timedelta(days=day))
    now = start + timedelta(days=41)
    assert not Ledger(store, "b1").read(now).short
    store.append("b1", RIDE, now)
    found = Ledger(store, "b1").read(now)
    assert found.short
    assert found.ridden(-1) == (41, pytest.approx(41 * 8400.0))
    assert not Ledger(store, "b1").read(start).short
    store.void(20)
    found = Ledger(store, "b1").read(now)
    assert (found.short, found.ridden(-1)[0]) == (False, 40)
    assert Ledger(store, "b1").read(now).short
    store.append("b1", RIDE, start)
    found = Ledger(store, "b1").read(now)
    assert (found.short, found.ridden(-1)[0]) == (False, 41)


@pytest.mark.parametrize("said", [[], {}, "x", {"of": [1, None], "seen": [5, 0], "events": [[1]]}])
def test_a_summary_that_is_none_is_done_without(store, said):
    for _ in range(12):
        store.append("b1", RIDE)
    store.put("ledger/b1", said)
    assert Ledger(store, "b1").read().ridden(-1)[0] == 12


def test_the_ledger_reads_more_new_entries_than_one_look_holds(store):
    book = Ledger(store, "b1")
    store.append("b1", RIDE)
    book.read()
    for _ in range(120):
        store.append("b1", RIDE)
    assert book.read().ridden(-1)[0] == 121
