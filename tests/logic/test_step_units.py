"""Units of arithmetic: checked against Pint for every pair, and against the units that the SI defines by each other."""

from itertools import product

import pytest

from logic import step_units
from logic.board import Board
from logic.step_units import si_units, step_unit, unit_of
from logic.units import quantities, registry
from logic.workings import Traced, recording, trace
from tests import factors
from tests.logic.test_answer_register import BOARDS, results
from tests.loose import put_in

PAIRS = list(product(si_units(), repeat=2))


def test_every_quantity_has_a_unit_that_a_formula_can_have() -> None:
    assert {quantity.si for quantity in quantities().values()} <= set(si_units())


def test_products_and_quotients_of_all_pairs_are_what_pint_makes_of_them() -> None:
    of = registry().Quantity
    for first, second in PAIRS:
        assert (of(1.0, first) * of(1.0, second)).to(step_unit("a * b", first, second)).magnitude == 1.0
        assert (of(1.0, first) / of(1.0, second)).to(step_unit("a / b", first, second)).magnitude == 1.0


def test_sums_of_all_pairs_have_a_unit_where_pint_can_add_them() -> None:
    of = registry().Quantity
    for first, second in PAIRS:
        alike = of(1.0, first).is_compatible_with(of(1.0, second))
        assert (
            step_unit("a + b", first, second)
            == step_unit("a - b", first, second)
            == ((alike and first) or "")
        )


@pytest.mark.parametrize("unit", si_units())
def test_powers_and_signs(unit: str) -> None:
    of = registry().Quantity
    for power in (2.0, 0.5, -1.0):
        made = step_unit("a**b", unit, power=power)
        assert (of(1.0, unit) ** power).to(made).magnitude == pytest.approx(1.0)
    assert {step_unit(text, unit) for text in ("-a", "abs(a)", "round(a, b)")} == {unit}


@pytest.mark.parametrize(
    ("made", "text", "first", "second"),
    [
        ("N", "a * b", "kg", "m/s**2"),
        ("Pa", "a / b", "N", "m**2"),
        ("J", "a * b", "W", "s"),
        ("W", "a / b", "J", "s"),
        ("C", "a * b", "A", "s"),
        ("V", "a / b", "W", "A"),
        ("F", "a / b", "C", "V"),
        ("ohm", "a / b", "V", "A"),
    ],
)
def test_units_that_the_si_defines(made: str, text: str, first: str, second: str) -> None:
    """SI brochure, 9th edition, table 4."""
    assert step_unit(text, first, second) == made


@pytest.mark.parametrize(
    ("made", "text", "first", "second"),
    [
        # SI brochure, 9th edition, section 2.3.4: a torque is a newton metre or a joule for each radian.
        ("N*m", "a * b", "N", "m"),
        ("N*m", "a / b", "J", "rad"),
        ("J", "a * b", "N*m", "rad"),
        ("W", "a * b", "N*m", "rad/s"),
        ("N*m", "a / b", "W", "rad/s"),
        ("V", "a / b", "rad/s", "rad/(s*V)"),
        ("N*m", "a * b", "N*m/A", "A"),
        ("N*m/A", "a / b", "1", "rad/(s*V)"),
        ("1/s", "a / b", "A", "C"),
        ("m", "a / b", "J", "J/m"),
        ("kg*m/s", "a * b", "kg", "m/s"),
    ],
)
def test_of_two_units_that_are_the_same_the_one_that_is_meant(
    made: str, text: str, first: str, second: str
) -> None:
    assert step_unit(text, first, second) == made


def test_the_unit_of_a_chain_follows_from_what_went_in() -> None:
    with recording():
        mass, speed = put_in("mass", 95.0, "kg"), put_in("speed", 5.0, "m/s")
        energy = (mass + put_in("rider", 80.0, "kg")) * speed * speed
        unlike = mass + speed
    (*_, last), (*_, sum_of_unlike) = trace(energy), trace(unlike)
    assert unit_of(last) == "J"
    assert unit_of(sum_of_unlike) == ""


@pytest.mark.parametrize("board", BOARDS.values(), ids=BOARDS)
def test_every_number_of_every_working_has_a_unit(board: Board) -> None:
    assert [
        (place, call.formula.text)
        for place, item in results(board).items()
        for call in item.calls
        if not unit_of(call)
    ] == []


def test_the_units_of_steps_are_those_that_pint_makes_and_no_working_waits_for_it(
    monkeypatch: pytest.MonkeyPatch,
) -> None:
    assert factors.STEPS.read_text(encoding="utf-8") == factors.steps()
    monkeypatch.setattr(step_units, "made_by_pint", None)
    for board in BOARDS.values():
        for item in results(board).values():
            assert all(unit_of(call) for call in item.calls)


@pytest.mark.parametrize("board", BOARDS.values(), ids=BOARDS)
def test_the_unit_of_a_result_is_that_of_its_quantity(board: Board) -> None:
    of = registry().Quantity
    wrong = []
    for place, item in results(board).items():
        assert isinstance(item.value, Traced)
        made = of(1.0, unit_of(item.value.origin))
        if not made.is_compatible_with(of(1.0, quantities()[item.quantity].si)):
            wrong.append((place, made, item.quantity))
    assert wrong == []
