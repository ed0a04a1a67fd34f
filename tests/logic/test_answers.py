"""The answers of gearing and tension: worked by hand for the example boards, open where something is missing, no loose ends."""

from math import atan, cos, hypot, isfinite, pi, sin, sqrt, tan

import pytest
from hypothesis import given
from hypothesis import strategies as st

from logic.answers.belt_bench import bench_plan
from logic.answers.belt_parts import BeltParts
from logic.answers.gearing import Gearing, gearing, top_speed
from logic.answers.reading import Item, Open, Reading, Result
from logic.answers.tension import belt_plan, belt_reading
from logic.board import Board, Value
from logic.exchange import demo_boards
from logic.person import Person
from tests.loose import loose_ends
from tests.printed import agrees
from tests.random_boards import CHANGED, EMPTY, SPARSE

DEMOS = {board.name: board for board in demo_boards()}
TOWPATH = DEMOS["Towpath 36"]
RIDER = Value(80.0, "measured", typed_unit="kg")
SPEED = 20 / 3.6


def result(item: Item) -> Result:
    """Return the item, which must be a number."""
    assert isinstance(item, Result), item
    return item


def all_items(board: Board, rider: Value | None, pull: float = 15.0) -> list[Item]:
    """Return every result that the two pages show of a board."""
    reading = belt_reading(board, Person(), pull)
    return [
        *gearing(board, rider, SPEED).items.values(),
        *belt_plan(board, Person()).items.values(),
        *belt_plan(board, Person(), 0.002).items.values(),
        reading.tension,
        reading.error,
    ]


# Towpath 36, worked by hand. All of it is ours: no manual prints this board.

KT = 60 / (2 * pi * 170)
"""170 rpm/V is 0.056172 N m for each ampere."""
SMALL, LARGE = 16 * 5 / pi, 40 * 5 / pi
"""Pitch diameters in mm: 25.465 and 63.662."""


@pytest.fixture(scope="module")
def towpath() -> Gearing:
    """Give the gearing of Towpath 36 with a rider of 80 kg."""
    return gearing(TOWPATH, RIDER, SPEED)


@pytest.mark.parametrize(
    ("name", "expected"),
    [
        ("ratio", 40 / 16),
        ("circumference", pi * 0.1),
        # 36 V x 170 rpm/V x 0.95 = 5814 rpm; / 2.5 / 60 x 0.31416 m = 12.177 m/s = 43.84 km/h. Full 42 V, empty 30 V.
        ("top_nominal", 36 * 170 * 0.95 / 2.5 / 60 * pi * 0.1),
        ("top_full", 42 * 170 * 0.95 / 2.5 / 60 * pi * 0.1),
        # 20 km/h = 5.556 m/s: 17.684 turns of the wheel, 44.21 of the motor a second; seven pole pairs.
        ("angular_speed_at", SPEED / 0.1 * 2 * 2.5),
        ("electrical_at", SPEED / 0.1 * 2 * 2.5 * 7),
        ("belt_speed_at", SPEED / (pi * 0.1) * 2.5 * 16 * 0.005),
        ("torque_constant", KT),
        # The 45 A limit rules at standstill (the pack would allow 104 A, the duty 140 A): two motors, 2.5 to 1, 95 %.
        ("push_start", 2 * (45 - 1.5) * KT * 2.5 * 0.95 / 0.05),
    ],
)
def test_gearing_by_hand(towpath: Gearing, name: str, expected: float) -> None:
    assert result(towpath.items[name]).value == pytest.approx(expected, rel=1e-6)


def test_the_steepest_climb_from_standstill_by_hand(towpath: Gearing) -> None:
    grade = result(towpath.items["climb_start"]).value
    push, weight = 2 * (45 - 1.5) * KT * 2.5 * 0.95 / 0.05, 90.5 * 9.80665
    slope = atan(grade)
    assert weight * (sin(slope) + 0.015 * cos(slope)) == pytest.approx(push, rel=1e-6)
    # 232.1 N on 887.5 N: a slope of 0.2496 rad.
    assert agrees(tan(0.24963), "0.255")
    assert agrees(grade, "0.255")


def test_the_loaded_top_speed_balances_push_and_load(towpath: Gearing) -> None:
    speed = result(towpath.items["top_loaded"]).value
    load = 0.5 * 1.225 * 0.60 * speed**2 + 0.015 * 90.5 * 9.80665
    # Push to hold it, back through belt and motor: the volts it takes are the largest duty of the sagging pack.
    torque = load * 0.05 / (2 * 2.5 * 0.95)
    current = torque / KT + 1.5
    emf = speed / 0.05 * 2.5 * KT
    volts = emf + current * 0.045
    pack = 36 - 2 * 0.95 * current * (10 * 0.022 / 2)
    assert volts == pytest.approx(0.95 * pack, rel=1e-6)
    assert current < 45
    assert 2 * 0.95 * current < 30


