"""What is due on a board and why: rules as data over what the log holds."""

from collections.abc import Iterable
from dataclasses import dataclass
from datetime import datetime, timedelta
from functools import cache

from logic.ledger import History
from logic.tables import Row, rows

SNOOZED_FOR = timedelta(days=7)
"""A snooze ends with the next ride, or after this long."""

NEARLY = 0.8
"""Done from this share of a count on, a look counts for it; a re-check at 8.2 km is the one at 10 km."""


@dataclass(frozen=True)
class Due:
    """One rule on one subject. `share` is how far the count has come: from 1 on it is due.

    `unit` says which count came furthest ("rides", "distance", "days", or "" for at once), `left` how much of
    it is still to go (SI; below zero: how late it is). `subject` is a belt's side, or "".
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
    """Return what is due and what comes next: due stop items first, then by how far the count has come."""
    found = []
    for rule in rules():
        subjects = tuple(sides) if rule.text("from") in ("belt", "tension") else ("",)
        for subject in subjects:
            one = _judge(rule, subject, history, now)
            if one is not None:
                found.append(one)
    return tuple(sorted(found, key=lambda one: (not one.due, not (one.stop and one.due), -one.share)))


def due_now(history: History, sides: Iterable[str], now: datetime) -> tuple[Due, ...]:
    """Return only what is due."""
    return tuple(one for one in upkeep(history, sides, now) if one.due)


def _judge(rule: Row, subject: str, history: History, now: datetime) -> Due | None:
    start = _start(rule, subject, history)
    if start is None:
        return None
    cleared = _cleared(rule, subject, history)
    if cleared is not None and cleared > start:
        # Counts only grow: if any look since the beginning came late enough, the last one did.
        if rule.cells["once"] and _furthest(rule, history, start, cleared, None)[0] >= NEARLY:
            return None
        if not rule.cells["once"]:
            start = cleared
    share, unit, left = _furthest(rule, history, start, None, now)
    return Due(
        rule.text("key"),
        rule.text("name"),
        rule.text("why"),
        subject,
        bool(rule.cells["stop"]),
        rule.text("opens"),
        share,
        unit,
        left,
        _snoozed(rule, history, start, now),
        rule,
    )


def _start(rule: Row, subject: str, history: History) -> int | None:
    """Return the place of the event from which a rule counts, None while it has not happened."""
    begins, _, about = rule.text("from").partition(":")
    if begins == "belt":
        fitted = history.last("belt_fitted", subject)
        return history.first("tension", subject) if fitted is None else fitted
    if begins == "tension":
        return history.last("tension", subject)
    return history.last({"list": "check", "joint": "tightening"}.get(begins, begins), about)


def _cleared(rule: Row, subject: str, history: History) -> int | None:
    by, _, about = rule.text("cleared_by").partition(":")
    if by == "tension":
        return history.last("tension", subject)
    return history.last({"list": "check", "joint": "tightening"}[by], about)


def _furthest(
    rule: Row, history: History, start: int, end: int | None, now: datetime | None
) -> tuple[float, str, float]:
    """Return the count of a rule that has come furthest: its share, its name and what is left of it."""
    count, distance = history.ridden(start, end)
    moment = history.events[end].at if end is not None else now
    days = 0.0 if moment is None else (moment - history.events[start].at) / timedelta(days=1)
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
    if place is None or place < start or now - history.events[place].at > SNOOZED_FOR:
        return False
    return history.ridden(place)[0] == 0
