"""The answers behind the fuller half of Numbers: every working is whole, every limit a sentence, every pair sensible."""

from collections.abc import Iterator
from dataclasses import replace
from itertools import pairwise

import pytest

from logic.answers.asked import Asked, questions
from logic.answers.bench_motor import bench_motor, mixings, to_lay_over
from logic.answers.compare import comparison
from logic.answers.drag import best_rolling, coasting, ride_fit
from logic.answers.hold import HoldParts, StretchedParts, holding
from logic.answers.pair import pair_board, pair_details
from logic.answers.pair_wish import best_pairs, wish_of
from logic.answers.pairs import FIRST, PairTable, belts_for, pair_table, speed_cap
from logic.answers.push import pushing
from logic.answers.range import range_answer
from logic.answers.reading import Item, Open, Reading, Result
from logic.answers.run import WhenRead
from logic.answers.stopping import stopping
from logic.answers.unit_page import PLAIN, RULES, by_rule, in_every_unit
from logic.answers.wheel import wheel
from logic.belt.catalogue import catalogue_teeth
from logic.belt.geometry import belt_length, pitch_diameter
from logic.board import Board, Value, board_fields
from logic.drive.fit import Sample
from logic.drive.options import Wish
from logic.exchange import demo_boards
from logic.units import read
from screens.words.figures import OUTCOMES as SENTENCES
from tests.loose import loose_ends

RIDER = Value(80.0, "measured")
TOWPATH, LOCK_KEEPER, WEIR, FERRY = demo_boards()
MEASURED = {
    "ask.roll_way": "3.05 m",
    "ask.wheel_other": "95 mm",
    "ask.coast_speed": "18 km/h",
    "ask.coast_distance": "62 m",
    "ask.coast_time": "25 s",
    "ask.spin_voltage": "30 V",
    "ask.spin_rotation": "5080 rpm",
    "ask.bench_voltage": "0.46 V",
    "ask.bench_current": "10 A",
    "ask.magnets": "14",
}


def asking(**texts: str) -> dict[str, Value]:
    """Return a question from typed texts, by keys without their ask."""
    return {f"ask.{name}": value_of(f"ask.{name}", text) for name, text in texts.items()}


def value_of(key: str, text: str) -> Value:
    field = questions()[key].field
    return Value(text if field.kind == "choice" else read(text, field.quantity).si, "chosen")


EVERYTHING = {key: value_of(key, text) for key, text in MEASURED.items()}
RIDES = [
    Sample(speed=kmh / 3.6, energy_per_distance=used * 3.6)
    for kmh, used in ((12, 7.4), (16, 8.9), (21, 10.4), (25, 13.0), (29, 15.8), (33, 18.3))
]


def every_item(board: Board) -> Iterator[tuple[str, Item]]:
    """Yield each item of each answer of the fuller half of Numbers."""
    belts_on = EVERYTHING | asking(coast_belts="on")
    answers = {
        "pair": pair_details(pair_board(board, 18, 36, None), RIDER, {}),
        "stopping": stopping(board, RIDER, asking(stop_grade="-4 %")).items,
        "push": pushing(board, RIDER, asking(grade="3 %", wind="10 km/h")).items,
        "range": range_answer(board, RIDER, {}).items,
        "rides": ride_fit(board, RIDER, RIDES).items,
        "coast": coasting(board, RIDER, EVERYTHING),
        "coast with belts": coasting(board, RIDER, belts_on),
        "hold": holding(board, RIDER, asking(hold_grade="14 %")).items,
        "wheel": wheel(board, RIDER, EVERYTHING),
        "bench": bench_motor(board, EVERYTHING),
        **{f"unit {kind}": by_rule({}, kind) for kind in RULES},
    }
    for page, items in answers.items():
        for name, item in items.items():
            yield f"{page}: {name}", item


@pytest.mark.parametrize("board", demo_boards(), ids=lambda board: board.name)
def test_no_working_has_a_loose_end(board: Board) -> None:
    shown = 0
    for where, item in every_item(board):
        if not isinstance(item, Result):
            continue
        shown += 1
        assert loose_ends(item) == [], where
    assert shown > 80


@pytest.mark.parametrize("board", demo_boards(), ids=lambda board: board.name)
def test_what_has_no_number_has_words(board: Board) -> None:
    for where, item in every_item(board):
        if isinstance(item, Open):
            assert item.missing or item.problem or item.outcome, where
            assert not item.outcome or SENTENCES[item.outcome].endswith("."), where


