"""Stock lengths, travel, ratings, masses and the pluck formula against what is printed."""

from math import floor, pi

import pytest

from logic.belt.clearance import gap_between_motors
from logic.belt.geometry import belt_length, pitch_diameter
from logic.belt.pluck import frequency_from_tension, mass_for_width, tension_from_frequency
from logic.belt.rating import length_factor, printed_torque, rated_torque, smallest_suggested, width_factor
from logic.belt.running import shaft_pull, tension_from_shaft_pull
from logic.belt.stock import stock, widths
from logic.belt.tension import effective_pull
from logic.belt.travel import centre_tolerance, inward_travel, laying_on_travel, outward_travel
from logic.errors import InputError
from logic.tables import matching, pick, rows
from tests.printed import agrees, memory, near, ours, same, source

MM = 1e-3
INCH = 0.0254
RPM = pi / 30
LBF_INCH = 0.112984829


@source("gates-europe-2007 p. 46-47, and three other makers' lists")
def test_lengths_in_every_list() -> None:
    """gates-europe-2007, optibelt-rubber, contitech-dimensions and bando-catalogue share these."""
    shared = [round(belt.length * 1000) for belt in stock("HTD 5M") if len(belt.lists) == 4]
    assert same(shared, [265, 295, 300, 330, 350, 375, 400, 425, 450, 460, 475, 500, 535, 565, 600], "mm")


@ours
@pytest.mark.parametrize("profile", ["HTD 5M", "GT 5M", "HTD 3M", "GT 3M"])
def test_every_length_is_whole_teeth(profile: str) -> None:
    pitch = pick("belt_profiles", profile=profile).number("pitch")
    for row in matching("belt_lengths", profile=profile):
        assert row.cells["length"] / pitch == pytest.approx(round(row.cells["length"] / pitch), abs=1e-9)
    assert len(stock(profile)) > 20
    assert widths(profile)


@ours
def test_lengths_from_memory_are_marked() -> None:
    """No list of the 3 mm profiles was read."""
    assert not any(belt.sure for belt in stock("HTD 3M") + stock("GT 3M"))
    assert all(belt.sure for belt in stock("HTD 5M") + stock("GT 5M"))


@source("gates-17195 p. 182 table 4")
@pytest.mark.parametrize(
    ("length", "inward", "outward"),
    [
        pytest.param(120, "0.5", "0.5", id="gates-17195 p. 182 table 4: to 125 mm"),
        pytest.param(250, "0.8", "0.8", id="gates-17195 p. 182 table 4: to 250 mm"),
        pytest.param(280, "1.0", "0.8", id="gates-17195 p. 182 table 4: to 500 mm"),
        pytest.param(900, "1.8", "0.8", id="gates-17195 p. 182 table 4: to 1000 mm"),
    ],
)
def test_travel(length: int, inward: str, outward: str) -> None:
    found = inward_travel(length=length * MM, pitch=5 * MM, flanged="none")
    assert agrees(found / MM, inward, "mm")
    assert agrees(outward_travel(length=length * MM) / MM, outward, "mm")


@source("gates-17195 p. 182 table 4")
@pytest.mark.parametrize(
    ("pitch", "flanged", "added"),
    [
        pytest.param(5, "one", "13.5", id="gates-17195 p. 182 table 4: one"),
        pytest.param(5, "both", "19.1", id="gates-17195 p. 182 table 4: both"),
        pytest.param(3, "one", "8", marks=source("optibelt-rubber p. 41"), id="3M one"),
        pytest.param(3, "both", "14", marks=source("optibelt-rubber p. 41"), id="3M both"),
    ],
)
def test_flanges_ask_for_more(pitch: int, flanged: str, added: str) -> None:
    bare = inward_travel(length=0.28, pitch=pitch * MM, flanged="none")
    assert agrees((inward_travel(length=0.28, pitch=pitch * MM, flanged=flanged) - bare) / MM, added, "mm")


@source("gates-17595 p. 14-17")
def test_travel_of_the_worked_example() -> None:
    """gates-17595 p. 14-17: 0.16 + 1.97 = 2.13 in."""
    assert agrees(laying_on_travel(without_flanges=0.16 * INCH, for_flanges=1.97 * INCH) / INCH, "2.13", "in")


