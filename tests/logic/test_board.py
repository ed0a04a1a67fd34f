"""A board: what it holds, what it refuses, and that it comes back from plain data as it went in."""

import json
from dataclasses import replace
from typing import Any

import pytest
from hypothesis import given

from logic import board_saved as boards
from logic.board import Board, Drive, Field, Value, board_fields, faults, value_from
from logic.board_saved import from_dict, to_dict
from logic.errors import InputError
from logic.exchange import demo_boards
from tests.random_boards import EMPTY, SPARSE, with_values


@given(SPARSE)
def test_a_board_comes_back_from_its_plain_data(board: Board) -> None:
    assert from_dict(json.loads(json.dumps(to_dict(board)))) == board


@pytest.mark.parametrize("board", demo_boards(), ids=lambda board: board.name)
def test_the_example_boards_come_back_and_fit_together(board: Board) -> None:
    assert from_dict(json.loads(json.dumps(to_dict(board)))) == board
    assert board.example
    assert board.missing() == ()
    assert faults(board) == ()


def test_what_is_not_set_is_not_written() -> None:
    body = to_dict(EMPTY.with_value("drive.motor_teeth", Value(16.0)))
    assert body["drive"] == {"motor_teeth": {"si": 16.0, "known": "guess"}}
    assert body["motor"] == {}
    assert body["version"] == boards.VERSION


@pytest.mark.parametrize("field", [field for field in board_fields().values() if field.kind != "choice"])
def test_limits_are_taken_and_nothing_beyond_them(field: Field) -> None:
    for end in (field.low, field.high):
        assert EMPTY.with_value(field.key, Value(float(end))).value(field.key).si == end
    for beyond in (field.low - 1.0, field.high + 1.0, float("nan"), float("inf")):
        with pytest.raises(InputError) as refused:
            EMPTY.with_value(field.key, Value(beyond))
        assert refused.value.field == field.key
        assert (refused.value.low, refused.value.high) == (field.low, field.high)


@pytest.mark.parametrize(
    ("key", "given", "reason"),
    [
        ("drive.motor_teeth", 16.5, "whole"),
        ("drive.motor_teeth", "16", "not a number"),
        ("drive.profile", "HTD 4M", "choice"),
        ("pack.chemistry", 4.2, "choice"),
        ("controller.duty", 1.5, "range"),
    ],
)
def test_a_value_that_cannot_stand_is_refused_with_its_reason(
    key: str, given: float | str, reason: str
) -> None:
    with pytest.raises(InputError) as refused:
        EMPTY.with_value(key, Value(given))
    assert refused.value.reason == reason


def test_a_part_is_checked_as_it_is_made() -> None:
    with pytest.raises(InputError):
        Drive(motor_teeth=Value(7.0))


@pytest.mark.parametrize("name", ["", "   ", "x" * 41])
def test_a_name_that_cannot_be_shown_is_refused(name: str) -> None:
    with pytest.raises(InputError) as refused:
        Board("b1", name)
    assert refused.value.reason == "name length"


@pytest.mark.parametrize(
    ("values", "reason"),
    [
        ({"drive.wheel_diameter": 0.1, "drive.wheel_diameter_new": 0.097}, "worn above new"),
        ({"drive.motor_teeth": 40.0, "drive.wheel_teeth": 16.0}, "motor above wheel"),
    ],
)
def test_what_does_not_fit_together_is_named_and_not_refused(values: dict[str, float], reason: str) -> None:
    board = with_values(EMPTY, {key: Value(si) for key, si in values.items()})
    assert [fault.reason for fault in faults(board)] == [reason]


def test_equal_pulleys_and_an_unworn_wheel_fit() -> None:
    values = {"drive.motor_teeth": 20.0, "drive.wheel_teeth": 20.0}
    values |= {"drive.wheel_diameter": 0.1, "drive.wheel_diameter_new": 0.1}
    assert faults(with_values(EMPTY, {key: Value(si) for key, si in values.items()})) == ()


