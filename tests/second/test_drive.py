"""The drive's answers against a second calculation, over the example boards and boards drawn at random.

`SECOND_BOARDS=1000` draws as many; the suite draws a few dozen. A refusal is held like a number: both calculations must
give one, and for the same reason; a value that is said to be missing must be missing.
"""

import os
from collections import Counter
from collections.abc import Iterator, Mapping
from math import exp, log
from random import Random
from typing import Any

import pytest

from logic.answers.bench_motor import bench_motor
from logic.answers.compare import comparison
from logic.answers.controller_card import controller_card
from logic.answers.descents import descent
from logic.answers.energy import pack_figures
from logic.answers.gearing import gearing
from logic.answers.pair import pair_details
from logic.answers.pairs import Pair, pair_table
from logic.answers.push import pushing
from logic.answers.range import range_answer
from logic.answers.reading import Item, Open, Result
from logic.answers.stopping import stopping
from logic.answers.wheel import wheel
from logic.board import Board, Value, board_fields
from logic.exchange import demo_boards
from logic.log.rides import LoggedRide
from tests.second import drive as second
from tests.second.drive import Gap, Setup

BOARDS = int(os.environ.get("SECOND_BOARDS", "40"))
WITHIN = 1e-3
DEMOS = {board.name: board for board in demo_boards()}
RIDER = 80.0
AT_SPEED = 6.0
RIDES = [(8200.0, 352800.0, 5.0), (5100.0, 230400.0, 5.5), (11400.0, 504000.0, 6.0)]

Drawn = tuple[Board, dict[str, float | str], list[tuple[float, float, float]]]

DRAWN = {
    "motor.kv": (6.0, 60.0),
    "motor.resistance": (0.01, 0.3),
    "motor.no_load_current": (0.2, 4.0),
    "motor.pole_pairs": (1, 20),
    "controller.motor_current": (10.0, 120.0),
    "controller.brake_current": (10.0, 100.0),
    "controller.battery_current": (5.0, 200.0),
    "controller.regen_current": (0.5, 40.0),
    "controller.duty": (0.6, 1.0),
    "controller.erpm_limit": (1000.0, 12000.0),
    "pack.series": (4, 16),
    "pack.parallel": (1, 6),
    "pack.packs": (1, 3),
    "pack.cell_resistance": (0.008, 0.09),
    "pack.cell_capacity": (5000.0, 20000.0),
    "pack.cell_charge_current": (1.0, 8.0),
    "pack.cell_brake_current": (2.0, 15.0),
    "pack.cell_discharge_current": (5.0, 35.0),
    "pack.bms_charge_current": (3.0, 40.0),
    "pack.bms_discharge_current": (10.0, 80.0),
    "pack.fuse": (10.0, 100.0),
    "pack.connector_current": (20.0, 90.0),
    "pack.window": (0.5, 1.0),
    "drive.motor_teeth": (10, 30),
    "drive.wheel_teeth": (20, 60),
    "drive.wheel_diameter": (0.07, 0.2),
    "drive.belt_teeth": (45, 120),
    "drive.belt_width": (0.009, 0.025),
    "load.board_mass": (4.0, 20.0),
    "load.rolling": (0.005, 0.04),
    "load.drag_area": (0.2, 0.9),
    "load.efficiency": (0.7, 1.0),
}
"""Drawn where the answers have something to say; the whole width of the fields belongs to the fuzz."""


