"""The log: rows are only added, and what acts on an entry is seen when it is read."""

import sqlite3
from datetime import UTC, datetime, timedelta, timezone

import pytest

from logic.log import Note, Ride, Tension, Unread
from logic.store import BadReplacement, NoTimeZone, UnknownEntry, UnknownKind


def numbers(records):
    return [record.id for record in records]


def test_an_entry_is_read_back_from_the_file(store, reopened, clock):
    body = Tension(
        belt="left", pull=14.5, note="“slack” after Brücke", more={"warm": False, "positions": [1, None]}
    )
    number = store.append("weir", body)
    clock.move(days=3)
    record = reopened().entry(number)
    assert (record.id, record.board, record.kind, record.body) == (number, "weir", "tension", body)
    assert (record.version, record.corrected_by, record.voided_by) == (1, None, None)
    assert record.at == datetime(2026, 11, 25, 8, 30, tzinfo=UTC)


def test_a_time_keeps_the_hour_on_the_wall_and_is_stored_in_utc(store, raw):
    west = timezone(timedelta(hours=-3, minutes=-30))
    record = store.entry(store.append("weir", Ride(), at=datetime(2026, 7, 1, 22, 0, tzinfo=west)))
    assert record.at.isoformat() == "2026-07-01T22:00:00-03:30"
    assert record.offset == -210
    assert raw("SELECT at, offset FROM log") == [("2026-07-02T01:30:00.000000+00:00", -210)]


def test_a_time_without_offset_is_refused(store):
    with pytest.raises(NoTimeZone):
        store.append("weir", Ride(), at=datetime(2026, 7, 1, 22, 0))  # noqa: DTZ001  (that is the fault)
    assert store.count() == 0


@pytest.mark.parametrize("kind", ["", "Ride", "tensions"])
def test_an_unknown_kind_is_refused(store, kind):
    for call in (
        lambda: store.append("weir", Unread()),
        lambda: store.page(kind=kind),
        lambda: store.latest("weir", kind),
        lambda: store.count(kind=kind),
    ):
        with pytest.raises(UnknownKind):
            call()


def test_what_json_does_not_have_is_refused_and_nothing_is_added(store):
    with pytest.raises(ValueError, match="JSON"):
        store.append("weir", Note(more={"new": float("nan")}))
    assert store.count() == 0
    store.append("weir", Tension(belt="left", pull=14.5))
    assert store.count() == 1


@pytest.mark.parametrize(
    "statement",
    [
        "UPDATE log SET body = '{}' WHERE id = 1",
        "UPDATE log SET id = 9 WHERE id = 1",
        "DELETE FROM log WHERE id = 1",
        "DELETE FROM log",
        "INSERT OR REPLACE INTO log SELECT * FROM log WHERE id = 1",
        "INSERT INTO log SELECT * FROM log WHERE true ON CONFLICT (id) DO UPDATE SET body = '{}'",
    ],
)
def test_the_file_refuses_to_change_or_lose_a_row(store, raw, statement):
    store.append("weir", Tension(belt="left", pull=14.5))
    before = raw("SELECT * FROM log")
    with pytest.raises(sqlite3.IntegrityError, match="the log is never"):
        raw(statement)
    assert raw("SELECT * FROM log") == before


def test_a_void_hides_and_its_own_void_shows_again(store, reopened):
    kept, hidden = (
        store.append("weir", Ride(distance=1.0)),
        store.append("weir", Ride(distance=2.0)),
    )
    void = store.void(hidden)
    store = reopened()
    assert numbers(store.page("weir")) == [kept]
    assert numbers(store.voided("weir")) == [hidden]
    assert store.voided("ferry") == []
    assert store.count("weir") == 1
    assert store.latest("weir", "ride").id == kept
    assert store.entry(hidden).voided_by == void

    store.void(void)
    store = reopened()
    assert numbers(store.page("weir")) == [hidden, kept]
    assert store.voided("weir") == []
    assert store.count("weir") == 2
    assert store.entry(hidden).voided_by is None


def test_an_entry_can_be_hidden_and_shown_many_times(store):
    number = store.append("weir", Ride())
    for _ in range(3):
        void = store.void(number)
        assert store.page() == []
        store.void(void)
        assert numbers(store.page()) == [number]


def test_the_latest_correction_is_what_is_read_at_the_place_and_time_of_the_entry(store, clock, reopened):
    number = store.append("weir", Ride(distance=400.0))
    later = store.append("weir", Ride(distance=9.0))
    at = clock.now
    clock.move(hours=5)
    store.correct(number, Ride(distance=4000.0))
    last = store.correct(number, Ride(distance=4200.0))
    store = reopened()
    assert numbers(store.page()) == [later, number]
    record = store.page()[1]
    assert record == store.entry(number)
    assert (record.body, record.kind, record.at, record.corrected_by) == (
        Ride(distance=4200.0),
        "ride",
        at,
        last,
    )
    assert store.count() == 2


def test_a_correction_can_be_taken_back(store):
    number = store.append("weir", Ride(distance=1.0))
    store.correct(number, Ride(distance=2.0))
    void = store.void(store.correct(number, Ride(distance=3.0)))
    assert store.entry(number).body == Ride(distance=2.0)
    store.void(void)
    assert store.entry(number).body == Ride(distance=3.0)


def test_a_void_hides_a_corrected_entry_whole(store):
    number = store.append("weir", Ride(distance=1.0))
    void = store.void(number)
    store.correct(number, Ride(distance=2.0))
    assert store.page() == []
    store.void(void)
    assert store.page()[0].body == Ride(distance=2.0)


