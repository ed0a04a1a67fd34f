"""What is typed for a field: read whole or refused whole; prints of belts and packs; what else could be meant."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from logic.board import Board, Value, board_fields
from logic.entries import entered
from logic.errors import InputError
from logic.fields import field_of
from logic.keys import key_refused, pasted
from logic.prints import belt_print
from logic.units import quantities, read

HTD = Board("b", "Test").with_value("drive.profile", Value("HTD 5M"))


def test_a_belts_print_is_profile_length_and_width() -> None:
    """A belt of 280 mm and 5 mm pitch has 280 / 5 = 56 teeth."""
    found = entered(field_of("drive.belt_teeth"), "280-5M-15")
    assert found.value.si == 56.0
    assert {key: value.si for key, value in found.values.items()} == {
        "drive.profile": "HTD 5M",
        "drive.belt_width": 0.015,
    }
    assert found.told == "print"
    of_width = entered(field_of("drive.belt_width"), "280-5M-15")
    assert (of_width.value.si, of_width.values["drive.belt_teeth"].si) == (0.015, 56.0)


@pytest.mark.parametrize(("text", "profile", "teeth", "width"), [
    ("280-5m-15", "HTD 5M", 56, 0.015), ("HTD 280-5M-15", "HTD 5M", 56, 0.015), ("265 5M 9", "HTD 5M", 53, 0.009),
    ("201-3M-9", "HTD 3M", 67, 0.009), ("280-5MGT-15", "GT 5M", 56, 0.015), ("GT 280-5M-15", "GT 5M", 56, 0.015),
])  # fmt: skip
def test_prints_of_belts(text: str, profile: str, teeth: int, width: float) -> None:
    found = belt_print(text)
    assert found is not None
    assert (found.profile, found.teeth, found.width) == (profile, teeth, pytest.approx(width, rel=1e-12))


@pytest.mark.parametrize(("text", "reason"), [
    ("280-5MX-15", "unknown print"), ("282-5M-15", "no whole teeth"), ("280-5M-60", "range"), ("280-", "half a print"),
    ("280-5", "half a print"), ("280-5M", "half a print"), ("HTD 280-5M-", "half a print"), ("-5", "range"),
])  # fmt: skip
def test_prints_that_cannot_be_used(text: str, reason: str) -> None:
    """A print that is half typed is no number of teeth either, nor has it a unit that is not known."""
    with pytest.raises(InputError) as refused:
        entered(field_of("drive.belt_teeth"), text)
    assert refused.value.reason == reason
    assert refused.value.given == text


def test_a_length_typed_for_teeth_is_offered_as_such() -> None:
    """265 teeth of 5 mm would be 1325 mm; 265 mm are 53 teeth. What is typed stands until the other is taken."""
    found = entered(field_of("drive.belt_teeth"), "265", "teeth", HTD)
    assert found.value.si == 265.0
    assert found.offer is not None
    assert found.offer.si == 53.0
    for text in ("56", "90", "266"):
        assert entered(field_of("drive.belt_teeth"), text, "teeth", HTD).offer is None


def test_a_length_with_its_unit_is_teeth_by_the_profile() -> None:
    field = field_of("drive.belt_teeth")
    assert entered(field, "265 mm", "teeth", HTD).value.si == 53.0
    for text, board, reason in (("265 mm", None, "profile first"), ("266 mm", HTD, "no whole teeth")):
        with pytest.raises(InputError, match=reason):
            entered(field, text, "teeth", board)


@pytest.mark.parametrize(("text", "chemistry", "cells"), [
    pytest.param("36 V", "NMC", 10, id="10 x 3.6, bu-205"), pytest.param("36V", "NCA", 10, id="10 x 3.6 again"),
    pytest.param("37 V", "NMC", 10, id="10 x 3.7"), pytest.param("42 volts", "NMC", 10, id="10 x 4.2, full"),
    pytest.param("44,4 V", "NMC", 12, id="12 x 3.7"), pytest.param("48 V", "NMC", 13, id="13 x 3.7 = 48.1"),
    pytest.param("38.4 V", "LFP", 12, id="12 x 3.2"),
])  # fmt: skip
def test_volts_of_a_label_are_cells_in_series(text: str, chemistry: str, cells: int) -> None:
    board = Board("b", "Test").with_value("pack.chemistry", Value(chemistry))
    found = entered(field_of("pack.series"), text, None, board)
    assert (found.value.si, found.told) == (float(cells), "volts")


@pytest.mark.parametrize(("text", "reason"), [
    pytest.param("50.4 V", "volts fit two", id="12 x 4.2 and 14 x 3.6"),
    pytest.param("24 V", "volts fit no cells", id="6 x 4.2 = 25.2, 7 x 3.6 = 25.2, 6 x 3.7 = 22.2"),
])  # fmt: skip
def test_volts_that_tell_no_count_are_refused(text: str, reason: str) -> None:
    with pytest.raises(InputError) as refused:
        entered(field_of("pack.series"), text)
    assert refused.value.reason == reason


def test_a_packs_print_is_series_and_parallel() -> None:
    found = entered(field_of("pack.series"), "10S2P")
    assert (found.value.si, found.values["pack.parallel"].si) == (10.0, 2.0)
    assert entered(field_of("pack.parallel"), "10s2p").value.si == 2.0
    assert entered(field_of("pack.series"), "10S").others == ()


@pytest.mark.parametrize("text", ["6374 170KV", "6374-170kv", "6374 170 Kv"])
def test_a_motors_print_is_its_can_and_its_constant(text: str) -> None:
    """Two digits for the can's diameter in mm, two for its length: common practice, no source."""
    found = entered(field_of("motor.kv"), text)
    assert quantities()["speed_constant"].unit("rpm/V").of_si(
        found.value.si, quantities()["speed_constant"].si
    ) == (pytest.approx(170.0, rel=1e-12))
    assert {key: value.si for key, value in found.others} == {
        "mount.can_diameter": 0.063,
        "mount.can_length": 0.074,
    }