def drawn(number: int) -> Drawn:
    """Return an example board with many values drawn anew and some taken out, answers to the questions, and rides."""
    luck = Random(number)
    board = luck.choice(list(DEMOS.values()))
    for key, (low, high) in DRAWN.items():
        if luck.random() < 0.6:
            whole = isinstance(low, int)
            si = float(luck.randint(int(low), int(high))) if whole else exp(luck.uniform(log(low), log(high)))
            known = luck.choice(["measured", "label", "guess"])
            board = board.with_value(key, Value(si, known))
    for key in ("drive.motors", "controller.current_meaning", "pack.chemistry", "drive.profile"):
        option = luck.choice(board_fields()[key].options).key
        board = board.with_value(key, Value(option, "label"))
    if luck.random() < 0.5:
        board = board.with_value("drive.centre", None)
    for key in luck.sample(sorted(DRAWN), luck.choice([0, 0, 1, 2])):
        board = board.with_value(key, None)
    base = luck.uniform(0.5, 1.1)
    asked: dict[str, float | str] = {
        "ask.speed": luck.uniform(0.5, 14.0),
        "ask.grade": luck.choice([0.0, luck.uniform(-0.3, 0.3)]),
        "ask.wind": luck.choice([0.0, luck.uniform(-10.0, 10.0)]),
        "ask.climb_grade": luck.uniform(0.01, 0.25),
        "ask.climb_speed": luck.uniform(1.0, 8.0),
        "ask.stop_speed": luck.uniform(1.0, 14.0),
        "ask.stop_grade": luck.choice([0.0, luck.uniform(-0.2, 0.2)]),
        "ask.axle": luck.choice(["behind", "in front"]),
        "ask.wheelbase": base,
        "ask.mass_behind_front": base * luck.uniform(0.2, 1.05),
        "ask.mass_height": luck.uniform(0.3, 1.3),
        "ask.range_speed": luck.uniform(1.5, 10.0),
        "ask.range_grade": luck.choice([0.0, luck.uniform(0.0, 0.1)]),
        "ask.cells_at": luck.uniform(264.0, 320.0),
        "ask.roll_turns": float(luck.randint(1, 20)),
        "ask.spin_duty": luck.uniform(0.1, 1.0),
    }
    for key, low, high in (
        ("rest_voltage", 15.0, 60.0),
        ("wheel_measured", 0.06, 0.2),
        ("roll_way", 0.5, 6.0),
        ("wheel_other", 0.06, 0.2),
        ("spin_rotation", 50.0, 1500.0),
        ("spin_voltage", 0.5, 50.0),
        ("bench_voltage", 0.05, 2.0),
        ("bench_current", 1.0, 20.0),
    ):
        if luck.random() < 0.6:
            asked[f"ask.{key}"] = luck.uniform(low, high)
    if luck.random() < 0.6:
        asked["ask.magnets"] = float(luck.randint(2, 30))
    return board, asked, luck.choice([[], RIDES[:2], RIDES])


def items_of(case: Drawn) -> dict[str, Mapping[str, Any]]:
    """Return what the app says, by page; what it says in words stands beside the results."""
    board, asked, rides = case
    asking, rider = {key: Value(value) for key, value in asked.items()}, Value(RIDER, "measured")
    lines = comparison(board, DEMOS["Weir"], rider, asking).lines
    stops = stopping(board, rider, asking)
    card = controller_card(board, rider, asking)
    logged = [LoggedRide(way, energy, speed=speed) for way, energy, speed in rides]
    brakes = {**pack_figures(board, rider, asking).items, **descent(board, rider, asking).items}
    return {
        "gearing": gearing(board, rider, AT_SPEED).items,
        "push": pushing(board, rider, asking).items,
        "pair": pair_details(board, rider, asking),
        "compare": {line.name: line.first for line in lines},
        "compare second": {line.name: line.second for line in lines},
        "stopping": {**stops.items, "cuts out": stops.cuts_out},
        "range": range_answer(board, rider, asking, logged).items,
        "wheel": wheel(board, rider, asking),
        "bench": bench_motor(board, asking),
        "braking": {name: item for name, item in brakes.items() if name.startswith(("slows", "stop"))},
        "card": {**card.items, **{f"held {name[6:]}": part for name, part in card.held_by.items()}},
    }


def numbers_of(case: Drawn) -> dict[str, second.Page]:
    """Return the same by the second calculation."""
    board, asked, rides = case
    setup = Setup(board, RIDER, asked)
    return {
        "gearing": second.gearing(setup, AT_SPEED),
        "push": second.pushing(setup),
        "pair": second.pair(setup),
        "compare": second.compared(setup),
        "compare second": second.compared(Setup(DEMOS["Weir"], RIDER, asked)),
        "stopping": second.stopping(setup),
        "range": second.ranged(setup, rides),
        "wheel": second.wheel(setup),
        "bench": second.bench(setup),
        "braking": second.braking(setup),
        "card": second.card(setup),
    }


def unlike(item: Item, told: Any, case: Drawn) -> str:
    """Return how a result differs from that of the second calculation; "" when it does not."""
    if isinstance(item, Open):
        return unconfirmed(item, told, case)
    if isinstance(told, Gap):
        return f"{float(item.value)}, second {told}"
    number, band = told if isinstance(told, tuple) else (told, None)
    same = item.value == pytest.approx(number, rel=WITHIN, abs=1e-7) and (
        item.band is band is None or (item.band and band and item.band == pytest.approx(band, rel=WITHIN))
    )
    return "" if same else f"{float(item.value)} {item.band}, second {told}"


def unconfirmed(item: Open, told: Any, case: Drawn) -> str:
    """Return why a refusal is not confirmed."""
    board, asked, _ = case
    for key in item.missing:
        if asked.get(key) if key.startswith("ask.") else board.value(key):
            return f"{key} is said to be missing"
    reason = item.outcome or (item.problem.reason if item.problem else "")
    same = isinstance(told, Gap) and (bool(told.missing) if item.missing else told.refused == reason)
    return "" if same else f"{item.missing or reason}, second {told}"