def test_what_a_row_may_act_on(store):
    entry = store.append("weir", Ride())
    store.correct(entry, Ride())
    correction = store.entry(entry).corrected_by
    void = store.void(entry)
    shown = store.void(void)
    for row in (correction, void, shown):
        with pytest.raises(BadReplacement):
            store.correct(row, Ride())
    with pytest.raises(BadReplacement):
        store.correct(entry, Note())  # The entry is of another kind.
    with pytest.raises(BadReplacement):
        store.void(void)  # It is void already.
    with pytest.raises(BadReplacement):
        store.void(shown)  # It shows a row: that row is voided instead.
    store.void(entry)
    with pytest.raises(BadReplacement):
        store.void(entry)
    for act in (store.void, lambda row: store.correct(row, Ride())):
        with pytest.raises(UnknownEntry):
            act(99)


def test_only_entries_are_looked_up(store):
    void = store.void(store.append("weir", Ride()))
    for number in (void, 99):
        with pytest.raises(UnknownEntry):
            store.entry(number)


def test_pages_follow_one_another_newest_first_by_id_whatever_the_times(store, clock):
    for index in range(25):
        store.append("weir", Ride(note=str(index)), at=clock.now - timedelta(days=index % 7))
        store.append("ferry", Note(note=str(index)))
    store.void(store.page("weir")[3].id)
    expected = [index for index in range(24, -1, -1) if index != 21]
    seen, before = [], None
    while page := store.page("weir", before=before, limit=10):
        assert len(page) <= 10
        seen += [int(record.body.note) for record in page]
        before = page[-1].id
    assert seen == expected
    assert len(store.page()) == 49
    assert numbers(store.page(kind="note")) == numbers(store.page("ferry"))
    assert store.page("weir", "note") == []
    assert store.count() == 49
    assert store.count("weir") == store.count(kind="ride") == store.count("weir", "ride") == 24
    assert store.count("weir", "note") == 0


def test_the_latest_is_found_by_what_its_body_says_now(store):
    left = store.append("weir", Tension(belt="left", method="scale"))
    right = store.append("weir", Tension(belt="right"))
    store.append("ferry", Tension(belt="left"))
    assert store.latest("weir", "tension").id == right
    assert store.latest("weir", "tension", belt="left").id == left
    assert store.latest("weir", "tension", belt="left", method="scale").id == left
    assert store.latest("weir", "tension", belt="right", method="scale") is None
    with pytest.raises(AttributeError):
        store.latest("weir", "tension", side=None)
    assert store.latest("weir", "ride") is None
    store.correct(right, Tension(belt="left"))
    assert store.latest("weir", "tension", belt="left").id == right
    store.void(right)
    assert store.latest("weir", "tension", belt="left").id == left


def test_an_old_body_is_upgraded_when_read_and_stays_as_it_was_in_the_file(store, monkeypatch, raw):
    old = store.append("weir", Tension(belt="left", pull=2.0))
    other = store.append("weir", Ride())
    monkeypatch.setattr(Tension, "UPGRADES", {1: lambda body: {**body, "pull": body["pull"] * 10.0}})
    monkeypatch.setattr(Tension, "VERSION", 2)
    middle = store.append("weir", Tension(belt="left", pull=30.0))
    monkeypatch.setattr(Tension, "UPGRADES", {**Tension.UPGRADES, 2: lambda body: body | {"method": "scale"}})
    monkeypatch.setattr(Tension, "VERSION", 3)
    new = store.append("weir", Tension(belt="left", pull=40.0, method="pulls"))
    said = [(store.entry(row).version, store.entry(row).body) for row in (old, middle, new, other)]
    assert said == [
        (1, Tension(belt="left", pull=20.0, method="scale")),
        (2, Tension(belt="left", pull=30.0, method="scale")),
        (3, Tension(belt="left", pull=40.0, method="pulls")),
        (1, Ride()),
    ]
    assert store.latest("weir", "tension", method="scale").id == middle
    assert raw("SELECT version, body FROM log WHERE id = ?", old) == [(1, '{"belt":"left","pull":2.0}')]


def test_a_correction_is_of_the_version_it_was_written_in(store, monkeypatch):
    number = store.append("weir", Tension(belt="left", pull=2.0))
    store.correct(number, Tension(belt="left", pull=2.5))
    monkeypatch.setattr(Tension, "UPGRADES", {1: lambda body: {**body, "pull": body["pull"] * 10.0}})
    monkeypatch.setattr(Tension, "VERSION", 2)
    assert store.entry(number).body.pull == 25.0
    store.correct(number, Tension(belt="left", pull=26.0))
    assert store.entry(number).body.pull == 26.0


def test_a_body_newer_than_the_app_is_kept_and_the_rest_is_read(store, monkeypatch, raw):
    monkeypatch.setattr(Tension, "VERSION", 2)
    newer = store.append("weir", Tension(belt="left", pull=2.0))
    monkeypatch.undo()
    older = store.append("weir", Tension(belt="right"))
    assert [(record.id, record.readable) for record in store.page()] == [(older, True), (newer, False)]
    assert store.entry(newer).body.later
    assert numbers(store.entries("weir", "tension")) == [older]
    assert store.latest("weir", "tension", belt="left") is None
    assert raw("SELECT body FROM log WHERE id = ?", newer) == [('{"belt":"left","pull":2.0}',)]