def test_digits_alone_are_a_can_only_where_its_size_is_asked_for() -> None:
    found = entered(field_of("mount.can_length"), "5065")
    assert (found.value.si, found.values["mount.can_diameter"].si) == (0.065, 0.05)
    assert entered(field_of("motor.kv"), "170KV").others == ()
    with pytest.raises(InputError, match="range"):
        entered(field_of("motor.kv"), "6374")


@pytest.mark.parametrize(("text", "parallel"), [
    ("10S2P 8 Ah", None), ("10S2P8Ah", None), ("36 V 8 Ah", 2.0), ("36V 8,0Ah", 2.0), ("36V8Ah", 2.0), ("10S, 8 Ah", 2.0),
])  # fmt: skip
def test_amp_hours_of_a_label_are_shared_out_over_the_cells_in_parallel(
    text: str, parallel: float | None
) -> None:
    """Ours: 8 Ah over two cells in parallel are 4 Ah each, 14400 C."""
    board = Board("b", "Test")
    board = board if parallel is None else board.with_value("pack.parallel", Value(parallel))
    found = entered(field_of("pack.series"), text, None, board)
    assert (found.value.si, found.values["pack.cell_capacity"].si) == (10.0, 14400.0)


def test_amp_hours_wait_for_the_cells_in_parallel() -> None:
    found = entered(field_of("pack.series"), "36 V 4 Ah", None, Board("b", "Test"))
    assert (found.value.si, found.others, found.told) == (10.0, (), "no parallel")


@pytest.mark.parametrize(("key", "text", "reason"), [
    ("drive.wheel_diameter", "1024", "range"), ("drive.wheel_diameter", "-3", "range"),
    ("drive.wheel_diameter", "1.234,5", "ambiguous"), ("motor.kv", "17000", "range"),
    ("controller.motor_current", "-3", "range"), ("drive.motor_teeth", "16.5", "whole"),
])  # fmt: skip
def test_what_cannot_be_used_is_refused_with_the_text_as_typed(key: str, text: str, reason: str) -> None:
    with pytest.raises(InputError) as refused:
        entered(field_of(key), text)
    assert (refused.value.reason, refused.value.given, refused.value.field) == (reason, text, key)


@given(st.sampled_from(sorted(board_fields())), st.text(alphabet="0123456789.,-/ MSPVVmH", max_size=12))
def test_any_text_is_read_within_the_limits_or_refused(key: str, text: str) -> None:
    field = board_fields()[key]
    if field.kind == "choice":
        return
    try:
        found = entered(field, text, None, HTD)
    except InputError as refused:
        assert refused.given == text  # noqa: PT017  (either outcome is right; the text must be kept)
        return
    field.check(found.value.si)
    for other, value in found.values.items():
        field_of(other).check(value.si)


@pytest.mark.parametrize(("text", "key", "signed", "reason"), [
    ("1.2", ",", False, "two marks"), ("1", "-", True, "minus first"), ("", "-", False, "no minus"), ("", "-", True, ""),
    ("1" * 24, "1", False, "too long"), ("1", ".", False, ""),
])  # fmt: skip
def test_keys_of_the_pad(text: str, key: str, signed: bool, reason: str) -> None:  # noqa: FBT001  (a case of the table)
    assert key_refused(text, key, signed=signed) == reason


def test_pasted_lines_never_join() -> None:
    assert pasted("1\n5") == "1 5"
    with pytest.raises(InputError, match="spaces"):
        read(pasted("1\n5"), "length", "mm")


@pytest.mark.parametrize("name", quantities())
def test_every_unit_word_can_be_typed_after_a_number(name: str) -> None:
    for unit in quantities()[name].units:
        for word in {unit.shown, *unit.words} - {""}:
            assert read(f"5 {word}", name).unit == unit.shown


def test_turns_a_minute_in_either_spelling() -> None:
    assert read("3000 1/min", "angular_speed").si == read("3000 rpm", "angular_speed").si


def test_each_field_says_how_its_value_is_usually_known() -> None:
    """Kv, amps and cells stand on labels; wheel, masses and teeth are measured or counted."""
    known = {key: field.known for key, field in board_fields().items()}
    for key in (
        "motor.kv",
        "controller.motor_current",
        "controller.battery_current",
        "pack.series",
        "pack.parallel",
    ):
        assert known[key] == "label"
    for key in ("drive.wheel_diameter", "load.board_mass", "drive.motor_teeth", "drive.wheel_teeth"):
        assert known[key] == "measured"
    assert known["load.rolling"] == "guess"
    assert set(known.values()) == {"label", "measured", "guess"}
