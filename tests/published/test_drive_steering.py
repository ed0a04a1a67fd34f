"""A leaning board against textbook answers, and against a truck turned about its axis in space."""

from math import atan, cos, pi, sin, tan

import pytest

from logic.drive.steering import (
    bite_lean,
    biting_edge,
    fastest_in_turn,
    gap_at_lean,
    push_over_edge,
    steer_angle,
    turn_radius,
)
from logic.errors import InputError
from logic.roots import bracketed
from tests.printed import agrees, near, ours, source

DEGREE = pi / 180.0


def axle_in_space(pivot: float, lean: float) -> float:
    """Return the steer of an axle, found by turning it about the pivot axis until it lies level again.

    x is forward, y to the left, z up. The deck leans by `lean` about x, and the axis of the truck with it.
    """

    def leant(x: float, y: float, z: float) -> tuple[float, float, float]:
        return x, y * cos(lean) - z * sin(lean), y * sin(lean) + z * cos(lean)

    def turned(angle: float) -> tuple[float, float, float]:
        # The axle (0, 1, 0) about the unit axis k = (cos p, 0, sin p): v cos a + (k x v) sin a, as k . v = 0.
        return leant(-sin(pivot) * sin(angle), cos(angle), cos(pivot) * sin(angle))

    angle = float(bracketed(lambda one: turned(one)[2], -1.5, 1.5, name="level").value)
    x, y, _ = turned(angle)
    return atan(abs(x) / y)


@ours
@pytest.mark.parametrize("pivot", [20.0, 35.0, 45.0, 50.0, 65.0])
@pytest.mark.parametrize("lean", [1.0, 8.0, 15.0, 30.0])
def test_an_axle_steers_as_one_turned_about_its_axis_in_space(pivot: float, lean: float) -> None:
    found = steer_angle(pivot=pivot * DEGREE, lean=lean * DEGREE)
    assert near(found, axle_in_space(pivot * DEGREE, lean * DEGREE), "rad", rel=1e-9)


@ours
def test_one_steered_axle_is_the_vehicle_of_the_textbooks() -> None:
    """Ours: 2.5 m between the axles, 30 degrees at one of them: 2.5 / 0.57735 = 4.330 m; at both it is half."""
    assert near(turn_radius(wheelbase=2.5, front=30.0 * DEGREE, rear=0.0), 4.330, "m", abs=5e-4)
    assert near(turn_radius(wheelbase=2.5, front=30.0 * DEGREE, rear=30.0 * DEGREE), 2.165, "m", abs=5e-4)


@source("openstax-physics flat curve, 25.0 m/s at 500 m")
@pytest.mark.parametrize("printed_friction", ["0.13"], ids=["25.0 m/s at 500 m"])
def test_the_grip_of_a_flat_curve(printed_friction: str) -> None:
    """A car on a flat curve of 500 m at 25.0 m/s needs a friction of 0.13, g 9.80."""
    low, high = (
        fastest_in_turn(friction=float(printed_friction) + off, gravity=9.80, radius=500.0)
        for off in (-0.005, 0.005)
    )
    assert low < 25.0 < high
    middle = fastest_in_turn(friction=float(printed_friction), gravity=9.80, radius=500.0)
    assert near(middle, "25.0", "m/s", rel=0.5 * 0.005 / 0.125)


@source("young-freedman 11th ed., problem 11.72")
@pytest.mark.parametrize(("height", "share"), [(0.01, "0.75"), (0.02, "1.33"), (0.005, "0.484")])
def test_a_wheel_pulled_over_a_kerb(height: float, share: str) -> None:
    """Young and Freedman, University Physics, 11th edition, problem 11.72: F = w sqrt(2 R h - h2) / (R - h)."""
    assert agrees(push_over_edge(wheel_diameter=0.1, edge=height), share, "of the weight")


@ours
def test_an_edge_as_high_as_the_axle_stops_any_wheel() -> None:
    with pytest.raises(InputError, match="range"):
        push_over_edge(wheel_diameter=0.06, edge=0.03)


@ours
def test_the_bite_is_where_nothing_is_left() -> None:
    """Ours: 25 mm over the wheel, 115 mm out: arctan(25 / 115) = 12.26 degrees."""
    edge = biting_edge(deck_width=0.230, track=0.330, wheel_width=0.055)
    lean = bite_lean(gap=0.025, edge=edge)
    assert near(lean / DEGREE, 12.26, "degrees", abs=0.005)
    assert gap_at_lean(gap=0.025, edge=edge, lean=lean) == pytest.approx(0.0, abs=1e-12)
    assert gap_at_lean(gap=0.025, edge=edge, lean=15.0 * DEGREE) == pytest.approx(
        0.025 - 0.115 * tan(15 * DEGREE)
    )


@ours
def test_a_narrow_deck_reaches_no_wheel_and_a_wide_one_ends_at_its_face() -> None:
    with pytest.raises(InputError, match="clear of the wheels"):
        biting_edge(deck_width=0.200, track=0.330, wheel_width=0.055)
    assert biting_edge(deck_width=0.400, track=0.330, wheel_width=0.055) == 0.165
