"""Taking a board's file in: first what it would add or change, then all of it or nothing. On a clash both are kept."""

from dataclasses import replace

from logic.board import Board
from logic.board_saved import to_dict
from logic.exchange.board_file import BoardFile, LoggedLine
from logic.fields import LONGEST_NAME
from logic.frozen import frozen
from logic.store import Store
from logic.store.file import utc_text
from logic.store.stand_in import STAND_IN, next_id


@frozen
class Arrival:
    """What taking a file in would do: the board as it would be saved, and the entries that would be added.

    `kind` is "new" for a board that is not here, "same" for one that is here word for word, "beside" for one that is
    here and says something else: it is put beside, under another name. `here` counts entries that are here already.
    """

    kind: str
    board: Board
    entries: tuple[LoggedLine, ...]
    here: int
    differs: tuple[str, ...] = ()
    """Fields in which the board here is another."""


def arrival(store: Store, file: BoardFile) -> Arrival:
    """Return what taking a file in would do; nothing is changed."""
    coming = file.board
    stored = store.board(coming.id)
    if stored is None:
        # What was typed, checked and logged without a board is of the one that stands in, not of a stranger with its id.
        taken = coming.id == store.get(STAND_IN, "") and store.holds(coming.id)
        board = replace(coming, id=next_id() if taken else coming.id, name=_free_name(store, coming.name))
        return Arrival("new", board, file.entries, 0)
    body = to_dict(coming)
    if stored.binned_at is not None or stored.body != body:
        other = replace(coming, id=next_id(), name=_free_name(store, coming.name))
        return Arrival("beside", other, file.entries, 0, _differences(stored.body, body))
    held = {
        (record.kind, utc_text(record.at), record.text)
        for record in store.page(coming.id, limit=-1)
        if not record.fault
    }
    fresh = tuple(line for line in file.entries if (line.kind, utc_text(line.at), line.text) not in held)
    return Arrival("same", coming, fresh, len(file.entries) - len(fresh))


def take_in(store: Store, coming: Arrival) -> str:
    """Save the board and its entries in one transaction; return the board's id."""
    board = coming.board
    rows = [(line.kind, utc_text(line.at), line.offset, line.version, line.text) for line in coming.entries]
    store.take_in(board.id, board.name, to_dict(board), rows)
    return board.id


def _free_name(store: Store, name: str) -> str:
    taken = {stored.name.casefold() for stored in (*store.boards(), *store.binned_boards())}
    number, found = 2, name
    while found.casefold() in taken:
        mark = f" ({number})"
        found = name[: LONGEST_NAME - len(mark)].rstrip() + mark
        number += 1
    return found


def _differences(here: dict[str, object], coming: dict[str, object]) -> tuple[str, ...]:
    """Return the names of what differs: "drive.motor_teeth", "name"."""
    found = []
    for key in sorted(here.keys() | coming.keys()):
        one, other = here.get(key), coming.get(key)
        if one == other:
            continue
        if isinstance(one, dict) and isinstance(other, dict):
            found += [
                f"{key}.{name}"
                for name in sorted(one.keys() | other.keys())
                if one.get(name) != other.get(name)
            ]
        else:
            found.append(key)
    return tuple(found)
