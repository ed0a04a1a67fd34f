"""The log: rows are only added, and what acts on an entry is seen when it is read."""

import sqlite3
from datetime import UTC, datetime, timedelta, timezone

import pytest

from logic.store import BadReplacement, NewerFile, NoTimeZone, UnknownEntry, UnknownKind
from logic.store.log import ENTRY_KINDS, UPGRADES


def numbers(records):
    return [record.id for record in records]


def test_an_entry_is_read_back_from_the_file(store, reopened, clock):
    body = {
        "belt": "left",
        "pull": 14.5,
        "warm": False,
        "note": "“slack” after Brücke",
        "positions": [1, None],
    }
    number = store.append("weir", "tension", body)
    clock.move(days=3)
    record = reopened().entry(number)
    assert (record.id, record.board, record.kind, record.body) == (number, "weir", "tension", body)
    assert (record.version, record.replaces, record.corrected_by, record.voided_by) == (1, None, None, None)
    assert record.at == datetime(2026, 11, 25, 8, 30, tzinfo=UTC)


def test_a_time_keeps_the_hour_on_the_wall_and_is_stored_in_utc(store, raw):
    west = timezone(timedelta(hours=-3, minutes=-30))
    record = store.entry(store.append("weir", "ride", {}, at=datetime(2026, 7, 1, 22, 0, tzinfo=west)))
    assert record.at.isoformat() == "2026-07-01T22:00:00-03:30"
    assert record.offset == -210
    assert raw("SELECT at, offset FROM log") == [("2026-07-02T01:30:00.000000+00:00", -210)]


def test_a_time_without_offset_is_refused(store):
    with pytest.raises(NoTimeZone):
        store.append("weir", "ride", {}, at=datetime(2026, 7, 1, 22, 0))  # noqa: DTZ001  (that is the fault)
    assert store.count() == 0


@pytest.mark.parametrize("kind", sorted(ENTRY_KINDS))
def test_every_kind_of_entry_is_taken(store, kind):
    assert numbers(store.page(kind=kind)) == []
    number = store.append("weir", kind, {})
    assert numbers(store.page(kind=kind)) == [number]


@pytest.mark.parametrize("kind", ["", "Ride", "tensions"])
def test_an_unknown_kind_is_refused(store, kind):
    for call in (
        lambda: store.append("weir", kind, {}),
        lambda: store.page(kind=kind),
        lambda: store.latest("weir", kind),
        lambda: store.count(kind=kind),
    ):
        with pytest.raises(UnknownKind):
            call()


@pytest.mark.parametrize("number", [float("nan"), float("inf")])
def test_what_json_does_not_have_is_refused_and_nothing_is_added(store, number):
    with pytest.raises(ValueError, match="JSON"):
        store.append("weir", "tension", {"pull": number})
    assert store.count() == 0
    store.append("weir", "tension", {"pull": 14.5})
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
    store.append("weir", "tension", {"pull": 14.5})
    before = raw("SELECT * FROM log")
    with pytest.raises(sqlite3.IntegrityError, match="the log is never"):
        raw(statement)
    assert raw("SELECT * FROM log") == before


