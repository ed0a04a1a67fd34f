"""The events of one board, with what lets a rule look back over years at once."""

from collections.abc import Iterable, Iterator, Mapping
from dataclasses import asdict
from datetime import UTC, datetime, timedelta
from itertools import pairwise
from typing import Any

from logic.checks.open_faults import Finding, OpenFault, still_open
from logic.frozen import frozen

SAME_RIDE = timedelta(hours=24)
"""A ride entered this near to a check before or after a ride is the ride of that check."""

CLOCK_SLACK = timedelta(days=1)
"""A date further ahead of now than this was written while the clock was wrong."""

NEVER = datetime.max.replace(tzinfo=UTC) - timedelta(days=2)
"""Later than any date of an entry."""

NEWEST = 100
"""Events that a summary holds whole: so many may be looked at one by one."""

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
        self.short = False
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
        self._put(event, self._rides[-1] + rides, self._way[-1] + event.distance)

    def _put(self, event: Event, rides: int, way: float) -> None:
        for name in _names(event):
            self._places.setdefault(name, []).append(len(self.events))
        self.events.append(event)
        self._later = []
        self._rides.append(rides)
        self._way.append(way)

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

    # A summary

    def orderly(self, now: datetime | None) -> bool:
        """Tell whether each event is dated after the one before it, and none after `now`."""
        late = now is not None and bool(self.events) and self.events[-1].at > now + CLOCK_SLACK
        return not late and all(one.at <= two.at for one, two in pairwise(self.events))

    def to_dict(self) -> dict[str, Any]:
        """Return a summary for JSON: the newest events, and of the older ones the first and the last of each name.

        Each comes with the rides and the way up to it, so that what lies between is counted although it is not there.
        """
        ends = {places[end] for places in self._places.values() for end in (0, -1)}
        kept = sorted(ends | set(range(max(0, len(self.events) - NEWEST), len(self.events))))
        return {
            "events": [
                [*_said(self.events[place]), self._rides[place + 1], self._way[place + 1]] for place in kept
            ],
            "faults": [asdict(fault) | {"at": fault.at.isoformat()} for fault in self.faults],
            "open": None if self._open is None else [self._open[0], self._open[1].isoformat()],
        }

    @classmethod
    def from_dict(cls, said: Mapping[str, Any]) -> "History":
        """Return the history that a summary tells of. Raises what UNREADABLE names where it is none."""
        made = cls()
        for row, at, kind, about, crash, wet, finished, rides, way in said["events"]:
            event = Event(int(row), datetime.fromisoformat(at), kind, about, 0.0, crash, wet, finished)
            made._put(event, int(rides), float(way))
        made.faults = tuple(
            OpenFault(**fault | {"at": datetime.fromisoformat(fault["at"])}) for fault in said["faults"]
        )
        opened = said["open"]
        made._open = None if opened is None else (opened[0], datetime.fromisoformat(opened[1]))
        made.short = True
        return made


def _said(event: Event) -> tuple[object, ...]:
    return (
        event.row,
        event.at.isoformat(),
        event.kind,
        event.about,
        event.crash,
        event.wet,
        event.finished,
    )


def _names(event: Event) -> Iterator[tuple[str, str]]:
    yield event.kind, ""
    if event.about and event.finished:
        yield event.kind, event.about
    for name in ("crash", "wet"):
        if getattr(event, name):
            yield event.kind, name
