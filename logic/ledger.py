"""What upkeep reads of the log: rides, checks, tensions, belts and joints of one board, kept up to date."""

from collections.abc import Iterable, Iterator
from dataclasses import replace
from datetime import UTC, datetime, timedelta
from itertools import takewhile

from logic.checks.open_faults import Finding, OpenFault, finding, still_open
from logic.frozen import frozen
from logic.log import Check, Ride
from logic.log.checks import ALL_RIGHT, WITH_NOTES
from logic.store import Record, Store

KINDS = ("ride", "check", "tension", "tightening", "belt_fitted", "snooze")
"""Kinds of entries that decide what is due."""

RIDDEN = (ALL_RIGHT, WITH_NOTES)
"""Verdicts of a check before a ride after which one rides."""

SAME_RIDE = timedelta(hours=24)
"""A ride entered this near to a check before or after a ride is the ride of that check."""

CLOCK_SLACK = timedelta(days=1)
"""A date further ahead of now than this was written while the clock was wrong."""

NEVER = datetime.max.replace(tzinfo=UTC) - timedelta(days=2)
"""Later than any date of an entry."""

NOTHING_FOUND = Finding()


@frozen
class Event:
    """One entry, cut down to what counts: its row, its time, its kind, and what it is about.

    `about` is the base of a checklist, a belt's side, a joint or an upkeep rule. `distance` in m is that of a
    ride.
    """

    row: int
    at: datetime
    kind: str
    about: str = ""
    distance: float = 0.0
    crash: bool = False
    wet: bool = False
    finished: bool = True
    found: Finding = NOTHING_FOUND


class History:
    """The events of one board, oldest first, with what lets a rule look back over years at once."""

    def __init__(self, events: Iterable[Event] = ()) -> None:
        """Take events in their order."""
        self.events: list[Event] = []
        self.faults: tuple[OpenFault, ...] = ()
        self._rides: list[int] = [0]
        self._way: list[float] = [0.0]
        self._places: dict[tuple[str, str], list[int]] = {}
        self._open: tuple[str, datetime] | None = None
        self._later: list[datetime] = []
        for event in events:
            self.add(event)

    def add(self, event: Event) -> None:
        """Put the next event at the end.

        An entered ride and a finished check after a ride are a ride; within a day of each other they are one.
        A check before a ride is none: one may stay at home after it.
        """
        rides = 0
        if event.kind == "ride" or (event.kind == "check" and event.about == "after_ride" and event.finished):
            other = self._open
            pair = other is not None and other[0] != event.kind and abs(event.at - other[1]) <= SAME_RIDE
            rides, self._open = (0, None) if pair else (1, (event.kind, event.at))
        if event.kind == "check":
            self.faults = still_open(self.faults, event.about, event.found)
        for name in _names(event):
            self._places.setdefault(name, []).append(len(self.events))
        self.events.append(event)
        self._later = []
        self._rides.append(self._rides[-1] + rides)
        self._way.append(self._way[-1] + event.distance)

    def first(self, kind: str, about: str = "") -> int | None:
        """Return the place of the first event of a kind, about something if that is given."""
        places = self._places.get((kind, about))
        return places[0] if places else None

    def last(self, kind: str, about: str = "") -> int | None:
        """Return the place of the last one."""
        places = self._places.get((kind, about))
        return places[-1] if places else None

    def ridden(self, after: int, until: int | None = None) -> tuple[int, float]:
        """Return rides and metres after the event at a place, up to and with the one at another."""
        end = len(self.events) - 1 if until is None else until
        return self._rides[end + 1] - self._rides[after + 1], self._way[end + 1] - self._way[after + 1]

    def when(self, place: int, now: datetime) -> datetime | None:
        """Return the date of the event at a place, None when no plausible one is known.

        The order of the entries is certain, their dates are not: one written while the clock was ahead stands after now, or
        after an entry that came later. It counts from the latest plausible date before it, so that nothing falls due later
        for it, also once now has come to that date.
        """
        latest = min(now, self._earliest_from(place)) + CLOCK_SLACK
        if self.events[place].at <= latest:
            return self.events[place].at
        return max((event.at for event in self.events[:place] if event.at <= latest), default=None)

    def _earliest_from(self, place: int) -> datetime:
        """Return the earliest date from an event on. Dates before the first event are of a clock that lost its time."""
        if not self._later:
            first, found = self.events[0].at, NEVER
            for event in reversed(self.events):
                found = min(found, event.at) if event.at >= first - CLOCK_SLACK else found
                self._later.append(found)
            self._later.reverse()
        return self._later[place]


def _names(event: Event) -> Iterator[tuple[str, str]]:
    yield event.kind, ""
    if event.about and event.finished:
        yield event.kind, event.about
    for name in ("crash", "wet"):
        if getattr(event, name):
            yield event.kind, name


class Ledger:
    """Reads the events of one board. `read` brings them up to the log at the cost of what is new."""

    def __init__(self, store: Store, board: str) -> None:
        """Read from a store at the first call of `read`."""
        self.store, self.board = store, board
        self._history = History()
        self._seen = (-1, -1)

    def read(self) -> History:
        """Return the events, read again only as far as the log has changed."""
        newest = self.store.newest()
        if newest != self._seen:
            known = self._seen[0] if newest[1] == self._seen[1] else -1
            if known < 0:
                self._history = History()
            fresh = [
                _event(record) for kind in KINDS for record in self._since(kind, known) if record.readable
            ]
            for event in sorted(fresh, key=lambda event: event.row):
                self._history.add(event)
            self._seen = newest
        return self._history

    def _since(self, kind: str, known: int) -> list[Record]:
        if known < 0:
            return self.store.page(self.board, kind, limit=LOOK_BACK)
        found: list[Record] = []
        before: int | None = None
        while True:
            page = self.store.page(self.board, kind, before, limit=FEW)
            fresh = list(takewhile(lambda record: record.id > known, page))
            found += fresh
            if len(fresh) < FEW:
                return found
            before = page[-1].id


LOOK_BACK = 2000
"""Entries of each kind that are read of a long log: no rule counts further than that."""

FEW = 50
"""Entries read at a time when only new ones are wanted."""


ABOUT = {"check": "base", "tension": "belt", "belt_fitted": "belt", "tightening": "joint", "snooze": "rule"}
"""The field of each kind of entry that says what it is about."""


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
