"""Entries about rides, and what the range reads of them."""

from typing import ClassVar

from logic.frozen import frozen
from logic.log.entry import Entry, figure

LIMITS = {
    "distance": (1.0, 500e3),
    "energy": (360.0, 3.6e7),
    "volts_before": (1.0, 150.0),
    "volts_after": (1.0, 150.0),
}
"""What a ride's figures may be, in SI: up to 500 km, 0.1 Wh to 10 kWh."""


@frozen(kw_only=True)
class Ride(Entry):
    """A ride: how far, what it took out of the pack, and whether there was a fall or water."""

    KIND: ClassVar[str] = "ride"

    distance: float | None = figure(*LIMITS["distance"])
    energy: float | None = figure(*LIMITS["energy"])
    volts_before: float | None = figure(*LIMITS["volts_before"])
    volts_after: float | None = figure(*LIMITS["volts_after"])
    crash: bool = False
    wet: bool = False

    @property
    def energy_per_distance(self) -> float | None:
        """Return what it took for each metre, in J/m, None without both figures."""
        return self.energy / self.distance if self.energy and self.distance else None


@frozen
class LoggedRide:
    """A ride as the range reads it. Energy in J, or rest volts before and after; what is not known is None.

    `speed` is the one usual on it.
    """

    distance: float | None
    energy: float | None = None
    volts_before: float | None = None
    volts_after: float | None = None
    speed: float | None = None