@pytest.mark.parametrize(
    ("name", "centre"),
    [
        pytest.param("Towpath 36", "67.27", id="design 6: Towpath 36"),
        pytest.param("Lock-keeper", "61.46", id="design 6: Lock-keeper"),
        pytest.param("Weir", "69.39", id="design 6: Weir"),
        pytest.param("Ferry", "65.56", id="design 6: Ferry"),
    ],
)
def test_centre_distances(name: str, centre: str) -> None:
    assert agrees(result(belt_plan(DEMOS[name], Person()).items["centre"]).value * 1000, centre)


def test_the_target_by_hand() -> None:
    plan = belt_plan(TOWPATH, Person())
    # Driving 45 A outweighs braking 35 A: 2.528 N m; 0.812 x 1.3 x 2.528 / 0.025465 = 104.78 N.
    pull = 0.812 * 1.3 * 45 * KT / (SMALL / 1000)
    # Plus 0.272 lbf at a thousand feet a minute, 0.046885 kg/m, at 96.9 turns a second of 0.08 m, 7.752 m/s: 2.82 N.
    speed = 36 * 170 * 0.95 / 60 * 0.08
    target = pull + 0.272 * 4.4482216 / 5.08**2 * speed**2
    assert result(plan.items["target"]).value == pytest.approx(target, rel=1e-6)
    assert agrees(target, "107.6")
    # The floor of 0.7 of the target is above the table's 12.0 lbf = 53.4 N.
    assert result(plan.items["floor"]).value == pytest.approx(0.7 * target)
    assert result(plan.items["ceiling"]).value == pytest.approx(1.1 * target)
    assert not plan.held_down
    assert plan.fault is None


def test_the_pull_by_hand() -> None:
    plan = belt_plan(TOWPATH, Person())
    centre = result(plan.items["centre"]).value * 1000
    span = sqrt(centre**2 - ((LARGE - SMALL) / 2) ** 2)
    assert result(plan.items["span"]).value * 1000 == pytest.approx(span)
    # With a calliper (0.1 mm) and a scale of 50 g the error is smallest at 1.1 mm; the next test scans for it.
    assert plan.depth == pytest.approx(0.0011)
    assert plan.step == pytest.approx(0.0001)
    # Half the span becomes 32.270 mm for 32.251 mm: the span is 0.0375 mm longer, of 280 mm of belt when one pulley
    # turns. The table's 24.9 lbf at a sixty-fourth, where a span is 1/2048 longer, make 226.8 kN for a length as long
    # again: 30.4 N more tension.
    half = hypot(span / 2, 1.1)
    longer = 2 * half - span
    stiffness = 24.9 * 4.4482216 * 2048
    target = result(plan.items["target"]).value
    free = 2 * (target + stiffness * longer / 280) * 1.1 / half
    held = 2 * (target + stiffness * longer / span) * 1.1 / half
    assert result(plan.items["pull_target"]).value == pytest.approx(free, rel=1e-3)
    assert result(plan.items["pull_locked"]).value == pytest.approx(held, rel=1e-3)
    assert agrees(free, "9.41")
    assert agrees(held, "16.3")


def _error_of_a_pull(
    tension: float, depth: float, span: float, length: float, tools: dict[str, float]
) -> float:
    """Error in N of a pull in mm, by wobbling each thing that is measured: nothing shared with logic."""
    stiffness = tools["stiffness"]

    def stretched(at: float) -> float:
        return hypot(span, 2 * at) - span

    pull = 4 * depth / hypot(span, 2 * depth) * (tension + stiffness * stretched(depth) / length)

    def told(force: float, at: float, stiff: float) -> float:
        return force * hypot(span, 2 * at) / (4 * at) - stiff * stretched(at) / length

    small = 1e-5
    parts = (
        (told(pull + small, depth, stiffness) - tension) * tools["scale"],
        (told(pull, depth + small, stiffness) - tension) * tools["rod"],
        (told(pull, depth, stiffness + small) - tension) * 0.2 * stiffness,
    )
    return hypot(*parts) / small


