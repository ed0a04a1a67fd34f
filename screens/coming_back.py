"""The way to the page in front, as it is kept for the next start of the app."""

from datetime import datetime, timedelta
from typing import Any

from logic.errors import UNREADABLE
from screens.register import PAGES
from screens.world import Step, World

PLACE = "place"
"""Setting that holds the way and when it was left."""
LAST_PLACE_FOR = timedelta(minutes=30)
"""How long after the last use the app opens where it was left."""
NOT_KEPT = ("working", "settings.fault")
"""A working holds a number with all that made it, a fault is told once."""


def way_left(world: World) -> tuple[Step, ...]:
    """Return the way that was left a short while ago; none where it is old or cannot be read."""
    last = world.store.get(PLACE, {})
    try:
        gap = world.clock() - datetime.fromisoformat(last["at"])
        trail = tuple(Step(name, dict(args)) for name, args in last["trail"] if name in PAGES)
    except UNREADABLE:
        return ()
    # After the clock was set back nobody can tell how long it was.
    return trail if timedelta(0) <= gap < LAST_PLACE_FOR else ()


def outlasting(world: World) -> list[tuple[str, dict[str, Any]]]:
    """Return what of the way here outlasts a restart."""
    return [
        (name, {key: value for key, value in args.items() if not key.startswith("_")})
        for name, args in world.trail
        if name not in NOT_KEPT
    ]


def way_here(world: World, *, failed: bool) -> dict[str, Any]:
    """Return what is kept of the way here. A page that failed is not come back to."""
    trail = outlasting(world)
    return {"trail": trail[:-1] if failed else trail, "at": world.clock().isoformat()}
