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
from logic.joints.threads import minor_diameter, stress_area, thread, thread_pitch_diameter
from logic.joints.torque import mean_bearing_diameter, torque_long
from logic.tables import pick
from tests.printed import agrees, near, ours, rounds_to, source

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


@source("iso-898-1 proof loads", "second-hand")
@pytest.mark.parametrize(
    ("name", "grade", "printed"),
    [
        pytest.param(name, grade, load, id=f"{name} {grade}")
        for name, loads in PROOF.items()
        for grade, load in zip(CLASSES, loads, strict=True)
    ],
)
def test_proof_load(name: str, grade: str, printed: float) -> None:
    """Printed loads are rounded areas times proof stress, rounded again: up to 0.6 % from ours."""
    load = proof_load(proof_stress=strength(grade).number("proof"), stress_area=thread(name).stress_area)
    assert near(load, printed, "N", rel=0.006)


@source("iso-898-1 ultimate loads", "second-hand")
@pytest.mark.parametrize(
    ("name", "grade", "printed"),
    [
        pytest.param(name, grade, load, id=f"{name} {grade}")
        for name, loads in ULTIMATE.items()
        for grade, load in zip(("8.8", "10.9", "12.9"), loads, strict=True)
    ],
)
def test_ultimate_load(name: str, grade: str, printed: float) -> None:
    load = tensile_load(
        tensile_stress=strength(grade).number("tensile"), stress_area=thread(name).stress_area
    )
    assert near(load, printed, "N", rel=0.006)


@source("sae-j429 as Shigley 5th ed. p. 341 quotes it", "second-hand")
@pytest.mark.parametrize(
    ("grade", "printed"),
    [
        pytest.param("grade 2", ("379", "393", "510"), id="grade 2"),
        pytest.param("grade 5", ("586", "634", "827"), id="grade 5"),
        pytest.param("grade 8", ("827", "896", "1034"), id="grade 8"),
    ],
)
def test_inch_grades_in_megapascals(grade: str, printed: tuple[str, str, str]) -> None:
    for column, text in zip(("proof", "yield", "tensile"), printed, strict=True):
        assert agrees(strength(grade).number(column) / 1e6, text, "MPa")


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


@source("vdi-2230 friction 0.14, addendum table 13", "second-hand")
@pytest.mark.parametrize(
    ("name", "grade", "printed"),
    [
        pytest.param(name, grade, torque, id=f"{name} {grade}")
        for name, torques in VDI.items()
        for grade, torque in zip(("8.8", "10.9", "12.9"), torques, strict=True)
    ],
)
def test_assembly_torque(name: str, grade: str, printed: float) -> None:
    """Within 1 %, looser than the digits: VDI rounds its factors to 0.16 and 0.58, ours has those of ISO 16047.

    test_joints_examples.py has VDI's own constants, which meet 17 of the 18 cells to the last digit.
    """
    assert near(book(name, strength_name=grade, friction=0.14).torque, printed, "N m", rel=0.01)


# A maker of machines: least and most for zinc-plated 8.8 and for black 12.9, in N m. No friction is printed.
RANGES = {
    "M3": ((1.2, 1.4), (2.1, 2.5)),
    "M4": ((2.6, 3.2), (4.7, 5.8)),
    "M5": ((5.1, 6.3), (9.4, 11.4)),
    "M6": ((8.9, 10.9), (16.2, 19.8)),
    "M8": ((21.6, 26.4), (38.7, 47.3)),
}


@source("machine-torques least and most of socket screws", "second-hand")
@pytest.mark.parametrize(
    ("name", "grade", "low", "high"),
    [
        pytest.param(name, grade, *ends, id=f"{name} {grade}")
        for name, both in RANGES.items()
        for grade, ends in zip(("8.8", "12.9"), both, strict=True)
    ],
)
def test_torque_lies_in_the_range_that_a_maker_tightens_to(
    name: str, grade: str, low: float, high: float
) -> None:
    """With a friction of 0.12, usual for zinc and for black oiled."""
    found = book(name, strength_name=grade, friction=0.12).torque
    assert near(found, (low + high) / 2, "N m", abs=(high - low) / 2)


# Two lists for 8.8: a guide of a maker of tightening tools, and a maker of soil machines (galvanised). No friction is printed.
LISTS = {
    "M3": (1.20, 1.28), "M4": (2.90, 2.90), "M5": (5.70, 5.75), "M6": (9.8, 9.9), "M8": (24, 24),
    "M10": (47, 48), "M12": (81, 83),
}  # fmt: skip


