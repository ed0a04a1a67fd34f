"""Where the values of a question are kept, each with its board, and which packs were taken out of use."""

from dataclasses import asdict, replace
from typing import Any, Protocol

from logic import read_back
from logic.answers.asked import questions
from logic.board import Board, Value, value_from
from logic.log.rides import LoggedRide
from logic.store import Clock, Record, Store

RIDES = 50
"""Rides of the log that a range is learnt from: the newest ones."""


class OfBoard(Protocol):
    """What is read of a World here: the file, the board in use and its log."""

    @property
    def store(self) -> Store:
        """Return the file."""

    @property
    def clock(self) -> Clock:
        """Return what tells the time."""

    @property
    def saved(self) -> Board:
        """Return the board in use."""

    def entries(self, kind: str, limit: int = ...) -> list[Record]:
        """Return the newest entries of its log, of one kind."""


def _key(world: OfBoard) -> str:
    return f"answers/{world.saved.id}"


RENAMED = {"ask.gearing_speed": "ask.speed"}
"""Questions that were asked under another key before: their answers stand under the new one, where that has none."""


def _stored(world: OfBoard) -> dict[str, dict[str, Any]]:
    found = read_back.as_object(world.store.get(_key(world)))
    before = {RENAMED[key]: body for key, body in found.items() if key in RENAMED}
    return before | {key: body for key, body in found.items() if key not in RENAMED}


def answers(world: OfBoard) -> dict[str, Value]:
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


def answered(world: OfBoard, key: str, value: Value | None) -> tuple[str, dict[str, Any]]:
    """Return the setting to keep for an answer, or for one taken back by None. Raises InputError outside its limits."""
    stored = dict(_stored(world))
    if value is None:
        stored.pop(key, None)
    else:
        questions()[key].field.check(value.si)
        body = asdict(replace(value, known="chosen"))
        stored[key] = {**body, "at": world.clock().timestamp()}
    return _key(world), stored


def logged_rides(world: OfBoard) -> tuple[LoggedRide, ...]:
    """Return the newest rides of the board in use, as the range reads them."""
    speeds = ride_speeds(world)
    return tuple(
        LoggedRide(
            ride.distance, ride.energy, ride.volts_before, ride.volts_after, speed=speeds.get(str(record.id))
        )
        for record in world.entries("ride", RIDES)
        for ride in (record.body,)
    )


def ride_speeds(world: OfBoard) -> dict[str, float]:
    """Return the usual speed of each ride for which one was given, by its number in the log."""
    said = read_back.as_object(world.store.get(f"ride speeds {world.saved.id}"))
    return {ride: float(speed) for ride, speed in said.items() if isinstance(speed, int | float)}


def out_key(world: OfBoard) -> str:
    """Return the setting that tells of a pack that is out of use."""
    return f"pack_out/{world.saved.id}"


def out_of_use(world: OfBoard) -> dict[str, Any] | None:
    """Return when and why the pack of the board in use was taken out of use, None while it is in use."""
    found = world.store.get(out_key(world))
    # Whatever stands there is a reason not to use the pack.
    return found if found is None or isinstance(found, dict) else {"sign": str(found)}


def not_known_key(world: OfBoard) -> str:
    """Return the setting that names the values of the board in use that nobody knows."""
    return f"not_known/{world.saved.id}"


def not_known(world: OfBoard) -> frozenset[str]:
    """Return the values of the board in use that nobody knows: they are not asked for again."""
    found = world.store.get(not_known_key(world))
    return frozenset(key for key in found if isinstance(key, str)) if isinstance(found, list) else frozenset()
