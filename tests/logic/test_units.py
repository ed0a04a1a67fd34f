"""Typed numbers: what is read, what is refused and why, and that nothing is altered on the way."""

import subprocess
import sys
from pathlib import Path

import pytest
from hypothesis import given
from hypothesis import strategies as st

from logic.errors import InputError
from logic.units import factor, number_text, quantities, read, registry, show, show_in
from tests import factors

ROOT = Path(__file__).parents[2]


@pytest.mark.parametrize(("text", "quantity", "unit", "si"), [
    pytest.param("3.8 in", "length", None, 0.09652, id="NIST SP 811 B.8: 1 in = 25.4 mm exactly"),
    pytest.param("97mm", "length", None, 0.097, id="unit without a gap"),
    pytest.param("4 lbf", "force", None, 4 * 4.4482216152605, id="NIST SP 811 B.8: 1 lbf = 4.4482216152605 N"),
    pytest.param("12 N", "force", None, 12.0, id="newton"),
    pytest.param("1.5", "force", "kg", 14.709975, id="a scale in kg shows force, g_n = 9.80665"),
    pytest.param("500", "force", "g", 4.903325, id="grams"),
    pytest.param("16 oz", "force", None, 4.4482216152605, id="sixteen ounces are a pound"),
    pytest.param("1,5", "length", "mm", 0.0015, id="comma"),
    pytest.param("1.5", "length", "mm", 0.0015, id="point"),
    pytest.param(".5", "length", "mm", 0.0005, id="bare mark"),
    pytest.param("14.", "length", "mm", 0.014, id="half typed"),
    pytest.param("3/8 in", "length", None, 0.009525, id="fraction"),
    pytest.param("2 3/8 in", "length", None, 0.060325, id="mixed fraction"),
    pytest.param("3/8", "length", "in", 0.009525, id="fraction, tool in inches"),
    pytest.param("170 rpm/V", "speed_constant", None, 17.802358370342162, id="rpm per volt"),
    pytest.param("4000 mAh", "charge", None, 14400.0, id="milliampere hours"),
    pytest.param("25 mph", "speed", None, 11.176, id="NIST SP 811 B.8: 1 mi/h = 0.44704 m/s"),
    pytest.param("30 km/h", "speed", None, 30 / 3.6, id="kilometres an hour"),
    pytest.param("2 lbf·in", "torque", None, 0.2259696580552334, id="fasteners handbook 9: lbf·in"),
    pytest.param("\u22123", "angle", None, -0.05235987755982988, id="minus sign"),
])  # fmt: skip
def test_reads(text: str, quantity: str, unit: str | None, si: float) -> None:
    assert read(text, quantity, unit).si == pytest.approx(si, rel=1e-12)


@pytest.mark.parametrize(("text", "reason"), [
    ("1.234,5", "ambiguous"), ("1,234.5", "ambiguous"), ("1.2.3", "two marks"), ("1,5,", "two marks"),
    ("1.5.", "two marks"), ("1 234", "spaces"), ("1.5 5", "spaces"), ("1e3", "not a plain number"),
    ("9**9**9", "not a plain number"), ("2^3", "not a plain number"), ("", "empty"), ("   ", "empty"), ("abc", "no number"),
    (".", "no number"), ("-", "no number"), ("--3", "no number"), ("12 furlong", "unknown unit"), ("12 mm mm", "unknown unit"),
    ("١٢", "digits"), ("\uff11\uff12", "digits"), ("½ in", "digits"), ("3/8", "fraction"), ("3/8 mm", "fraction"),
    ("1/0 in", "fraction of zero"), ("1" * 30, "too long"), ("nan", "no number"), ("inf", "no number"),
])  # fmt: skip
def test_refuses_with_the_reason(text: str, reason: str) -> None:
    with pytest.raises(InputError) as refused:
        read(text, "length", "mm")
    assert refused.value.reason == reason
    assert refused.value.given == text


def test_a_comma_before_three_digits_is_read_back() -> None:
    assert read("1,234", "length", "mm").read_back
    assert read("1,234", "length", "mm").si == pytest.approx(0.001234)
    assert not read("1.234", "length", "mm").read_back
    assert not read("0,125", "length", "mm").read_back


@given(st.decimals(min_value=0, max_value=99999, places=3, allow_nan=False), st.sampled_from([".", ","]))
def test_both_marks_read_the_same(number: object, mark: str) -> None:
    text = f"{number}"
    assert read(text.replace(".", mark), "length", "mm").si == pytest.approx(float(text) / 1000, rel=1e-12)


