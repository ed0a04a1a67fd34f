"""A belt drive worked out a second time: vectors and energy in place of closed forms, slopes by numbers.

Nothing is taken from logic but the board's and the person's values. Printed tables are read as data, in their printed
units, and turned into SI here. A result is a number, or the word that says why there is none: "missing" where a value
is not set, "impossible" where no such drive can be or nothing is printed, "nothing" where there is nothing to tell.
"""

from cmath import atan as complex_atan
from cmath import sin as complex_sin
from cmath import sqrt as complex_sqrt
from collections.abc import Callable, Iterable, Mapping, Sequence
from functools import cached_property
from math import acos, asin, cos, floor, hypot, isclose, pi, sin, sqrt
from typing import Any, TypeVar

from scipy.optimize import brentq

from logic.board import Board
from logic.person import Person
from tests.second.pack import row, table

MM = 1e-3
INCH = 25.4 * MM
KILOGRAM_FORCE = 9.80665
POUND = 0.45359237 * KILOGRAM_FORCE
FOOT_A_MINUTE = 12.0 * INCH / 60.0
RPM = 2.0 * pi / 60.0
HORSEPOWER = 550.0 * POUND * 12.0 * INCH
SMALL = 1e-20
"""Step of a slope along the imaginary axis: nothing is subtracted, so nothing is lost."""

Answer = float | str
T = TypeVar("T")
Row = Sequence[float]
Numbers = dict[str, Answer]


class Impossible(Exception):  # noqa: N818  (a finding, not a fault)
    """No such drive can be, or nothing is printed for it."""


def told(compute: Callable[[], T]) -> T | str:
    """Return the number, or why there is none."""
    try:
        return compute()
    except KeyError:
        return "missing"
    except Impossible:
        return "impossible"


def all_told(results: Mapping[str, Callable[[], float]]) -> Numbers:
    return {name: told(compute) for name, compute in results.items()}


def lines(name: str, **cells: object) -> list[dict[str, Any]]:
    return [each for each in table(name) if all(each.get(key) == cell for key, cell in cells.items())]


def practice(name: str, column: str = "fraction") -> float:
    return float(row("belt_practice", name=name)[column])


def loop(centre: float, large: float, small: float) -> float:
    """Length of the loop: two spans and two arcs, the wraps from the right triangle between the shafts."""
    apart = (large - small) / 2.0
    half = acos(apart / centre)
    return 2.0 * sqrt(centre**2 - apart**2) + small * half + large * (pi - half)


def pulled(tension: complex, depth: complex, span: float, stiffness: complex, shared: float) -> complex:
    """Force that holds the middle of a span aside: both halves pull along their own direction.

    `shared` is the length that takes the stretch: the whole belt with a pulley free, the span with both held.
    """
    half = complex_sqrt((span / 2.0) ** 2 + depth**2)
    strained = tension + stiffness * (2.0 * half - span) / shared
    return 2.0 * strained * complex_sin(complex_atan(depth / (span / 2.0)))


def force(tension: float, depth: float, span: float, stiffness: float, shared: float) -> float:
    return pulled(tension, depth, span, stiffness, shared).real


def tension_at(pull: float, depth: float, span: float, stiffness: float, shared: float) -> float:
    """The force grows evenly with the tension: from two of its values."""
    loose, one = (force(each, depth, span, stiffness, shared) for each in (0.0, 1.0))
    return (pull - loose) / (one - loose)


def slopes(tension: float, depth: float, span: float, stiffness: float, length: float) -> tuple[float, ...]:
    """How the inferred tension moves with pull, depth and stiffness, the others held."""
    by_tension = pulled(tension + 1j * SMALL, depth, span, stiffness, length).imag / SMALL
    by_depth = pulled(tension, depth + 1j * SMALL, span, stiffness, length).imag / SMALL
    by_stiffness = pulled(tension, depth, span, stiffness + 1j * SMALL, length).imag / SMALL
    return 1.0 / by_tension, -by_depth / by_tension, -by_stiffness / by_tension


def word(tension: float, error: float, low: float, high: float) -> str:
    """Engineering decisions, belt numbers: the word of an estimate."""
    if tension - error < low and high < tension + error:
        return "cannot tell: take a finer tool or a second way"
    inside = min(tension - low, high - tension)
    side = "slack" if tension - low < high - tension else "tight"
    if inside >= error / 3.0:
        return "in window"
    return side if -inside >= error / 3.0 else f"on the edge: may be {side}"


