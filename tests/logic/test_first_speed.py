"""The best speed so far: its steps, its band, and what stands in for what nobody knows."""

from random import Random

import pytest

from logic.answers.first_speed import (
    FIRST,
    LIMITS,
    WEIGHT,
    first_speed,
)
from logic.answers.gearing import gearing, top_loaded
from logic.answers.reading import Open, Result
from logic.answers.rough import OPEN, RoughParts, RoughReading
from logic.board import Board, Value
from logic.exchange import demo_boards
from logic.tables import rows
from tests.loose import loose_ends

KMH = 1 / 3.6
RIDER = Value(80.0, "guess")
DEMOS = demo_boards()


def only(board: Board, *keys: str) -> Board:
    """Return a board that knows no more than these of another one."""
    found = Board("few", "Few")
    for key in keys:
        if key != "rider.mass" and board.value(key) is not None:
            found = found.with_value(key, board.value(key))
    return found


def few(**more: float) -> Board:
    """The board of the handbook's example: 10S, Kv 190, 15:36, 90 mm."""
    board = Board("few", "Few")
    values = {"pack.series": 10.0, "motor.kv": 190.0 * 0.10471975511965977, "drive.motor_teeth": 15.0}
    values |= {"drive.wheel_teeth": 36.0, "drive.wheel_diameter": 0.09, **more}
    for key, si in values.items():
        board = board.with_value(key, Value(si, "label"))
    return board


def test_a_first_speed_is_that_of_the_handbook() -> None:
    # Handbook of electric drives, top speed without load: 10S, Kv 190, 15:36, 90 mm, duty 0.95: 45.9 km/h at 36 V; and
    # "loaded 80 to 90 % of no-load" as common practice, here up to 95 % for a light board.
    found = first_speed(few(), None)
    assert found.level == "without load"
    assert found.item.value / KMH == pytest.approx(45.9, abs=0.05)
    assert isinstance(found.road, Result)
    assert [end / found.item.value for end in found.road.band] == pytest.approx([0.80, 0.95])
    assert found.road.standing == "estimate"


def test_an_empty_board_names_the_five_values() -> None:
    found = first_speed(Board("empty", "Empty"), None)
    assert found.level == "nothing"
    assert isinstance(found.item, Open)
    assert found.item.missing == FIRST


@pytest.mark.parametrize("board", DEMOS, ids=lambda board: board.name)
def test_each_step_is_nearer_and_the_full_answer_lies_in_its_band(board: Board) -> None:
    full = gearing(board, RIDER, 6.0).items["top_loaded"]
    weight = first_speed(only(board, *FIRST, *WEIGHT), RIDER)
    limits = first_speed(only(board, *FIRST, *WEIGHT, *LIMITS), RIDER)
    assert (weight.level, limits.level) == ("with weight", "with limits")
    assert limits.item.band[0] < float(full.value) < limits.item.band[1]
    assert limits.item.band[1] - limits.item.band[0] < weight.item.band[1] - weight.item.band[0]


@pytest.mark.parametrize("board", DEMOS, ids=lambda board: board.name)
def test_with_every_value_it_is_the_full_answer(board: Board) -> None:
    full = gearing(board, RIDER, 6.0).items["top_loaded"]
    assert float(first_speed(board, RIDER).item.value) == pytest.approx(float(full.value))


@pytest.mark.parametrize("board", DEMOS, ids=lambda board: board.name)
def test_its_working_has_no_loose_end_and_says_it_is_an_estimate(board: Board) -> None:
    found = first_speed(only(board, *FIRST, *WEIGHT), RIDER)
    assert loose_ends(found.item) == []
    assert found.item.rough
    assert found.item.standing == "estimate"
    assumed = {entry.name for entry in found.item.inputs if entry.known == "assumed"}
    assert {"Resistance of one cell", "Rolling coefficient", "Drag area"} <= assumed
    assert any(name.startswith("Winding heat") for name in assumed)
    assert all(entry.source for entry in found.item.inputs if entry.known == "assumed")


def test_the_size_of_the_can_narrows_the_band() -> None:
    known = few(**{"load.board_mass": 11.0, "pack.parallel": 3.0, "controller.battery_current": 30.0})
    any_can = first_speed(known, RIDER).item
    can = first_speed(known.with_value("mount.can_diameter", Value(0.063, "measured")), RIDER).item
    assert can.band[1] - can.band[0] < any_can.band[1] - any_can.band[0]


def test_cells_for_power_sag_less_than_cells_for_energy() -> None:
    known = few(**{"load.board_mass": 11.0, "pack.parallel": 2.0})
    speeds = [
        float(first_speed(known.with_value("pack.cell_discharge_current", Value(amps)), RIDER).item.value)
        for amps in (25.0, 10.0)
    ]
    assert speeds[0] > speeds[1]


def test_the_band_holds_nine_of_ten_boards_drawn_within_what_is_usual() -> None:
    """A simulation beside the sum of squares: each value drawn evenly between its ends.

    A sum of many even spreads of half widths h is near normal with a deviation of sqrt(sum h^2 / 3): within sqrt(3)
    deviations lie 92 of 100, somewhat fewer where one side is longer.
    """
    board = few(**{"load.board_mass": 11.0, "pack.parallel": 3.0, "controller.battery_current": 30.0})
    found, luck = first_speed(board, RIDER), Random(5)

    def at(key: str, end: str) -> float:
        return float(top_loaded(RoughParts(RoughReading(board, RIDER, key, end))))  # type: ignore[arg-type]

    ends = {key: (at(key, "low"), at(key, "high")) for key in found.assumed}
    usual = float(found.item.value)
    inside = 0
    for _ in range(1000):
        moved = sum(luck.uniform(min(usual, *pair), max(usual, *pair)) - usual for pair in ends.values())
        inside += found.item.band[0] <= usual + moved <= found.item.band[1]
    # A thousand draws of nine in ten scatter by 9.5; three times that.
    assert inside == pytest.approx(900, abs=29)


def test_rows_that_stand_in_are_in_order() -> None:
    for row in rows("motor_usual"):
        assert row.cells["heat_low"] < row.cells["heat"] < row.cells["heat_high"]
        assert row.cells["drag_low"] < row.cells["drag"] < row.cells["drag_high"]
        assert (row.source, row.standing) == ("memory", "estimate")
    for row in rows("cell_kinds"):
        assert row.cells["resistance_low"] < row.cells["resistance"] < row.cells["resistance_high"]
    # A larger can of the same winding heats less at one newton metre, and drags more.
    cans = rows("motor_usual")[:3]
    assert [row.cells["heat"] for row in cans] == sorted((row.cells["heat"] for row in cans), reverse=True)
    assert [row.cells["drag"] for row in cans] == sorted(row.cells["drag"] for row in cans)


@pytest.mark.parametrize("board", DEMOS, ids=lambda board: board.name)
def test_the_example_boards_lie_within_what_stands_in_for_them(board: Board) -> None:
    """Invented boards, but of the usual kind: what their labels say is within both ends."""
    parts = {end: RoughParts(RoughReading(only(board, "motor.kv"), None)) for end in ("low", "high")}
    for key, read in (
        ("motor.resistance", "winding_resistance"),
        ("motor.no_load_current", "no_load_current"),
    ):
        low, high = (
            getattr(RoughParts(RoughReading(only(board, "motor.kv"), None, key, end)), read)  # type: ignore[arg-type]
            for end in parts
        )
        assert low < float(board.value(key).si) < high
    assert "motor.kv" in OPEN
