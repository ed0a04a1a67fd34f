"""Stress areas and thread geometry against printed tables; the standards round, hence the 0.2 % for areas."""

import pytest

from logic.joints.threads import (
    Thread,
    lookalikes,
    minor_diameter,
    stress_area,
    thread,
    thread_pitch_diameter,
    threads,
)
from tests.printed import agrees, near, ours, source

MM, INCH = 1e-3, 0.0254

# Printed areas, typed here a second time and not read from the app's table. ISO 898-1 by reprints for M3 to
# M12, GB/T 16823.1 for M2 and M2.5. Of fine threads none was seen printed: their rows are the formula's, see below.
COARSE = {
    "M2": 2.07,
    "M2.5": 3.39,
    "M3": 5.03,
    "M3.5": 6.78,
    "M4": 8.78,
    "M5": 14.2,
    "M6": 20.1,
    "M8": 36.6,
    "M10": 58.0,
    "M12": 84.3,
}
INCHES = {
    "4-40": 0.00604,
    "5-40": 0.00796,
    "6-32": 0.00909,
    "8-32": 0.0140,
    "10-24": 0.0175,
    "1/4-20": 0.0318,
    "5/16-18": 0.0524,
    "3/8-16": 0.0775,
    "4-48": 0.00661,
    "5-44": 0.0083,
    "6-40": 0.01015,
    "8-36": 0.01474,
    "10-32": 0.0200,
    "1/4-28": 0.0364,
    "5/16-24": 0.0580,
    "3/8-24": 0.0878,
}


def area_of(screw: Thread) -> float:
    if screw.system == "metric":
        return stress_area(nominal_diameter=screw.nominal_diameter, pitch=screw.pitch)
    # asme-b1-1 appendix B
    return 0.7854 * (screw.nominal_diameter - 0.9743 * screw.pitch) ** 2


@source("asme-b1-1 stress areas", "second-hand")
@pytest.mark.parametrize(
    ("name", "printed", "unit"),
    [
        *(
            pytest.param(n, a, MM**2, marks=source("iso-898-1 stress areas", "second-hand"), id=n)
            for n, a in COARSE.items()
        ),
        *(pytest.param(n, a, INCH**2, id=n) for n, a in INCHES.items()),
    ],
)
def test_stress_area(name: str, printed: float, unit: float) -> None:
    """The formula gives the printed area within 0.2 % (largest difference 0.18 %, from rounding)."""
    screw = thread(name)
    assert near(area_of(screw) / unit, printed, "mm2" if unit == MM**2 else "in2", rel=0.002)
    assert screw.stress_area == pytest.approx(printed * unit, rel=1e-12)


@ours
def test_every_thread_of_the_table_is_checked() -> None:
    fine = {screw.designation for screw in threads() if screw.series == "fine"}
    assert {screw.designation for screw in threads()} == {*COARSE, *INCHES, *fine}


@ours
def test_rows_of_fine_threads_are_the_circle_between_the_standard_diameters() -> None:
    """No outside check of the rows: ISO 898-1 defines As by d2 = d - 3/4 H and d3 = d - 17/12 H, rounded to three digits.

    The printed preloads of VDI 2230 for M8x1, M10x1.25 and M12x1.25 are (test_joints_examples.py).
    """
    for screw in threads():
        if screw.series == "fine":
            high = 3**0.5 / 2 * screw.pitch / MM
            across = screw.nominal_diameter / MM - (3 / 4 + 17 / 12) / 2 * high
            assert agrees(3.141592653589793 / 4 * across**2, f"{screw.stress_area / MM**2:.1f}", "mm2")
            assert screw.row.standing == "derived"