def differences(case: Drawn, counted: Counter[str]) -> Iterator[str]:
    """Yield what differs on a board; count the numbers that both have, the words, and the refusals that both give."""
    others = numbers_of(case)
    for page, items in items_of(case).items():
        for name, item in items.items():
            if page == "braking" and name not in others[page]:
                continue  # "stop_for_long" and the like on one page only
            told = others[page][name]
            if isinstance(item, Result | Open):
                found = unlike(item, told, case)
            else:
                word = type(item)() if isinstance(told, Gap) else told
                found = "" if item == word else f"{item!r}, second {told!r}"
            if found:
                yield f"{page}.{name}: {found}"
            counted[f"{'no ' if isinstance(item, Open) else ''}{page}.{name}"] += 1


def stretches_apart(case: Drawn) -> Iterator[str]:
    """Yield where another limit rules than the pages of push and of stopping say."""
    board, asked, _ = case
    asking, rider = {key: Value(value) for key, value in asked.items()}, Value(RIDER, "measured")
    setup = Setup(board, RIDER, asked)
    for each in pushing(board, rider, asking).stretches:
        told = second.rules(setup, 0.5 * (each.low + each.high))
        if told != each.limit:
            yield f"{each}, second {told}"
    for held in stopping(board, rider, asking).stretches:
        told = second.brake_rules(setup, 0.5 * (held.low + held.high))
        if told != held.ruler:
            yield f"{held}, second {told}"


def test_random_boards() -> None:
    counted: Counter[str] = Counter()
    found = [f"{number} {each}" for number in range(BOARDS) for each in differences(drawn(number), counted)]
    assert found == []
    numbers = {name: count for name, count in counted.items() if not name.startswith("no ")}
    # A result that is hardly ever compared is not held.
    assert len(numbers) >= 110
    assert min(numbers.values()) >= BOARDS // 20, sorted(numbers, key=numbers.__getitem__)[:5]
    assert sum(counted.values()) - sum(numbers.values()) >= BOARDS


def test_what_rules_where() -> None:
    cases = [drawn(number) for number in range(BOARDS)]
    assert [each for case in cases for each in stretches_apart(case)] == []


@pytest.mark.parametrize("board", DEMOS.values(), ids=DEMOS)
def test_example_boards(board: Board) -> None:
    _, asked, _ = drawn(7)
    counted: Counter[str] = Counter()
    assert list(differences((board, asked, RIDES), counted)) == []
    assert len([name for name in counted if not name.startswith("no ")]) >= 80


EACH = 4
"""Rows of each table of pairs that are worked out again."""


TOLD = ("unloaded", "loaded", "spread", "push", "climb", "heat", "stop", "limit")
OF_A_ROW = ("belt_load", "electrical", "erpm_margin")


def rows_apart(number: int) -> Iterator[str]:
    """Yield what differs between some rows of a board's table of pairs and the second calculation."""
    board, asked, _ = drawn(number)
    table = pair_table(board, Value(RIDER, "measured"), {key: Value(value) for key, value in asked.items()})
    whole = Setup(board, RIDER, asked)
    if any(board.value(key) for key in table.missing):
        yield f"{number}: {table.missing} are said to be missing"
    stop = second.option(whole)["stop"]
    # Where a value is missing as well, what was asked wrongly is told first.
    if table.problem is not None and not (
        isinstance(stop, Gap) and (stop.missing or stop.refused == table.problem.reason)
    ):
        yield f"{number}: {table.problem}, second {stop}"
    if table.usual:
        # What is usual stands in for what is not known: the rows are rough, and held against the first speed and push.
        if not any(isinstance(found, Gap) for found in second.option(whole).values()):
            yield f"{number}: rough, though nothing is missing"
        return
    for pair in Random(number).sample(table.pairs, min(EACH, len(table.pairs))):
        motor, wheel_teeth = pair.option.motor_teeth, pair.option.wheel_teeth
        setup = whole.other("drive.motor_teeth", motor).other("drive.wheel_teeth", wheel_teeth)
        if wheel_teeth > second.largest_wheel(setup) and not pair.present:
            yield f"{number} {motor}:{wheel_teeth}: does not clear the ground"
        for each in (*row_apart(pair, second.option(setup)), *belt_apart(pair, setup)):
            yield f"{number} {motor}:{wheel_teeth} {each}"


