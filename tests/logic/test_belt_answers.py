"""Answers about belts on the example boards (ours): every number has an origin, and the words follow."""

from dataclasses import replace

import pytest

from logic.answers.belt_bench import (
    bench_plan,
    fitted_reading,
    motor_reading,
    nudge_for,
    positions,
    weight_reading,
)
from logic.answers.belt_choice import belt_choice, centre_of
from logic.answers.belt_fit import belt_fit
from logic.answers.belt_history import belt_history
from logic.answers.belt_sound import Calibration, calibrate, sound_plan, sound_reading
from logic.answers.belt_together import Told, takes, together, ways
from logic.answers.reading import Item, Open, Result
from logic.answers.tension import belt_plan, belt_reading
from logic.belt.history import Point
from logic.board import Board, Value
from logic.exchange import demo_boards
from logic.person import Person
from tests.loose import loose_ends

BOARDS = {board.name: board for board in demo_boards()}
TOWPATH = BOARDS["Towpath 36"]
RIDER = Value(80.0)
EMPTY = Board("x", "Empty")


def every_item(board: Board, person: Person) -> list[Item]:
    reading = fitted_reading(board, person, ((7.0, 0.001), (14.0, 0.0015), (26.0, 0.0025)))
    four = positions(board, person, (9.0, 9.5, 8.8, 9.2), 0.0011)
    made = Calibration(0.8, 90.0, 0.15)
    told = (Told("scale", 95.0, 18.0), Told("motor", 103.0, 15.0))
    mean = together(board, person, *told)
    points = tuple(Point(1e4 * n, 110.0 - 5 * n, 3.0) for n in range(5))
    items = [
        *belt_choice(board, RIDER).items.values(),
        *belt_fit(board, 0.01).items.values(),
        *bench_plan(board, person).values(),
        *sound_plan(board, person).items.values(),
        *ways(board, person).items.values(),
        *ways(board, person, made).items.values(),
        *belt_history(board, points).items.values(),
        reading.reading.tension, reading.reading.error, reading.zero, four.spread, mean.apart,
        nudge_for(board, person, 60.0),
    ]  # fmt: skip
    for one in (
        four.tightest, weight_reading(board, person, 9.8, 0.0012), motor_reading(board, person, 190.0),
        sound_reading(board, person, 365.0, 2.0), sound_reading(board, person, 365.0, 2.0, made),
        mean.reading,
    ):  # fmt: skip
        items += [one.tension, one.error]
    return items


@pytest.mark.parametrize("name", BOARDS)
@pytest.mark.parametrize("weighed", [False, True])
def test_no_working_has_a_loose_end(name: str, weighed: bool) -> None:  # noqa: FBT001  (both cases)
    board = BOARDS[name]
    if weighed:
        board = board.with_value("drive.belt_mass", Value(0.014, "measured"))
    items = every_item(board, Person())
    assert [end for item in items for end in loose_ends(item)] == []
    assert sum(isinstance(item, Result) for item in items) > 40


def test_an_empty_board_says_what_is_missing() -> None:
    for item in (*belt_choice(EMPTY, None).items.values(), *bench_plan(EMPTY, Person()).values()):
        assert isinstance(item, Open)
        assert item.missing or item.problem
    assert belt_choice(EMPTY, None).rows == ()
    assert belt_fit(EMPTY, 0.01).narrowest == ""
    assert ways(EMPTY, Person()).best == ""
    assert isinstance(centre_of(EMPTY), Open)


def test_stock_stands_around_the_wanted_centre() -> None:
    found = belt_choice(TOWPATH, RIDER, 0.070)
    centres = [row.centre for row in found.rows]
    assert centres == sorted(centres)
    assert min(centres) < 0.070 < max(centres)
    assert all(row.off == pytest.approx(row.centre - 0.070) for row in found.rows)
    assert [row.belt.teeth for row in found.rows if row.belt.teeth == 56] == [56]
    assert found.in_stock


