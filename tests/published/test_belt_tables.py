"""Belt tables against what other pages and other manuals print."""

from itertools import combinations, pairwise

import pytest

from logic.belt.catalogue import belt, force_for_width, mass_factor_for_width
from logic.tables import Row, matching, pick, rows
from tests.printed import near, ours, source

POUND = 4.4482216152605
FACTOR = 0.17237
"""Handbook's figure for kg/m in one lbf per (1000 ft/min) squared."""


@ours
def test_mass_factor_conversion() -> None:
    """Derived: m = 0.272 lbf/(1000 ft/min)^2 of 15 mm HTD 5M is 0.17237 x 0.272 kg/m, to the five digits."""
    found = belt(profile="HTD 5M", width=0.015).mass_factor / 0.272
    assert near(found, FACTOR, "kg/m", abs=0.000005)


@source("sdpsi-2017 table 30")
@pytest.mark.parametrize(
    ("profile", "width", "printed"),
    [
        pytest.param(profile, width, printed, id=f"{profile} {width} mm")
        for profile, width, printed in (
            ("HTD 5M", 9, 161), ("HTD 5M", 12, 214), ("HTD 5M", 15, 268), ("HTD 5M", 25, 447),
            ("GT 5M", 9, 252), ("GT 5M", 12, 336), ("GT 5M", 15, 420),
        )
    ],
)  # fmt: skip
def test_working_tension_by_width(profile: str, width: int, printed: int) -> None:
    """Table 3 gives one width, table 30 prints the others: proportion brings out each to half a newton."""
    assert near(belt(profile=profile, width=width / 1000).working_tension, printed, "N", abs=0.5)


@source("sdpsi-2017 table 3")
@pytest.mark.parametrize(
    ("profile", "pounds"),
    [
        pytest.param("HTD 5M", 102, id="HTD 5M"),
        pytest.param("GT 5M", 160, id="GT 5M"),
    ],
)
def test_working_tension_printed_in_both_units(profile: str, pounds: int) -> None:
    """The table is read in newtons; its pounds say the same."""
    found = pick("belt_working", profile=profile).number("working_tension")
    assert near(found / POUND, pounds, "lbf", abs=0.5 / POUND)


@source("sdpsi-2017 table 9")
@pytest.mark.parametrize(
    ("profile", "width", "wider", "half_mass", "half_stretch"),
    [
        pytest.param("GT 5M", 20, 25, 0.005, 0.05, id="GT 5M 20 from 25"),
        pytest.param("GT 3M", 12, 15, 0.005, 0.005, id="GT 3M 12 from 15"),
        pytest.param("HTD 3M", 9, 15, 0.0005, 0.005, id="HTD 3M 9 from 15"),
        pytest.param("HTD 5M", 9, 15, 0.0005, 0.05, id="HTD 5M 9 from 15"),
    ],
)
def test_printed_rows_are_in_proportion_to_width(
    profile: str, width: int, wider: int, half_mass: float, half_stretch: float
) -> None:
    """The rule for widths between rows, tried on rows that are printed; m of GT belts has two real digits."""
    row = pick("belt_tension", profile=profile, width=width / 1000)
    base = pick("belt_tension", profile=profile, width=wider / 1000)
    widths = {"width": width / 1000, "printed_width": wider / 1000}
    stretch = force_for_width(printed_force=base.number("stretch"), **widths)
    mass = mass_factor_for_width(printed_mass_factor=base.number("mass_factor"), **widths)
    assert near(stretch / POUND, float(row.number("stretch")) / POUND, "lbf", abs=half_stretch)
    assert near(mass / FACTOR, float(row.number("mass_factor")) / FACTOR, abs=half_mass)


