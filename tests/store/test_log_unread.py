"""A file with entries of a later version, and with damaged ones: kept to the letter, and all else goes on."""

import csv
import io
import sqlite3
from contextlib import closing
from datetime import UTC, datetime

import pytest

from logic.ledger import Ledger
from logic.log import KINDS, Ride
from logic.log_table import log_table
from logic.store import BadReplacement, Store

NOW = datetime(2026, 11, 25, 9, 30, tzinfo=UTC)
STRANGE = (
    ("ride", 2, '{"way":{"road":3}}'),
    ("ride", 1, '{"distance":"far"}'),
    ("check", 1, '{"verdict":"all rig'),
    ("tension", 1, b"\xff\xfe{}"),
    ("walk", 1, '{"steps":9}'),
    ("snooze", 0, "{}"),
    ("belt_fitted", 1, '{"belt":"middle"}'),
)
"""Kind, version and body of rows that this version did not write."""


@pytest.fixture
def strange(path, clock):
    """Return a store whose log holds two rides between what cannot be read."""
    with Store(path, clock) as store:
        store.append("b1", Ride(distance=4000.0), NOW)
    with closing(sqlite3.connect(path)) as connection, connection:
        connection.executemany(
            "INSERT INTO log (board, kind, at, offset, version, body)"
            " VALUES ('b1', ?, '2026-11-25T09:30:00.000000+00:00', 0, ?, CAST(? AS TEXT))",
            STRANGE,
        )
    with Store(path, clock) as store:
        store.append("b1", Ride(distance=6000.0), NOW)
        yield store


def test_what_cannot_be_read_stands_in_the_log_and_counts_for_nothing(strange):
    page = strange.page("b1")
    assert [record.readable for record in page] == [True, *[False] * len(STRANGE), True]
    assert [record.body.later for record in page[1:-1]] == [*[False] * (len(STRANGE) - 1), True]
    assert [record.id for record in strange.entries("b1", "ride")] == [9, 1]
    assert strange.latest("b1", "ride").body == Ride(distance=6000.0)
    for kind in KINDS:
        assert all(record.readable for record in strange.entries("b1", kind))
    assert Ledger(strange, "b1").read().ridden(-1) == (2, 10000.0)


def test_it_is_kept_to_the_letter_in_the_file_and_in_the_table(strange, raw):
    before = raw("SELECT CAST(body AS BLOB) FROM log")
    strange.void(strange.void(3))
    with pytest.raises(BadReplacement):
        strange.correct(3, strange.entry(3).body)
    assert raw("SELECT CAST(body AS BLOB) FROM log")[: len(before)] == before
    table = list(csv.DictReader(io.StringIO(log_table(strange.page("b1"), {}))))
    assert [row["body"] for row in table if row["kind"] == "walk"] == ['{"steps":9}']


def test_a_correction_that_cannot_be_read_can_be_taken_back(strange, raw):
    raw(
        "INSERT INTO log (board, kind, at, offset, version, replaces, body)"
        " VALUES ('b1', 'correction', '2026-11-25T09:30:00.000000+00:00', 0, 9, 1, '{\"way\":1}')"
    )
    seen = strange.entry(1)
    assert (seen.readable, seen.body.later) == (False, True)
    assert [record.readable for record in strange.versions(1)] == [True, False]
    strange.void(seen.corrected_by)
    assert strange.entry(1).body == Ride(distance=4000.0)


def test_no_cell_of_the_table_begins_like_a_formula_and_a_return_stays_in_its_cell(store, raw):
    for kind, body in (("=1+1", "=2+2"), ("@sum", "-3"), ("ride", '{"note":"first\\rsecond"}')):
        raw(
            "INSERT INTO log (board, kind, at, offset, version, body)"
            " VALUES ('+b', ?, '2026-11-25T09:30:00.000000+00:00', 0, 1, ?)",
            kind,
            body,
        )
    text = log_table(store.page("+b"), {})
    table = list(csv.DictReader(io.StringIO(text, newline="")))
    assert [(line["kind"], line["body"]) for line in table[1:]] == [("'@sum", "'-3"), ("'=1+1", "'=2+2")]
    assert table[0]["note"] == "first\rsecond"
    assert [line["board"] for line in table] == ["'+b"] * 3
    assert not any(cell[:1] in "=+-@" for line in table for cell in line.values() if cell)
