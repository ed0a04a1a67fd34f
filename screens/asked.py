"""Where the values of a question are kept, each with its board, and which packs were taken out of use."""

from dataclasses import asdict, replace
from typing import TYPE_CHECKING, Any

from logic import read_back
from logic.answers.asked import questions
from logic.board import Value, value_from
from logic.log.rides import LoggedRide

if TYPE_CHECKING:
    from screens.world import World

RIDES = 50
"""Rides of the log that a range is learnt from: the newest ones."""
WISHES = ("ask.wish_speed", "ask.wish_grade")
"""Questions for the speed and the hill that a pair of pulleys is to do."""
RENAMED = {"ask.gearing_speed": "ask.speed"}
"""Questions that were asked under another key before: their answers stand under the new one, where that has none."""


def _key(world: "World") -> str:
    return f"answers/{world.saved.id}"


def _stored(world: "World") -> dict[str, dict[str, Any]]:
    found = read_back.as_object(world.store.get(_key(world)))
    before = {RENAMED[key]: body for key, body in found.items() if key in RENAMED}
    return before | {key: body for key, body in found.items() if key not in RENAMED}


def answers(world: "World") -> dict[str, Value]:
    """Return the answers for the board in use; a meter reading that has grown old is no longer one."""
    now = world.clock().timestamp()

    def read(key: str, body: dict[str, Any]) -> Value | None:
        question, at = questions()[key], body.get("at", now)
        fresh = question.lasts is None or 0.0 <= now - at < question.lasts
        value = value_from({name: said for name, said in body.items() if name != "at"})
        question.field.check(value.si)
        return value if fresh else None

    read_now = read_back.each(world.store, "answer", _stored(world), read)
    return {key: value for key, value in read_now.items() if value is not None}


def beside_wishes(world: "World") -> dict[str, Value]:
    """Return the answers without what is wished of a pair of pulleys: that changes no figure, only the order of the pairs."""
    rest = world.answers
    if any(key in rest for key in WISHES):
        rest = {key: value for key, value in rest.items() if key not in WISHES}
    return world.kept.same("answers beside the wishes", rest)


def answered(world: "World", key: str, value: Value | None) -> tuple[str, dict[str, Any]]:
    """Return the setting to keep for an answer, or for one taken back by None. Raises InputError outside its limits."""
    stored = dict(_stored(world))
    if value is None:
        stored.pop(key, None)
    else:
        questions()[key].field.check(value.si)
        body = asdict(replace(value, known="chosen"))
        stored[key] = {**body, "at": world.clock().timestamp()}
    return _key(world), stored


def logged_rides(world: "World") -> tuple[LoggedRide, ...]:
    """Return the newest rides of the board in use, as the range reads them."""
    speeds = ride_speeds(world)
    return tuple(
        LoggedRide(
            ride.distance, ride.energy, ride.volts_before, ride.volts_after, speed=speeds.get(str(record.id))
        )
        for record in world.entries("ride", RIDES)
        for ride in (record.body,)
    )


def ride_speeds(world: "World") -> dict[str, float]:
    """Return the usual speed of each ride for which one was given, by its number in the log."""
    said = read_back.as_object(world.store.get(f"ride speeds {world.saved.id}"))
    return {ride: float(speed) for ride, speed in said.items() if isinstance(speed, int | float)}


def out_key(world: "World") -> str:
    """Return the setting that tells of a pack that is out of use."""
    return f"pack_out/{world.saved.id}"


def out_of_use(world: "World") -> dict[str, Any] | None:
    """Return when and why the pack of the board in use was taken out of use, None while it is in use."""
    found = world.store.get(out_key(world))
    # Whatever stands there is a reason not to use the pack.
    return found if found is None or isinstance(found, dict) else {"sign": str(found)}


def not_known_key(world: "World") -> str:
    """Return the setting that names the values of the board in use that nobody knows."""
    return f"not_known/{world.saved.id}"


def not_known(world: "World") -> frozenset[str]:
    """Return the values of the board in use that nobody knows: they are not asked for again."""
    found = world.store.get(not_known_key(world))
    return frozenset(key for key in found if isinstance(key, str)) if isinstance(found, list) else frozenset()
