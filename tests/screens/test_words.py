"""Numbers in words: what is said about two numbers agrees with the numbers beside it."""

import pytest

from logic.answers.reading import Result
from logic.drive.motor import torque_constant
from logic.joints.torque import torque_short
from logic.workings import Given, given, recording
from screens.words import Style, sureness
from screens.words.workings import steps
from tests.loose import put_in


@pytest.mark.parametrize(
    ("before", "now", "said"),
    [
        (39.94, 43.84, "+3.9\N{NO-BREAK SPACE}km/h"),  # shown as 39.9 and 43.8
        (99.6, 101.4, "+1\N{NO-BREAK SPACE}km/h"),  # 99.6 and 101
        (39.94, 40.0, "+0.1\N{NO-BREAK SPACE}km/h"),  # 39.9 and 40, which is 40.0
        (0.0, 12.0, "+12\N{NO-BREAK SPACE}km/h"),
        (30.04, 29.96, "no change"),  # both 30
        (30.0, 29.9, "−0.1\N{NO-BREAK SPACE}km/h"),
    ],
)
def test_a_difference_is_that_of_the_numbers_as_shown(before: float, now: float, said: str) -> None:
    assert Style().change(now / 3.6, before / 3.6, "speed") == said


@pytest.mark.parametrize(
    ("known", "said"),
    [
        ("measured", "As entered, measured"),
        ("label", "As entered, from a label"),
        ("chosen", "As entered"),
        ("guess", "Rough: kv is a guess"),
    ],
)
def test_what_was_typed_is_never_said_to_be_worked_out(known: str, said: str) -> None:
    with recording():
        kv = given(Given("Kv", 17.8, "rad/(s*V)", "speed_constant", known=known))
    assert sureness(Result("kv", kv, "speed_constant")) == said


def test_what_is_worked_out_by_a_printed_formula_is_not_called_published() -> None:
    with recording():
        row = given(Given("torque", 2.2, "N*m", standing="published", source="collar-chart"))
        printed = {
            name: given(Given(name, value, "1", standing="published", source="shigley-8"))
            for name, value in (("nut_factor", 0.2), ("nominal_diameter", 0.004), ("preload", 1000.0))
        }
        torque = torque_short(**printed)
    result = Result("wrench", torque, "torque")
    assert result.standing == "published"
    assert sureness(result) == "Worked out"
    assert sureness(Result("ceiling", row, "torque")) == "Published"


def test_arithmetic_is_shown_in_the_names_of_what_goes_in_with_its_unit() -> None:
    with recording():
        board = put_in("Board mass", 15.0, "kg", quantity="mass", known="measured")
        rider = put_in("Rider", 80.0, "kg", quantity="mass", known="guess")
        (step,) = steps(Result("moving", board + rider, "mass"), Style())
    assert (step.title, step.formula) == ("Sum", "= board mass + rider")
    assert step.lines == (
        "board mass = 15\N{NO-BREAK SPACE}kg, measured",
        "rider = 80\N{NO-BREAK SPACE}kg, guess",
    )
    assert step.result == "= 95\N{NO-BREAK SPACE}kg"
    assert (step.source, step.standing) == ("A step of arithmetic", "worked out here")


def test_a_chain_of_arithmetic_is_one_step_up_to_where_a_formula_takes_it() -> None:
    with recording():
        a, b, c = (put_in(name, value, "rad/(s*V)") for name, value in (("a", 9.0), ("b", 3.0), ("c", 2.0)))
        current = put_in("motor_current", 20.0, "A")
        constant = torque_constant(speed_constant=a - (b - c))
        found = steps(Result("torque", (constant + constant) * current / put_in("b", 5.0), "torque"), Style())
    assert [(step.title, step.formula) for step in found] == [
        ("Difference", "= a − (b − c)"),
        ("Torque constant", "= 1 / speed constant"),
        ("Quotient", "= (torque constant + torque constant) × motor current / b"),
    ]
    assert found[-1].lines[0] == "torque constant = 0.125\N{NO-BREAK SPACE}N·m/A"
    assert found[-1].result == "= 1\N{NO-BREAK SPACE}N·m"


def test_two_numbers_of_one_name_are_told_apart_and_one_from_nowhere_says_so() -> None:
    with recording():
        share, other = put_in("share", 0.5), put_in("share", 0.25)
        (step,) = steps(Result("product", -((share * other) ** 2), "share"), Style())
    assert step.formula == "= −(share × share 2) ^ 2"
    assert step.lines[0].startswith("share = 0.5")
    assert step.lines[1].startswith("share 2 = 0.25")
    assert step.lines[2].startswith("2 = 2, from nowhere")
    assert step.result.startswith("= −1.562\N{NO-BREAK SPACE}%")
