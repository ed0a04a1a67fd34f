"""Edges of the answers: ends of curves and windows, the first row that does, which gap is named, what is left as it is.

Each is a line whose change no other test noticed. Expectations are worked by hand on the example boards (ours), or are the
rule that the line stands for.
"""

from itertools import pairwise
from math import pi

import pytest

from logic.answers.belt_bench import positions
from logic.answers.charging import charging
from logic.answers.drag import ride_fit
from logic.answers.energy import pack_figures
from logic.answers.gearing import gearing
from logic.answers.joining import joining
from logic.answers.joint_entry import tightening
from logic.answers.joint_guide import locker_surfaces
from logic.answers.joints import joint_card
from logic.answers.push import pushing
from logic.answers.range import range_answer
from logic.answers.reading import Item, Open, Result
from logic.answers.stopping import stopping
from logic.answers.wiring import wiring
from logic.board import Board, Value
from logic.drive.fit import Sample
from logic.exchange import demo_boards
from logic.log.rides import LoggedRide
from logic.person import Person

TOWPATH = next(board for board in demo_boards() if board.name == "Towpath 36")
RIDER = Value(80.0, "measured", typed_unit="kg")
FASTEST = 42.0 * 0.95 * 170.0 / 60.0 / 2.5 * pi * 0.1
"""Unloaded speed in m/s on full packs: 10 x 4.2 V, duty 95 %, 170 rpm/V, 40:16 teeth, wheels of 100 mm."""


def number(item: Item) -> float:
    """Return the value of a result."""
    assert isinstance(item, Result), item
    return item.value


def with_kv(turns: float) -> Board:
    """Return the board with a speed constant in turns a minute for each volt."""
    return TOWPATH.with_value("motor.kv", Value(turns * pi / 30.0, "measured"))


# Packs.


def test_in_series_the_volts_of_both_packs_add_up() -> None:
    """By hand: 10 x 4.20 V and 12 x 4.20 V are 92.4 V."""
    asked = {"ask.way": Value("series"), "ask.second_series": Value(12.0)}
    assert number(joining(TOWPATH, asked).items["full_in_series"]) == pytest.approx(92.4)


@pytest.mark.parametrize(
    ("volts", "possible"),
    [
        pytest.param(24.9, False, id="under 10 x 2.50 V"),
        pytest.param(25.1, True, id="over 10 x 2.50 V"),
        pytest.param(42.8, True, id="a meter may read 2 % over 10 x 4.20 V"),
        pytest.param(42.9, False, id="over 42.84 V"),
    ],
)
def test_a_reading_no_such_pack_can_have_is_told(volts: float, possible: bool) -> None:  # noqa: FBT001
    """Full 4.20 V and floor 2.50 V of an NMC cell: BU-205."""
    hazards = joining(TOWPATH, {"ask.first_volts": Value(volts), "ask.second_volts": Value(volts)}).hazards
    assert ("volts outside the pack" not in [hazard.key for hazard in hazards]) is possible


@pytest.mark.parametrize(("celsius", "told"), [(0.0, True), (45.0, False)])
def test_the_charging_window_has_its_low_end_and_not_its_high_end(celsius: float, told: bool) -> None:  # noqa: FBT001
    """BU-410: charging from 0 °C on; from 45 °C on the page warns, so there it gives no amps either."""
    found = charging(TOWPATH, {"ask.cells_at": Value(celsius + 273.15)})
    assert isinstance(found.items["cell_amps"], Result) is told
    assert ("WARNING" not in [hazard.word for hazard in found.hazards]) is told


@pytest.mark.parametrize(
    ("name", "missing"),
    [
        ("limit_drive", ("pack.cell_discharge_current", "controller.battery_current")),
        ("limit_brake", ("pack.cell_charge_current", "controller.regen_current")),
        # A burst that is not known is what the cells take for long: that is what most sheets print.
        ("limit_burst", ("pack.cell_charge_current", "controller.regen_current")),
    ],
)
def test_where_no_part_tells_its_limit_the_cells_and_the_controller_are_asked_for(
    name: str, missing: tuple[str, ...]
) -> None:
    """Ours: of cells, BMS, fuse, plug and controller the first and the last are those that every board has."""
    board = TOWPATH
    for key in (
        *("pack.cell_discharge_current", "pack.cell_charge_current", "pack.cell_brake_current", "pack.fuse"),
        *("pack.bms_discharge_current", "pack.bms_charge_current", "pack.connector_current"),
        *("controller.battery_current", "controller.regen_current"),
    ):
        board = board.with_value(key, None)
    item = pack_figures(board, RIDER, {}).items[name]
    assert isinstance(item, Open)
    assert item.missing == missing


@pytest.mark.parametrize(
    ("amps", "gauge"),
    [(3.2, 20), (3.3, 18), (4.6, 18), (4.7, 16), (9.4, 14), (12.4, 12), (12.6, 10), (16.6, 8), (22.1, None)],
)
def test_the_thinnest_wire_that_carries_the_ride_is_named(amps: float, gauge: int | None) -> None:
    """Wire tables, single wire in PTFE: 6.5, 9.2, 13, 19, 25, 33, 44 A for AWG 20 to 8; in a closed deck half of it."""
    board = TOWPATH.with_value("controller.battery_current", Value(amps))
    assert wiring(board, {"ask.cruise": Value(amps)}).least_gauge == gauge


# Speed and push.


def test_the_push_chart_ends_a_little_above_the_fastest_unloaded_speed() -> None:
    """Ours: sixty even points from a standstill to 8 % above it, so that the foot of the curve is seen."""
    curves = pushing(TOWPATH, RIDER, {}).curves
    assert curves is not None
    speeds = [speed for speed, _ in curves.load]
    assert len(speeds) == 60
    assert speeds[0] == 0.0
    assert speeds[-1] == pytest.approx(1.08 * FASTEST)
    assert [after - before for before, after in pairwise(speeds)] == pytest.approx([1.08 * FASTEST / 59] * 59)


