"""Rolling coefficient and drag area from rides and from coasting, with the band they are known to."""

from collections.abc import Sequence
from math import sqrt

from logic.drive.gearing import motor_angular_speed, rolling_circumference
from logic.drive.motor import back_emf, motor_torque, torque_constant
from logic.drive.push import Drivetrain, push_of
from logic.errors import InputError, NoFigure, positive
from logic.frozen import frozen
from logic.si import (
    Ampere,
    JoulePerMetre,
    Kilogram,
    KilogramPerCubicMetre,
    Metre,
    MetrePerSecond,
    MetrePerSecondSquared,
    Newton,
    NewtonMetrePerAmpere,
    Ohm,
    One,
    PerMetreToTheFourth,
    PerSquareMetre,
    SquareMetre,
    Volt,
    Watt,
)
from logic.tables import rows
from logic.workings import Given, cited, given, origins, unrecorded

FEWEST = 4
"""Rides for a fit of two numbers: with three a band of 95 % is wider than anything known beforehand."""

ALIKE = 1e-4
"""Share of the determinant below which speeds are too alike: about 1 % of spread."""


@cited(
    "(sqrt(back_emf**2 + 4 * winding_resistance * power / motors) - back_emf) / (2 * winding_resistance)",
    source="derived voltage balance of the winding, turned round",
    standing="derived",
)
def current_for_power(*, back_emf: Volt, winding_resistance: Ohm, power: Watt, motors: One) -> Ampere:
    """Return the current of one motor when all take a power. Raises InputError unless all but the EMF are positive.

    >>> current_for_power(back_emf=30.0, winding_resistance=0.05, power=1240.0, motors=2.0)
    20.0
    """
    positive(winding_resistance=winding_resistance, power=power, motors=motors)
    root = sqrt(back_emf**2 + 4.0 * winding_resistance * power / motors)
    return (root - back_emf) / (2.0 * winding_resistance)


@frozen(kw_only=True)
class Sample:
    """One ride: its usual speed and the energy it took for each metre."""

    speed: MetrePerSecond
    energy_per_distance: JoulePerMetre


def force_of_ride(drive: Drivetrain, sample: Sample) -> Newton:
    """Return the push on the road that a ride's energy stands for, with the drive's own losses taken out."""
    angular_speed = motor_angular_speed(
        speed=sample.speed,
        circumference=rolling_circumference(wheel_diameter=drive.wheel_diameter),
        ratio=drive.ratio,
    )
    current = current_for_power(
        back_emf=back_emf(angular_speed=angular_speed, speed_constant=drive.speed_constant),
        winding_resistance=drive.winding_resistance,
        power=sample.energy_per_distance * sample.speed,
        motors=drive.motors,
    )
    torque = motor_torque(
        torque_constant=torque_constant(speed_constant=drive.speed_constant),
        current=current,
        no_load_current=drive.no_load_current,
    )
    return push_of(drive, torque)


@frozen(kw_only=True)
class Estimate:
    """A number from a fit, and how far to either side a band of 95 % reaches."""

    value: float
    half: float

    @property
    def clear(self) -> bool:
        """Tell whether the band stays above zero: only then has the fit told anything."""
        return self.value - self.half > 0.0

    def holds(self, true: float) -> bool:
        """Tell whether a value lies in the band."""
        return abs(true - self.value) <= self.half


@frozen(kw_only=True)
class Fitted:
    """Both coefficients from rides. `scatter` is the standard deviation of a ride, as a share of its force."""

    rolling: Estimate
    drag_area: Estimate
    rides: int
    scatter: One


def band_factor(freedom: int) -> One:
    """Return how many standard errors a 95 % band reaches; between printed rows the wider one.

    >>> band_factor(11)
    2.228
    """
    if freedom < 1:
        raise InputError("rides", freedom, "too few", low=1.0)
    printed = [row for row in rows("student_t") if row.cells["freedom"] <= freedom]
    return float(printed[-1].cells["factor"])


