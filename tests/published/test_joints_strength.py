"""Proof loads, preload and torque against printed tables."""

from math import pi

import pytest

from logic.joints.lookup import book
from logic.joints.strength import (
    assembly_preload,
    proof_load,
    strength,
    stress_diameter,
    tensile_load,
    torsional_strength,
)
from logic.joints.threads import minor_diameter, pitch_diameter, stress_area, thread
from logic.joints.torque import mean_bearing_diameter, torque_long
from logic.tables import pick
from tests.printed import agrees

CLASSES = ("4.6", "4.8", "5.8", "6.8", "8.8", "10.9", "12.9")
PROOF = {
    "M3": (1130, 1560, 1910, 2210, 2920, 4180, 4880),
    "M4": (1980, 2720, 3340, 3860, 5100, 7290, 8520),
    "M5": (3200, 4400, 5400, 6250, 8230, 11800, 13800),
    "M6": (4520, 6230, 7640, 8840, 11600, 16700, 19500),
    "M8": (8240, 11400, 13900, 16100, 21200, 30400, 35500),
    "M10": (13000, 18000, 22000, 25500, 33700, 48100, 56300),
    "M12": (19000, 26100, 32000, 37100, 48900, 70000, 81800),
}
# One reprint has 91130 for M4 10.9: a slip for 9130.
ULTIMATE = {
    "M3": (4020, 5230, 6140),
    "M4": (7020, 9130, 10700),
    "M5": (11350, 14800, 17300),
    "M6": (16100, 20900, 24500),
    "M8": (29200, 38100, 44600),
    "M10": (46400, 60300, 70800),
}


@pytest.mark.parametrize(
    ("name", "grade", "printed"),
    [
        pytest.param(name, grade, load, id=f"EN ISO 898-1 proof loads: {name} {grade}")
        for name, loads in PROOF.items()
        for grade, load in zip(CLASSES, loads, strict=True)
    ],
)
def test_proof_load(name: str, grade: str, printed: float) -> None:
    """Printed loads are rounded areas times proof stress, rounded again: up to 0.6 % from ours."""
    load = proof_load(proof_stress=strength(grade).number("proof"), stress_area=thread(name).stress_area)
    assert load == pytest.approx(printed, rel=0.006)


@pytest.mark.parametrize(
    ("name", "grade", "printed"),
    [
        pytest.param(name, grade, load, id=f"EN ISO 898-1 ultimate loads: {name} {grade}")
        for name, loads in ULTIMATE.items()
        for grade, load in zip(("8.8", "10.9", "12.9"), loads, strict=True)
    ],
)
def test_ultimate_load(name: str, grade: str, printed: float) -> None:
    load = tensile_load(
        tensile_stress=strength(grade).number("tensile"), stress_area=thread(name).stress_area
    )
    assert load == pytest.approx(printed, rel=0.006)


@pytest.mark.parametrize(
    ("grade", "printed"),
    [
        pytest.param("grade 2", ("379", "393", "510"), id="SAE J429 via Shigley 5th ed. p. 341: grade 2"),
        pytest.param("grade 5", ("586", "634", "827"), id="SAE J429 via Shigley 5th ed. p. 341: grade 5"),
        pytest.param("grade 8", ("827", "896", "1034"), id="SAE J429 via Shigley 5th ed. p. 341: grade 8"),
    ],
)
def test_inch_grades_in_megapascals(grade: str, printed: tuple[str, str, str]) -> None:
    for column, text in zip(("proof", "yield", "tensile"), printed, strict=True):
        assert agrees(strength(grade).number(column) / 1e6, text)


# VDI 2230 torques for a friction of 0.14 of thread and head, hexagon heads, in N m. The M3 row of that page
# (1.51, 1.98, 2.37) does not follow VDI 2230 and is left out.
VDI = {
    "M4": (3.3, 4.8, 5.6),
    "M5": (6.5, 9.5, 11.2),
    "M6": (11.3, 16.5, 19.3),
    "M8": (27.3, 40.1, 46.9),
    "M10": (54, 79, 93),
    "M12": (93, 137, 160),
}


@pytest.mark.parametrize(
    ("name", "grade", "printed"),
    [
        pytest.param(name, grade, torque, id=f"VDI 2230 mu 0.14, addendum table 13: {name} {grade}")
        for name, torques in VDI.items()
        for grade, torque in zip(("8.8", "10.9", "12.9"), torques, strict=True)
    ],
)
def test_assembly_torque(name: str, grade: str, printed: float) -> None:
    assert book(name, strength_name=grade, friction=0.14).torque == pytest.approx(printed, rel=0.01)


STAINLESS = {
    "M3": (0.80, 1.26, 1.56),
    "M4": (1.85, 2.9, 3.6),
    "M5": (3.6, 5.7, 7.0),
    "M6": (6.3, 10, 12.2),
    "M8": (15.2, 24.1, 30),
    "M10": (30, 47.7, 59),
}
STAINLESS_PRELOAD = {"M4": (3.2, 2.76, 2.35), "M5": (5.2, 4.51, 3.85)}