@source("tightening-lists torques of 8.8, two lists", "second-hand")
@pytest.mark.parametrize(("name", "printed"), LISTS.items(), ids=LISTS)
def test_torque_by_two_lists(name: str, printed: tuple[float, float]) -> None:
    """With a friction of 0.12 within 4 %; M3 of the first list is 6 % lower, which the second does not share."""
    found = book(name, strength_name="8.8", friction=0.12).torque
    first, second = printed
    assert near(found, second, "N m", rel=0.04)
    assert near(found, first, "N m", rel=0.07 if name == "M3" else 0.04)


STAINLESS = {
    "M3": (0.80, 1.26, 1.56),
    "M4": (1.85, 2.9, 3.6),
    "M5": (3.6, 5.7, 7.0),
    "M6": (6.3, 10, 12.2),
    "M8": (15.2, 24.1, 30),
    "M10": (30, 47.7, 59),
}
STAINLESS_PRELOAD = {"M4": (3.2, 2.76, 2.35), "M5": (5.2, 4.51, 3.85)}


@source("stainless-torques p. 686, class 70", "second-hand")
@pytest.mark.parametrize(
    ("name", "friction", "printed"),
    [
        pytest.param(name, friction, torque, id=f"{name} mu {friction}")
        for name, torques in STAINLESS.items()
        for friction, torque in zip((0.1, 0.2, 0.3), torques, strict=True)
    ],
)
def test_stainless_torque(name: str, friction: float, printed: float) -> None:
    """Within 2 %: the page cuts last digits off."""
    assert near(book(name, strength_name="A2-70", friction=friction).torque, printed, "N m", rel=0.02)


@source("stainless-torques p. 686, class 70", "second-hand")
@pytest.mark.parametrize(
    ("name", "friction", "printed"),
    [
        pytest.param(name, friction, force, id=f"{name} mu {friction} preload")
        for name, forces in STAINLESS_PRELOAD.items()
        for friction, force in zip((0.1, 0.2, 0.3), forces, strict=True)
    ],
)
def test_stainless_preload(name: str, friction: float, printed: float) -> None:
    found = book(name, strength_name="A2-70", friction=friction).preload
    assert near(found / 1000, printed, "kN", rel=0.02)


# The handbook's check table, computed and in its columns 0.08, 0.10 and 0.12 not seen printed: kN and N m of 8.8, 10.9, 12.9.
COMPUTED = {
    ("M3", 0.08): ("2.67 3.93 4.60", "0.97 1.43 1.67"),
    ("M3", 0.10): ("2.61 3.84 4.49", "1.13 1.67 1.95"),
    ("M3", 0.12): ("2.55 3.74 4.38", "1.29 1.89 2.21"),
    ("M3", 0.14): ("2.48 3.64 4.26", "1.43 2.10 2.45"),
    ("M4", 0.08): ("4.65 6.83 7.99", "2.25 3.31 3.87"),
    ("M4", 0.10): ("4.54 6.67 7.80", "2.62 3.85 4.50"),
    ("M4", 0.12): ("4.42 6.49 7.60", "2.96 4.35 5.09"),
    ("M4", 0.14): ("4.30 6.32 7.39", "3.28 4.82 5.64"),
    ("M5", 0.08): ("7.56 11.1 13.0", "4.41 6.48 7.58"),
    ("M5", 0.10): ("7.39 10.8 12.7", "5.15 7.57 8.85"),
    ("M5", 0.12): ("7.20 10.6 12.4", "5.84 8.58 10.0"),
    ("M5", 0.14): ("7.01 10.3 12.0", "6.48 9.52 11.1"),
    ("M6", 0.08): ("10.7 15.7 18.4", "7.68 11.3 13.2"),
    ("M6", 0.10): ("10.4 15.3 18.0", "8.96 13.2 15.4"),
    ("M6", 0.12): ("10.2 14.9 17.5", "10.2 14.9 17.4"),
    ("M6", 0.14): ("9.91 14.6 17.0", "11.3 16.5 19.3"),
    ("M8", 0.08): ("19.5 28.7 33.6", "18.5 27.2 31.8"),
    ("M8", 0.10): ("19.1 28.1 32.8", "21.6 31.8 37.2"),
    ("M8", 0.12): ("18.6 27.4 32.0", "24.6 36.1 42.2"),
    ("M8", 0.14): ("18.1 26.6 31.2", "27.3 40.1 46.9"),
    ("M10", 0.08): ("31.0 45.6 53.4", "36.4 53.4 62.5"),
    ("M10", 0.10): ("30.3 44.6 52.2", "42.6 62.6 73.2"),
    ("M10", 0.12): ("29.6 43.5 50.9", "48.5 71.2 83.3"),
    ("M10", 0.14): ("28.8 42.3 49.5", "53.9 79.2 92.6"),
}


