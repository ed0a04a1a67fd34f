"""How a belt's tension falls over the way it has run: the line through the readings, and how far it lasts."""

from collections.abc import Sequence
from math import sqrt

from logic.errors import InputError, positive
from logic.frozen import frozen
from logic.si import Metre, Newton, NewtonPerMetre
from logic.workings import cited, method

FEWEST = 3


@frozen
class Point:
    """One reading: the way run since the belt was fitted, the tension and its error."""

    way: Metre
    tension: Newton
    error: Newton


@frozen
class Line:
    """The line through readings: tension now, what it falls by each metre, and the error of the fall."""

    now: Newton
    fall: NewtonPerMetre
    fall_error: NewtonPerMetre

    @property
    def sure(self) -> bool:
        """Tell whether it falls at all: the fall is larger than its error."""
        return self.fall > self.fall_error


def line(points: Sequence[Point]) -> Line:
    """Return the line that fits the readings best, each weighted by its error.

    Raises InputError for fewer than three readings, or readings that were all taken at one way.

    >>> found = line([Point(0.0, 110.0, 5.0), Point(1e4, 105.0, 5.0), Point(2e4, 100.0, 5.0)])
    >>> round(found.now), round(found.fall * 1000, 2)
    (100, 0.5)
    """
    if len(points) < FEWEST:
        raise InputError("readings", len(points), "range", low=float(FEWEST))
    positive(**{f"error {number}": point.error for number, point in enumerate(points)})
    weights = [1 / point.error**2 for point in points]
    whole = sum(weights)
    middle = sum(weight * point.way for weight, point in zip(weights, points, strict=True)) / whole
    level = sum(weight * point.tension for weight, point in zip(weights, points, strict=True)) / whole
    width = sum(weight * (point.way - middle) ** 2 for weight, point in zip(weights, points, strict=True))
    if width <= 0.0:
        raise InputError("readings", len(points), "one place")
    slope = (
        sum(
            weight * (point.way - middle) * (point.tension - level)
            for weight, point in zip(weights, points, strict=True)
        )
        / width
    )
    last = max(point.way for point in points)
    return Line(level + slope * (last - middle), -slope, 1 / sqrt(width))


@method(
    "slope of the straight line through the readings since the belt was fitted, each weighted by its error",
    source="derived least squares",
)
def fall_of_tension(**points: float) -> NewtonPerMetre:
    """Return what the tension falls by each metre, of points way_1, tension_1, error_1, way_2 and so on.

    Raises InputError as `line` does.
    """
    return line(_points(points)).fall


@method(
    "height at the last reading of the straight line through the readings since the belt was fitted",
    source="derived least squares",
)
def tension_on_the_line(**points: float) -> Newton:
    """Return the tension that the line gives at the last reading. Raises InputError as `line` does."""
    return line(_points(points)).now


def _points(numbers: dict[str, float]) -> list[Point]:
    return [
        Point(numbers[f"way_{number}"], numbers[f"tension_{number}"], numbers[f"error_{number}"])
        for number in range(1, len(numbers) // 3 + 1)
    ]


@cited("(now - floor) / fall", source="derived if the fall goes on as it did", standing="derived")
def way_left(*, now: Newton, floor: Newton, fall: NewtonPerMetre) -> Metre:
    """Way until a falling tension comes to a floor; below zero when it is under it already.

    Raises InputError unless the fall is positive.

    >>> way_left(now=100.0, floor=80.0, fall=0.0005)
    40000.0
    """
    positive(fall=fall)
    return (now - floor) / fall