class Belt:
    """A belt drive with its usual sums. A missing value raises KeyError, an impossible one Impossible."""

    def __init__(self, board: Board, person: Person, rider: float | None = None) -> None:
        self.board, self.person, self.rider = board, person, rider

    def __getitem__(self, key: str) -> float:
        value = self.board.value(key)
        if value is None:
            stands = {"load.rolling": "rolling_coefficient", "load.drag_area": "drag_area",
                      "load.efficiency": "efficiency", "controller.duty": "duty"}  # fmt: skip
            cell = stands.get(key, "")
            return (
                float(next(each[cell] for each in table("road") if cell in each)) if cell else self.gap(key)
            )
        return float(value.si)

    @staticmethod
    def gap(key: str) -> float:
        raise KeyError(key)

    def text(self, key: str, otherwise: str = "") -> str:
        value = self.board.value(key)
        return (otherwise or str(self.gap(key))) if value is None else str(value.si)

    def has(self, key: str) -> bool:
        return self.board.value(key) is not None

    # The belt and its pulleys.

    @cached_property
    def pitch(self) -> float:
        return float(row("belt_profiles", profile=self.text("drive.profile"))["pitch"]) * MM

    @cached_property
    def width(self) -> float:
        """In mm."""
        return self["drive.belt_width"] / MM

    @cached_property
    def width_row(self) -> dict[str, Any]:
        printed = sorted(
            lines("belt_tension", profile=self.text("drive.profile")), key=lambda each: each["width"]
        )
        if not printed[0]["width"] * 2 / 3 - 1e-6 <= self.width <= printed[-1]["width"] * 1.2 + 1e-6:
            raise Impossible
        return next((each for each in printed if each["width"] > self.width - 1e-6), printed[-1])

    def printed(self, column: str) -> float:
        return float(self.width_row[column]) * self.width / self.width_row["width"]

    @cached_property
    def least(self) -> float:
        return self.printed("least_tension") * POUND

    @cached_property
    def stiffness(self) -> float:
        """The printed pull is at a depth of a 64th of the span: there the belt's stretch is 1 / 2048 of its span."""
        share = 2.0 * (1.0 / 64.0) ** 2
        return self.printed("stretch") * POUND / share

    @cached_property
    def working(self) -> float:
        line = row("belt_working", profile=self.text("drive.profile"))
        return float(line["working_tension"] * self.width / line["width"])

    def around(self, teeth: float) -> float:
        """Pitch diameter."""
        return self.pitch * teeth / pi

    @cached_property
    def motor_pulley(self) -> float:
        return self.around(self["drive.motor_teeth"])

    @cached_property
    def pulleys(self) -> tuple[float, float]:
        """Pitch diameters, the large one first."""
        both = self.motor_pulley, self.around(self["drive.wheel_teeth"])
        return max(both), min(both)

    @cached_property
    def small_teeth(self) -> float:
        return min(self["drive.motor_teeth"], self["drive.wheel_teeth"])

    @cached_property
    def length(self) -> float:
        return self.pitch * self["drive.belt_teeth"]

    def centre_for(self, length: float) -> float:
        touching = sum(self.pulleys) / 2.0
        if loop(touching, *self.pulleys) > length:
            raise Impossible
        return float(brentq(lambda centre: loop(centre, *self.pulleys) - length, touching, length))

    @cached_property
    def own_centre(self) -> float:
        return self.centre_for(self.length)

    @cached_property
    def centre(self) -> float:
        return self["drive.centre"] if self.has("drive.centre") else self.own_centre

    @cached_property
    def lean(self) -> float:
        """Angle between a span and the line of centres."""
        large, small = self.pulleys
        if self.centre < (large + small) / 2.0:
            raise Impossible
        return asin((large - small) / 2.0 / self.centre)

    @cached_property
    def wrap(self) -> float:
        return pi - 2.0 * self.lean

    def span_of(self, centre: float) -> float:
        large, small = self.pulleys
        if centre < (large + small) / 2.0:
            raise Impossible
        return sqrt(centre**2 - ((large - small) / 2.0) ** 2)

    @cached_property
    def span(self) -> float:
        return self["drive.span"] if self.has("drive.span") else self.span_of(self.centre)

    @cached_property
    def mesh(self) -> float:
        return self.wrap / (2.0 * pi) * self.small_teeth

    @cached_property
    def whole_mesh(self) -> int:
        """As handbooks count: 60 degrees for each centre distance's worth of the diameters' difference."""
        large, small = self.pulleys
        _ = self.lean
        return floor((180.0 - 60.0 * (large - small) / self.centre) / 360.0 * self.small_teeth + 1e-12)

    @cached_property
    def mesh_factor(self) -> float:
        if self.whole_mesh < 2:
            raise Impossible
        return 1.0 if self.whole_mesh >= 6 else 0.2 * (self.whole_mesh - 1)

    # What it must carry.

    def amps(self, key: str) -> float:
        worth = {"six-step": 1.0, "sine peak": sqrt(3.0) / 2.0, "sine rms": sqrt(3.0) / 2.0 * sqrt(2.0)}
        return worth[self.text("controller.current_meaning", "six-step")] * self[key]

    @cached_property
    def torque(self) -> float:
        ways = ("motor", "brake") if self.has("controller.brake_current") else ("motor",)
        return max(self.amps(f"controller.{way}_current") for way in ways) / self["motor.kv"]

    @cached_property
    def service(self) -> float:
        return float(self.text("drive.service", "1.3"))

    @cached_property
    def unloaded(self) -> float:
        """Rotation of the unloaded motor at the nominal pack."""
        if self.has("pack.series"):
            volts = row("chemistry", name=self.text("pack.chemistry"))["nominal_low"] * self["pack.series"]
        else:
            volts = practice("usual pack", "volts")
        return float(volts * self["controller.duty"] * self["motor.kv"])

    @cached_property
    def aim(self) -> dict[str, Any]:
        """Target per span, what held it down, and the swing of a span under the torque."""
        swing = self.torque / self.motor_pulley
        speed = self.unloaded * self.motor_pulley / 2.0
        moving = self.printed("mass_factor") * POUND * (speed / FOOT_A_MINUTE / 1000.0) ** 2
        wish = max(0.812 * self.service * swing + moving, self.least)
        target = wish if wish + swing <= self.working else max(self.least, self.working - swing)
        bearing = False
        if self.has("motor.radial_load"):
            # Both spans pull the shaft; across the line of centres they cancel.
            carries = self["motor.radial_load"] / (cos(self.lean) + cos(-self.lean))
            bearing = max(self.least, carries) < target
            target = max(self.least, carries) if bearing else target
        return {
            "target": target,
            "swing": swing,
            "held_down": max(self.least, min(wish, self.working - swing)) < wish,
            "over_working": target + swing > self.working * (1.0 + 1e-9),
            "held_by_bearing": bearing,
        }

    @cached_property
    def target(self) -> float:
        return float(self.aim["target"])

    @cached_property
    def edges(self) -> tuple[float, float]:
        return max(self.least, 0.7 * self.target), 1.1 * self.target

    # Tools.

    @cached_property
    def scale_error(self) -> float:
        return float(row("measuring_tools", name=self.person.scale)["scale_error"]) * KILOGRAM_FORCE

    @cached_property
    def depth_error(self) -> float:
        return float(row("measuring_tools", name=self.person.depth_tool)["depth_error"]) * MM

    @cached_property
    def stiffness_error(self) -> float:
        return practice("stiffness error") * self.stiffness

    def check(self, depth: float) -> None:
        if depth > self.span / 4.0 or self.length < 2.0 * self.span:
            raise Impossible

    @cached_property
    def stretched(self) -> tuple[float, float, float]:
        """What the sums of a pull share: span, stiffness, belt length."""
        return self.span, self.stiffness, self.length

    def pull(self, tension: float, depth: float) -> float:
        self.check(depth)
        return force(tension, depth, *self.stretched)

    def error(self, tension: float, depth: float, of_force: float) -> float:
        span, stiffness, length = self.stretched
        by = slopes(tension, depth, span, stiffness, length)
        limits = of_force, self.depth_error, self.stiffness_error
        return hypot(*(slope * limit for slope, limit in zip(by, limits, strict=True)))

    @cached_property
    def step(self) -> float:
        return max(self.depth_error, 0.1 * MM)

    @cached_property
    def best_depth(self) -> float:
        """Engineering decisions: the smallest expected error, in steps a person can set."""
        tension = told(lambda: self.target)
        if isinstance(tension, str):
            tension = self.least
        span, stiffness, length = self.stretched
        offered = [step * self.step for step in range(1, floor(span / 16.0 / self.step + 1e-9) + 1)]
        if not offered:
            raise Impossible
        self.check(offered[0])
        strains = [tension + stiffness * (2.0 * hypot(span / 2.0, each) - span) / length for each in offered]
        allowed = [
            each
            for place, (each, strain) in enumerate(zip(offered, strains, strict=True))
            if place == 0 or strain <= self.working
        ]
        return min(allowed, key=lambda each: self.error(tension, each, self.scale_error))

    def read(self, pull: float, depth: float | None, of_force: float | None = None) -> tuple[float, float]:
        """Tension of a pull and its error."""
        at = self.best_depth if depth is None else depth
        self.check(at)
        tension = tension_at(pull, at, *self.stretched)
        return tension, self.error(tension, at, self.scale_error if of_force is None else of_force)

    def judged(self, read: Callable[[], tuple[float, float]]) -> dict[str, Answer]:
        """Tension, error and the word."""
        both = told(read)
        if isinstance(both, str):
            return {"tension": both, "error": both, "word": "nothing"}
        tension, error = both
        edges = told(lambda: self.edges)
        # While no motor is known the width alone says when a belt is too loose.
        least = told(lambda: self.least)
        loose = not isinstance(least, str) and least - tension >= error / 3.0
        bare = "slack" if loose else "nothing"
        said = bare if isinstance(edges, str) else word(tension, error, *edges)
        return {"tension": tension, "error": error, "word": said}

    # The motor.

    @cached_property
    def shaft(self) -> float:
        """Pull on the shaft for a newton in each span: the vectors of both, added."""
        return hypot(2.0 * cos(self.lean), sin(self.lean) + sin(-self.lean))

    def shaft_error(self, tension: float, pull: float) -> float:
        askew = practice("pull angle", "angle")
        return tension * hypot(self.scale_error / pull, practice("slot friction"), 1.0 - cos(askew))

    # The plucked span.

    @cached_property
    def mass(self) -> float:
        """In kg/m."""
        if self.has("drive.belt_mass"):
            return self["drive.belt_mass"] / self.length
        line = row("belt_mass", profile=self.text("drive.profile"), used=True)
        _ = self.width_row
        return float(line["mass"]) / 1000.0 * self.width / line["width"]

    @cached_property
    def mass_share(self) -> float:
        if self.has("drive.belt_mass"):
            return practice("weighing error")
        line = row("belt_mass", profile=self.text("drive.profile"), used=True)
        return float(line["spread"] / line["mass"])

    def pitch_of(self, tension: float) -> float:
        """A wave runs there and back along the span."""
        return sqrt(tension / self.mass) / (2.0 * self.span)

    def plucked(self, pitch: float) -> float:
        return self.mass * (2.0 * self.span * pitch) ** 2

    def pluck_error(self, tension: float, share: float) -> float:
        """Without the bending stiffness: mass once, frequency and span twice."""
        span = practice("span error", "length") * MM / self.span
        return tension * hypot(self.mass_share, 2.0 * share, 2.0 * span)


def close(one: float, other: float) -> bool:
    return isclose(one, other, rel_tol=1e-3, abs_tol=1e-9)


def best_way(found: Mapping[str, Answer]) -> str:
    """Name of the way to take: a harder one must halve the error of the easier."""
    best = ""
    for name in ("scale", "weight", "pulls", "pluck", "motor"):
        error = found[name]
        if not isinstance(error, str) and (not best or error <= float(found[best]) / 2.0):
            best = name
    return best


def best_of(found: Mapping[str, Answer]) -> Iterable[str]:
    """Names of the numbers, the smallest first."""
    numbers = {name: value for name, value in found.items() if not isinstance(value, str)}
    return sorted(numbers, key=lambda name: numbers[name])
