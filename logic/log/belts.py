"""Entries about belts: a new one, and a tension that was measured."""

from dataclasses import field
from typing import ClassVar

from logic.errors import InputError
from logic.frozen import frozen
from logic.log.entry import SIDES, Entry, choice, figure

MOST_FORCE = 1e5
"""N: far above what a belt, a scale or a motor's screw gives."""


@frozen(kw_only=True)
class BeltFitted(Entry):
    """A new belt is on: its history begins anew."""

    KIND: ClassVar[str] = "belt_fitted"

    belt: str = choice(*SIDES)


@frozen(kw_only=True)
class Tension(Entry):
    """A belt tension as it was measured, with the window it was held against then. SI throughout.

    `method` is the way it was measured, `unit` the one its scale shows, `word` where the reading lay. Each way adds what
    it read: pulls (with their depths where they have any), plucks, or the entries it is the mean of, `means`.
    """

    KIND: ClassVar[str] = "tension"

    belt: str = choice(*SIDES)
    method: str = ""
    # A pull too light for a stiff belt works out below nothing: such a belt hung loose.
    tension: float | None = figure(-MOST_FORCE, MOST_FORCE)
    error: float | None = figure(0.0, MOST_FORCE)
    floor: float | None = figure(1e-3, MOST_FORCE)
    ceiling: float | None = figure(1e-3, MOST_FORCE)
    target: float | None = figure(0.0, MOST_FORCE)
    word: str = ""
    certainty: str = ""
    scale: str = ""
    depth_tool: str = ""
    pull: float | None = figure(0.0, MOST_FORCE)
    unit: str = ""
    depth: float | None = figure(0.0, 1.0)
    pulls: tuple[float | tuple[float, float], ...] = ()
    least: float | None = figure(-MOST_FORCE, MOST_FORCE)
    pitch: float | None = figure(0.0, 1e5)
    pitch_error: float | None = figure(0.0, 1e5)
    plucks: tuple[float, ...] = ()
    calibrated: bool = False
    verified: bool = True
    means: tuple[int, ...] = field(default=(), metadata={"key": "of"})

    def check(self) -> None:
        """Refuse a window whose floor stands above its ceiling."""
        if self.floor is not None and self.ceiling is not None and self.floor > self.ceiling:
            raise InputError("tension.floor", self.floor, "above the ceiling", high=self.ceiling)

    @property
    def comparable(self) -> bool:
        """Tell whether it can be set beside others: a pluck never set against a pull is of its own kind."""
        return bool(self.tension and self.error) and (self.method != "pluck" or self.calibrated)