def test_an_empty_board_names_what_is_missing() -> None:
    empty = Board("empty", "Empty")
    assert pair_table(empty, None, {}).missing == FIRST
    for items in (
        stopping(empty, None, {}).items,
        pushing(empty, None, {}).items,
        holding(empty, None, {}).items,
        wheel(empty, None, {}),
        coasting(empty, None, {}),
    ):
        assert all(isinstance(item, Open) and item.missing for item in items.values())
    assert stopping(empty, None, {}).curves == {}


# Pairs


@pytest.fixture(scope="module")
def table() -> PairTable:
    return pair_table(TOWPATH, RIDER, {})


def test_pairs_are_sensible(table: PairTable) -> None:
    teeth = catalogue_teeth("HTD 5M")
    assert len(table.pairs) > 40
    assert table.travel == pytest.approx((0.060, 0.072))
    assert table.travel_known
    for pair in table.pairs:
        option, belt = pair.option, pair.belt
        if pair.present:
            assert (option.motor_teeth, option.wheel_teeth) == (16, 40)
            continue
        assert option.motor_teeth in teeth
        assert option.wheel_teeth in teeth
        # Ours: a pulley of n teeth and its flange leave 8 mm under a 100 mm wheel: n x 5 / pi / 2 - 0.57 + 2.5 <= 42.
        assert option.wheel_teeth * 5 / 3.14159265 / 2 - 0.5715 + 2.5 <= 42.0
        assert 1.25 <= option.ratio <= 5.0
        assert belt is not None
        assert 0.060 <= belt.centre <= 0.072
        small, large = (
            pitch_diameter(pitch=0.005, teeth=float(count))
            for count in (option.motor_teeth, option.wheel_teeth)
        )
        assert belt_length(centre=belt.centre, large=large, small=small) == pytest.approx(belt.teeth * 0.005)
    assert sum(pair.present for pair in table.pairs) == 1


def test_a_row_is_what_its_page_says(table: PairTable) -> None:
    for pair in table.pairs[::9]:
        belt = pair.belt.teeth if pair.belt else None
        board = pair_board(TOWPATH, pair.option.motor_teeth, pair.option.wheel_teeth, belt)
        items = pair_details(board, RIDER, {})
        columns = {"top_loaded": "loaded", "push_start": "push", "climb_start": "climb", "climb_heat": "heat"}
        for name, column in (columns | {"stop": "stop", "ratio": "ratio"}).items():
            item, value = items[name], getattr(pair.option, column)
            assert isinstance(item, Result) == (value is not None), name
            if isinstance(item, Result):
                assert item.value == pytest.approx(value, rel=1e-6), name
        load = items["belt_load"]
        assert isinstance(load, Result)
        assert load.value == pytest.approx(pair.belt_load)


def test_a_table_works_out_what_is_read_and_no_more() -> None:
    row = pair_table(TOWPATH, RIDER, {}).pairs[0]
    assert not {"spread", "limit", "stop", "heat"} & set(vars(row.option))
    assert row.option.stop is not None
    assert "stop" in vars(row.option)


def test_of_a_ranking_only_what_is_read_is_compared() -> None:
    table = pair_table(TOWPATH, RIDER, asking(climb_speed="11 km/h"))
    order = best_pairs(table, Wish(speed=35 / 3.6, grade=0.12))
    first = order[:3]
    heated = [pair for pair in table.pairs if "heat" in vars(pair.option)]
    assert len(heated) < len(table.pairs) / 2
    assert list(order)[:3] == first == order[0:3]
    assert order[-1] == list(order)[-1]


def test_a_table_beside_another_works_out_only_what_changed() -> None:
    one, other = (pair_table(TOWPATH, RIDER, asking(climb_speed=speed)) for speed in ("9 km/h", "8 km/h"))
    assert all(
        pair.option.drive is same.option.drive for pair, same in zip(one.pairs, other.pairs, strict=True)
    )
    assert all(pair.belt is same.belt for pair, same in zip(one.pairs, other.pairs, strict=True))
    assert one.pairs[0].option.heat != other.pairs[0].option.heat


def test_what_is_not_looked_at_of_two_set_ups_is_not_worked_out() -> None:
    found = comparison(TOWPATH, TOWPATH, RIDER, {})
    lines = {line.name: line for line in found.lines}
    assert lines["ratio"].change == 0.0
    assert [both.read for both in lines["ratio"].both if isinstance(both, WhenRead)] == [{"ratio"}, {"ratio"}]


