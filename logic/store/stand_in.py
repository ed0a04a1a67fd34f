"""The id of the board that stands in while none is saved: it is kept once it is saved, so that all that is of it follows."""

from os import urandom

from logic.store import Store
from logic.store.errors import CannotStore

STAND_IN = "stand_in"
"""Setting that holds its id; once it is saved the next one gets another."""

SCRATCH = "scratch"
"""Id that it had in files of before, and has where none can be written."""


def stand_in_id(store: Store) -> str:
    """Return the id of the board that stands in; `SCRATCH` where the store takes no other."""
    identity = store.get(STAND_IN, "")
    # Two phones set up from one copy have the same: the board that it became on the other may have arrived here.
    arrived = any(one.id == identity for one in (*store.boards(), *store.binned_boards()))
    if not identity or arrived:
        before = not arrived and (store.trial_text(SCRATCH) or store.count(SCRATCH))
        identity = SCRATCH if before else next_id()
        try:
            store.put(STAND_IN, identity)
        except CannotStore:
            identity = SCRATCH
    return str(identity)


def next_id() -> str:
    """Return an id that no other board has, here or on another phone."""
    return urandom(16).hex()