@pytest.mark.parametrize("name", DEMOS)
@pytest.mark.parametrize(
    ("depth_tool", "rod"),
    [("steel rule", 0.5), ("calliper", 0.1), ("feeler gauge", 0.05)],
)
@pytest.mark.parametrize(
    ("scale", "kilos"), [("coarse luggage scale", 0.1), ("luggage scale", 0.05), ("fish scale", 0.01)]
)
def test_the_depth_offered_is_the_one_with_the_smallest_error(
    name: str, depth_tool: str, rod: float, scale: str, kilos: float
) -> None:
    """On every page the same, for this belt and these tools, in steps the tool can set."""
    person, step = Person(scale=scale, depth_tool=depth_tool), max(rod, 0.1)
    plan = belt_plan(DEMOS[name], person)
    assert plan.depth is not None
    items = {key: result(plan.items[key]).value for key in ("target", "span", "centre")}
    parts = BeltParts(Reading(DEMOS[name]), person)
    tools = {"scale": kilos * 9.80665, "rod": rod, "stiffness": parts.belt.stiffness}
    span, length = items["span"] * 1000, parts.belt_length * 1000
    errors = {
        count: _error_of_a_pull(items["target"], count * step, span, length, tools)
        for count in range(1, int(span / 16 / step) + 1)
    }
    assert plan.depth * 1000 / step == pytest.approx(min(errors, key=errors.__getitem__))
    assert result(bench_plan(DEMOS[name], person)["best_depth"]).value == plan.depth
    told = belt_reading(DEMOS[name], person, result(plan.items["pull_target"]).value)
    assert result(told.error).value == pytest.approx(min(errors.values()), rel=1e-3)


def test_without_a_target_the_depth_is_for_the_belts_least_tension() -> None:
    board = TOWPATH.with_value("controller.motor_current", None)
    plan = belt_plan(board, Person())
    assert not isinstance(plan.items["target"], Result)
    assert plan.depth is not None
    reading = belt_reading(board, Person(), 9.0)
    assert reading.known
    assert reading.verdict is None


@pytest.mark.parametrize(
    "key", ["drive.profile", "drive.belt_width", "drive.belt_teeth", "drive.motor_teeth"]
)
def test_a_pull_without_the_belt_is_no_tension(key: str) -> None:
    board = TOWPATH.with_value(key, None)
    assert belt_plan(board, Person()).depth is None
    assert not belt_reading(board, Person(), 15.0, 0.0015).known


def test_reading_the_pull_for_the_target_gives_the_target() -> None:
    plan = belt_plan(TOWPATH, Person())
    reading = belt_reading(TOWPATH, Person(), result(plan.items["pull_target"]).value, plan.depth)
    assert result(reading.tension).value == pytest.approx(result(plan.items["target"]).value)
    assert reading.verdict is not None
    assert reading.verdict.word == "in window"


def test_finer_tools_have_a_smaller_error() -> None:
    coarse = belt_reading(
        TOWPATH, Person(scale="coarse luggage scale", depth_tool="steel rule"), 15.0, 0.0015
    )
    fine = belt_reading(TOWPATH, Person(scale="fish scale", depth_tool="feeler gauge"), 15.0, 0.0015)
    assert result(fine.error).value < result(coarse.error).value
    assert result(fine.tension).value == result(coarse.tension).value


# What stands in the way.


@pytest.mark.parametrize(
    ("key", "name"),
    [
        ("drive.motor_teeth", "ratio"),
        ("drive.wheel_teeth", "ratio"),
        ("drive.wheel_diameter", "circumference"),
        ("motor.kv", "torque_constant"),
        ("pack.series", "top_full"),
        ("pack.chemistry", "top_full"),
        ("motor.pole_pairs", "electrical_at"),
        ("controller.battery_current", "push_start"),
        ("motor.resistance", "top_loaded"),
        ("load.board_mass", "top_loaded"),
        ("drive.motors", "push_at"),
    ],
)
def test_a_missing_value_is_named_and_the_rest_is_given(key: str, name: str) -> None:
    items = gearing(TOWPATH.with_value(key, None), RIDER, SPEED).items
    item = items[name]
    assert isinstance(item, Open)
    assert item.missing == (key,)
    assert any(isinstance(other, Result) for other in items.values())


def test_a_missing_rider_is_named() -> None:
    answer = gearing(TOWPATH, None, SPEED)
    assert answer.items["top_loaded"] == Open("top_loaded", missing=("rider.mass",))
    assert isinstance(answer.items["push_start"], Result)
    assert answer.curves is None
    assert top_speed(TOWPATH, None) == Open("top_loaded", missing=("rider.mass",))


@pytest.mark.parametrize(
    ("key", "name"),
    [
        ("drive.belt_teeth", "centre"),
        ("drive.belt_width", "target"),
        ("drive.profile", "span"),
        ("controller.motor_current", "target"),
    ],
)
def test_a_missing_value_of_the_belt_is_named(key: str, name: str) -> None:
    plan = belt_plan(TOWPATH.with_value(key, None), Person())
    item = plan.items[name]
    assert isinstance(item, Open)
    assert item.missing == (key,)