@source("sdpsi-2017 table 15")
@pytest.mark.parametrize(
    ("length", "printed"),
    [
        pytest.param(length, printed, id=f"sdpsi-2017 table 15: {length} mm")
        for length, printed in ((254, "0.20"), (280, "0.23"), (400, "0.25"), (700, "0.30"))
    ],
)
def test_tolerance_as_centre_distance(length: int, printed: str) -> None:
    assert agrees(centre_tolerance(length=length * MM) / MM, printed, "mm")


@ours
def test_a_length_beyond_the_table_is_refused() -> None:
    with pytest.raises(InputError) as refused:
        outward_travel(length=1.2)
    assert refused.value.high == pytest.approx(1.0)


@source("sdpsi-2017 table 38")
@pytest.mark.parametrize(
    ("teeth", "rpm", "printed"),
    [
        pytest.param(teeth, rpm, printed, id=f"sdpsi-2017 table 38: {teeth} at {rpm}")
        for teeth, rpm, printed in (
            (14, 200, "2.15"), (14, 10000, "0.81"), (16, 1000, "1.72"), (16, 5000, "1.15"),
            (18, 3600, "1.44"),
            (20, 2000, "1.88"), (22, 500, "2.97"), (24, 8000, "1.51"),
        )
    ],
)  # fmt: skip
def test_rated_torque_of_the_table(teeth: int, rpm: int, printed: str) -> None:
    assert agrees(
        printed_torque(profile="HTD 5M", teeth=float(teeth), angular_speed=rpm * RPM), printed, "N m"
    )


@ours
@pytest.mark.parametrize(
    ("teeth", "pull"),
    [
        pytest.param(teeth, pull, id=f"derived: {teeth} teeth")
        for teeth, pull in ((14, 193), (16, 198), (18, 203), (20, 208), (22, 213), (24, 218))
    ],
)
def test_torques_belong_to_5_mm_diameters(teeth: int, pull: int) -> None:
    """Derived: the page prints 3M diameters over these torques; with those of 5M the pull grows evenly.

    The torque is printed to a hundredth, which leaves up to 0.5 N of the pull open.
    """
    torque = printed_torque(profile="HTD 5M", teeth=float(teeth), angular_speed=100 * RPM)
    diameter = pitch_diameter(pitch=5 * MM, teeth=float(teeth))
    found = effective_pull(torque=torque, pitch_diameter=diameter)
    assert near(found, pull, "N", abs=0.5 + 0.01 / diameter)


@source("sdpsi-2017 table 35")
@pytest.mark.parametrize(
    ("teeth", "rpm", "inch_pounds"),
    [
        pytest.param(teeth, rpm, printed, id=f"sdpsi-2017 table 35: {teeth} at {rpm}")
        for teeth, rpm, printed in ((18, 1000, "39.33"), (20, 2000, "43.79"), (24, 4000, "55.93"))
    ],
)
def test_rated_torque_of_the_other_profile(teeth: int, rpm: int, inch_pounds: str) -> None:
    found = printed_torque(profile="GT 5M", teeth=float(teeth), angular_speed=rpm * RPM)
    assert agrees(found / LBF_INCH, inch_pounds, "lbf in")


@ours
def test_between_columns_and_between_teeth() -> None:
    """Ours: half way between 1000 and 2000 rpm the mean; 17 teeth take the torque of 16, 40 that of 24."""
    assert printed_torque(profile="HTD 5M", teeth=16.0, angular_speed=1500 * RPM) == pytest.approx(1.59)
    assert printed_torque(profile="HTD 5M", teeth=17.0, angular_speed=1000 * RPM) == 1.72
    assert printed_torque(profile="HTD 5M", teeth=40.0, angular_speed=1000 * RPM) == 2.78


@ours
@pytest.mark.parametrize(
    ("profile", "teeth", "rpm", "reason"),
    [
        ("HTD 3M", 18.0, 1000, "no rating printed"),
        ("HTD 5M", 12.0, 1000, "range"),
        ("HTD 5M", 16.0, 12000, "range"),
    ],
)
def test_nothing_is_made_up_where_nothing_is_printed(
    profile: str, teeth: float, rpm: int, reason: str
) -> None:
    with pytest.raises(InputError) as refused:
        printed_torque(profile=profile, teeth=teeth, angular_speed=rpm * RPM)
    assert refused.value.reason == reason