def test_a_climb_is_driven_once_however_it_cools() -> None:
    usual = HoldParts(Reading(TOWPATH, RIDER), Asked({}))
    badly = StretchedParts(usual, 1.5)
    assert badly.flow is usual.flow
    assert badly.time < usual.time


def test_a_wish_is_ranked_with_what_gives(table: PairTable) -> None:
    wish = wish_of(asking(wish_speed="38 km/h", wish_grade="15 %"))
    order = best_pairs(table, wish)
    assert len(order) == len(table.pairs)
    shorts = [fit.short for pair, fit in order if pair.belt]
    assert shorts == sorted(shorts, key=lambda short: round(short, 3))
    assert shorts[0] == 0.0
    for pair, fit in order:
        does = (pair.option.loaded or 0.0) >= 38 / 3.6 * 0.998 and (pair.option.climb or 0.0) >= 0.15 * 0.998
        assert (fit.short == 0.0) == does
    first = order[0][0]
    assert first.belt is not None
    assert not first.belt.few
    impossible = best_pairs(table, Wish(speed=30.0, grade=0.5))
    assert all(fit.short > 0.0 for _, fit in impossible)


def test_the_nearest_pair_leads_then_the_cooler_motor(table: PairTable) -> None:
    """35 km/h and 12 %: 16:44 does it at 36.9 km/h with 17.8 W where 28:48 takes 43.2 W and runs into battery amps."""
    order = best_pairs(table, Wish(speed=35 / 3.6, grade=0.12))
    teeth = [(pair.option.motor_teeth, pair.option.wheel_teeth) for pair, _ in order]
    assert teeth[0] == (16, 44)
    assert teeth.index((28, 48)) > 25
    sound = [(pair, fit) for pair, fit in order if not fit.short and pair.belt and not pair.belt.few]
    assert len(sound) > 25
    assert order[: len(sound)] == sound
    met = [(round(fit.beyond, 2), pair.option.heat) for pair, fit in sound]
    assert met == sorted(met)
    only_hill = best_pairs(table, Wish(grade=0.12))
    beyond = [
        round(fit.beyond, 2) for pair, fit in only_hill if not fit.short and pair.belt and not pair.belt.few
    ]
    assert beyond == sorted(beyond)


def test_what_caps_the_speed_beside_the_gears(table: PairTable) -> None:
    """Ours: with 30 A from 36 V all tall gears of Towpath end at 43.9 km/h; without that limit the duty rules."""
    cap = speed_cap(table)
    assert cap is not None
    assert cap[1] == "battery current"
    assert cap[0] == max(pair.option.loaded or 0.0 for pair in table.pairs)
    tall = [pair.option for pair in table.pairs if pair.option.ratio < 1.8]
    assert {option.limit for option in tall} == {"battery current"}
    assert all((option.loaded or 0.0) > 0.99 * cap[0] for option in tall)
    free = tried(TOWPATH, controller__battery_current=400.0, controller__motor_current=400.0)
    assert speed_cap(pair_table(free, RIDER, {})) is None
    assert speed_cap(PairTable()) is None


def test_a_printed_constant_opens_a_band() -> None:
    rows = pair_table(FERRY, RIDER, {}).pairs
    assert all(row.option.spread is not None for row in rows if row.option.loaded is not None)
    measured = FERRY.with_value("motor.kv", replace(FERRY.motor.kv, known="measured"))
    assert all(row.option.spread is None for row in pair_table(measured, RIDER, {}).pairs)


def test_top_speed_is_a_band_while_kv_is_only_printed() -> None:
    for items, names in (
        (pushing(FERRY, RIDER, {}).items, ("top_loaded_full", "top_loaded", "top_loaded_empty")),
        (pair_details(FERRY, RIDER, {}), ("top_loaded", "top_full")),
    ):
        for name in names:
            item = items[name]
            assert isinstance(item, Result)
            assert item.band is not None
            assert item.band[0] <= item.value <= item.band[1]
    assert pushing(TOWPATH, RIDER, {}).items["top_loaded_full"].band is None  # type: ignore[union-attr]


