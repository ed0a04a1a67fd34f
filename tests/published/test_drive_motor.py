"""Motor figures against printed ones. Tolerance: half a unit of the last printed digit.

"Worked example" marks a case worked out by hand from the inputs, with no printed answer.
"""

from math import pi, sin

import pytest

from logic.drive.gearing import electrical_angular_speed, unloaded_angular_speed
from logic.drive.motor import (
    conversion,
    current_meanings,
    dc_equivalent_current,
    electric_power,
    motor_torque,
    shaft_power,
    torque_constant,
    torque_constant_stated,
    winding_heat,
)
from logic.errors import InputError
from logic.tables import pick
from tests.printed import agrees, near, ours, source

RPM = 2.0 * pi / 60.0


@source("motor-constants-explained the three conventions", "second-hand")
@pytest.mark.parametrize(
    ("meaning", "over_kv"),
    [
        pytest.param(
            "six-step",
            "9.549",
            marks=source("maker-note speed constant and torque constant", "second-hand"),
            id="60 / (2 pi Kv)",
        ),
        pytest.param("sine peak", "8.27", id="KT = 8.27 / Kv"),
        pytest.param("sine peak", "8.270", marks=ours, id="(3 / 2) / sqrt 3 x 60 / 2 pi"),
        pytest.param("sine rms", "11.70", marks=ours, id="sqrt 1.5 x 60 / 2 pi"),
    ],
)
def test_torque_constant_over_kv(meaning: str, over_kv: str) -> None:
    constant = torque_constant(speed_constant=1.0 * RPM)
    stated = torque_constant_stated(torque_constant=constant, conversion=conversion(meaning))
    assert agrees(stated, over_kv, "N m/A per 1/rpm")
    assert pick("torque_constants", meaning=meaning).number("printed") == float(over_kv)


@ours
def test_every_meaning_is_checked_above() -> None:
    assert current_meanings() == ("six-step", "sine peak", "sine rms")


@ours
def test_unknown_meaning_is_refused() -> None:
    with pytest.raises(InputError, match="not in the table"):
        conversion("phase")


@ours
@pytest.mark.parametrize(
    ("meaning", "phases"),
    [
        # Mean of three sine phases in step with a sine EMF, worked out over one electrical turn, against the
        # DC-equivalent figures. Ours; it shares nothing with the code but the meaning of the words.
        pytest.param("sine peak", 1.0, id="three phases summed over a turn, peak"),
        pytest.param("sine rms", 2.0**0.5, id="three phases summed over a turn, rms"),
    ],
)
def test_three_phases_give_the_same_torque_and_heat(meaning: str, phases: float) -> None:
    stated, line_to_line, kv = 30.0, 0.05, 18.0
    peak = stated * phases
    # Kv is taken from the peak of the line-to-line EMF; a star's phase EMF is that over the root of 3.
    angles = [2.0 * pi * step / 360.0 for step in range(360)]
    shifts = (0.0, 2.0 * pi / 3.0, 4.0 * pi / 3.0)
    torque = sum(
        peak * sin(angle + shift) * sin(angle + shift) / (kv * 3.0**0.5)
        for angle in angles
        for shift in shifts
    )
    heat = sum((peak * sin(angle + shift)) ** 2 * line_to_line / 2.0 for angle in angles for shift in shifts)
    current = dc_equivalent_current(current=stated, conversion=conversion(meaning))
    constant = torque_constant(speed_constant=kv)
    found = motor_torque(torque_constant=constant, current=current, no_load_current=0.0)
    assert near(found, torque / 360.0, "N m", rel=1e-12)
    assert near(winding_heat(current=current, winding_resistance=line_to_line), heat / 360.0, "W", rel=1e-12)


@source("club-article on speed constants", "second-hand")
def test_kv_times_volts() -> None:
    """A club article prints 560 rpm/V x 22 V = 12,320 rpm."""
    angular_speed = unloaded_angular_speed(voltage=22.0, duty=1.0, speed_constant=560.0 * RPM)
    assert agrees(angular_speed / RPM, "12320", "rpm")


@ours
def test_electrical_angular_speed() -> None:
    """Worked example: 7 pole pairs at 8000 rpm are 56000 electrical rpm, 933 Hz."""
    angular_speed = electrical_angular_speed(angular_speed=8000.0 * RPM, pole_pairs=7.0)
    assert agrees(angular_speed / RPM, "56000", "rpm")
    assert agrees(angular_speed / (2.0 * pi), "933", "Hz")


@ours
@pytest.mark.parametrize(
    ("figure", "printed"),
    [
        ("torque", "0.930"),
        ("shaft", "725"),
        ("taken", "800"),
        ("percent", "90.65"),  # exactly 0.98 x 0.925; the page drops the last digit and prints 90.6
    ],
)
def test_motor_on_40_volts(figure: str, printed: str) -> None:
    """Worked example: 40 V, Kv 190, 0.04 ohm, no-load 1.5 A, drawing 20 A at 7448 rpm."""
    kv, resistance = 190.0 * RPM, 0.04
    angular_speed = kv * (40.0 - 20.0 * resistance)
    torque = motor_torque(
        torque_constant=torque_constant(speed_constant=kv), current=20.0, no_load_current=1.5
    )
    shaft = shaft_power(torque=torque, angular_speed=angular_speed)
    taken = electric_power(current=20.0, back_emf=angular_speed / kv, winding_resistance=resistance)
    found = {
        "torque": torque,
        "shaft": shaft,
        "taken": taken,
        "percent": 100.0 * shaft / taken,
    }
    assert agrees(found[figure], printed, {"torque": "N m", "percent": "%"}.get(figure, "W"))
