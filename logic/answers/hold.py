"""Hold for how long: a motor that warms on a climb, by a simple model with its band, and the grade held for good."""

from collections.abc import Mapping
from dataclasses import replace
from functools import cached_property
from math import exp

from logic.answers.asked import Asked, Asking
from logic.answers.parts import Parts
from logic.answers.reading import Item, Reading, Result
from logic.answers.run import Figures, Run, WhenRead, answer
from logic.board import Board, Value, faults
from logic.drive.flow import Flow, at_steady_speed
from logic.drive.gearing import motor_angular_speed
from logic.drive.heating import (
    drag_heat,
    heat_capacity,
    held_current,
    net_cooling,
    settled_temperature,
    time_to_temperature,
    warm_resistance,
)
from logic.drive.motor import motor_torque, winding_heat
from logic.drive.performance import steepest_grade
from logic.drive.push import Drivetrain, push_of
from logic.drive.road import Road, air_drag_at
from logic.errors import InputError, NoFigure
from logic.frozen import frozen
from logic.si import Ampere
from logic.tables import pick
from logic.workings import cited

POINTS = 40
LONGEST = 3600.0
"""The curve ends after an hour: nobody climbs longer."""


@cited("min(held, limit)", source="derived the limit met first", standing="derived")
def held_within_limit(*, held: Ampere, limit: Ampere) -> Ampere:
    """Return the current held for good: what the heat allows, as far as the controller gives it.

    >>> held_within_limit(held=52.0, limit=45.0)
    45.0
    """
    return min(held, limit)


class HoldParts(Parts):
    """The parts of a board that a long climb rests on. The factor stretches the two thermal estimates.

    Above 1 it cools worse and holds less heat: both bring the limit nearer.
    """

    def __init__(self, reading: Reading, asked: Asked, factor: float = 1.0) -> None:
        """Take the board from a reading and the question beside it."""
        super().__init__(reading)
        self.asked = asked
        self.factor = factor

    @cached_property
    def speed(self) -> float:
        """Speed held up the climb."""
        return self.asked("ask.hold_speed")

    @cached_property
    def climb(self) -> Road:
        """The climb."""
        return replace(self.road, grade=self.asked("ask.hold_grade"))

    @cached_property
    def flow(self) -> Flow:
        """What flows while it is held."""
        return at_steady_speed(self.nominal, self.climb, self.speed)

    @cached_property
    def copper(self) -> dict[str, float]:
        """How copper's resistance rises."""
        row = pick("heating", name="copper")
        return {"coefficient": row.number("coefficient"), "reference": row.number("reference")}

    @cached_property
    def resistance(self) -> float:
        """Winding at 20 degrees C."""
        return self.winding_resistance

    @cached_property
    def thermal_resistance(self) -> float:
        """Warming per watt."""
        entered = self.asked("ask.thermal_resistance")
        return entered if self.factor == 1.0 else entered * self.factor

    @cached_property
    def capacity(self) -> float:
        """Heat for each kelvin."""
        found = heat_capacity(
            mass=self.asked("ask.motor_mass"),
            specific_heat=pick("heating", name="motor").number("specific_heat"),
        )
        return found if self.factor == 1.0 else found / self.factor

    @cached_property
    def drag(self) -> float:
        """Heat of the motor's own drag at the speed."""
        return drag_heat(
            torque_constant=self.torque_constant,
            no_load_current=self.no_load_current,
            angular_speed=motor_angular_speed(
                speed=self.speed, circumference=self.circumference, ratio=self.ratio
            ),
        )

    @cached_property
    def cooling(self) -> float:
        """Heat that leaves for each kelvin, less what the winding gains."""
        return net_cooling(
            thermal_resistance=self.thermal_resistance,
            current=self.flow.current,
            resistance=self.resistance,
            coefficient=self.copper["coefficient"],
        )

    @cached_property
    def settled(self) -> float:
        """Temperature it settles at."""
        return settled_temperature(
            current=self.flow.current,
            resistance=self.resistance,
            drag_heat=self.drag,
            air=self.asked("ask.air_temperature"),
            thermal_resistance=self.thermal_resistance,
            net_cooling=self.cooling,
            **self.copper,
        )

    @cached_property
    def time(self) -> float:
        """Time until the limit."""
        return time_to_temperature(
            heat_capacity=self.capacity,
            net_cooling=self.cooling,
            settled=self.settled,
            start=self.asked("ask.start_temperature"),
            limit=self.asked("ask.limit_temperature"),
        )

    @cached_property
    def held(self) -> float:
        """Motor current that is held for good."""
        limit = self.asked("ask.limit_temperature")
        by_heat = held_current(
            limit=limit,
            air=self.asked("ask.air_temperature"),
            thermal_resistance=self.thermal_resistance,
            drag_heat=self.drag,
            warm_resistance=warm_resistance(resistance=self.resistance, temperature=limit, **self.copper),
        )
        return held_within_limit(held=by_heat, limit=self.nominal.motor_current_limit)

    @cached_property
    def held_grade(self) -> float:
        """Grade that is held for good at the speed."""
        torque = motor_torque(
            torque_constant=self.torque_constant,
            current=self.held,
            no_load_current=self.no_load_current,
        )
        road = self.road
        return steepest_grade(
            tractive_force=push_of(self.nominal, torque),
            air_drag=air_drag_at(road, self.speed),
            mass=road.mass,
            gravity=road.gravity,
            rolling_coefficient=road.rolling_coefficient,
        )

    def temperature_after(self, seconds: float) -> float:
        """Return the temperature after a time, for the curve."""
        start = self.asked("ask.start_temperature")
        share = exp(-self.cooling / self.capacity * seconds)
        return self.settled + (start - self.settled) * share


