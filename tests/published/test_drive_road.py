"""Road load and gearing against printed figures. Tolerance: half a unit of the last printed digit.

"Worked example" marks a case worked out by hand from the inputs, with no printed answer.
"""

from math import pi

import pytest

from logic.drive.gearing import ratio, rolling_circumference, unloaded_speed
from logic.drive.road import (
    air_drag,
    grade_resistance,
    road_load,
    rolling_resistance,
    slope_angle,
    standard,
)
from logic.errors import InputError
from logic.workings import recording, standing_of, trace
from tests.printed import agrees, ours, same, source

RPM = 2.0 * pi / 60.0
KMH = 1.0 / 3.6


@source("iso-2533 sea level")
def test_air_density() -> None:
    """ISO 2533 prints 1.225 kg/m3 at sea level; its pressure, gas constant and 288.15 K give the same."""
    assert same(standard("air_density"), 1.225, "kg/m3")
    assert agrees(101325.0 / (287.05287 * 288.15), "1.225", "kg/m3")


@source("nist-sp811 appendix B.8")
def test_standard_gravity() -> None:
    """NIST SP 811, appendix B.8: 9.80665 m/s2, exact."""
    assert same(standard("gravity"), 9.80665, "m/s2")


@ours
@pytest.mark.parametrize(
    ("figure", "value", "standing"),
    [
        ("rolling_coefficient", 0.015, "estimate"),
        ("drag_area", 0.60, "estimate"),
        ("efficiency", 0.95, "published"),
        ("duty", 0.95, "practice"),
    ],
)
def test_assumed_figures_say_how_well_they_are_founded(figure: str, value: float, standing: str) -> None:
    with recording():
        number = standard(figure)
    assert number == value
    assert standing_of(trace(number)) == standing


@ours
def test_figure_that_is_not_in_the_table() -> None:
    with pytest.raises(InputError, match="not in the table"):
        standard("humidity")


@source("martin-1998 sample rider of Sports Eng. 2021 (10.1007/s12283-021-00345-2), table 1", "ours")
@pytest.mark.parametrize(("part", "printed"), [("air", "63.2"), ("rolling", "13.5"), ("grade", "317.0")])
def test_sample_rider(part: str, printed: str) -> None:
    """Worked example on the inputs of Sports Eng. 2021 (10.1007/s12283-021-00345-2) table 1.

    It cites Martin: 6 m/s, 72 kg, 7.5 %, rolling 0.0032, drag area 0.473 m2. The air part has the spokes'
    0.0044 m2 in it, and the grade part was worked out with 9.81 m/s2: with 9.80665 it is 316.8 W.
    """
    gravity = 9.81
    slope = slope_angle(grade=0.075)
    force = {
        "air": air_drag(air_density=1.225, drag_area=0.473 + 0.0044, speed=6.0, wind=0.0),
        "rolling": rolling_resistance(rolling_coefficient=0.0032, mass=72.0, gravity=gravity, slope=slope),
        "grade": grade_resistance(mass=72.0, gravity=gravity, slope=slope),
    }
    assert agrees(force[part] * 6.0, printed, "W")


def load(*, speed: float, grade: float, mass: float, rolling: float, drag_area: float) -> float:
    slope = slope_angle(grade=grade)
    return road_load(
        air_drag=air_drag(air_density=1.225, drag_area=drag_area, speed=speed, wind=0.0),
        rolling_resistance=rolling_resistance(
            rolling_coefficient=rolling, mass=mass, gravity=9.80665, slope=slope
        ),
        grade_resistance=grade_resistance(mass=mass, gravity=9.80665, slope=slope),
    )


@ours
def test_ten_percent_grade() -> None:
    """Worked example: 95 kg at 20 km/h up 10 %; the inputs that give it are rolling 0.015 and 0.65 m2."""
    speed = 20.0 * KMH
    force = load(speed=speed, grade=0.10, mass=95.0, rolling=0.015, drag_area=0.65)
    assert agrees(force * speed, "661", "W")


@ours
@pytest.mark.parametrize(
    ("rolling", "speed", "printed"),
    [
        (0.012, 15.0, "6.3"),
        (0.012, 20.0, "8.1"),
        (0.012, 25.0, "10.5"),
        (0.012, 30.0, "13.5"),
        (0.012, 35.0, "16.9"),
        (0.02, 15.0, "8.9"),
        (0.02, 20.0, "10.7"),
        (0.02, 25.0, "13.1"),
        (0.02, 30.0, "16.1"),
        (0.02, 35.0, "19.5"),
    ],
)
def test_energy_on_the_flat(rolling: float, speed: float, printed: str) -> None:
    """Worked example: 95 kg, drag area 0.65 m2, 0.8 from pack to wheel, in Wh/km."""
    force = load(speed=speed * KMH, grade=0.0, mass=95.0, rolling=rolling, drag_area=0.65)
    assert agrees(force / 0.8 / 3.6, printed, "Wh/km")


@ours
@pytest.mark.parametrize(("voltage", "printed"), [(42.0, "53.6"), (36.0, "45.9"), (33.0, "42.1")])
def test_unloaded_speed(voltage: float, printed: str) -> None:
    """Worked example: 10 cells in series, Kv 190, 15 : 36 teeth, 90 mm wheels, duty 0.95, in km/h."""
    speed = unloaded_speed(
        voltage=voltage,
        duty=0.95,
        speed_constant=190.0 * RPM,
        circumference=rolling_circumference(wheel_diameter=0.090),
        ratio=ratio(wheel_teeth=36.0, motor_teeth=15.0),
    )
    assert agrees(speed / KMH, printed, "km/h")
