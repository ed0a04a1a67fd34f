"""Numbers in words: what is said about two numbers agrees with the numbers beside it."""

import pytest

from screens.words import Style


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
