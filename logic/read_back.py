"""What the file holds, read back piece by piece: what cannot be read is set aside as it was, and the rest opens."""

from collections.abc import Callable, Mapping, Sequence
from typing import Any, Final, TypeVar

from logic.board import Board, Value, field_of, value_from
from logic.board_saved import from_dict
from logic.checks.lists import Checklist
from logic.checks.own import list_from_dict
from logic.errors import UNREADABLE
from logic.frozen import frozen
from logic.person import Person, person_from_dict
from logic.store import Store, StoredBoard

T = TypeVar("T")

LOOKED_AT: Final = 2_000
"""Entries of the log that `unread` looks at, the newest ones."""


@frozen
class UnreadThing:
    """A thing in the file that cannot be read: a board, setting, list, trial, run or log entry. `text` is as it stands."""

    what: str
    name: str
    text: str


def board(store: Store, identity: str) -> Board | None:
    """Return a saved board; None when there is none, when it is in the bin or cannot be read."""
    stored = store.board(identity)
    return None if stored is None or stored.binned_at is not None else _board(stored)


def boards(store: Store) -> list[Board]:
    """Return the saved boards that can be read, by name."""
    return readable(store.boards())


def binned(store: Store) -> list[Board]:
    """Return the boards in the bin that can be read, the last one first."""
    return readable(store.binned_boards())


def readable(stored: Sequence[StoredBoard]) -> list[Board]:
    """Return those of some saved boards that can be read, in their order."""
    return [found for found in map(_board, stored) if found is not None]


def person(store: Store) -> Person:
    """Return the person's settings; one that cannot be read is as it was at first, and kept (see `logic.person`)."""
    return person_from_dict(store.get("person", {}))


def own_lists(store: Store) -> dict[str, Checklist]:
    """Return the lists of one's own that can be read."""
    return each(store, "list", store.get("own_lists", {}), lambda _, body: list_from_dict(body))


def trial(store: Store, identity: str) -> tuple[dict[str, Value], dict[str, str]]:
    """Return the values of a board's trial, each that can stand in its field, and what is typed."""
    body = store.trial(identity)
    if body is None:
        return {}, {}
    values = as_object(body.get("values", {}))
    read = _read_each(values, _trial_value)
    if len(read) < len(values) or (not body and store.trial_text(identity) not in ("", "{}")):
        store.set_aside("trial", identity, store.trial_text(identity))
    typed = {key: text for key, text in as_object(body.get("typed", {})).items() if isinstance(text, str)}
    return read, typed


def unread(store: Store, entries: int = LOOKED_AT) -> list[UnreadThing]:
    """Return what could not be read: boards, what was set aside, and of so many of the newest entries of the log."""
    found = [
        UnreadThing("board", stored.name, store.board_text(stored.id))
        for stored in (*store.boards(), *store.binned_boards())
        if _board(stored) is None
    ]
    found += [UnreadThing(one.what, one.key, one.text) for one in store.aside()]
    found += [
        UnreadThing("entry", f"{record.id} {record.kind}", str(record.text))
        for record in store.page(limit=entries)
        if not record.readable
    ]
    return found


def _board(stored: StoredBoard) -> Board | None:
    try:
        return from_dict(stored.body)
    except UNREADABLE:
        return None


def _trial_value(key: str, body: Any) -> Value:  # noqa: ANN401  (whatever JSON holds)
    value = value_from(body)
    field_of(key).check(value.si)
    return value


def each(store: Store, what: str, bodies: Mapping[str, Any], read: Callable[[str, Any], T]) -> dict[str, T]:
    """Return what can be read of several things, by name; each that cannot is set aside."""
    found = _read_each(bodies, read)
    for key in bodies.keys() - found.keys():
        store.set_aside(what, key, repr(bodies[key]))
    return found


def _read_each(bodies: Mapping[str, Any], read: Callable[[str, Any], T]) -> dict[str, T]:
    found = {}
    for key, body in bodies.items():
        try:
            found[key] = read(key, body)
        except UNREADABLE:
            continue
    return found


def as_object(body: object) -> dict[str, Any]:
    """Return what was saved if it is an object, else an empty one."""
    return body if isinstance(body, dict) else {}
