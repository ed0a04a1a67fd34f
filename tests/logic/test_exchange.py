"""Board files: values written as a person types them."""

import tomllib

import pytest

from logic.board import Value
from logic.errors import InputError
from logic.exchange import board_from_text, demo_boards
from logic.tables import ASSETS

PAGE = {
    "name": "Mooring",
    "values": {"drive.wheel_diameter": ["3.8 in", "measured"], "drive.motors": ["1", "label"]},
}


def page(**values: list[str]) -> dict[str, object]:
    """Return a page with one value more."""
    return {
        **PAGE,
        "values": {**PAGE["values"], **{key.replace("__", "."): pair for key, pair in values.items()}},
    }


def test_a_value_keeps_its_unit_and_how_it_is_known() -> None:
    board = board_from_text(PAGE, identity="b1")
    assert board.drive.wheel_diameter == Value(pytest.approx(0.09652), "measured", typed_unit="in")
    assert board.drive.motors == Value("1", "label")
    assert (board.id, board.name, board.example) == ("b1", "Mooring", False)


@pytest.mark.parametrize(
    ("values", "reason"),
    [
        ({"drive__motor_teeth": ["7", "measured"]}, "range"),
        ({"drive__motor_teeth": ["16.5", "measured"]}, "whole"),
        ({"drive__wheel_diameter": ["1.234,5 mm", "label"]}, "ambiguous"),
        ({"drive__profile": ["HTD 4M", "label"]}, "choice"),
        ({"motor__kv": ["170 furlongs", "label"]}, "unknown unit"),
    ],
)
def test_what_cannot_be_read_is_refused(values: dict[str, list[str]], reason: str) -> None:
    with pytest.raises(InputError) as refused:
        board_from_text(page(**values), identity="b1")
    assert refused.value.reason == reason


def test_the_example_boards_are_marked_and_each_has_an_identity_of_its_own() -> None:
    first, second = demo_boards(), demo_boards()
    assert [board.name for board in first] == ["Towpath 36", "Lock-keeper", "Weir", "Ferry"]
    assert all(board.example for board in first)
    assert len({board.id for board in (*first, *second)}) == 8


@pytest.mark.parametrize("path", sorted((ASSETS / "boards").glob("*.toml")), ids=lambda path: path.stem)
def test_every_example_file_is_used_and_its_first_lines_say_it_is_invented(path) -> None:
    text = path.read_text("utf-8")
    assert text.startswith("#")
    assert tomllib.loads(text)["name"] in {board.name for board in demo_boards()}


TOWPATH = {
    "drive.motor_teeth": 16.0, "drive.wheel_teeth": 40.0, "drive.belt_teeth": 56.0, "drive.belt_width": 0.015,
    "drive.wheel_diameter": 0.100, "motor.kv": 17.8023583703, "motor.resistance": 0.045,
    "motor.no_load_current": 1.5, "motor.pole_pairs": 7.0, "controller.motor_current": 45.0,
    "controller.brake_current": 35.0, "controller.battery_current": 30.0, "controller.regen_current": 8.0,
    "controller.duty": 0.95, "pack.series": 10.0, "pack.parallel": 2.0, "pack.packs": 1.0, "pack.cell_capacity": 14400.0,
    "pack.cell_resistance": 0.022, "pack.cell_charge_current": 4.0, "pack.cell_discharge_current": 25.0,
    "load.board_mass": 10.5,
}  # fmt: skip
"""The demo scenario's first column in SI: 170 rpm/V is 17.802 rad/s for each volt, 4 Ah are 14 400 C."""


@pytest.mark.parametrize(("key", "si"), TOWPATH.items())
def test_towpath_36_is_the_board_of_the_scenario(key: str, si: float) -> None:
    assert demo_boards()[0].value(key).si == pytest.approx(si)