@source("iso-724 basic dimensions", "memory")
@pytest.mark.parametrize(
    ("name", "pitch_printed", "minor_printed"),
    [
        pytest.param("M2", "1.740", "1.509", id="M2"),
        pytest.param("M2.5", "2.208", "1.948", id="M2.5"),
        pytest.param("M3", "2.675", "2.387", id="M3"),
        pytest.param("M3.5", "3.110", "2.764", id="M3.5"),
        pytest.param("M4", "3.545", "3.141", id="M4"),
        pytest.param("M6", "5.350", "4.773", id="M6"),
        pytest.param("M8", "7.188", "6.466", id="M8"),
        pytest.param("M10", "9.026", "8.160", id="M10"),
        pytest.param("M12", "10.863", "9.853", id="M12"),
    ],
)
def test_pitch_and_minor_diameter(name: str, pitch_printed: str, minor_printed: str) -> None:
    """From memory: what is tested is the arithmetic."""
    screw = thread(name)
    diameter, pitch = screw.nominal_diameter, screw.pitch
    assert agrees(thread_pitch_diameter(nominal_diameter=diameter, pitch=pitch) / MM, pitch_printed, "mm")
    assert agrees(minor_diameter(nominal_diameter=diameter, pitch=pitch) / MM, minor_printed, "mm")


def metric_limits(diameter: float, pitch: float) -> dict[str, float]:
    """ISO 965-1 tolerance formulas for 6g and 6H, in millimetres; the standard then rounds to
    preferred numbers."""
    bounds = next(
        (low, high) for low, high in ((1.4, 2.8), (2.8, 5.6), (5.6, 11.2), (11.2, 22.4)) if diameter <= high
    )
    middle = (bounds[0] * bounds[1]) ** 0.5
    clearance = (15 + 11 * pitch) / 1000
    major = (180 * pitch ** (2 / 3) - 3.15 / pitch**0.5) / 1000
    screw_pitch = 90 * pitch**0.4 * middle**0.1 / 1000
    hole_minor = (433 * pitch - 190 * pitch**1.22 if pitch <= 0.8 else 230 * pitch**0.7) / 1000
    middle_diameter = thread_pitch_diameter(nominal_diameter=diameter, pitch=pitch)
    return {
        "screw_major_min": diameter - clearance - major,
        "hole_pitch_max": middle_diameter + 1.32 * screw_pitch,
        "hole_minor_max": diameter - 1.082532 * pitch + hole_minor,  # iso-724: minor diameter D1
        "screw_pitch_min": middle_diameter - clearance - screw_pitch,
    }


def inch_limits(diameter: float, pitch: float) -> dict[str, float]:
    """ASME B1.1 tolerance formulas for 2A and 2B, in inches."""
    tolerance = 0.0015 * diameter ** (1 / 3) + 0.0015 * diameter**0.5 + 0.015 * pitch ** (2 / 3)
    middle = thread_pitch_diameter(nominal_diameter=diameter, pitch=pitch)
    return {
        "screw_major_min": diameter - 0.3 * tolerance - 0.06 * pitch ** (2 / 3),
        "hole_pitch_max": middle + 1.3 * tolerance,
        "screw_pitch_min": middle - 1.3 * tolerance,
    }


@source("iso-965 tolerance formulas", "memory")
@pytest.mark.parametrize("screw", threads(), ids=lambda screw: screw.designation)
def test_limits_of_size_agree_with_the_tolerance_formulas(screw: Thread) -> None:
    """From memory; the formulas are the second reader. 0.01 mm or 0.0002 in is the standards' rounding."""
    unit, slack = (MM, 0.01) if screw.system == "metric" else (INCH, 0.0002)
    formula = metric_limits if screw.system == "metric" else inch_limits
    for name, value in formula(screw.nominal_diameter / unit, screw.pitch / unit).items():
        assert near(screw.limit(name) / unit, value, "mm" if unit == MM else "in", abs=slack), name


@ours
@pytest.mark.parametrize(
    ("one", "other", "diameters", "pitches"),
    [
        pytest.param("M8", "5/16-24", ("8.000", "7.938"), ("1.250", "1.058"), id="M8 and 5/16-24"),
        pytest.param("M5", "10-32", ("5.000", "4.826"), ("0.800", "0.794"), id="M5 and 10-32"),
        pytest.param(
            "M10",
            "3/8-24",
            ("10.000", "9.525"),
            ("1.500", "1.058"),
            id="M10 and 3/8-24",
        ),
    ],
)
def test_lookalikes(one: str, other: str, diameters: tuple[str, str], pitches: tuple[str, str]) -> None:
    for name, diameter, pitch in zip((one, other), diameters, pitches, strict=True):
        assert agrees(thread(name).nominal_diameter / MM, diameter, "mm")
        assert agrees(thread(name).pitch / MM, pitch, "mm")
    assert other in dict(lookalikes(one))
    assert one in dict(lookalikes(other))