def at_the_edge(value: float, printed: str, unit: str) -> bool:
    """Tell whether a value within 0.04 % of this one rounds to the printed number."""
    return agrees(value, printed, unit) or any(
        rounds_to(value * share, printed) for share in (0.9996, 1.0004)
    )


@ours
@pytest.mark.parametrize(
    ("name", "friction", "grade", "force", "torque"),
    [
        pytest.param(*key, grade, force, torque, id=f"{key} {grade}")
        for key, (forces, torques) in COMPUTED.items()
        for grade, force, torque in zip(("8.8", "10.9", "12.9"), forces.split(), torques.split(), strict=True)
    ],
)
def test_computed_columns(name: str, friction: float, grade: str, force: str, torque: str) -> None:
    """The second calculation took unrounded stress areas and VDI's rounded factors 0.16 and 0.58.

    With those both figures come out to the last digit in 137 of the 144 cells; the other 7 lie within 0.04 %
    of a rounding edge and fell to its other side. Ours has the factors of ISO 16047, 1 / (2 pi) and 0.577:
    the torque is up to 0.4 % lower, and no more.
    """
    screw, ring = thread(name), pick("heads", head="hexagon", thread_diameter=thread(name).nominal_diameter)
    diameter, pitch = screw.nominal_diameter, screw.pitch
    middle = thread_pitch_diameter(nominal_diameter=diameter, pitch=pitch)
    minor = minor_diameter(nominal_diameter=diameter, pitch=pitch)
    bearing = mean_bearing_diameter(
        bearing_diameter=ring.number("bearing_diameter"), hole=ring.number("hole")
    )
    preload = assembly_preload(
        yield_share=0.9,
        yield_stress={"8.8": 640e6, "10.9": 940e6, "12.9": 1100e6}[grade],
        stress_area=stress_area(nominal_diameter=diameter, pitch=pitch),
        pitch=pitch,
        pitch_diameter=middle,
        stress_diameter=stress_diameter(pitch_diameter=middle, minor_diameter=minor),
        thread_friction=friction,
    )
    assert at_the_edge(preload / 1000, force, "kN")
    rounded = preload * (0.16 * pitch + 0.58 * middle * friction + bearing / 2 * friction)
    assert at_the_edge(rounded, torque, "N m")
    found = torque_long(
        preload=preload,
        pitch=pitch,
        pitch_diameter=middle,
        mean_bearing_diameter=bearing,
        thread_friction=friction,
        head_friction=friction,
    )
    assert 0.996 * rounded < found < rounded


@source("alpha-a example of a zinc-plated screw")
def test_zinc_plated_screw_of_the_tightening_factor_example() -> None:
    """Pages on the tightening factor: M12 8.8, mu 0.14 prints 41.9 kN; the formula gives 42.0."""
    assert near(book("M12", strength_name="8.8", friction=0.14).preload / 1000, "41.9", "kN", rel=0.005)


@source("iso-898-7 ratios from memory", "memory")
@pytest.mark.parametrize(
    ("name", "printed"),
    [
        pytest.param("M3", ("1.55", "1.89", "2.11"), id="M3"),
        pytest.param("M4", ("3.6", "4.4", "4.9"), id="M4"),
        pytest.param("M5", ("7.6", "9.3", "10.4"), id="M5"),
        pytest.param("M6", ("12.8", "15.7", "17.4"), id="M6"),
        pytest.param("M8", ("33", "40", "44"), id="M8"),
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
        assert agrees(torque, text, "N m")


@ours
def test_torsional_strength_of_a_shaft_by_hand() -> None:
    """Polar section modulus of a round bar, pi d3 / 16: a 10 mm bar at 100 MPa twists off at 19.63 N m."""
    torque = torsional_strength(twist_ratio=1.0, tensile_stress=100e6, core_diameter=0.01)
    assert torque == pytest.approx(100e6 * pi * 1e-6 / 16)
    assert agrees(torque, "19.63", "N m")