def test_more_travel_never_loses_a_pair() -> None:
    wide = TOWPATH.with_value("mount.centre_most", Value(0.090, "measured"))
    narrow = {
        (row.option.motor_teeth, row.option.wheel_teeth) for row in pair_table(TOWPATH, RIDER, {}).pairs
    }
    assert narrow <= {
        (row.option.motor_teeth, row.option.wheel_teeth) for row in pair_table(wide, RIDER, {}).pairs
    }


def test_belts_for_a_travel() -> None:
    """Ours: 16 and 36 teeth want 65.56 mm for 53 teeth (handbook belt W7)."""
    small, large = (pitch_diameter(pitch=0.005, teeth=teeth) for teeth in (16.0, 36.0))
    assert [belt.teeth for belt in belts_for("HTD 5M", small, large, 0.0654, 0.0657)] == [53]
    assert belts_for("HTD 5M", small, large, 0.001, 0.002) == ()


def test_without_brake_limits_the_table_says_so() -> None:
    board = TOWPATH.with_value("controller.brake_current", None)
    found = pair_table(board, RIDER, {})
    assert found.also_missing == ("controller.brake_current",)
    assert all(pair.option.stop is None for pair in found.pairs)


# Limits in plain sentences


@pytest.mark.parametrize(
    ("grade", "name", "outcome"),
    [
        ("40 %", "top_loaded", "cannot start"),
        ("-20 %", "top_loaded", "runs past"),
        ("40 %", "time_20", "cannot start"),
        ("18 %", "time_30", "never reached"),
        ("-20 %", "steady_current", "needs the brake"),
        ("30 %", "steady_current", "not reached"),
    ],
)
def test_push_ends_in_a_sentence(grade: str, name: str, outcome: str) -> None:
    item = pushing(TOWPATH, RIDER, asking(grade=grade)).items[name]
    assert isinstance(item, Open)
    assert item.outcome == outcome


def test_what_rules_covers_the_whole_curve() -> None:
    answer = pushing(TOWPATH, RIDER, {})
    assert [part.limit for part in answer.stretches] == ["motor current", "battery current", "duty"]
    assert answer.stretches[0].low == 0.0
    assert all(one.high == two.low for one, two in pairwise(answer.stretches))
    capped = TOWPATH.with_value("controller.erpm_limit", Value(1500.0, "label"))
    parts = pushing(capped, RIDER, {}).stretches
    assert parts[-1].limit == "electrical rpm"


def tried(board: Board, **figures: float) -> Board:
    for key, si in figures.items():
        board = board.with_value(key.replace("__", "."), Value(si, "measured"))
    return board


@pytest.mark.parametrize("amps", [150.0, 200.0, 400.0])
def test_battery_amps_beyond_the_pack_do_not_limit(amps: float) -> None:
    """36 V and 0.11 ohm give at most 163.6 A: what is set above what the motors ever take changes nothing."""
    answer = pushing(tried(TOWPATH, controller__battery_current=amps), RIDER, {})
    assert [part.limit for part in answer.stretches] == ["motor current", "duty"]
    loose = pushing(tried(TOWPATH, controller__battery_current=100.0), RIDER, {})
    assert answer.curves == loose.curves
    assert all(not isinstance(item, Open) or item.problem is None for item in answer.items.values())


def test_push_of_a_weak_pack() -> None:
    """Ferry on one 10S1P pack of 70 mohm: 154 N at the start, where full duty leaves 112 N.

    By hand: at the battery limit the pack gives 20 A x (36 - 20 x 0.7) V = 440 W, 220 W to each motor, at standstill
    all heat: sqrt(220 / 0.07) = 56 A. So the motor limit of 35 A rules, and 34 A of it push:
    2 x 2 x 34 A x 0.04775 N m/A x 36/16 x 0.95 / 0.09 m = 154.2 N. Full duty would let only 25.6 A through.
    """
    cells = {"pack__series": 10.0, "pack__parallel": 1.0, "pack__packs": 1.0, "pack__cell_resistance": 0.070}
    weak = tried(FERRY, **cells)
    answer = pushing(weak, RIDER, asking(speed="0 km/h"))
    push = answer.items["push_at"]
    assert isinstance(push, Result)
    assert push.value == pytest.approx(154.2, abs=0.05)
    limits = [
        part.limit for part in pushing(tried(weak, controller__battery_current=400.0), RIDER, {}).stretches
    ]
    assert limits == ["motor current", "pack", "duty"]