def test_at_the_unloaded_speed_itself_no_current_flows_and_above_it_is_refused() -> None:
    """There the back-EMF is all the volts the controller gives, so no current flows; a little above is refused."""
    fastest = number(gearing(TOWPATH, RIDER, 5.0).items["top_nominal"])
    at, above = (
        pushing(TOWPATH, RIDER, {"ask.speed": Value(fastest * share)}).items for share in (1.0, 1.001)
    )
    assert number(at["full_current"]) == pytest.approx(0.0, abs=1e-9)
    refused = above["full_current"]
    assert isinstance(refused, Open)
    assert refused.outcome == "not reached"


def test_every_stop_curve_goes_from_a_crawl_to_three_tenths_over_the_asked_speed() -> None:
    """Ours: fourteen whole stops, evenly apart."""
    curves = stopping(TOWPATH, RIDER, {"ask.stop_speed": Value(7.0)}).curves
    assert curves
    for points in curves.values():
        assert [speed for speed, _ in points] == pytest.approx([0.65 * step for step in range(1, 15)])


# Rides.


def test_the_band_of_a_ride_fit_lies_evenly_about_its_value() -> None:
    """The estimate with its half width: of 95 %, Student's t."""
    rides = [
        Sample(speed=kmh / 3.6, energy_per_distance=used * 3.6)
        for kmh, used in ((12, 7.4), (16, 8.9), (21, 10.4), (25, 13.0), (29, 15.8), (33, 18.3))
    ]
    told = ride_fit(TOWPATH, RIDER, rides)
    assert told.fit is not None
    for name, half in (("rolling", told.fit.rolling.half), ("drag_area", told.fit.drag_area.half)):
        item = told.items[name]
        assert isinstance(item, Result)
        assert item.band is not None
        low, high = item.band
        assert item.value - low == pytest.approx(half)
        assert high - item.value == pytest.approx(half)
        assert half > 0.0


@pytest.mark.parametrize(
    ("asking", "carried"),
    [
        pytest.param({}, False, id="20 km/h on the level, as ridden"),
        pytest.param({"ask.range_speed": Value(7.0)}, True, id="another speed"),
        pytest.param({"ask.range_grade": Value(0.02)}, True, id="another climb"),
    ],
)
def test_what_rides_tell_is_carried_over_only_to_what_they_were_not(
    asking: dict[str, Value],
    carried: bool,  # noqa: FBT001
) -> None:
    rides = tuple(
        LoggedRide(km * 1e3, wh * 3600.0)
        for km, wh in ((8.2, 98.0), (5.1, 64.0), (11.4, 140.0), (9.6, 121.0))
    )
    found = range_answer(TOWPATH, RIDER, asking, rides)
    assert found.learnt
    assert ("per_distance_carried" in found.items) is carried


def test_the_range_chart_goes_from_8_to_40_km_h() -> None:
    """Ours: a speed every 2 km/h; with 300 rpm/V the drive passes 40 km/h on the level."""
    points = dict(range_answer(with_kv(300.0), RIDER, {}).curves)[0.0]
    assert [speed * 3.6 for speed, _ in points] == pytest.approx([8.0 + 2.0 * step for step in range(17)])


def test_a_curve_of_one_point_is_no_curve() -> None:
    """By hand: 36 V x 0.95 x 35 rpm/V / 2.5 on 100 mm is 9.0 km/h without load: of 8, 10, ... only 8 is reached."""
    asked = {"ask.range_speed": Value(2.0)}
    assert range_answer(with_kv(35.0), RIDER, asked).curves == ()
    assert [grade for grade, _ in range_answer(with_kv(45.0), RIDER, asked).curves][:1] == [0.0]


def test_whether_there_is_a_range_to_draw_is_known_before_it_is_drawn() -> None:
    found = range_answer(TOWPATH, RIDER, {})
    assert found.drawn
    assert not {"curves", "_taken"} & set(vars(found))
    assert found.curves[0][1]
    asked = {"ask.range_speed": Value(3.0)}
    for kv in (20.0, 30.0, 35.0, 45.0, 300.0):
        found = range_answer(with_kv(kv), RIDER, asked)
        assert found.drawn == bool(found.curves)


# Belts and joints.


def test_positions_are_counted_from_one() -> None:
    """A person turns the wheel to the first place, not to the noughth."""
    found = positions(TOWPATH, Person(), (9.0, 10.0), 0.0011)
    for place, reading in enumerate(found.readings, 1):
        assert isinstance(reading.tension, Result)
        names = [getattr(entry, "name", "") for entry in reading.tension.working]
        assert [name for name in names if "position" in name] == [f"Pull, position {place}"]


def test_a_tightening_keeps_the_locker_of_the_card_unless_another_was_used() -> None:
    card = joint_card(TOWPATH, "mount_clamp", Person())
    assert card.locker is not None
    assert card.locker.grade == "medium"
    assert tightening(card, torque=6.0, tool="hand").locker == "medium"
    assert tightening(card, torque=6.0, tool="hand", locker="none").locker == "none"


def test_surfaces_stand_by_how_they_start_the_cure() -> None:
    """Active metals: Hunter and Hess 2012. Plastic gives no metal at all: from memory."""
    assert locker_surfaces("yes") == ("plain or black steel", "brass", "copper")
    assert locker_surfaces("never") == ("plastic",)
    hardly = locker_surfaces("no")
    assert {"stainless steel", "zinc plated"} <= set(hardly)
    assert not set(hardly) & {"plain or black steel", "plastic"}