def test_a_newer_version_is_refused_untouched() -> None:
    body = {**to_dict(EMPTY), "version": boards.VERSION + 1}
    with pytest.raises(InputError) as refused:
        from_dict(body)
    assert refused.value.reason == "newer version"


def test_older_plain_data_is_upgraded_step_by_step(monkeypatch: pytest.MonkeyPatch) -> None:
    old = {**to_dict(EMPTY), "version": 1, "drive": {"teeth": {"si": 16}}}
    monkeypatch.setattr(boards, "VERSION", 3)
    rename = {1: lambda body: {**body, "drive": {"motor_teeth": body["drive"]["teeth"]}}}
    monkeypatch.setattr(
        boards, "UPGRADES", {**rename, 2: lambda body: {**body, "name": body["name"].upper()}}
    )
    board = from_dict(old)
    assert board.drive.motor_teeth == Value(16.0)
    assert board.name == "MOORING"
    assert to_dict(board)["version"] == 3
    assert old["name"] == "Mooring"


def test_every_older_version_has_an_upgrade() -> None:
    assert set(boards.UPGRADES) == set(range(1, boards.VERSION))


def test_whole_numbers_of_plain_data_become_floats() -> None:
    assert isinstance(value_from({"si": 16}).si, float)
    assert value_from({"si": "HTD 5M", "known": "label"}) == Value("HTD 5M", "label")


def test_questions_come_in_order_and_the_side_only_for_one_motor() -> None:
    asked = [field.key for field in EMPTY.missing()]
    assert asked[:3] == ["drive.motor_teeth", "drive.wheel_teeth", "drive.wheel_diameter"]
    assert "drive.side" not in asked
    one = EMPTY.with_value("drive.motors", Value("1"))
    assert "drive.side" in [field.key for field in one.missing()]
    assert one.filled()[1] == EMPTY.filled()[1] + 1
    assert one.sides == ("left",)
    assert one.with_value("drive.side", Value("right")).sides == ("right",)
    assert one.with_value("drive.motors", Value("2")).sides == ("left", "right")


def test_a_value_can_be_taken_out_and_leaves_the_board_it_came_from() -> None:
    full = EMPTY.with_value("motor.kv", Value(17.8))
    assert full.with_value("motor.kv", None) == EMPTY
    assert full.motor.kv is not None
    assert replace(full, name="Other").motor == full.motor


@pytest.mark.parametrize(
    ("path", "said"),
    [
        (("drive", "colour"), {"si": "blue", "known": "measured"}),
        (("drive", "motor_teeth"), {"si": 15.5}),
        (("drive", "motor_teeth"), {"si": 15.0, "shade": 3}),
        (("pack", "packs"), {"si": True}),
        (("motor", "kv"), "fast"),
        (("joints", "motor_face", "glue"), {"si": "weak"}),
        (("lights",), {"front": {"si": 2}}),
        (("pack",), 7),
    ],
    ids=str,
)
def test_what_cannot_be_read_of_a_board_is_kept_through_load_and_save(
    path: tuple[str, ...], said: object
) -> None:
    body: dict[str, Any] = json.loads(json.dumps(to_dict(EMPTY.with_value("load.board_mass", Value(9.0)))))
    place = body
    for step in path[:-1]:
        place = place.setdefault(step, {})
    place[path[-1]] = said
    board = from_dict(body)
    assert board.value("load.board_mass") == Value(9.0)
    assert [place for place, _ in board.kept] == [path]
    saved = json.loads(json.dumps(to_dict(board.with_value("load.rolling", Value(0.02)))))
    for step in path:
        saved = saved[step]
    assert saved == said


def test_a_value_set_since_stands_before_one_that_could_not_be_read() -> None:
    board = from_dict({**to_dict(EMPTY), "drive": {"motor_teeth": {"si": 15.5}}})
    assert to_dict(board.with_value("drive.motor_teeth", Value(16.0)))["drive"]["motor_teeth"]["si"] == 16.0
