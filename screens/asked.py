"""Where the values of a question are kept, each with its board, and which packs were taken out of use."""

from dataclasses import asdict, replace
from typing import TYPE_CHECKING, Any

from logic.answers.asked import questions
from logic.answers.range import LoggedRide
from logic.board import Value, value_from

if TYPE_CHECKING:
    from screens.state import State
    from screens.world import World

RIDES = 50
"""Rides of the log that a range is learnt from: the newest ones."""


RENAMED = {"ask.speed": "ask.range_speed", "ask.grade": "ask.range_grade"}
"""Questions about packs that once had the key of another question."""

FOR_ALL_BOARDS = {
    "ask.gearing_speed": "at_speed",
    "ask.wanted_centre": "wanted_centre",
    "ask.wheel_wear": "wheel_wear",
}
"""Questions that were once kept as settings, the same for every board, by the key of the setting."""


def _key(state: "State | World") -> str:
    return f"answers/{state.saved.id}"


def _stored(state: "State | World") -> dict[str, dict[str, Any]]:
    found: dict[str, dict[str, Any]] | None = state.store.get(_key(state))
    return _from_before(state) if found is None else found


def _from_before(state: "State | World") -> dict[str, dict[str, Any]]:
    """Return what was kept when answers had three homes; the first change of one carries all of them over."""
    store, board = state.store, state.saved.id
    found: dict[str, dict[str, Any]] = {}
    for key, setting in FOR_ALL_BOARDS.items():
        value = store.get(setting)
        if value is not None:
            found[key] = asdict(Value(float(value), "chosen"))
    found |= {RENAMED.get(key, key): body for key, body in store.get(f"asked/{board}", {}).items()}
    return found | store.get(f"asked {board}", {})


def answers(state: "State | World") -> dict[str, Value]:
    """Return the answers for the board in use; a meter reading that has grown old is no longer one."""
    now = state.clock().timestamp()
    kept = {}
    for key, body in _stored(state).items():
        question = questions().get(key)
        if question is None:
            continue
        at = body.pop("at", now)
        if question.lasts is None or 0.0 <= now - at < question.lasts:
            kept[key] = value_from(body)
    return kept


def answered(state: "State | World", key: str, value: Value | None) -> tuple[str, dict[str, Any]]:
    """Return the setting to keep for an answer, or for one taken back by None. Raises InputError outside its limits."""
    stored = dict(_stored(state))
    if value is None:
        stored.pop(key, None)
    else:
        questions()[key].field.check(value.si)
        body = asdict(replace(value, known="chosen"))
        stored[key] = {**body, "at": state.clock().timestamp()}
    return _key(state), stored


def answer(state: "State", key: str, value: Value | None) -> None:
    """Keep an answer, or take it back by None. Raises InputError outside its limits; nothing changes then."""
    state.remember(*answered(state, key, value))


def forget_answers(state: "State") -> None:
    """Take every answer for the board in use back."""
    state.remember(_key(state), {})


def logged_rides(state: "State | World") -> tuple[LoggedRide, ...]:
    """Return the newest rides of the board in use, as the range reads them."""
    speeds = ride_speeds(state)
    return tuple(
        LoggedRide(
            ride.distance, ride.energy, ride.volts_before, ride.volts_after, speed=speeds.get(str(record.id))
        )
        for record in state.entries("ride", RIDES)
        for ride in (record.body,)
    )


def ride_speeds(state: "State | World") -> dict[str, float]:
    """Return the usual speed of each ride for which one was given, by its number in the log."""
    return dict(state.store.get(f"ride speeds {state.saved.id}", {}))


def out_key(state: "State | World") -> str:
    """Return the setting that tells of a pack that is out of use."""
    return f"pack_out/{state.saved.id}"


def out_of_use(state: "State | World") -> dict[str, Any] | None:
    """Return when and why the pack of the board in use was taken out of use, None while it is in use."""
    found: dict[str, Any] | None = state.store.get(out_key(state))
    return found
