"""The answers about packs against a second calculation, over the example boards and boards drawn at random.

`SECOND_BOARDS=1000` draws as many; the suite draws a few dozen.
"""

import os
from collections import Counter
from collections.abc import Mapping
from math import exp, log
from random import Random

import pytest

from logic.answers.carrying import flight
from logic.answers.charging import charging
from logic.answers.descents import descent
from logic.answers.energy import pack_figures
from logic.answers.hold import holding
from logic.answers.joining import joining
from logic.answers.reading import Item, Result
from logic.answers.wiring import first_power, wiring
from logic.board import Board, Value, board_fields
from logic.exchange import demo_boards
from tests.second import pack as second

BOARDS = int(os.environ.get("SECOND_BOARDS", "40"))
WITHIN = 1e-3
DEMOS = demo_boards()
RIDER = 80.0

COUNTS = {"pack.series": (3, 20), "pack.parallel": (1, 8), "pack.packs": (1, 4)}
DRAWN = (
    "pack.cell_capacity", "pack.cell_resistance", "pack.cell_mass", "pack.cell_discharge_current",
    "pack.cell_charge_current", "pack.cell_brake_current", "pack.bms_discharge_current", "pack.bms_charge_current",
    "pack.charger_current", "pack.fuse", "pack.connector_current", "pack.lead_area", "pack.lead_length",
    "pack.marked_energy", "controller.battery_current", "controller.regen_current", "controller.capacitance",
    "motor.kv", "motor.resistance", "motor.no_load_current", "controller.motor_current", "load.board_mass",
    "load.rolling", "load.drag_area", "load.efficiency", "drive.wheel_diameter",
)  # fmt: skip
NARROW = {
    "pack.cell_capacity": (3600.0, 36000.0),
    "pack.lead_area": (0.6e-6, 9.0e-6),
    "motor.no_load_current": (0.2, 5.0),
    "controller.regen_current": (0.5, 60.0),
    "pack.marked_energy": (50.0 * 3600.0, 250.0 * 3600.0),
}
"""Drawn where an answer has something to say; the whole width belongs to the fuzz."""


def drawn(number: int) -> tuple[Board, dict[str, float | str]]:
    """Return an example board with many values drawn anew, and answers to every question."""
    luck = Random(number)
    board = luck.choice(DEMOS)
    for key, (low, high) in COUNTS.items():
        board = board.with_value(key, Value(float(luck.randint(low, high))))
    board = board.with_value("pack.chemistry", Value(luck.choice(["NMC", "NCA", "LFP"])))
    board = board.with_value("pack.lead_insulation", Value(luck.choice(["PVC", "XLPE", "silicone"])))
    for key in ("pack.marked", "pack.tested"):
        board = board.with_value(key, Value(luck.choice(["yes", "yes", "no", "not known"])))
    meaning = luck.choice(["six-step", "sine peak", "sine rms"])
    board = board.with_value("controller.current_meaning", Value(meaning))
    for key in DRAWN:
        field = board_fields()[key]
        low, high = NARROW.get(key, (max(field.low, 1e-6), field.high))
        if luck.random() < 0.6 or board.value(key) is None:
            value = Value(exp(luck.uniform(log(low), log(high))), luck.choice(["measured", "label", "guess"]))
            optional = key.startswith(
                ("pack.bms", "pack.fuse", "pack.connector", "pack.cell_charge", "pack.marked")
            )
            board = board.with_value(key, None if optional and luck.random() < 0.5 else value)
    full = float(board.pack.series.si) * 4.0  # type: ignore[union-attr]
    start = luck.uniform(0.0, 0.95)
    asked: dict[str, float | str] = {
        "ask.charged": luck.choice(["apart", "joined"]),
        "ask.charge": start,
        "ask.target": luck.choice([1.0, luck.uniform(start, 1.0)]),
        "ask.cells_at": luck.uniform(279.0, 312.0),
        "ask.first_volts": luck.uniform(0.8, 1.0) * full,
        "ask.second_volts": luck.uniform(0.8, 1.0) * full,
        "ask.joining_leads": luck.choice([0.0, 0.01]),
        "ask.peak_share": luck.uniform(0.0, 1.0),
        "ask.cruise": luck.uniform(0.0, 40.0),
        "ask.wire_at": luck.uniform(293.0, 373.0),
        "ask.precharge": luck.uniform(1.0, 100.0),
        "ask.carried": luck.choice(["apart", "joined"]),
        "ask.loose": float(luck.randint(0, 4)),
        "ask.start_charge": luck.uniform(0.0, 1.0),
        "ask.drop": luck.uniform(5.0, 500.0),
        "ask.hold_speed": luck.uniform(1.0, 8.0),
        "ask.hold_grade": luck.uniform(0.0, 0.3),
        "ask.air_temperature": luck.uniform(270.0, 310.0),
        "ask.start_temperature": luck.uniform(280.0, 330.0),
        "ask.limit_temperature": luck.uniform(335.0, 400.0),
        "ask.thermal_resistance": luck.uniform(0.3, 4.0),
        "ask.motor_mass": luck.uniform(0.2, 2.0),
    }
    if luck.random() < 0.5:
        asked["ask.current"] = luck.uniform(1.0, 100.0)
    if luck.random() < 0.5:
        asked |= {"ask.second_parallel": 2.0, "ask.second_capacity": 9000.0, "ask.second_resistance": 0.03}
    return board, asked


