"""What came of a run: counted, never promised, and the body under which it is logged."""

from collections.abc import Iterable, Mapping
from dataclasses import dataclass
from datetime import datetime
from typing import Any, TypeAlias

from logic.checks.lists import Checklist
from logic.checks.run import ASIDE, FAILED, NOTED, RIGHT, Run

ALL_RIGHT, WITH_NOTES, STOPPED, UNFINISHED = "all right", "with notes", "stopped", "not finished"

PutOff: TypeAlias = Iterable[tuple[str, str]]
"""Names of checks that are put off, each with the reason."""

FAST_SHARE = 0.3
"""A run in under this share of its stated time is called fast in the log: 25 s of 83."""


@dataclass(frozen=True)
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


def verdict(run: Run, of: Checklist) -> Verdict:
    """Return what a run shows now. A failed item ends it; a list with gaps is not finished."""
    states = [(key, run.answers.get(key)) for key in run.order]
    failed = next((key for key, answer in states if answer is not None and answer.state == FAILED), "")
    notes = tuple((key, answer.note) for key, answer in states if answer is not None and answer.note.strip())
    gaps = any(answer is None for _, answer in states)
    right = sum(answer is not None and answer.state == RIGHT for _, answer in states)
    aside = sum(answer is not None and answer.state == ASIDE for _, answer in states)
    noted = any(answer is not None and answer.state in (NOTED, ASIDE) for _, answer in states)
    seconds = _seconds(run)
    word = STOPPED if failed else UNFINISHED if gaps else WITH_NOTES if noted else ALL_RIGHT
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


def _seconds(run: Run) -> float:
    whole = datetime.fromisoformat(run.touched) - datetime.fromisoformat(run.began)
    return max(0.0, whole.total_seconds() - sum(run.breaks))


def check_body(
    run: Run, of: Checklist, board: Mapping[str, Any], held: str = "", put_off: PutOff = ()
) -> dict[str, Any]:
    """Return the body of the log entry: list, version, answers, verdict, and the board's values then.

    `held` is what forbids riding whatever the list found, "" for nothing: a pack that is out of use.
    `put_off` are the checks that stop a ride and were put off all the same, each with its reason.
    """
    found = verdict(run, of)
    items = {item.key: item for item in of.items}
    return {
        "list": of.key,
        "base": of.base,
        "title": of.title,
        "version": run.version,
        "verdict": found.word,
        "right": found.right,
        "total": found.total,
        "aside": found.aside,
        "notes": [[items[key].action, note] for key, note in found.notes],
        "noted": [
            key for key in run.order if key in run.answers and run.answers[key].state in (NOTED, FAILED)
        ],
        "stopped_by": items[found.stopped_by].action if found.stopped_by else "",
        "halted": of.halted if found.stopped_by else "",
        "reason": found.reason,
        "held": held,
        "put_off": [list(pair) for pair in put_off],
        "began": run.began,
        "seconds": found.seconds,
        "breaks": len(run.breaks),
        "fast": found.fast,
        "values": {key: answer.value for key, answer in run.answers.items() if answer.value is not None},
        "answers": {
            key: [run.answers[key].state, run.answers[key].at] for key in run.order if key in run.answers
        },
        "board": dict(board),
    }
