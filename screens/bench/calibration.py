"""What a pluck of a belt was set against."""

from logic.answers.belt_sound import Calibration
from logic.errors import UNREADABLE
from screens.world import World


def calibration(world: World, side: str) -> Calibration | None:
    """Return what a pluck of this very belt was set against; None for a belt fitted since, or if it cannot be read."""
    stored = world.store.get(f"pluck/{world.saved.id}/{side}", {})
    fitted = world.last("belt_fitted", belt=side)
    try:
        if fitted is not None and fitted.at.isoformat() > stored["at"]:
            return None
        found = Calibration(*(float(stored[name]) for name in ("factor", "pulled", "share")))
    except UNREADABLE:
        return None
    return world.kept.same(f"pluck {side}", found)