def items_of(board: Board, asked: Mapping[str, float | str]) -> dict[str, Mapping[str, Item]]:
    """Return every result of the pages about packs, by page."""
    asking, rider = {key: Value(value) for key, value in asked.items()}, Value(RIDER, "measured")
    travel = flight(board, asking)
    return {
        "energy": pack_figures(board, rider, asking).items,
        "charging": charging(board, asking).items,
        "joining": joining(board, asking).items,
        "wiring": wiring(board, asking).items,
        "first_power": first_power(board, asking).items,
        "carrying": {"each": travel.energy, "all_joined": travel.all_joined},
        "descent": descent(board, rider, asking).items,
        "hold": holding(board, rider, asking).items,
    }


def numbers_of(board: Board, asked: Mapping[str, float | str]) -> dict[str, dict[str, object]]:
    """Return the same by the second calculation; a page that lacks a value has none."""
    found: dict[str, dict[str, object]] = {}
    for name, compute in {
        "energy": lambda: second.energy(board, asked),
        "charging": lambda: second.charging(board, asked),
        "joining": lambda: second.joining(board, asked),
        "wiring": lambda: second.wiring(board, asked),
        "first_power": lambda: second.wiring(board, asked),
        "carrying": lambda: second.carrying(board, asked),
        "descent": lambda: second.descent(board, RIDER, asked),
        "hold": lambda: second.hold(board, RIDER, asked),
    }.items():
        try:
            found[name] = compute()
        except (KeyError, StopIteration):
            found[name] = {}
    return found


BRAKING = ("slows", "stop")
"""Left to the second calculation of stopping: what the brake of a board does to it."""


def compared(board: Board, asked: Mapping[str, float | str]) -> list[str]:
    """Compare all results of a board; return the names of those that both have."""
    names = []
    others = numbers_of(board, asked)
    for page, items in items_of(board, asked).items():
        other = others[page]
        for name, item in items.items():
            if not isinstance(item, Result) or name.startswith(BRAKING) or not other:
                continue
            told = other[name]
            value, band = item.value, item.band
            if isinstance(told, tuple) and isinstance(told[1], tuple):
                assert value == pytest.approx(told[0], rel=WITHIN), (page, name)
                told = told[1]
            if isinstance(told, tuple):
                assert band == pytest.approx(told, rel=WITHIN), (page, name)
            else:
                assert value == pytest.approx(told, rel=WITHIN, abs=1e-9), (page, name)
            names.append(f"{page}.{name}")
    return names


def test_random_boards() -> None:
    counted: Counter[str] = Counter()
    for number in range(BOARDS):
        counted.update(compared(*drawn(number)))
    pages = {name.split(".")[0] for name in counted}
    assert pages == {
        "energy", "charging", "joining", "wiring", "first_power", "carrying", "descent", "hold"
    }  # fmt: skip
    # A result that is hardly ever compared is not held.
    assert len(counted) >= 70
    assert min(counted.values()) >= BOARDS // 20, counted.most_common()[-5:]


@pytest.mark.parametrize("board", DEMOS, ids=[board.name for board in DEMOS])
def test_example_boards(board: Board) -> None:
    _, asked = drawn(7)
    assert len(compared(board, asked)) >= 35


def test_outcome_of_a_flight() -> None:
    outcomes = Counter()
    for number in range(BOARDS):
        board, asked = drawn(number)
        found = flight(board, {key: Value(value) for key, value in asked.items()}).verdict
        other = second.carrying(board, asked)
        assert (found is None) is (not other)
        if found is not None:
            assert found.outcome == other["outcome"]
            outcomes[found.outcome] += 1
    assert len(outcomes) >= 3


def test_the_second_calculation_by_hand() -> None:
    """Towpath 36, each step on paper, so that both calculations rest on more than each other.

    10S2P of 4.0 Ah and 22 mohm: 10 x 3.6 V x 8.0 Ah = 288 Wh; 10 x 22 / 2 = 110 mohm; 30 A x 0.110 = 3.3 V.
    From 20 % at 3 A of 8 Ah: 0.375 C. With 0.49 h the current is constant to 1 - 0.49 x (0.375 - 0.05) = 0.84075,
    (0.84075 - 0.2) / 0.375 = 1.7087 h; then 0.49 h x ln(0.375 / 0.05) = 0.9873 h; 2.6960 h together.
    A drop of 50 m for 90.5 kg: 90.5 x 9.80665 x 50 x 0.7 / 3600 = 8.6285 Wh.
    """
    board = next(board for board in DEMOS if board.name == "Towpath 36")
    asked: dict[str, float | str] = {
        "ask.charged": "apart",
        "ask.charge": 0.2,
        "ask.target": 1.0,
        "ask.start_charge": 0.9,
        "ask.drop": 50.0,
    }
    figures = second.energy(board, asked)
    assert figures["energy"] / 3600.0 == pytest.approx(288.0)
    assert figures["resistance"] == pytest.approx(0.110)
    assert figures["sag"] == pytest.approx(3.30)
    usual, _ = second.charging(board, asked)["time"]
    assert usual / 3600.0 == pytest.approx(2.6960, abs=5e-5)
    assert second.descent(board, RIDER, asked)["comes_back"] / 3600.0 == pytest.approx(8.6285, abs=5e-5)
