"""What logged rides and coasting tell about rolling and air."""

from collections.abc import Sequence
from dataclasses import replace
from functools import cached_property

from logic.answers.asked import Asked, Asking
from logic.answers.reading import Item, Open, Reading, Result
from logic.answers.riding import RidingParts
from logic.answers.run import Figures, Run, answer
from logic.board import Board, Value
from logic.drive.coast import rolling_from_distance, rolling_from_time
from logic.drive.fit import FEWEST, Fitted, Sample, fitted, motor_drag_share, rolling_of_wheels
from logic.frozen import frozen


@frozen
class RideFit:
    """What rides tell: rolling coefficient and drag area with their bands, or what stands in the way.

    `clear` tells whether both bands stay above zero; `scatter` is that of a single ride.
    """

    items: dict[str, Item]
    fit: Fitted | None
    rides: int
    wanted: int = FEWEST

    @property
    def clear(self) -> bool:
        """Tell whether the rides say more than nothing about both."""
        return self.fit is not None and self.fit.rolling.clear and self.fit.drag_area.clear


@answer(
    samples=tuple(
        Sample(speed=speed, energy_per_distance=spent)
        for speed, spent in ((4.0, 30.0), (6.0, 34.0), (8.0, 41.0), (9.0, 46.0))
    )
)
def ride_fit(board: Board, rider: Value | None, samples: Sequence[Sample]) -> RideFit:
    """Return what rides with a known energy and usual speed tell about the board's drag."""
    run = Run(lambda: RideFitParts(Reading(board, rider), samples))
    found = run.view(lambda parts: parts.fitted, None)
    items = run.figures(FITTED)
    if found is not None:
        for name, estimate in (("rolling", found.rolling), ("drag_area", found.drag_area)):
            item = items[name]
            if isinstance(item, Result):
                band = (estimate.value - estimate.half, estimate.value + estimate.half)
                items[name] = replace(item, band=band)
    return RideFit(items, found, len(samples))


class RideFitParts(RidingParts):
    """The parts of a board that a fit over its rides rests on."""

    def __init__(self, reading: Reading, samples: Sequence[Sample]) -> None:
        """Take the board from a reading, and its rides."""
        super().__init__(reading, Asked({}))
        self.samples = samples

    @cached_property
    def fitted(self) -> Fitted:
        """What the rides tell."""
        road = self.road
        return fitted(
            self.nominal,
            self.samples,
            mass=road.mass,
            gravity=road.gravity,
            air_density=road.air_density,
        )


FITTED: Figures[RideFitParts] = {
    "rolling": ("ratio", lambda parts: parts.fitted.rolling.value),
    "drag_area": ("area", lambda parts: parts.fitted.drag_area.value),
}
"""Quantity and computation of what rides tell."""


class CoastParts(RidingParts):
    """The parts of a board that coasting rests on."""

    @cached_property
    def shared(self) -> dict[str, float]:
        """What both ways of coasting need."""
        road = self.road
        return {
            "air_density": road.air_density,
            "drag_area": road.drag_area,
            "speed": self.asked("ask.coast_speed"),
            "mass": road.mass,
            "gravity": road.gravity,
        }

    def wheels(self, rolling: float) -> float:
        """Return the coefficient of the wheels alone: with belts on the motors' drag is taken out."""
        if self.asked.choice("ask.coast_belts") == "off":
            return rolling
        drag = motor_drag_share(
            motors=self.motors,
            torque_constant=self.torque_constant,
            no_load_current=self.read("motor.no_load_current"),
            ratio=self.ratio,
            wheel_diameter=self.wheel_diameter,
            mass=self.shared["mass"],
            gravity=self.shared["gravity"],
        )
        return rolling_of_wheels(rolling=rolling, drag_share=drag)


@answer()
def coasting(board: Board, rider: Value | None, asking: Asking) -> dict[str, Item]:
    """Return the rolling coefficient from a coast, by distance and by time, whichever was entered."""
    return Run(lambda: CoastParts(Reading(board, rider), Asked(asking))).figures(COASTS)


def _by_distance(parts: CoastParts) -> float:
    distance = parts.asked("ask.coast_distance")
    return parts.wheels(rolling_from_distance(distance=distance, **parts.shared))


def _by_time(parts: CoastParts) -> float:
    time, end = parts.asked("ask.coast_time"), parts.asked("ask.coast_end")
    return parts.wheels(rolling_from_time(time=time, end=end, **parts.shared))


COASTS: Figures[CoastParts] = {"by_distance": ("ratio", _by_distance), "by_time": ("ratio", _by_time)}
"""Quantity and computation of what a coast tells."""


def best_rolling(items: dict[str, Item]) -> float | None:
    """Return the mean of the coasts that gave a number, None without one."""
    values = [item.value for item in items.values() if not isinstance(item, Open)]
    return sum(values) / len(values) if values else None
