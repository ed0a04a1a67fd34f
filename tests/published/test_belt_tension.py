"""Installation tension and what torque does to it, against printed examples."""

from math import pi

import pytest

from logic.belt.catalogue import belt_stiffness
from logic.belt.running import least_of_manuals, most_of_manuals, slack_torque
from logic.belt.scale import pull_force
from logic.belt.tension import effective_pull, installation_tension
from logic.drive.gearing import belt_speed
from logic.units import factor
from tests.printed import agrees, near, ours, source

INCH = 0.0254
POUND = 4.4482216152605


@source("optibelt-rubber p. 42-45")
def test_effective_pull_of_the_worked_example() -> None:
    """optibelt-rubber p. 42-45: 18.5 kW at 2850 rpm on 91.67 mm gives 1352 N."""
    torque = 18500 / (2850 * 2 * pi / 60)
    assert near(effective_pull(torque=torque, pitch_diameter=0.09167), 1352, "N", abs=0.5)


@source("optibelt-rubber p. 42-45")
def test_belt_speed_of_the_worked_example() -> None:
    """optibelt-rubber p. 42-45: 2850 rpm on 91.67 mm is 13.68 m/s."""
    assert agrees(belt_speed(angular_speed=2850 * 2 * pi / 60, pitch_diameter=0.09167), "13.68", "m/s")


# gates-17595 p. 14-17: a 14 mm pitch belt of another make, whose own multipliers are 1.4 and 1.5.
TENSION, SPAN, LENGTH, STRETCH = 700.2, 49.52, 123.46, 134.57


@source("gates-17595 p. 14-17")
@pytest.mark.parametrize(
    ("multiplier", "printed"),
    [
        pytest.param(1.4, 65, id="least"),
        pytest.param(1.5, 69, id="most"),
    ],
)
def test_pull_of_the_worked_example(multiplier: float, printed: float) -> None:
    """At the depth of a 64th of the span, with that belt's own constants."""
    force = pull_force(
        tension=multiplier * TENSION * POUND,
        deflection=SPAN * INCH / 64,
        span=SPAN * INCH,
        length=LENGTH * INCH,
        stiffness=belt_stiffness(stretch=STRETCH * POUND),
    )
    assert near(force / POUND, printed, "lbf", abs=0.5)


@source("gates-17595 p. 14-17")
def test_speed_term_of_the_worked_example() -> None:
    """gates-17595 p. 14-17 adds 0.002 lbf for m = 0.92 at 35 rpm on 5.614 in."""
    speed = 35 * 2 * pi / 60 * 5.614 * INCH / 2
    common = {"torque": 1.0, "service_factor": 1.3, "pitch_diameter": 0.1}
    mass_factor = 0.92 * factor("lbf/(kft/min)**2", "kg/m")
    moving = installation_tension(**common, mass_factor=mass_factor, belt_speed=speed)
    still = installation_tension(**common, mass_factor=mass_factor, belt_speed=0.0)
    assert near((moving - still) / POUND, "0.002", "lbf", abs=0.0005)


@ours
def test_torque_term_is_the_same_in_inches_and_metres() -> None:
    """Ours, by hand: 0.812 x 20 lbf.in / 1 in = 16.24 lbf, with the service factor in the 20."""
    tension = installation_tension(
        torque=20 / 1.6 * POUND * INCH,
        service_factor=1.6,
        pitch_diameter=INCH,
        mass_factor=1e-9,
        belt_speed=0.0,
    )
    assert near(tension / POUND, 16.24, "lbf", abs=1e-9)


@ours
def test_speed_term_at_ten_metres_a_second() -> None:
    """Derived: 4.7 N for 15 mm HTD 5M."""
    common = {"torque": 1.0, "service_factor": 1.3, "pitch_diameter": 0.1, "mass_factor": 0.17237 * 0.272}
    fast, still = (installation_tension(**common, belt_speed=speed) for speed in (10.0, 0.0))
    assert near(fast - still, 4.7, "N", abs=0.05)


@ours
def test_spread_of_the_manuals() -> None:
    """Derived: 0.812 DQ/d is 0.406 of the effective pull, 20 HP/S is 0.606 of it (tried with 1 hp)."""
    assert near(least_of_manuals(pull=1.0), 0.406, "N", abs=0.0005)
    assert near(most_of_manuals(pull=1.0), 0.606, "N", abs=0.0005)
    feet_a_minute = 1000.0
    pull = 33000.0 / feet_a_minute * POUND
    assert most_of_manuals(pull=pull) / POUND == pytest.approx(
        20.0 * 1.0 / (feet_a_minute / 1000.0), abs=1e-9
    )


@ours
def test_torque_that_slackens_a_span() -> None:
    """Derived: 15 mm HTD 5M at 107 N on 16 teeth (25.46 mm) goes slack at 2.72 N m."""
    assert near(slack_torque(tension=107.0, pitch_diameter=0.02546), 2.72, "N m", abs=0.005)
