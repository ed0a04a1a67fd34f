"""Numbers in words: what is said about two numbers agrees with the numbers beside it."""

import pytest

from logic.answers.reading import Result
from logic.joints.torque import torque_short
from logic.workings import Given, given, recording
from screens.words import Style, sureness


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
        kv = given(Given("Kv", 17.8, "rad/(s*V)", "motor_constant", known=known))
    assert sureness(Result("kv", kv, "motor_constant")) == said


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