@pytest.mark.parametrize("keys", [("controller.brake_current",), ("pack.series", "pack.chemistry")])
def test_a_belt_needs_neither_the_brake_nor_the_cells(keys: tuple[str, ...]) -> None:
    """Towpath 36 brakes with less than it drives with and has 36 V: what stands in is what is so, and the result is rough."""
    board = TOWPATH
    for key in keys:
        board = board.with_value(key, None)
    found, whole = (result(belt_plan(each, Person()).items["target"]) for each in (board, TOWPATH))
    assert found.value == pytest.approx(whole.value)
    assert found.rough
    assert "assumed" in {entry.known for entry in found.inputs}


def test_an_empty_board_asks_and_does_not_fail() -> None:
    assert all(isinstance(item, Open) and item.missing for item in gearing(EMPTY, None, SPEED).items.values())
    plan = belt_plan(EMPTY, Person())
    assert all(isinstance(item, Open) and item.missing for item in plan.items.values())
    assert (plan.depth, plan.window, plan.diameters) == (None, None, (0.0, 0.0))


def test_a_measured_centre_far_from_what_follows_is_said() -> None:
    board = TOWPATH.with_value("drive.centre", Value(0.070, "measured"))
    plan = belt_plan(board, Person())
    assert plan.fault is not None
    assert (plan.fault.field, plan.fault.reason) == ("drive.centre", "measured apart")
    assert result(plan.items["centre"]).value == 0.070
    near = belt_plan(TOWPATH.with_value("drive.centre", Value(0.0676, "measured")), Person())
    assert near.fault is None


def test_a_belt_too_short_is_a_problem_not_a_number() -> None:
    item = belt_plan(TOWPATH.with_value("drive.belt_teeth", Value(30.0)), Person()).items["centre"]
    assert isinstance(item, Open)
    assert item.problem is not None


def test_more_motor_than_road_is_an_outcome() -> None:
    heavy = Value(250.0, "measured")
    weak = TOWPATH.with_value("controller.motor_current", Value(1.6)).with_value(
        "motor.no_load_current", Value(1.5)
    )
    item = gearing(weak, heavy, SPEED).items["top_loaded"]
    assert item == Open("top_loaded", outcome="cannot start")


# How sure.


def test_a_printed_motor_constant_gives_a_band_of_ten_percent() -> None:
    answer = gearing(DEMOS["Weir"], RIDER, SPEED)
    item = result(answer.items["top_nominal"])
    assert item.band == pytest.approx((0.9 * item.value, 1.1 * item.value))
    assert result(answer.items["ratio"]).band is None


def test_a_measured_one_gives_a_number(towpath: Gearing) -> None:
    assert result(towpath.items["top_nominal"]).band is None


def test_what_is_assumed_makes_the_loaded_speed_rough_and_leaves_the_ratio_sure(towpath: Gearing) -> None:
    assert result(towpath.items["top_loaded"]).rough
    assert {
        entry.name for entry in result(towpath.items["top_loaded"]).inputs if entry.known == "assumed"
    } == {
        "Rolling coefficient",
        "Drag area",
        "Belt drive efficiency",
    }
    assert not result(towpath.items["ratio"]).rough


def test_a_guess_makes_what_rests_on_it_rough() -> None:
    guessed = gearing(TOWPATH.with_value("drive.motor_teeth", Value(16.0, "guess")), RIDER, SPEED).items
    assert result(guessed["ratio"]).rough
    assert not result(guessed["circumference"]).rough


# No loose ends.


@pytest.mark.parametrize("board", DEMOS.values(), ids=DEMOS)
def test_every_argument_of_every_working_is_accounted_for(board: Board) -> None:
    items = all_items(board, RIDER)
    assert all(isinstance(item, Result) for item in items)
    assert [end for item in items for end in loose_ends(item)] == []


@given(CHANGED, st.sampled_from([RIDER, None]), st.floats(0.5, 60.0))
def test_and_on_changed_boards(board: Board, rider: Value | None, pull: float) -> None:
    items = all_items(board, rider, pull)
    assert [end for item in items for end in loose_ends(item)] == []
    for item in items:
        if isinstance(item, Result):
            assert isfinite(item.value), item.name
        else:
            assert item.missing or item.problem or item.outcome, item.name


@given(SPARSE)
def test_any_board_gets_an_answer(board: Board) -> None:
    for item in all_items(board, None):
        assert isinstance(item, Result) or item.missing or item.problem or item.outcome, item.name


def test_curves_meet_where_the_loaded_speed_is(towpath: Gearing) -> None:
    assert towpath.curves is not None
    assert towpath.curves.meeting is not None
    speed, push = towpath.curves.meeting
    assert speed == pytest.approx(result(towpath.items["top_loaded"]).value)
    assert push == pytest.approx(0.5 * 1.225 * 0.60 * speed**2 + 0.015 * 90.5 * 9.80665, rel=1e-6)
