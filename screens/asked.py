"""Where a page's own questions are answered and kept, and which packs were taken out of use."""

from dataclasses import asdict, replace
from typing import Any

from logic.answers.questions import Asked, questions
from logic.answers.range import LoggedRide
from logic.board import Value, value_from
from screens.state import State

RIDES = 50
"""Rides of the log that a range is learnt from: the newest ones."""


def _key(state: State) -> str:
    return f"asked/{state.saved.id}"


def answers(state: State) -> dict[str, Value]:
    """Return the answers for the board in use; a meter reading that has grown old is no longer one."""
    now = state.clock().timestamp()
    kept = {}
    for key, body in state.store.get(_key(state), {}).items():
        question = questions().get(key)
        if question is None:
            continue
        at = body.pop("at", now)
        if question.lasts is None or 0.0 <= now - at < question.lasts:
            kept[key] = value_from(body)
    return kept


def asked(state: State) -> Asked:
    """Return the answers as the logic reads them."""
    return Asked(answers(state))


def answer(state: State, key: str, value: Value | None) -> None:
    """Keep an answer, or take it back by None. Raises InputError outside its limits; nothing changes then."""
    stored: dict[str, Any] = dict(state.store.get(_key(state), {}))
    if value is None:
        stored.pop(key, None)
    else:
        questions()[key].field.check(value.si)
        body = asdict(replace(value, known="chosen"))
        stored[key] = {**body, "at": state.clock().timestamp()}
    state.store.put(_key(state), stored)


def logged_rides(state: State) -> tuple[LoggedRide, ...]:
    """Return the newest rides of the board in use, as the range reads them."""
    records = state.store.page(board=state.saved.id, kind="ride", limit=RIDES)
    return tuple(
        LoggedRide(*(record.body.get(name) for name in ("distance", "energy", "volts_before", "volts_after")))
        for record in records
    )


def out_of_use(state: State) -> dict[str, Any] | None:
    """Return when and why the pack of the board in use was taken out of use, None while it is in use."""
    found: dict[str, Any] | None = state.store.get(f"pack_out/{state.saved.id}")
    return found


def take_out(state: State, sign: str) -> None:
    """Take the pack of the board in use out of use: every page about packs says so from now on."""
    state.store.put(f"pack_out/{state.saved.id}", {"sign": sign, "at": state.clock().isoformat()})
    state.record("note", {"note": f"Pack taken out of use: {sign}."})


def put_back(state: State, why: str) -> None:
    """Put a pack into use again, for a reason that goes into the log."""
    state.store.put(f"pack_out/{state.saved.id}", None)
    state.record("note", {"note": f"Pack in use again: {why}."})