def test_what_the_mount_lacks() -> None:
    """Travel 60 to 72 mm, one flange: 53 teeth sit too far in, 59 too far out, 56 go over the flange."""
    lacks = {row.belt.teeth: row.lacks for row in belt_choice(TOWPATH, RIDER).rows}
    assert lacks[53] == "in"
    assert lacks[59] == "out"
    assert lacks[56] == "laying on"
    bare = TOWPATH.with_value("mount.flanged", Value("none"))
    assert {row.belt.teeth: row.lacks for row in belt_choice(bare, RIDER).rows}[56] == ""


def test_few_teeth_in_mesh_are_told() -> None:
    few = TOWPATH.with_value("drive.motor_teeth", Value(14.0)).with_value("drive.belt_teeth", Value(53.0))
    assert belt_choice(few, RIDER).few_teeth
    assert not belt_choice(TOWPATH, RIDER).few_teeth


def test_the_motors_bearing_holds_the_target_down() -> None:
    """Ours: 150 N on the shaft is 150 / (2 sin(wrap / 2)) = 78 N a span, under the 108 N the torque asks for."""
    held = TOWPATH.with_value("motor.radial_load", Value(150.0))
    plan = belt_plan(held, Person())
    assert plan.held_by_bearing
    assert plan.items["shaft_pull"].value == pytest.approx(150.0)
    assert [end for item in plan.items.values() for end in loose_ends(item)] == []
    strong = belt_plan(TOWPATH.with_value("motor.radial_load", Value(400.0)), Person())
    assert not strong.held_by_bearing
    assert strong.items["target"].value == belt_plan(TOWPATH, Person()).items["target"].value


def test_the_margin_to_a_slack_span() -> None:
    items = belt_plan(TOWPATH, Person()).items
    assert items["slack_margin"].value == pytest.approx(items["slack_torque"].value / 2.5278, rel=1e-4)


def test_twenty_teeth_beside_a_97_mm_wheel() -> None:
    """From memory, the balanced choice: six teeth in mesh and more, and off the ground when worn."""
    board = TOWPATH.with_value("drive.motor_teeth", Value(20.0)).with_value(
        "drive.wheel_diameter", Value(0.097)
    )
    board = board.with_value("drive.belt_teeth", Value(60.0))
    assert not belt_choice(board, RIDER).few_teeth
    assert belt_fit(board, 0.01).items["pulley_ground_worn"].value > 0.0


def test_cans_that_are_too_long_for_the_hanger() -> None:
    """From memory: 236 mm takes two cans of 84 mm with a gap; cans of 92 mm do not fit."""
    assert 0.0 < belt_fit(TOWPATH, 0.01).items["motors_gap"].value < 0.02
    long = belt_fit(TOWPATH.with_value("mount.can_length", Value(0.092)), 0.01)
    assert long.tight == ("motors_gap",)
    assert "motors_gap" not in belt_fit(BOARDS["Lock-keeper"], 0.01).items


def test_the_tightest_position_counts() -> None:
    found = positions(TOWPATH, Person(), (9.0, 10.0, 8.0), 0.0011)
    tensions = [reading.tension.value for reading in found.readings]
    assert found.tightest.tension.value == max(tensions) == tensions[1]
    assert found.slackest.tension.value == min(tensions)
    assert found.spread.value == pytest.approx(max(tensions) - min(tensions))


def test_better_tools_make_the_scale_better() -> None:
    coarse = ways(TOWPATH, Person(depth_tool="steel rule"))
    fine = ways(TOWPATH, Person(depth_tool="feeler gauge", scale="fish scale"))
    assert fine.items["scale"].value < coarse.items["scale"].value / 3
    # A depth read by a rule is good to no more than 85 %: that is worth a strap and a second person.
    assert coarse.best == "motor"
    assert fine.best == "scale"


def test_a_strap_and_two_people_are_not_best_for_a_few_per_cent() -> None:
    found = ways(TOWPATH, Person())
    assert found.items["motor"].value < found.items["scale"].value < 2 * found.items["motor"].value
    assert found.best == "scale"
    assert "Two people" in takes("motor")