def test_a_void_hides_and_its_own_void_shows_again(store, reopened):
    kept, hidden = (
        store.append("weir", "ride", {"metres": 1.0}),
        store.append("weir", "ride", {"metres": 2.0}),
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
    number = store.append("weir", "ride", {})
    for _ in range(3):
        void = store.void(number)
        assert store.page() == []
        store.void(void)
        assert numbers(store.page()) == [number]


def test_the_latest_correction_is_what_is_read_at_the_place_and_time_of_the_entry(store, clock, reopened):
    number = store.append("weir", "ride", {"metres": 400.0})
    later = store.append("weir", "ride", {"metres": 9.0})
    at = clock.now
    clock.move(hours=5)
    store.append("weir", "correction", {"metres": 4000.0}, replaces=number)
    last = store.append("weir", "correction", {"metres": 4200.0}, replaces=number)
    store = reopened()
    assert numbers(store.page()) == [later, number]
    record = store.page()[1]
    assert record == store.entry(number)
    assert (record.body, record.kind, record.at, record.corrected_by) == (
        {"metres": 4200.0},
        "ride",
        at,
        last,
    )
    assert store.count() == 2


def test_a_correction_can_be_taken_back(store):
    number = store.append("weir", "ride", {"metres": 1.0})
    store.append("weir", "correction", {"metres": 2.0}, replaces=number)
    void = store.void(store.append("weir", "correction", {"metres": 3.0}, replaces=number))
    assert store.entry(number).body == {"metres": 2.0}
    store.void(void)
    assert store.entry(number).body == {"metres": 3.0}


def test_a_void_hides_a_corrected_entry_whole(store):
    number = store.append("weir", "ride", {"metres": 1.0})
    void = store.void(number)
    store.append("weir", "correction", {"metres": 2.0}, replaces=number)
    assert store.page() == []
    store.void(void)
    assert store.page()[0].body == {"metres": 2.0}


def test_what_a_row_may_act_on(store):
    entry = store.append("weir", "ride", {})
    correction = store.append("weir", "correction", {}, replaces=entry)
    void = store.void(entry)
    shown = store.void(void)
    refused = [
        ("weir", "ride", entry),  # An entry replaces nothing.
        ("weir", "correction", None),
        ("weir", "void", None),
        ("weir", "void", 99),
        ("ferry", "void", entry),  # The entry is another board's.
        ("weir", "correction", correction),
        ("weir", "correction", void),
        ("weir", "void", void),  # It is void already.
        ("weir", "void", shown),  # It shows a row: that row is voided instead.
    ]
    for board, kind, replaces in refused:
        with pytest.raises(BadReplacement):
            store.append(board, kind, {}, replaces=replaces)
    store.void(entry)
    with pytest.raises(BadReplacement):
        store.void(entry)
    with pytest.raises(UnknownEntry):
        store.void(99)


def test_only_entries_are_looked_up(store):
    void = store.void(store.append("weir", "ride", {}))
    for number in (void, 99):
        with pytest.raises(UnknownEntry):
            store.entry(number)


def test_pages_follow_one_another_newest_first_by_id_whatever_the_times(store, clock):
    for index in range(25):
        store.append("weir", "ride", {"index": index}, at=clock.now - timedelta(days=index % 7))
        store.append("ferry", "note", {"index": index})
    store.void(store.page("weir")[3].id)
    expected = [index for index in range(24, -1, -1) if index != 21]
    seen, before = [], None
    while page := store.page("weir", before=before, limit=10):
        assert len(page) <= 10
        seen += [record.body["index"] for record in page]
        before = page[-1].id
    assert seen == expected
    assert len(store.page()) == 49
    assert numbers(store.page(kind="note")) == numbers(store.page("ferry"))
    assert store.page("weir", "note") == []
    assert store.count() == 49
    assert store.count("weir") == store.count(kind="ride") == store.count("weir", "ride") == 24
    assert store.count("weir", "note") == 0


def test_the_latest_is_found_by_what_its_body_says_now(store):
    left = store.append("weir", "tension", {"belt": "left", "at": "front"})
    right = store.append("weir", "tension", {"belt": "right"})
    store.append("ferry", "tension", {"belt": "left"})
    assert store.latest("weir", "tension").id == right
    assert store.latest("weir", "tension", belt="left").id == left
    assert store.latest("weir", "tension", belt="left", at="front").id == left
    assert store.latest("weir", "tension", belt="right", at="front") is None
    assert store.latest("weir", "tension", side=None) is None
    assert store.latest("weir", "ride") is None
    store.append("weir", "correction", {"belt": "left"}, replaces=right)
    assert store.latest("weir", "tension", belt="left").id == right
    store.void(right)
    assert store.latest("weir", "tension", belt="left").id == left


def test_an_old_body_is_upgraded_when_read_and_stays_as_it_was_in_the_file(store, monkeypatch, raw):
    old = store.append("weir", "tension", {"pull": 2.0})
    other = store.append("weir", "ride", {"pull": 2.0})
    monkeypatch.setitem(UPGRADES, ("tension", 1), lambda body: {"force": body["pull"]})
    middle = store.append("weir", "tension", {"force": 3.0})
    monkeypatch.setitem(UPGRADES, ("tension", 2), lambda body: body | {"belt": "left"})
    new = store.append("weir", "tension", {"force": 4.0, "belt": "right"})
    assert [
        (store.entry(number).version, store.entry(number).body) for number in (old, middle, new, other)
    ] == [
        (3, {"force": 2.0, "belt": "left"}),
        (3, {"force": 3.0, "belt": "left"}),
        (3, {"force": 4.0, "belt": "right"}),
        (1, {"pull": 2.0}),
    ]
    assert store.latest("weir", "tension", belt="left").id == middle
    assert raw("SELECT version, body FROM log WHERE id = ?", old) == [(1, '{"pull":2.0}')]


def test_a_correction_is_of_the_version_it_was_written_in(store, monkeypatch):
    number = store.append("weir", "tension", {"pull": 2.0})
    store.append("weir", "correction", {"pull": 2.5}, replaces=number)
    monkeypatch.setitem(UPGRADES, ("tension", 1), lambda body: {"force": body["pull"]})
    assert store.entry(number).body == {"force": 2.5}
    store.append("weir", "correction", {"force": 2.6}, replaces=number)
    assert store.entry(number).body == {"force": 2.6}


def test_a_body_newer_than_the_app_is_refused(store, monkeypatch):
    monkeypatch.setitem(UPGRADES, ("tension", 1), lambda body: body)
    store.append("weir", "tension", {})
    monkeypatch.delitem(UPGRADES, ("tension", 1))
    with pytest.raises(NewerFile):
        store.page()
