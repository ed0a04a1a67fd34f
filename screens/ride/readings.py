"""What the log holds of a belt's tension, for every page that sets readings side by side."""

from logic.store import Record
from screens.state import State

SHOWN = 200
"""Newest entries that are looked through."""


def readings(state: State, side: str, *, since: Record | None = None) -> list[Record]:
    """Return the readings of one belt that can be compared, oldest first; only those after an entry if given."""
    found = [
        record
        for record in state.entries("tension", SHOWN)
        if record.body.belt == side and record.body.comparable and (since is None or record.id > since.id)
    ]
    return found[::-1]
