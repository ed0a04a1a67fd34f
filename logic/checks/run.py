"""A run of a checklist: what is answered so far and which item is next. Each step gives a new run."""

from collections.abc import Mapping
from dataclasses import asdict, field, replace
from datetime import datetime, timedelta
from typing import Any

from logic.checks.lists import Checklist, Item
from logic.errors import InputError
from logic.frozen import frozen

RIGHT, NOTED, ASIDE, FAILED = "right", "noted", "aside", "failed"

SHORT_BREAK = timedelta(minutes=10)
LONG_BREAK = timedelta(minutes=30)
"""Up to the first a run goes on, up to the second beginning again comes first, past it a run lapses."""


@frozen
class Answer:
    """What was said of one item: its state, when, a note, the value that was read (SI, or a choice), the sign seen."""

    state: str
    at: str
    note: str = ""
    value: float | str | None = None
    sign: str = ""


@frozen
class ChecklistRun:
    """A checklist under way.

    `order` is the order of its items, fixed when it begins. `at` is the item in front, "" when every item is
    answered. `touched` is when the last step was taken, `breaks` the gaps that the person came back after, in
    seconds.
    """

    checklist: str
    version: int
    began: str
    touched: str
    order: tuple[str, ...]
    at: str
    answers: Mapping[str, Answer] = field(default_factory=dict)
    breaks: tuple[float, ...] = ()

    @property
    def place(self) -> int:
        """Return the place of the item in front, from 0; the count of items when all are answered."""
        return self.order.index(self.at) if self.at else len(self.order)


CLOCK_STEP = timedelta(minutes=1)
"""A phone corrects its clock by less than this by itself."""


def begin(of: Checklist, now: datetime, first: tuple[str, ...] = ()) -> ChecklistRun:
    """Return a new run of a fitted list. `first` are items noted last time: they come first."""
    keys = [item.key for item in of.items]
    order = tuple([key for key in first if key in keys] + [key for key in keys if key not in first])
    moment = now.isoformat()
    return ChecklistRun(of.key, of.version, moment, moment, order, order[0] if order else "")


def fit(run: ChecklistRun, of: Checklist) -> ChecklistRun:
    """Return a saved run on the list as it is now: the board may have changed and with it what applies.

    The item in front stays in front. One that is gone gives way to the next that has no answer.
    """
    keys = [item.key for item in of.items]
    kept = [key for key in run.order if key in keys]
    order = tuple(kept + [key for key in keys if key not in kept])
    answers = {key: answer for key, answer in run.answers.items() if key in order}
    at = run.at if run.at in order else _next_open(order, answers, 0)
    if not at:
        at = _next_open(order, answers, 0)
    return replace(run, order=order, answers=answers, at=at)


def answered(run: ChecklistRun, item: Item, answer: Answer) -> ChecklistRun:
    """Return the run with an answer to the item in front, and the next one in front.

    Raises InputError for a stop item or a stop sign set aside or noted, for a note that is empty, and for another item than
    the one in front: a second tap in a rush answers nothing.
    """
    if item.key != run.at:
        raise InputError(item.key, answer.state, "not in front")
    if item.stops(answer.sign) and answer.state in (NOTED, ASIDE):
        raise InputError(item.key, answer.state, "stop item")
    if answer.state in (NOTED, FAILED) and not answer.note.strip():
        raise InputError(item.key, answer.note, "note wanted")
    answers = {**run.answers, item.key: answer}
    if answer.state == FAILED:
        return replace(run, answers=answers, touched=answer.at)
    following = _next_open(run.order, answers, run.place + 1) or _next_open(run.order, answers, 0)
    return replace(run, answers=answers, touched=answer.at, at=following)


def back_one(run: ChecklistRun, now: datetime) -> ChecklistRun:
    """Return the run with the item before in front and its answer taken back; the first one stays."""
    place = run.place
    if place == 0:
        return run
    return go_to(run, run.order[place - 1], now)


def go_to(run: ChecklistRun, key: str, now: datetime) -> ChecklistRun:
    """Return the run with a chosen item in front, its answer taken back."""
    answers = {name: answer for name, answer in run.answers.items() if name != key}
    return replace(run, at=key, answers=answers, touched=now.isoformat())


def pause_of(run: ChecklistRun, now: datetime) -> timedelta:
    """Return how long the run has been left alone; below zero when the clock was set back meanwhile."""
    return now - datetime.fromisoformat(run.touched)


def how_old(run: ChecklistRun, of: Checklist, now: datetime) -> str:
    """Return "fresh", "stale" (beginning again comes first) or "lapsed"; only some lists lapse.

    After the clock was set back nobody can tell how long it was: such a run has lapsed.
    """
    gap = pause_of(run, now)
    if not of.lapses or -CLOCK_STEP <= gap < SHORT_BREAK:
        return "fresh"
    return "stale" if CLOCK_STEP < gap <= LONG_BREAK else "lapsed"


def resumed(run: ChecklistRun, now: datetime) -> ChecklistRun:
    """Return the run taken up again, the gap noted."""
    gap = max(0.0, pause_of(run, now).total_seconds())
    return replace(run, touched=now.isoformat(), breaks=(*run.breaks, gap))


def _next_open(order: tuple[str, ...], answers: Mapping[str, Answer], start: int) -> str:
    return next((key for key in order[start:] if key not in answers), "")


def run_to_dict(run: ChecklistRun) -> dict[str, Any]:
    """Return the run as plain data."""
    return asdict(run)


def run_from_dict(body: Mapping[str, Any]) -> ChecklistRun:
    """Return the run of plain data. Raises ValueError, TypeError or LookupError for what is none."""
    answers = {key: Answer(**answer) for key, answer in body["answers"].items()}
    run = ChecklistRun(
        **{**body, "order": tuple(body["order"]), "breaks": tuple(body["breaks"]), "answers": answers}
    )
    for text in (run.began, run.touched):
        datetime.fromisoformat(text).astimezone()
    return run