@ours
@pytest.mark.parametrize(
    ("width", "mass", "stretch"),
    [
        pytest.param(0.012, 0.217, 19.9, id="derived: HTD 5M 12 mm"),
        pytest.param(0.020, 0.362, 33.2, id="derived: HTD 5M 20 mm"),
    ],
)
def test_widths_between(width: float, mass: float, stretch: float) -> None:
    """Ours. m of 12 mm is 0.2176 from the 15 mm row, 0.2173 from the 9 mm row: it is known to 0.001."""
    found = belt(profile="HTD 5M", width=width)
    assert near(found.mass_factor / FACTOR, mass, abs=0.001)
    assert near(found.stretch / POUND, stretch, "lbf", abs=0.05)


def per_width(row: Row) -> float:
    """Return the stiffness of a printed row in kN per mm of width."""
    found = belt(profile=row.text("profile"), width=row.cells["width"])
    return found.stiffness / found.width / 1e6


@ours
@pytest.mark.parametrize(
    ("profile", "width", "expected", "half_digit"),
    [
        pytest.param("HTD 5M", 0.015, 15.1, 0.05, id="derived: HTD 5M 15 mm"),
        pytest.param("GT 5M", 0.015, 15.1, 0.05, id="derived: GT 5M 15 mm"),
        pytest.param("HTD 3M", 0.015, 5.78, 0.005, id="derived: HTD 3M 15 mm"),
        pytest.param("GT 3M", 0.012, 4.90, 0.005, id="derived: GT 3M 12 mm"),
    ],
)
def test_stiffness_that_the_stretch_factor_implies(
    profile: str, width: float, expected: float, half_digit: float
) -> None:
    """Derived from the printed Y: a stiffness that glass cord may well have, so Y is the stretch term."""
    found = per_width(pick("belt_tension", profile=profile, width=width))
    assert near(found, expected, "kN/mm", abs=half_digit)


@ours
@pytest.mark.parametrize("profile", ["HTD 5M", "GT 5M", "HTD 3M", "GT 3M"])
def test_every_width_has_the_same_cord(profile: str) -> None:
    """Rows of a profile imply one stiffness per width, to what half a digit of the printed Y does to each."""
    half_digit = 0.05 if profile.endswith("5M") else 0.005
    printed = list(matching("belt_tension", profile=profile))
    for one, other in combinations(printed, 2):
        rounding = sum(2048 * half_digit * POUND / row.number("width") / 1e6 for row in (one, other))
        assert abs(per_width(one) - per_width(other)) < rounding


@source("gates-17195 tables of least tension")
@pytest.mark.parametrize(
    "row", rows("belt_tension_2014"), ids=lambda row: f"{row.text('profile')} {row.cells['width']}"
)
def test_two_editions_agree_as_far_as_they_do(row: Row) -> None:
    """Y within 0.5 %, m within 4 %, least tensions of 2014 5.6 to 12.5 % higher; never mixed."""
    used = pick("belt_tension", profile=row.text("profile"), width=row.cells["width"])
    assert near(used.number("stretch"), row.number("stretch"), "N", rel=0.00497)
    assert near(used.number("mass_factor"), row.number("mass_factor"), "kg/m", rel=0.0384)
    assert 1.055 < row.number("least_tension") / used.number("least_tension") < 1.13


@ours
def test_every_row_says_where_it_is_printed() -> None:
    """The tables results are made from hold one edition."""
    for table in ("profiles", "tension", "tension_2014", "working", "mesh", "practice"):
        for row in rows(f"belt_{table}"):
            assert row.where
            assert row.source
            assert row.standing
    assert {row.source for row in rows("belt_tension")} == {"sdpsi-2017"}


@ours
def test_least_tension_per_width_never_falls_with_width() -> None:
    """A width between two rows gets from the wider one no less than from the narrower, but for 1 %."""
    table = rows("belt_tension")
    for narrow, wide in pairwise(table):
        if narrow.text("profile") == wide.text("profile"):
            per_width = [row.number("least_tension") / row.number("width") for row in (narrow, wide)]
            assert per_width[1] > 0.99 * per_width[0]
