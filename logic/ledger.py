"""What upkeep reads of the log: rides, checks, tensions, belts and joints of one board, kept up to date."""

from contextlib import suppress
from dataclasses import replace
from datetime import datetime

from logic.checks.open_faults import finding
from logic.errors import UNREADABLE
from logic.history import SAME_RIDE, Event, History
from logic.log import Check, Ride
from logic.log.checks import ALL_RIGHT, WITH_NOTES
from logic.store import Record, Store
from logic.store.errors import CannotStore

KINDS = ("ride", "check", "tension", "tightening", "belt_fitted", "snooze")
"""Kinds of entries that decide what is due."""

RIDDEN = (ALL_RIGHT, WITH_NOTES)
"""Verdicts of a check before a ride after which one rides."""

SUMMARY = "ledger/"
"""Setting of a board's summary."""

VERSION = 1
"""Of the form of a summary; one of another form is made anew."""

LONG = 400
"""Entries that were read at once, from which a summary is worth its place."""

LOOK_BACK = 2000
"""Entries of each kind that are read of a long log: no rule counts further than that."""

ABOUT = {"check": "base", "tension": "belt", "belt_fitted": "belt", "tightening": "joint", "snooze": "rule"}
"""The field of each kind of entry that says what it is about."""


class Ledger:
    """Reads the events of one board. `read` brings them up to the log at the cost of what is new.

    Of a long log a summary is kept in the file, so that the first look after a start is as short as on a young board.
    """

    def __init__(self, store: Store, board: str) -> None:
        """Read from a store at the first call of `read`."""
        self.store, self.board = store, board
        self._history = History()
        self._seen = (-1, -1)

    def read(self, now: datetime | None = None) -> History:
        """Return the events, read again only as far as the log has changed.

        With dates out of their order, or after `now`, a summary would not do: then the whole log is read.
        """
        newest = self.store.newest()
        if newest != self._seen:
            known = self._seen[0] if newest[1] == self._seen[1] else -1
            if known < 0:
                known, self._history = summary(self.store, self.board, newest)
            read = self._add(known)
            self._seen = newest
            if read > LONG and self._history.orderly(now):
                keep(self.store, self.board, newest, self._history)
        if self._history.short and not self._history.orderly(now):
            self._history = History()
            self._add(-1)
        return self._history

    def _add(self, known: int) -> int:
        """Add the events after a row; return how many."""
        fresh = [_event(record) for kind in KINDS for record in self._since(kind, known) if record.readable]
        for event in sorted(fresh, key=lambda event: event.row):
            self._history.add(event)
        return len(fresh)

    def _since(self, kind: str, known: int) -> list[Record]:
        if known < 0:
            return self.store.page(self.board, kind, limit=LOOK_BACK)
        return self.store.page(self.board, kind, after=known, limit=-1)


def summary(store: Store, board: str, newest: tuple[int, int]) -> tuple[int, History]:
    """Return the row up to which a summary is kept and what it says; -1 and nothing where none holds any more."""
    said = store.get(SUMMARY + board, {})
    try:
        row, acted = said["seen"]
        if said["of"] == _of(store) and acted == newest[1] and row <= newest[0]:
            return row, History.from_dict(said)
    except UNREADABLE:
        pass
    return -1, History()


def keep(store: Store, board: str, newest: tuple[int, int], history: History) -> None:
    """Keep a summary of a history as it stands at the newest rows. Where there is no room for it, it is done without."""
    with suppress(CannotStore):
        store.put(SUMMARY + board, {"of": _of(store), "seen": newest, **history.to_dict()})


def _of(store: Store) -> list[object]:
    """Return what makes a summary void when it changes: its form, and a file of which not all could be read."""
    return [VERSION, store.get("salvaged")]


def _event(record: Record) -> Event:
    said = record.body
    event = Event(record.id, record.at, record.kind, getattr(said, ABOUT.get(record.kind, ""), ""))
    if isinstance(said, Ride):
        return replace(event, distance=said.distance or 0.0, crash=said.crash, wet=said.wet)
    if isinstance(said, Check):
        return replace(event, finished=_counts(said), found=finding(said, record.at))
    return event


def ride_open(check: Record | None, ride: Record | None, now: datetime) -> bool:
    """Tell whether the last check before a ride opened one that no entry completes yet.

    `check` and `ride` are the last ones of the log; a ride entered within a day completes the one opened.
    """
    if check is None or not _counts(check.body) or abs(now - check.at) > SAME_RIDE:
        return False
    return ride is None or ride.id < check.id


def _counts(check: Check) -> bool:
    """Tell whether a check was finished; one before a ride that something else forbade opens no ride."""
    return check.verdict in RIDDEN and not (check.base == "before_ride" and check.held)