def test_a_slope_stronger_than_the_brake_does_not_stop() -> None:
    items = stopping(TOWPATH, RIDER, asking(stop_grade="-20 %")).items
    assert all(
        isinstance(items[name], Open) and items[name].outcome == "does not stop"
        for name in items
        if name.startswith("stop_") and name.endswith(("design", "alert"))
    )


def test_only_a_full_pack_cuts_the_brake_out() -> None:
    assert stopping(TOWPATH, RIDER, {}).cuts_out
    assert not stopping(TOWPATH, RIDER, asking(rest_voltage="39 V")).cuts_out
    room = stopping(TOWPATH, RIDER, asking(rest_voltage="41 V")).items["room"]
    # Ours: 1 V over 0.11 ohm.
    assert isinstance(room, Result)
    assert room.value == pytest.approx(1.0 / 0.11)


def test_worse_roads_and_slower_people_need_more_way() -> None:
    items = stopping(WEIR, RIDER, {}).items
    ways = [items[f"stop_{surface}_design"] for surface in ("dry", "wet", "loose")]
    assert all(
        one.value <= two.value
        for one, two in pairwise(ways)
        if isinstance(one, Result) and isinstance(two, Result)
    )
    for surface in ("dry", "wet", "loose"):
        design, alert = items[f"stop_{surface}_design"], items[f"stop_{surface}_alert"]
        assert isinstance(design, Result)
        assert isinstance(alert, Result)
        # Ours: 25 km/h over 1.75 s.
        assert design.value - alert.value == pytest.approx(25 / 3.6 * 1.75)


# Climbs, wheels, rides, benches


def test_steeper_climbs_are_held_shorter() -> None:
    times = [holding(TOWPATH, RIDER, asking(hold_grade=f"{grade} %")) for grade in (12, 14, 16)]
    values = [answer.items["hold_time"] for answer in times]
    assert all(isinstance(item, Result) and item.standing == "estimate" for item in values)
    assert [item.value for item in values] == sorted((item.value for item in values), reverse=True)  # type: ignore[union-attr]
    for answer in times:
        item, (badly, well) = answer.items["hold_time"], answer.times
        assert isinstance(item, Result)
        assert badly is not None
        assert badly < item.value
        assert well is None or well > item.value
    gentle = holding(TOWPATH, RIDER, asking(hold_grade="2 %"))
    assert isinstance(gentle.items["hold_time"], Open)
    assert gentle.items["hold_time"].outcome == "stays below"


def test_the_held_grade_settles_at_the_limit() -> None:
    answer = holding(TOWPATH, RIDER, {})
    held = answer.items["held_grade"]
    assert isinstance(held, Result)
    again = holding(TOWPATH, RIDER, {"ask.hold_grade": Value(held.value, "chosen")}).items["settled"]
    assert isinstance(again, Result)
    assert again.value == pytest.approx(353.15, abs=1e-6)
    assert held.band is not None
    assert held.band[0] < held.value < held.band[1]


def test_hot_air_leaves_nothing_to_hold() -> None:
    item = holding(TOWPATH, RIDER, asking(air_temperature="59 °C", hold_speed="40 km/h")).items["held"]
    assert isinstance(item, Open)
    assert item.outcome == "own drag"


def test_a_smaller_wheel_is_slower_and_pushes_more() -> None:
    items = wheel(TOWPATH, RIDER, asking(wheel_measured="90 mm", wheel_other="100 mm"))
    change, push = items["change"], items["push_change"]
    assert isinstance(change, Result)
    assert isinstance(push, Result)
    assert change.value == pytest.approx(-0.1)
    assert push.value == pytest.approx(1 / 0.9 - 1)
    low = items["clearance"], items["clearance_other"]
    assert all(isinstance(item, Result) for item in low)
    assert low[1].value - low[0].value == pytest.approx(0.005)  # type: ignore[union-attr]


def test_rides_tell_or_say_why_not() -> None:
    told = ride_fit(TOWPATH, RIDER, RIDES)
    assert told.clear
    assert isinstance(told.items["rolling"], Result)
    assert told.items["rolling"].band is not None
    few = ride_fit(TOWPATH, RIDER, RIDES[:3])
    assert not few.clear
    assert isinstance(few.items["rolling"], Open)
    assert few.items["rolling"].outcome == "too few rides"