class StretchedParts(HoldParts):
    """The same climb with both thermal estimates stretched: what drives up it is worked out once."""

    def __init__(self, of: HoldParts, factor: float) -> None:
        """Take the climb as it is, and how far the estimates are stretched."""
        super().__init__(of.read, of.asked, factor)
        self.of = of

    @property
    def flow(self) -> Flow:
        """What flows while it is held."""
        return self.of.flow

    @property
    def nominal(self) -> Drivetrain:
        """The drive at the nominal charge."""
        return self.of.nominal


@frozen
class Holding:
    """Results by name, temperature over time for the middle and both ends of the band, and what does not fit.

    `times` are the time until the limit when it cools badly and when it cools well, None where it never comes.
    """

    items: Mapping[str, Item]
    times: tuple[float | None, float | None]
    curves: dict[str, tuple[tuple[float, float], ...]]
    limit: float
    faults: tuple[InputError, ...]


def _settled(parts: HoldParts) -> float:
    if parts.cooling <= 0.0:
        raise NoFigure("settled", None, "runs away")
    return parts.settled


RESULTS: Figures[HoldParts] = {
    "hold_time": ("time", lambda parts: parts.time),
    "held_grade": ("share", lambda parts: parts.held_grade),
    "settled": ("temperature", _settled),
    "climb_current": ("current", lambda parts: parts.flow.current),
    "climb_heat": ("power", lambda parts: parts.flow.winding_heat),
    "heat_hot": (
        "power",
        lambda parts: winding_heat(
            current=parts.flow.current,
            winding_resistance=warm_resistance(
                resistance=parts.resistance,
                temperature=parts.asked("ask.limit_temperature"),
                **parts.copper,
            ),
        ),
    ),
    "drag": ("power", lambda parts: parts.drag),
    "held": ("current", lambda parts: parts.held),
}
"""Quantity and computation of each result."""

BANDED = ("held_grade", "settled", "held")
"""Results that rest on the two thermal estimates."""


@answer()
def holding(board: Board, rider: Value | None, asking: Asking) -> Holding:
    """Return how long a climb can be held, and which one for good; all of it an estimate with its band."""
    run = Run(lambda: HoldParts(Reading(board, rider), Asked(asking)))
    spread = pick("heating", name="spread").cells
    low, high = (
        Run[HoldParts](lambda factor=spread[end]: StretchedParts(run.plain, factor))  # type: ignore[misc]
        for end in ("low", "high")
    )

    def item(name: str) -> Item:
        found = run.figure(name, *RESULTS[name])
        return _with_band(found, low, high) if name in BANDED else found

    longest = run.view(_longest, LONGEST)
    curves = {
        name: one.view(lambda parts: _curve(parts, longest), ())
        for name, one in {"low": low, "usual": run, "high": high}.items()
    }
    return Holding(
        WhenRead(RESULTS, item),
        (high.view(_time, None), low.view(_time, None)),
        {name: points for name, points in curves.items() if points},
        Asked(asking)("ask.limit_temperature"),
        faults(board),
    )


def _with_band(item: Item, *ends: Run[HoldParts]) -> Item:
    found = [end.view(RESULTS[item.name][1], None) for end in ends]
    reach = [value for value in found if isinstance(value, float)]
    if not isinstance(item, Result) or len(reach) < len(ends):
        return item
    return replace(item, band=(min(reach), max(reach)))


def _longest(parts: HoldParts) -> float:
    """Return how long the curves run: to where it settles, or well past the limit."""
    if parts.cooling == 0.0:
        return LONGEST
    settles = 3.0 * abs(parts.capacity / parts.cooling)
    try:
        return min(LONGEST, settles, 1.5 * parts.time)
    except InputError:
        return min(LONGEST, settles)


def _curve(parts: HoldParts, longest: float) -> tuple[tuple[float, float], ...]:
    times = [longest * step / (POINTS - 1) for step in range(POINTS)]
    try:
        return tuple((time, parts.temperature_after(time)) for time in times)
    except OverflowError:
        return ()


def _time(parts: HoldParts) -> float:
    return parts.time