@source("optibelt-rubber p. 56, against sdpsi-2017 table 38")
def test_two_manuals_agree_on_width_factors() -> None:
    """optibelt-rubber p. 56 against sdpsi-2017 table 38: 1 % apart at most."""
    for row in rows("belt_width_factors_2017"):
        found = width_factor(profile="HTD 5M", width=row.cells["width"])
        assert near(found, row.number("factor"), rel=0.011)


@source("sdpsi-2017 p. T-77")
@pytest.mark.parametrize(
    ("length", "factor"),
    [
        pytest.param(length, factor, id=f"sdpsi-2017 p. T-77: {length} mm")
        for length, factor in (
            (350, 0.80), (435, 0.80), (440, 0.90), (555, 1.00), (840, 1.00), (845, 1.10), (1100, 1.20),
        )
    ],
)  # fmt: skip
def test_length_factor(length: int, factor: float) -> None:
    assert same(length_factor(profile="HTD 5M", length=length * MM), factor)


@ours
def test_rated_torque_of_a_small_board() -> None:
    """Derived: 15 mm HTD 5M, 16 teeth, 265 mm, 5000 rpm is rated for 1.6 to 1.7 N m."""
    found = rated_torque(
        printed=printed_torque(profile="HTD 5M", teeth=16.0, angular_speed=5000 * RPM),
        width_factor=width_factor(profile="HTD 5M", width=15 * MM),
        length_factor=length_factor(profile="HTD 5M", length=265 * MM),
        mesh_factor=1.0,
    )
    assert 1.6 < found < 1.7


@source("optibelt-rubber p. 42-45")
def test_frequency_of_the_worked_example() -> None:
    """optibelt-rubber p. 42-45: 743.6 N, 0.174 kg/m, 414.4 mm; printed 78.9 and, unrounded, 78.88 Hz."""
    found = frequency_from_tension(mass_per_length=0.174, span=0.4144, tension=743.6)
    assert agrees(found, "78.88", "Hz")
    assert agrees(found, "78.9", "Hz")
    back = tension_from_frequency(mass_per_length=0.174, span=0.4144, frequency=found)
    assert near(back, "743.6", "N", rel=1e-6)


@source("optibelt-rubber p. 42-45, table 37")
def test_mass_of_the_worked_example() -> None:
    """optibelt-rubber p. 42-45: 5.8 g a metre and millimetre (table 37, 8M), 30 mm wide, is 0.174 kg/m."""
    assert agrees(mass_for_width(printed_mass=5.8e-3, width=30 * MM, printed_width=1 * MM), "0.174", "kg/m")


@source("tension-meter p. 6")
def test_pluck_formula_of_a_tension_meter() -> None:
    """A belt maker's tension-meter manual, p. 6, edition not noted: T = 4 S2 M W f2 / 10^9 in mm, g/(m mm), Hz, N.

    It prints no example: span, mass, width and pitch are ours.
    """
    span, mass, width, pitch = 63.6, 3.9, 15.0, 355.0
    found = tension_from_frequency(
        mass_per_length=mass_for_width(printed_mass=mass * 1e-3, width=width * MM, printed_width=MM),
        span=span * MM,
        frequency=pitch,
    )
    assert near(found, 4.0 * span**2 * mass * width * pitch**2 * 1e-9, "N", rel=1e-12)


@source("second-maker sheet of 5 mm belts", "second-hand")
def test_mass_of_the_parabolic_belt_of_a_second_maker() -> None:
    """A second maker's sheet of 5 mm parabolic belts, edition and page not noted, read second-hand: 41.0 g/m for 10 mm.

    The row that the app takes is from memory; this is its only check from outside.
    """
    used = next(row for row in matching("belt_mass", profile="GT 5M") if row.cells["used"])
    found = mass_for_width(printed_mass=used.number("mass"), width=10 * MM, printed_width=used.cells["width"])
    assert agrees(found * 1e3, "41.0", "g/m")


