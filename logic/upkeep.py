"""What is due on a board and why: rules as data over what the log holds."""

from collections.abc import Iterable
from dataclasses import replace
from datetime import datetime, timedelta
from functools import cache

from logic.frozen import frozen
from logic.history import History
from logic.tables import Row, rows

SNOOZED_FOR = timedelta(days=7)
"""A snooze ends with the next ride, or after this long."""

NEARLY = 0.8
"""Done from this share of a count on, a look counts for it; a re-check at 8.2 km is the one at 10 km."""


@frozen
class Due:
    """One rule on one subject. `share` is how far the count has come: from 1 on it is due.

    `unit` says which count came furthest ("rides", "distance", "days", or "" for at once), `left` how much of
    it is still to go (SI; below zero: how late it is). `subject` is a belt's side, "both", or "".
    """

    key: str
    name: str
    why: str
    subject: str
    stop: bool
    opens: str
    share: float
    unit: str
    left: float
    snoozed: bool
    row: Row

    @property
    def due(self) -> bool:
        """Tell whether it is due now and not put off."""
        return self.share >= 1.0 and not self.snoozed


@cache
def rules() -> tuple[Row, ...]:
    """Return the rules in the order of their file."""
    return rows("upkeep_rules")


def upkeep(history: History, sides: Iterable[str], now: datetime) -> tuple[Due, ...]:
    """Return what is due and what comes next: due stop items first, what is due at once before a count."""
    found: list[Due] = []
    for rule in rules():
        subjects = tuple(sides) if rule.text("from") in ("belt", "tension") else ("",)
        judged = [_judge(rule, subject, history, now) for subject in subjects]
        found += _together([one for one in judged if one is not None])
    return tuple(
        sorted(found, key=lambda one: (not one.due, not (one.stop and one.due), bool(one.unit), -one.share))
    )


def _together(found: list[Due]) -> list[Due]:
    """Return both belts as one where the same is to be said of them: the same hands do both in one go."""
    if len(found) > 1 and len({(one.due, one.snoozed, one.name) for one in found}) == 1:
        return [replace(max(found, key=lambda one: one.share), subject="both")]
    return found


def _judge(rule: Row, subject: str, history: History, now: datetime) -> Due | None:
    begun = _start(rule, subject, history)
    if begun is None:
        return None
    start = begun[1]
    cleared = _cleared(rule, subject, history)
    if cleared is not None and cleared > start:
        # Counts only grow: if any look since the beginning came late enough, the last one did.
        if rule.cells["once"] and _furthest(rule, history, begun, cleared, now)[0] >= NEARLY:
            return None
        if not rule.cells["once"]:
            begun, start = (cleared, cleared), cleared
    never = rule.text("from") == "belt" and (cleared is None or cleared < start)
    if never and "never_name" not in rule:
        return None  # The first look at a belt is one thing to do, not one a rule.
    share, unit, left = _furthest(rule, history, begun, None, now)
    return Due(
        rule.text("key"),
        rule.text("never_name" if never else "name"),
        rule.text("never_why" if never else "why"),
        subject,
        bool(rule.cells["stop"]),
        rule.text("opens"),
        share,
        unit,
        left,
        _snoozed(rule, history, start, now),
        rule,
    )


def _start(rule: Row, subject: str, history: History) -> tuple[int, int] | None:
    """Return after which place a rule counts and the place that dates it, None while it has not begun.

    The first ride begins a rule whose own beginning is not in the log, and counts itself.
    """
    begins, _, about = rule.text("from").partition(":")
    if begins == "tension":
        about = subject
    if begins == "belt":
        begins, about = "belt_fitted", subject
    place = history.last({"list": "check", "joint": "tightening"}.get(begins, begins), about)
    if begins == "ride" and not about:
        # A finished check after a ride is a ride as well.
        rides = (place, history.last("check", "after_ride"))
        place = max((found for found in rides if found is not None), default=None)
    if place is None and "first_ride" in rule:
        firsts = (history.first("ride"), history.first("check", "after_ride"))
        ride = min((found for found in firsts if found is not None), default=None)
        first = history.first("tension", subject) if rule.text("from") == "belt" else None
        if ride is not None and (first is None or ride < first):
            return ride - 1, ride
        place = first
    return None if place is None else (place, place)


def _cleared(rule: Row, subject: str, history: History) -> int | None:
    by, _, about = rule.text("cleared_by").partition(":")
    if by == "tension":
        return history.last("tension", subject)
    return history.last({"list": "check", "joint": "tightening"}[by], about)


def _furthest(
    rule: Row, history: History, begun: tuple[int, int], end: int | None, now: datetime
) -> tuple[float, str, float]:
    """Return the count of a rule that has come furthest: its share, its name and what is left of it.

    Without a plausible date the days of a rule have passed for what is due, and none has for what was done.
    """
    after, start = begun
    count, distance = history.ridden(after, end)
    since, moment = history.when(start, now), now if end is None else history.when(end, now)
    if since is not None and moment is not None:
        days = (moment - since) / timedelta(days=1)
    else:
        days = float(rule.cells.get("days", 0.0)) if end is None else 0.0
    best: tuple[float, str, float] | None = None
    for unit, so_far in (("rides", float(count)), ("distance", distance), ("days", days)):
        if unit in rule:
            limit = float(rule.cells[unit])
            if limit <= 0.0:
                return AT_ONCE
            if best is None or so_far / limit > best[0]:
                best = (so_far / limit, unit, limit - so_far)
    return best or AT_ONCE


AT_ONCE = (1.0, "", 0.0)


def _snoozed(rule: Row, history: History, start: int, now: datetime) -> bool:
    place = history.last("snooze", rule.text("key"))
    if place is None or place < start:
        return False
    at = history.when(place, now)
    if at is None or now - at > SNOOZED_FOR:
        return False
    return history.ridden(place)[0] == 0