@given(st.text(max_size=30))
def test_any_text_is_read_or_refused(text: str) -> None:
    try:
        read(text, "force", "kg")
    except InputError as refused:
        assert refused.given == text  # noqa: PT017  (either outcome is right; the text must be kept)


@pytest.mark.parametrize("name", quantities())
def test_every_unit_has_the_dimension_of_its_quantity(name: str) -> None:
    unit = registry()
    quantity = quantities()[name]
    for known in quantity.units:
        assert unit.Quantity(1.0, known.pint).dimensionality == unit.Quantity(1.0, quantity.si).dimensionality
    assert quantity.home("metric") in quantity.units
    assert quantity.home("inch") in quantity.units


def test_no_word_means_two_units_of_a_quantity() -> None:
    for quantity in quantities().values():
        words = [word for unit in quantity.units for word in {unit.shown, *unit.words}]
        assert len(words) == len(set(words)), quantity.name


def test_the_table_of_factors_is_what_pint_makes_of_every_unit() -> None:
    # Written by `uv run python -m tests.factors`.
    assert factors.FILE.read_text("utf-8") == factors.text()
    assert len(factors.pairs()) > 50


def test_no_unit_of_the_app_waits_for_pint() -> None:
    code = (
        "import sys\n"
        "from logic.units import quantities\n"
        "from logic.tables import SI_OF_PRINTED, to_si\n"
        "for kind in quantities().values():\n"
        "    for unit in kind.units: unit.to_si(1.0, kind.si)\n"
        "for printed in SI_OF_PRINTED: to_si(1.0, printed)\n"
        "sys.exit('pint' in sys.modules)"
    )
    assert subprocess.run([sys.executable, "-c", code], cwd=ROOT, check=False).returncode == 0  # noqa: S603  (our own interpreter)


@pytest.mark.parametrize(("unit", "si", "value"), [
    pytest.param("inch", "m", 0.0254, id="NIST SP 811 B.8"),
    pytest.param("lbf", "N", 4.4482216152605, id="NIST SP 811 B.8"),
    pytest.param("lbf*inch", "N*m", 0.1129848290276167, id="fasteners handbook 9 (derived from exact factors)"),
    pytest.param("mi/h", "m/s", 0.44704, id="NIST SP 811 B.8"),
    pytest.param("rpm", "rad/s", 0.10471975511965977, id="2 pi / 60"),
])  # fmt: skip
def test_factors(unit: str, si: str, value: float) -> None:
    assert factor(unit, si) == pytest.approx(value, rel=1e-14)


@pytest.mark.parametrize(("number", "digits", "text"), [
    (0.0, 3, "0"), (-0.04567, 3, "\u22120.0457"), (12345.6, 3, "12\u202f300"), (1234.5, 3, "1230"), (99.96, 3, "100"),
    (0.5, 3, "0.5"), (5.0, 3, "5"), (67.2699, 4, "67.27"),
])  # fmt: skip
def test_numbers_as_text(number: float, digits: int, text: str) -> None:
    assert number_text(number, digits=digits) == text


def test_shown_with_the_persons_mark_and_system() -> None:
    assert str(show(0.0652, "length", mark=",")) == "65,2\u00a0mm"
    assert str(show(0.0254, "length", "inch")) == "1\u00a0in"
    assert str(show_in(14.709975, "force", "kg")) == "1.5\u00a0kg"


@pytest.mark.parametrize(
    ("text", "quantity"),
    [
        ("5 Mohm", "resistance"),
        ("5 M\N{OHM SIGN}", "resistance"),
        ("5 MOHM", "resistance"),
        ("2 MAh", "charge"),
        ("3 MV", "voltage"),
    ],
)
def test_a_million_is_no_thousandth(text, quantity):
    # SI brochure, table 7: M is mega, m is milli.
    with pytest.raises(InputError) as refused:
        read(text, quantity)
    assert refused.value.reason in ("a million", "unknown unit")


@pytest.mark.parametrize(
    ("text", "quantity", "si"),
    [
        ("5 mohm", "resistance", 0.005),
        ("5 KM/H", "speed", 5 / 3.6),
        ("5 MM", "length", 0.005),
        ("5 M/S", "speed", 5.0),
    ],
)
def test_case_that_means_nothing_else_is_taken(text, quantity, si):
    assert read(text, quantity).si == pytest.approx(si)