@source("optibelt-rubber p. 42-45")
def test_shaft_load_of_the_worked_example() -> None:
    """optibelt-rubber p. 42-45: 1487.2 N on the shaft is 743.6 N a span."""
    assert agrees(tension_from_shaft_pull(pull=1487.2, wrap=pi), "743.6", "N")
    assert agrees(shaft_pull(tension=743.6, wrap=pi), "1487.2", "N")


@source("synchroflex p. 42-43", "second-hand")
def test_equal_pulleys_of_the_catalogue_example() -> None:
    """Synchroflex catalogue p. 42-43, edition not noted, read second-hand: 25/25 teeth of 10 mm, 625 mm; d 79.58, Fu 7539.

    The catalogue drops the fraction of the pull: 7539.8 N.
    """
    diameter = pitch_diameter(pitch=10 * MM, teeth=25.0)
    assert agrees(diameter / MM, "79.58", "mm")
    assert agrees(belt_length(centre=0.625, large=diameter, small=diameter) / MM, "1500", "mm")
    pull = effective_pull(torque=300.0, pitch_diameter=diameter)
    assert near(pull, "7539", "N", abs=1.0)
    assert floor(pull) == 7539


@ours
@pytest.mark.parametrize(
    ("mass", "frequency"),
    [pytest.param(3.23, 369, id="derived: 3.23"), pytest.param(3.5, 355, id="derived: 3.5"),
     pytest.param(3.9, 336, id="derived: 3.9")],
)  # fmt: skip
def test_mass_moves_the_pitch(mass: float, frequency: int) -> None:
    """Derived: 63.6 mm, 107 N, 15 mm wide, by three makers' masses."""
    each = mass_for_width(printed_mass=mass * 1e-3, width=15 * MM, printed_width=1 * MM)
    found = frequency_from_tension(mass_per_length=each, span=63.6 * MM, tension=107.0)
    assert near(found, frequency, "Hz", abs=0.5)


@source("optibelt-rubber table 37")
@pytest.mark.parametrize("profile", ["HTD 5M", "HTD 3M"])
def test_the_spread_covers_the_other_makers(profile: str) -> None:
    """optibelt-rubber table 37 with its spread holds the others' figures."""
    used = next(row for row in matching("belt_mass", profile=profile) if row.cells["used"])
    for row in matching("belt_mass", profile=profile):
        assert abs(row.cells["mass"] - used.cells["mass"]) <= used.cells["spread"] * (1 + 1e-9)


@memory
def test_two_motors_on_an_extended_hanger() -> None:
    """From memory: a 236 mm hanger takes two cans of 84 mm side by side with a slight gap."""
    gap = gap_between_motors(hanger_length=0.236, inset=0.018, plate=0.010, can_length=0.084)
    assert 0.0 < gap < 0.02


@ours
def test_every_row_says_where_it_is_from() -> None:
    for table in ("belt_lengths", "belt_widths", "belt_ratings", "belt_width_factors", "belt_length_factors",
                  "belt_travel", "belt_flange_travel", "belt_tolerance", "belt_smallest", "belt_sections",
                  "belt_mass", "belt_wear", "belt_disagree"):  # fmt: skip
        for row in rows(table):
            assert row.source, table
            assert row.standing, table


@source("sdpsi-2017 table 8")
@pytest.mark.parametrize(
    ("profile", "speeds", "teeth"),
    [
        ("HTD 5M", (1160, 1750, 3500), (22, 26, 30)),
        ("GT 5M", (1000, 1400, 2000), (18, 20, 22)),
        ("HTD 3M", (1160, 1750, 3500), (17, 18, 20)),
        ("GT 3M", (1600, 2800, 5000), (16, 18, 20)),
    ],
)
def test_smallest_pulley_at_its_printed_speed(
    profile: str, speeds: tuple[int, ...], teeth: tuple[int, ...]
) -> None:
    """A row holds up to its own speed, that speed among it; above the last one its count stands."""
    at = [smallest_suggested(profile=profile, angular_speed=speed * RPM) for speed in speeds]
    assert same([int(one) for one in at], list(teeth), "teeth")
    over = [smallest_suggested(profile=profile, angular_speed=(speed + 1) * RPM) for speed in speeds]
    assert same([int(one) for one in over], [*teeth[1:], teeth[-1]], "teeth")