def test_coasting_by_both_ways_is_their_mean() -> None:
    items = coasting(TOWPATH, RIDER, EVERYTHING)
    values = [item.value for item in items.values() if isinstance(item, Result)]
    assert best_rolling(items) == pytest.approx(sum(values) / 2)
    belts_on = coasting(TOWPATH, RIDER, EVERYTHING | asking(coast_belts="on"))["by_distance"]
    # Ours: two motors' drag, 2 x 2 x 1.5 A / 17.80 x 2.5 / 0.1 m over 90.5 kg, is 0.0095 of the weight.
    assert isinstance(belts_on, Result)
    assert isinstance(items["by_distance"], Result)
    assert items["by_distance"].value - belts_on.value == pytest.approx(0.0095, abs=5e-5)
    far = asking(coast_speed="18 km/h", coast_distance="180 m", coast_belts="on")
    item = coasting(TOWPATH, RIDER, far)["by_distance"]
    assert isinstance(item, Open)
    assert item.outcome == "rolls on"


def test_the_bench_is_laid_over_the_board() -> None:
    items = bench_motor(TOWPATH, EVERYTHING)
    # Ours: 5080 rpm / (30 V - 1.5 A x 0.046 ohm) = 169.7 rpm/V; 0.46 V / 10 A; 14 / 2.
    kv, resistance, pairs = (items[name] for name in ("kv", "resistance", "pole_pairs"))
    assert isinstance(kv, Result)
    assert kv.value * 60 / 6.283185307 == pytest.approx(169.7, abs=0.05)
    assert isinstance(resistance, Result)
    assert isinstance(pairs, Result)
    assert to_lay_over(TOWPATH, items) == {"motor.kv": kv.value, "motor.resistance": resistance.value}
    assert mixings()[0].error == pytest.approx(0.4142, abs=1e-3)


def test_two_set_ups_show_their_difference() -> None:
    faster = TOWPATH.with_value("drive.motor_teeth", Value(18.0))
    answer = comparison(TOWPATH, faster, RIDER, {})
    change = {line.name: line.change for line in answer.lines}
    assert change["top_full"] is not None
    assert change["top_full"] > 0.0
    assert change["push_start"] is not None
    assert change["push_start"] < 0.0
    same = comparison(TOWPATH, TOWPATH, RIDER, {})
    assert all(line.change in (0.0, None) for line in same.lines)
    assert answer.push[0] != answer.push[1]


# Units


def test_units_of_each_kind() -> None:
    shown = {
        str(one).replace("\xa0", " ") for one in in_every_unit(asking(unit_length="1 in"), "ask.unit_length")
    }
    # NIST SP 811: 1 in = 25.4 mm, exactly.
    assert {"25.4 mm", "1 in", "2.54 cm"} <= shown
    torque = {
        str(one).replace("\xa0", " ")
        for one in in_every_unit(asking(unit_torque="1 lbf·ft"), "ask.unit_torque")
    }
    assert {"1.35582 N·m", "12 lbf·in"} <= torque
    heat = {
        str(one).replace("\xa0", " ")
        for one in in_every_unit(asking(unit_temperature="100 °C"), "ask.unit_temperature")
    }
    assert {"100 °C", "212 °F"} <= heat
    pressure = {
        str(one).replace("\xa0", " ")
        for one in in_every_unit(asking(unit_pressure="1 bar"), "ask.unit_pressure")
    }
    assert {"100 kPa", "14.5038 psi"} <= pressure
    for kind in PLAIN:
        assert in_every_unit({}, kind)


def test_wires_and_threads_by_their_rules() -> None:
    gauge = by_rule(asking(unit_gauge="12 AWG"), "ask.unit_gauge")
    # ASTM B 258: gauge 12 is 2.053 mm, 3.31 mm2.
    diameter, area = gauge["diameter"], gauge["area"]
    assert isinstance(diameter, Result)
    assert isinstance(area, Result)
    assert diameter.value == pytest.approx(2.053e-3, abs=5e-7)
    assert area.value == pytest.approx(3.31e-6, abs=5e-9)
    pitch = by_rule(asking(unit_threads="24 tpi"), "ask.unit_threads")["pitch"]
    assert isinstance(pitch, Result)
    assert pitch.value == pytest.approx(0.0254 / 24)


def test_every_question_can_be_asked() -> None:
    for key, question in questions().items():
        assert key not in board_fields()
        assert question.field.help.endswith(".")
        if question.begins is not None:
            question.field.check(question.begins.si)
