"""What the log holds of a belt's tension, for every page that sets readings side by side."""

from logic.store import Record
from screens.world import World

SHOWN = 200
"""Newest entries that are looked through."""


def readings(world: World, side: str) -> list[Record]:
    """Return the readings of one belt that can be compared, oldest first, since it was fitted."""
    fitted = world.last("belt_fitted", belt=side)
    return [
        record
        for record in reversed(world.log.tensions[:SHOWN])
        if record.body.belt == side and record.body.comparable and (fitted is None or record.id > fitted.id)
    ]
