"""What is due and what a check ends in, worked out a second time: the log is replayed from its start at every question.

Nothing is taken from logic but the events and the answers of a run. The rules are read as data.
"""

from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass
from datetime import datetime, timedelta
from typing import Any

from logic.history import Event
from tests.second.pack import table

DAY = timedelta(days=1)
KM = 1000.0


def rides(events: Sequence[Event]) -> int:
    """Rides of a log: entered ones and finished checks after one; one of each within a day is one ride."""
    alone: Event | None = None
    count = 0
    for event in events:
        if not is_ride(event):
            continue
        if alone is not None and alone.kind != event.kind and abs(event.at - alone.at) <= DAY:
            alone = None
        else:
            alone, count = event, count + 1
    return count


def is_ride(event: Event) -> bool:
    return event.kind == "ride" or (event.kind == "check" and event.about == "after_ride" and event.finished)


def matches(event: Event, what: str, subject: str) -> bool:
    """Tell whether an event is what a rule names: "belt", "tension", "list:KEY", "joint:KEY", "ride", "ride:crash"."""
    kind, _, about = what.partition(":")
    if kind == "belt":
        return event.kind == "belt_fitted" and event.about == subject
    if kind == "tension":
        return event.kind == "tension" and event.about == subject
    if kind == "list":
        return event.kind == "check" and event.about == about and event.finished
    if kind == "joint":
        return event.kind == "tightening" and event.about == about
    if about:
        return event.kind == "ride" and (event.crash if about == "crash" else event.wet)
    return is_ride(event)


def places(events: Sequence[Event], what: str, subject: str) -> list[int]:
    return [place for place, event in enumerate(events) if matches(event, what, subject)]


def dated(events: Sequence[Event], place: int, now: datetime) -> datetime | None:
    """When an event was: one dated past tomorrow counts from the latest date before it that can be."""
    believed = [event.at for event in events[:place] if event.at <= now + DAY]
    return events[place].at if events[place].at <= now + DAY else max(believed, default=None)


@dataclass(frozen=True)
class Told:
    """One thing to do: whether it is due, what it counts in, and what is left."""

    key: str
    subject: str
    name: str
    due: bool
    snoozed: bool
    stop: bool
    share: float
    unit: str
    left: float


Furthest = tuple[float, str, float]


def furthest(
    rule: Mapping[str, Any], events: Sequence[Event], span: tuple[int, int, int | None], now: datetime
) -> Furthest:
    """Share, unit and rest of the count that came furthest, from after one place, dated by another, to a third."""
    after, start, until = span
    end = len(events) - 1 if until is None else until
    begun, moment = dated(events, start, now), now if until is None else dated(events, until, now)
    counts = {
        "rides": float(rides(events[: end + 1]) - rides(events[: after + 1])),
        "distance": sum(event.distance for event in events[after + 1 : end + 1]) / KM,
    }
    if begun is not None and moment is not None:
        counts["days"] = (moment - begun) / DAY
    else:
        # Nobody knows how long it was: due if it is about now, nothing if about a look.
        counts["days"] = rule.get("days", 0.0) if until is None else 0.0
    limits = {unit: rule[unit] for unit in counts if unit in rule}
    if not limits or min(limits.values()) <= 0:
        return 1.0, "", 0.0
    unit = max(limits, key=lambda each: counts[each] / limits[each])
    left = (limits[unit] - counts[unit]) * (KM if unit == "distance" else 1.0)
    return counts[unit] / limits[unit], unit, left


def one(rule: Mapping[str, Any], subject: str, events: Sequence[Event], now: datetime) -> Told | None:
    begins = places(events, rule["from"], subject)
    start = begins[-1] if begins else None
    after = start
    if start is None and rule.get("first_ride"):
        ridden = places(events, "ride", "")
        read = places(events, "tension", subject) if rule["from"] == "belt" else []
        if ridden and (not read or ridden[0] < read[0]):
            start, after = ridden[0], ridden[0] - 1
        elif read:
            start = after = read[0]
    if start is None or after is None:
        return None
    cleared = places(events, rule["cleared_by"], subject)
    since = [place for place in cleared if place > start]
    if rule["once"]:
        if any(furthest(rule, events, (after, start, place), now)[0] >= 0.8 for place in since):
            return None
    elif since:
        start = after = since[-1]
    never = rule["from"] == "belt" and not [place for place in cleared if place >= start]
    if never and "never_name" not in rule:
        return None
    share, unit, left = furthest(rule, events, (after, start, None), now)
    put_off = [
        place
        for place, event in enumerate(events)
        if event.kind == "snooze" and event.about == rule["key"] and place >= start
    ]
    snoozed = False
    if put_off:
        at = dated(events, put_off[-1], now)
        no_ride = rides(events) == rides(events[: put_off[-1] + 1])
        snoozed = at is not None and now - at <= 7 * DAY and no_ride
    name = rule["never_name" if never else "name"]
    return Told(
        rule["key"], subject, name, share >= 1.0 and not snoozed, snoozed, rule["stop"], share, unit, left
    )


def due(events: Sequence[Event], sides: Iterable[str], now: datetime) -> list[Told]:
    """Due things first, of these the ones that stop a ride, of these what is due at once, then by how far."""
    found: list[Told] = []
    for rule in table("upkeep_rules"):
        subjects = list(sides) if rule["from"] in ("belt", "tension") else [""]
        told = [each for subject in subjects if (each := one(rule, subject, events, now)) is not None]
        alike = len({(each.name, each.due, each.snoozed) for each in told}) == 1
        if len(told) > 1 and alike:
            most = max(told, key=lambda each: each.share)
            told = [Told(**{**vars(most), "subject": "both"})]
        found += told
    groups = [
        [each for each in found if each.due and each.stop],
        [each for each in found if each.due and not each.stop],
        [each for each in found if not each.due],
    ]
    return [
        each
        for group in groups
        for at_once in (True, False)
        for each in sorted((one for one in group if (not one.unit) is at_once), key=lambda one: -one.share)
    ]


def ends_in(states: Sequence[tuple[str, str] | None]) -> str:
    """The word of a run: of each item its state and its note, None while it is open."""
    said = [state for state in states if state is not None]
    if any(state == "failed" for state, _ in said):
        return "stopped"
    if len(said) < len(states):
        return "not finished"
    return "all right" if all(state == "right" and not note.strip() for state, note in said) else "with notes"


def may_ride(
    items: Sequence[tuple[str, tuple[str, str] | None]],
    held: str,
    put_off: Sequence[tuple[str, str]],
    elsewhere: Sequence[str],
) -> tuple[str, tuple[str, ...]] | None:
    """What a check before a ride ends in and why: of each item what it is about, its state and its note."""
    word = ends_in([state for _, state in items])
    if word == "not finished":
        return None
    if held:
        return "do not ride", (held,)
    reasons = []
    for name, state in items:
        if state is None:
            continue
        kind, note = state
        if kind == "failed":
            return "do not ride", (f"{name}: {note}",)
        if kind == "aside":
            reasons.append(f"{name}: not looked at")
        elif note.strip():
            reasons.append(note if kind == "right" else f"{name}: {note}")
    reasons += [*elsewhere, *(f"{name} is put off" for name, _ in put_off)]
    return ("with care", tuple(reasons)) if reasons else ("fit to ride", ())