def fitted(
    drive: Drivetrain,
    samples: Sequence[Sample],
    *,
    mass: Kilogram,
    gravity: MetrePerSecondSquared,
    air_density: KilogramPerCubicMetre,
) -> Fitted:
    """Return rolling coefficient and drag area that explain the rides best, with their bands of 95 %.

    Each ride gives a force: rolling x weight + drag area x air density / 2 x speed squared. The squares of the
    misses, each as a share of its force, are made least. Level rides without wind are taken for granted: hills
    and stops read as drag. Raises InputError for fewer than four rides ("too few rides") and for speeds too alike to
    tell the two apart ("too alike").
    """
    if len(samples) < FEWEST:
        raise NoFigure("rides", len(samples), "too few rides")
    weight = float(mass) * float(gravity)
    rows_of: list[tuple[float, float]] = []
    with unrecorded():
        for sample in samples:
            force = force_of_ride(drive, sample)
            positive(force=force)
            # Divided by its force each ride counts alike: noise is a share of what is measured.
            rows_of.append((weight / force, 0.5 * air_density * sample.speed**2 / force))
    aa = sum(a * a for a, _ in rows_of)
    ab = sum(a * b for a, b in rows_of)
    bb = sum(b * b for _, b in rows_of)
    a1, b1 = sum(a for a, _ in rows_of), sum(b for _, b in rows_of)
    if aa * bb - ab * ab <= ALIKE * aa * bb:
        raise NoFigure("rides", len(samples), "too alike")
    because = origins((*vars(drive).values(), mass, gravity, air_density))
    sums = {
        name: given(
            Given(f"sum {text} over the rides", float(value), unit, known="measured", because=because)
        )
        for name, text, value, unit in (
            ("aa", "(weight / force)²", aa, "1"),
            ("ab", "weight / force × pressure / force", ab, "1/m**2"),
            ("bb", "(pressure / force)²", bb, "1/m**4"),
            ("a1", "weight / force", a1, "1"),
            ("b1", "pressure / force", b1, "1/m**2"),
        )
    }
    rolling, drag_area = rolling_of_sums(**sums), drag_area_of_sums(**sums)
    determinant, freedom = aa * bb - ab * ab, len(samples) - 2
    variance = sum((1.0 - rolling * a - drag_area * b) ** 2 for a, b in rows_of) / freedom
    reach = band_factor(freedom)
    return Fitted(
        rolling=Estimate(value=rolling, half=reach * sqrt(variance * bb / determinant)),
        drag_area=Estimate(value=drag_area, half=reach * sqrt(variance * aa / determinant)),
        rides=len(samples),
        scatter=sqrt(variance),
    )


@cited(
    "(a1 * bb - b1 * ab) / (aa * bb - ab**2)",
    source="derived least squares of rolling + air, each ride over its force",
    standing="derived",
)
def rolling_of_sums(
    *, aa: One, ab: PerSquareMetre, bb: PerMetreToTheFourth, a1: One, b1: PerSquareMetre
) -> One:
    """Return the rolling coefficient of least squares; a is weight / force, b dynamic pressure / force.

    >>> rolling_of_sums(aa=2.0, ab=1.0, bb=3.0, a1=3.0, b1=4.0)
    1.0
    """
    return (a1 * bb - b1 * ab) / (aa * bb - ab**2)


@cited(
    "(b1 * aa - a1 * ab) / (aa * bb - ab**2)",
    source="derived least squares of rolling + air, each ride over its force",
    standing="derived",
)
def drag_area_of_sums(
    *, aa: One, ab: PerSquareMetre, bb: PerMetreToTheFourth, a1: One, b1: PerSquareMetre
) -> SquareMetre:
    """Return the drag area of least squares, as `rolling_of_sums` does.

    >>> drag_area_of_sums(aa=2.0, ab=1.0, bb=3.0, a1=3.0, b1=4.0)
    1.0
    """
    return (b1 * aa - a1 * ab) / (aa * bb - ab**2)


@cited(
    "2 * motors * torque_constant * no_load_current * ratio / (wheel_diameter * mass * gravity)",
    source="derived torque of the no-load current over the wheel's radius, as a share of the weight",
    standing="derived",
)
def motor_drag_share(  # noqa: PLR0913  (what the drag passes through)
    *,
    motors: One,
    torque_constant: NewtonMetrePerAmpere,
    no_load_current: Ampere,
    ratio: One,
    wheel_diameter: Metre,
    mass: Kilogram,
    gravity: MetrePerSecondSquared,
) -> One:
    """Return what the motors' own drag adds to the rolling coefficient while they are turned by the belts.

    Raises InputError unless all but the no-load current are positive.

    >>> round(
    ...     motor_drag_share(
    ...         motors=2.0,
    ...         torque_constant=0.05,
    ...         no_load_current=1.0,
    ...         ratio=2.5,
    ...         wheel_diameter=0.1,
    ...         mass=100.0,
    ...         gravity=10.0,
    ...     ),
    ...     4,
    ... )
    0.005
    """
    positive(
        motors=motors,
        torque_constant=torque_constant,
        ratio=ratio,
        wheel_diameter=wheel_diameter,
        mass=mass,
        gravity=gravity,
    )
    return 2.0 * motors * torque_constant * no_load_current * ratio / (wheel_diameter * mass * gravity)


@cited("rolling - drag_share", source="derived what is left for the wheels", standing="derived")
def rolling_of_wheels(*, rolling: One, drag_share: One) -> One:
    """Return the rolling coefficient without the motors' drag. Raises InputError when nothing is left.

    >>> rolling_of_wheels(rolling=0.0225, drag_share=0.0075)
    0.015
    """
    if rolling <= drag_share:
        raise NoFigure("rolling", rolling, "rolls on")
    return rolling - drag_share