@pytest.mark.parametrize(
    ("name", "friction", "printed"),
    [
        pytest.param(name, friction, torque, id=f"stainless table p. 686, class 70: {name} mu {friction}")
        for name, torques in STAINLESS.items()
        for friction, torque in zip((0.1, 0.2, 0.3), torques, strict=True)
    ],
)
def test_stainless_torque(name: str, friction: float, printed: float) -> None:
    """Within 2 %: the page cuts last digits off."""
    assert book(name, strength_name="A2-70", friction=friction).torque == pytest.approx(printed, rel=0.02)


@pytest.mark.parametrize(
    ("name", "friction", "printed"),
    [
        pytest.param(
            name, friction, force, id=f"stainless table p. 686, class 70: {name} mu {friction} preload"
        )
        for name, forces in STAINLESS_PRELOAD.items()
        for friction, force in zip((0.1, 0.2, 0.3), forces, strict=True)
    ],
)
def test_stainless_preload(name: str, friction: float, printed: float) -> None:
    assert book(name, strength_name="A2-70", friction=friction).preload == pytest.approx(
        printed * 1000, rel=0.02
    )


# Columns that were computed and not seen printed (0.08, 0.10, 0.12): in kN and N m for 8.8.
COMPUTED = {
    ("M3", 0.08): ("2.67", "0.97"),
    ("M4", 0.08): ("4.65", "2.25"),
    ("M4", 0.12): ("4.42", "2.96"),
    ("M5", 0.08): ("7.56", "4.41"),
    ("M5", 0.10): ("7.39", "5.15"),
    ("M6", 0.08): ("10.7", "7.68"),
    ("M8", 0.10): ("19.1", "21.6"),
    ("M10", 0.12): ("29.6", "48.5"),
}


@pytest.mark.parametrize(
    ("name", "friction", "force", "torque"),
    [pytest.param(*key, *value, id=f"second calculation: {key}") for key, value in COMPUTED.items()],
)
def test_computed_columns(name: str, friction: float, force: str, torque: str) -> None:
    """The second calculation took unrounded stress areas and VDI's rounded factors 0.16 and 0.58.

    With those both figures come out to the last digit. Ours has the factors of ISO 16047, 1 / (2 pi)
    and 0.577: the
    torque is up to 0.4 % lower, and no more.
    """
    screw, ring = thread(name), pick("heads", head="hexagon", thread_diameter=thread(name).nominal_diameter)
    diameter, pitch = screw.nominal_diameter, screw.pitch
    middle = pitch_diameter(nominal_diameter=diameter, pitch=pitch)
    minor = minor_diameter(nominal_diameter=diameter, pitch=pitch)
    bearing = mean_bearing_diameter(
        bearing_diameter=ring.number("bearing_diameter"), hole=ring.number("hole")
    )
    preload = assembly_preload(
        yield_share=0.9,
        yield_stress=640e6,
        stress_area=stress_area(nominal_diameter=diameter, pitch=pitch),
        pitch=pitch,
        pitch_diameter=middle,
        stress_diameter=stress_diameter(pitch_diameter=middle, minor_diameter=minor),
        thread_friction=friction,
    )
    assert agrees(preload / 1000, force)
    rounded = preload * (0.16 * pitch + 0.58 * middle * friction + bearing / 2 * friction)
    assert agrees(rounded, torque)
    ours = torque_long(
        preload=preload,
        pitch=pitch,
        pitch_diameter=middle,
        mean_bearing_diameter=bearing,
        thread_friction=friction,
        head_friction=friction,
    )
    assert 0.996 * rounded < ours < rounded


def test_zinc_plated_screw_of_the_tightening_factor_example() -> None:
    """Pages on the tightening factor: M12 8.8, mu 0.14 prints 41.9 kN; the formula gives 42.0."""
    assert book("M12", strength_name="8.8", friction=0.14).preload == pytest.approx(41.9e3, rel=0.005)


@pytest.mark.parametrize(
    ("name", "printed"),
    [
        pytest.param("M3", ("1.55", "1.89", "2.11"), id="ISO 898-7 ratios from memory: M3"),
        pytest.param("M4", ("3.6", "4.4", "4.9"), id="ISO 898-7 ratios from memory: M4"),
        pytest.param("M5", ("7.6", "9.3", "10.4"), id="ISO 898-7 ratios from memory: M5"),
        pytest.param("M6", ("12.8", "15.7", "17.4"), id="ISO 898-7 ratios from memory: M6"),
        pytest.param("M8", ("33", "40", "44"), id="ISO 898-7 ratios from memory: M8"),
    ],
)
def test_torsional_strength(name: str, printed: tuple[str, str, str]) -> None:
    """From memory: what is tested is that ratios, cores and formula give the remembered torques."""
    for grade, text in zip(("8.8", "10.9", "12.9"), printed, strict=True):
        torque = torsional_strength(
            twist_ratio=pick("twist", strength=grade).number("twist_ratio"),
            tensile_stress=strength(grade).number("tensile"),
            core_diameter=thread(name).limit("screw_minor_min"),
        )
        assert agrees(torque, text)


def test_torsional_strength_of_a_shaft_by_hand() -> None:
    """Polar section modulus of a round bar, pi d3 / 16: a 10 mm bar at 100 MPa twists off at 19.63 N m."""
    torque = torsional_strength(twist_ratio=1.0, tensile_stress=100e6, core_diameter=0.01)
    assert torque == pytest.approx(100e6 * pi * 1e-6 / 16)
    assert agrees(torque, "19.63")
