"""What a pluck of a belt was set against."""

from logic.answers.belt_sound import Calibration
from screens.world import World


def calibration(world: World, side: str) -> Calibration | None:
    """Return what a pluck of this very belt was set against; None for a belt fitted since."""
    stored = world.store.get(f"pluck/{world.saved.id}/{side}")
    fitted = world.last("belt_fitted", belt=side)
    if stored is None or (fitted is not None and fitted.at.isoformat() > stored["at"]):
        return None
    return world.kept.same(f"pluck {side}", Calibration(stored["factor"], stored["pulled"], stored["share"]))
