"""What the log holds of a belt's tension, for every page that sets readings side by side."""

from logic.store import Record
from screens.state import State
from screens.widgets.steps import Reading
from screens.words import Style

SHOWN = 200
"""Newest entries that are looked through."""
LATEST = 8
"""Readings that are set side by side."""


def readings(state: State, side: str, *, since: Record | None = None) -> list[Record]:
    """Return the readings of one belt that can be compared, oldest first; only those after an entry if given."""
    found = []
    for record in state.store.page(state.saved.id, kind="tension", limit=SHOWN):
        body = record.body
        if body["belt"] != side or not body.get("tension") or not body.get("error"):
            continue
        # A pluck that was never set against a pull has a tension of its own kind.
        if body.get("method") == "pluck" and not body.get("calibrated"):
            continue
        if since is None or record.id > since.id:
            found.append(record)
    return found[::-1]


def latest(state: State, side: str, style: Style) -> list[Reading]:
    """Return the last readings of a belt since it was fitted, as they are set side by side."""
    fitted = state.last("belt_fitted", belt=side)
    forces = [record.body["tension"] for record in readings(state, side, since=fitted)[-LATEST:]]
    return [Reading(style.scale(force, "force"), style.shown(force, "force").number) for force in forces]