def row_apart(pair: Pair, other: second.Page) -> Iterator[str]:
    """Yield what differs in one row, its words among it."""
    found = pair.option
    told = {name: getattr(found, name) for name in TOLD} | {name: getattr(pair, name) for name in OF_A_ROW}
    for name, value in told.items():
        if value is None:
            same = isinstance(other[name], Gap) or other[name] is None
        else:
            same = other[name] == (value if isinstance(value, str) else pytest.approx(value, rel=WITHIN))
        if not same:
            yield f"{name}: {value}, second {other[name]}"
    if isinstance(other["loaded"], Gap) and other["loaded"].refused != found.outcome:
        yield f"loaded: {found.outcome}, second {other['loaded']}"


def belt_apart(pair: Pair, setup: Setup) -> Iterator[str]:
    """Yield what differs in the belt of a row."""
    if pair.belt is None:
        return
    length = pair.belt.teeth * setup.profile["pitch"] / 1000.0
    centre = second.centre_of(length, setup.pulley("motor"), setup.pulley("wheel"))
    if pair.belt.centre != pytest.approx(centre, rel=WITHIN):
        yield f"centre: {pair.belt.centre}, second {centre}"
    if pair.belt.in_mesh != second.whole_teeth(setup, centre):
        yield f"teeth in mesh: {pair.belt.in_mesh}"


def test_rows_of_pairs() -> None:
    assert [each for number in range(BOARDS) for each in rows_apart(number)] == []


def test_the_second_calculation_by_hand() -> None:
    """Towpath 36 at 20 km/h, each step on paper, so that both calculations rest on more than each other.

    Motor: 170 rpm/V = 17.8024 rad/(s V); 40:16 on 100 mm: 2.5 / 0.05 m = 50 rad/m; at 5.5556 m/s 277.78 rad/s and
    277.78 / 17.8024 = 15.603 V. Each ampere of both motors: 2 x 50 / 17.8024 = 5.6172 N.
    Road: 90.5 kg x 9.80665 x 0.015 = 13.313 N; 0.5 x 1.225 x 0.60 x 30.864 = 11.343 N; 24.655 N together.
    Held steady: 24.655 / 0.95 / 5.6172 + 1.5 = 6.1202 A; 2 x 6.1202 x (15.603 + 6.1202 x 0.045) = 194.36 W;
    10S2P of 22 mohm: 0.110 ohm; (36 - root of (1296 - 0.44 x 194.36)) / 0.22 = 5.491 A;
    36 x 5.491 / 5.5556 = 35.58 J/m = 9.884 Wh/km.
    Full remote: 30 A x (36 - 3.3) = 981 W, 490.5 W a motor: 0.045 I^2 + 15.603 I = 490.5 gives 29.009 A, below 45 A;
    it takes 16.909 / 32.7 = 52 % duty, below 95 %; (29.009 - 1.5) x 5.6172 x 0.95 = 146.80 N.
    Brake, empty: 8 A x (30 + 0.88) = 247.04 W, 123.52 W a motor: 15.603 I - 0.045 I^2 = 123.52 gives 8.106 A;
    8.106 x 5.6172 = 45.53 N; rear axle, dry: 0.6 x 887.5 x 0.375 / (0.75 + 0.6) = 147.92 N, more than that;
    (45.53 + 24.655) / 90.5 = 0.7755 m/s2.
    """
    asked = {
        "ask.axle": "behind",
        "ask.wheelbase": 0.75,
        "ask.mass_behind_front": 0.375,
        "ask.mass_height": 1.0,
    }
    setup, speed = Setup(DEMOS["Towpath 36"], RIDER, asked), 20.0 / 3.6
    assert setup.load(speed) == pytest.approx(24.655, abs=5e-4)
    assert setup.steady(speed) == pytest.approx(6.1202, abs=5e-5)
    power, drawn_amps = setup.battery(setup.steady(speed), speed)
    assert power == pytest.approx(194.36, abs=5e-3)
    assert drawn_amps == pytest.approx(5.491, abs=5e-4)
    assert setup.each_metre(speed) / 3.6 == pytest.approx(9.884, abs=5e-4)
    amps, limit = setup.limits(speed)
    assert (amps, limit) == (pytest.approx(29.009, abs=5e-4), "battery current")
    assert setup.push(speed) == pytest.approx(146.80, abs=5e-3)
    assert setup.brake_amps(speed, 8.0, 30.0) == pytest.approx(8.106, abs=5e-4)
    assert setup.grip("dry", braking=True) == pytest.approx(147.92, abs=5e-3)
    assert setup.slows(setup.regen, stop=False) == pytest.approx(0.7755, abs=5e-5)
