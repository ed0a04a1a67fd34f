"""Where the values of a question are kept, each with its board, and which packs were taken out of use."""

from dataclasses import asdict, replace
from typing import TYPE_CHECKING, Any

from logic import read_back
from logic.answers.asked import questions
from logic.answers.range import LoggedRide
from logic.board import Value, value_from

if TYPE_CHECKING:
    from screens.state import State
    from screens.world import World

RIDES = 50
"""Rides of the log that a range is learnt from: the newest ones."""


def _key(state: "State | World") -> str:
    return f"answers/{state.saved.id}"


RENAMED = {"ask.gearing_speed": "ask.speed"}
"""Questions that were asked under another key before: their answers stand under the new one, where that has none."""


def _stored(state: "State | World") -> dict[str, dict[str, Any]]:
    found = read_back.as_object(state.store.get(_key(state)))
    before = {RENAMED[key]: body for key, body in found.items() if key in RENAMED}
    return before | {key: body for key, body in found.items() if key not in RENAMED}


def answers(state: "State | World") -> dict[str, Value]:
    """Return the answers for the board in use; a meter reading that has grown old is no longer one."""
    now = state.clock().timestamp()

    def read(key: str, body: dict[str, Any]) -> Value | None:
        question, at = questions()[key], body.get("at", now)
        fresh = question.lasts is None or 0.0 <= now - at < question.lasts
        value = value_from({name: said for name, said in body.items() if name != "at"})
        question.field.check(value.si)
        return value if fresh else None

    read_now = read_back.each(state.store, "answer", _stored(state), read)
    return {key: value for key, value in read_now.items() if value is not None}


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
    said = read_back.as_object(state.store.get(f"ride speeds {state.saved.id}"))
    return {ride: float(speed) for ride, speed in said.items() if isinstance(speed, int | float)}


def out_key(state: "State | World") -> str:
    """Return the setting that tells of a pack that is out of use."""
    return f"pack_out/{state.saved.id}"


def out_of_use(state: "State | World") -> dict[str, Any] | None:
    """Return when and why the pack of the board in use was taken out of use, None while it is in use."""
    found = state.store.get(out_key(state))
    # Whatever stands there is a reason not to use the pack.
    return found if found is None or isinstance(found, dict) else {"sign": str(found)}


def not_known_key(state: "State | World") -> str:
    """Return the setting that names the values of the board in use that nobody knows."""
    return f"not_known/{state.saved.id}"


def not_known(state: "State | World") -> frozenset[str]:
    """Return the values of the board in use that nobody knows: they are not asked for again."""
    found = state.store.get(not_known_key(state))
    return frozenset(key for key in found if isinstance(key, str)) if isinstance(found, list) else frozenset()
