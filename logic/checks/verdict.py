"""What came of a run: counted, never promised, and the entry under which it is logged."""

from collections.abc import Iterable, Mapping
from datetime import datetime
from typing import TypeAlias

from logic.checks.lists import Checklist, Item
from logic.checks.run import ASIDE, FAILED, NOTED, RIGHT, ChecklistRun
from logic.frozen import frozen
from logic.log import Check, Fault
from logic.log.checks import ALL_RIGHT, CARE, FIT, NOT, STOPPED, UNFINISHED, WITH_NOTES

BEFORE_RIDE = "before_ride"
"""The list after which one rides."""

PutOff: TypeAlias = Iterable[tuple[str, str]]
"""Names of checks that are put off, each with the reason."""

FAST_SHARE = 0.3
"""A run in under this share of its stated time is called fast in the log: 25 s of 83."""


@frozen
class Verdict:
    """`word` is one of the four above, `notes` are (item, note), `stopped_by` the item that ended it."""

    word: str
    right: int
    total: int
    aside: int
    notes: tuple[tuple[str, str], ...]
    stopped_by: str
    reason: str
    seconds: float
    fast: bool


def verdict(run: ChecklistRun, of: Checklist) -> Verdict:
    """Return what a run shows now. A failed item ends it; a list with gaps is not finished."""
    states = [(key, run.answers.get(key)) for key in run.order]
    failed = next((key for key, answer in states if answer is not None and answer.state == FAILED), "")
    notes = tuple((key, answer.note) for key, answer in states if answer is not None and answer.note.strip())
    gaps = any(answer is None for _, answer in states)
    right = sum(answer is not None and answer.state == RIGHT for _, answer in states)
    aside = sum(answer is not None and answer.state == ASIDE for _, answer in states)
    noted = any(answer is not None and answer.state in (NOTED, ASIDE) for _, answer in states)
    seconds = _seconds(run)
    word = STOPPED if failed else UNFINISHED if gaps else WITH_NOTES if noted or notes else ALL_RIGHT
    return Verdict(
        word,
        right,
        len(run.order),
        aside,
        notes,
        failed,
        run.answers[failed].note if failed else "",
        seconds,
        fast=of.kind == "do-confirm" and not gaps and seconds < FAST_SHARE * of.seconds,
    )


@frozen
class Fitness:
    """Whether one may ride: `word` is one of the three above, `why` are the reasons against it."""

    word: str
    why: tuple[str, ...] = ()


def fitness(
    run: ChecklistRun, of: Checklist, held: str = "", put_off: PutOff = (), elsewhere: Iterable[str] = ()
) -> Fitness | None:
    """Return what a check before a ride ends in, None for other lists and while items are open.

    `held` forbids riding whatever the list found. `elsewhere` are things noted on other lists and still open.
    """
    found = verdict(run, of)
    if of.base != BEFORE_RIDE or found.word == UNFINISHED:
        return None
    if held:
        return Fitness(NOT, (held,))
    if found.stopped_by:
        return Fitness(NOT, (_said(of.item(found.stopped_by), run),))
    answers = [(of.item(key), run.answers[key]) for key in run.order]
    why = [_said(item, run) for item, answer in answers if answer.note.strip() or answer.state == ASIDE]
    why += [*elsewhere, *(f"{name} is put off" for name, _ in put_off)]
    return Fitness(CARE, tuple(why)) if why else Fitness(FIT)


def _said(item: Item, run: ChecklistRun) -> str:
    answer = run.answers[item.key]
    if answer.state == RIGHT:
        return answer.note
    return f"{item.name}: {answer.note if answer.state != ASIDE else 'not looked at'}"


def _faults(run: ChecklistRun, of: Checklist) -> tuple[Fault, ...]:
    wrong = [(of.item(key), run.answers[key]) for key in run.order if key in run.answers]
    return tuple(
        Fault(item.key, item.name, answer.note, answer.state == FAILED)
        for item, answer in wrong
        if answer.state in (NOTED, FAILED)
    )


def _seconds(run: ChecklistRun) -> float:
    whole = datetime.fromisoformat(run.touched) - datetime.fromisoformat(run.began)
    return max(0.0, whole.total_seconds() - sum(run.breaks))


def check_entry(  # noqa: PLR0913  (what a check found, and what else stood in the way)
    run: ChecklistRun,
    of: Checklist,
    board: Mapping[str, float | str],
    held: str = "",
    put_off: PutOff = (),
    elsewhere: Iterable[str] = (),
) -> Check:
    """Return the log entry: list, version, answers, verdict, and the board's values then.

    `held` is what forbids riding whatever the list found, "" for nothing: a pack that is out of use.
    `put_off` are the checks that stop a ride and were put off all the same, each with its reason,
    `elsewhere` what other lists noted and is still open.
    """
    found = verdict(run, of)
    put_off = tuple(put_off)
    fit = fitness(run, of, held, put_off, elsewhere)
    items = {item.key: item for item in of.items}
    said = [(key, run.answers[key]) for key in run.order if key in run.answers]
    return Check(
        list=of.key,
        base=of.base,
        title=of.title,
        version=run.version,
        verdict=found.word,
        fit=fit.word if fit is not None else "",
        fit_why=fit.why if fit is not None else (),
        faults=_faults(run, of) if of.keeps_faults else (),
        right=found.right,
        total=found.total,
        aside=found.aside,
        notes=tuple((items[key].action, note) for key, note in found.notes),
        noted=tuple(key for key, answer in said if answer.state in (NOTED, FAILED)),
        stopped_by=items[found.stopped_by].action if found.stopped_by else "",
        halted=of.halted if found.stopped_by else "",
        reason=found.reason,
        held=held,
        put_off=put_off,
        began=run.began,
        seconds=found.seconds,
        breaks=len(run.breaks),
        fast=found.fast,
        values={key: answer.value for key, answer in run.answers.items() if answer.value is not None},
        answers={key: (answer.state, answer.at) for key, answer in said},
        board=dict(board),
    )