def test_a_fixed_mount_has_no_motor_to_pull() -> None:
    fixed = TOWPATH.with_value("mount.adjust", Value("fixed"))
    found = ways(fixed, Person())
    assert isinstance(found.items["motor"], Open)
    assert found.best != "motor"


def test_a_pluck_is_relative_until_it_is_set_against_a_pull() -> None:
    person = Person()
    plain = sound_reading(TOWPATH, person, 380.0, 2.0)
    assert plain.verdict is None
    assert plain.error.value > 0.4 * plain.tension.value
    made = calibrate(TOWPATH, person, 380.0, 95.0, 14.0)
    same = sound_reading(TOWPATH, person, 380.0, 2.0, made)
    assert same.tension.value == pytest.approx(95.0)
    assert same.error.value == pytest.approx(14.0, rel=0.02)
    assert same.verdict is not None
    later = sound_reading(TOWPATH, person, 360.0, 2.0, made)
    assert later.tension.value == pytest.approx(95.0 * (360 / 380) ** 2)
    assert ways(TOWPATH, person, made).items["pluck"].value < ways(TOWPATH, person).items["pluck"].value


def test_weighing_the_belt_narrows_the_pluck() -> None:
    heavy = TOWPATH.with_value("drive.belt_mass", Value(0.0147, "measured"))
    assert sound_plan(heavy, Person()).weighed
    assert sound_plan(heavy, Person()).items["mass"].value == pytest.approx(0.0525)


def test_two_readings_that_agree_and_two_that_do_not() -> None:
    person = Person()
    good = together(TOWPATH, person, Told("scale", 95.0, 18.0), Told("motor", 103.0, 15.0))
    assert good.agree
    assert good.reading.error.value < 15.0
    assert good.reading.verdict.word == "in window"
    bad = together(TOWPATH, person, Told("scale", 160.0, 18.0), Told("motor", 95.0, 15.0))
    assert not bad.agree
    assert bad.reading is None
    assert "held" in bad.advice
    assert "bending" in together(TOWPATH, person, Told("pluck", 160.0, 9.0), Told("pulls", 95.0, 9.0)).advice


def test_every_pair_that_disagrees_has_its_sentence() -> None:
    names = ("scale", "pulls", "weight", "motor", "pluck")
    for high in names:
        for low in names:
            if {high, low} in ({"scale", "pulls"}, {high}):
                continue
            assert together(TOWPATH, Person(), Told(high, 200.0, 5.0), Told(low, 50.0, 5.0)).advice, (
                high,
                low,
            )


def test_history_needs_three_readings_and_a_fall() -> None:
    falling = tuple(Point(1e4 * n, 110.0 - 5.0 * n, 4.0) for n in range(4))
    found = belt_history(TOWPATH, falling)
    assert found.falls
    floor = belt_plan(TOWPATH, Person()).window.floor
    assert found.items["left"].value == pytest.approx((95.0 - floor) / 5.0 * 1e4, rel=1e-6)
    assert found.items["stretch"].value == pytest.approx(15.0 * 0.28 / 226801, rel=1e-3)
    assert not belt_history(TOWPATH, falling[:2]).falls
    level = tuple(replace(point, tension=100.0 + (-1) ** n) for n, point in enumerate(falling))
    assert not belt_history(TOWPATH, level).falls
    assert isinstance(belt_history(TOWPATH, level).items["left"], Open)
    assert belt_history(TOWPATH, ()).trend is None


def test_a_belt_under_its_widths_least_is_slack_before_the_motor_is_known() -> None:
    board = TOWPATH.with_value("motor.kv", None)
    assert belt_plan(board, Person()).window is None
    # sdpsi-2017 table 9, p. T-30: HTD 5M of 15 mm at least 12.0 lbf, 53.4 N; 0.2 kg at 1.1 mm is some 15 N.
    loose = belt_reading(board, Person(), 0.2 * 9.80665, 0.0011)
    assert loose.verdict is not None
    assert loose.verdict.word == "slack"
    assert belt_reading(board, Person(), 0.9 * 9.80665, 0.0011).verdict is None
