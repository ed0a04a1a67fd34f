"""The search for a root against the one of a well-known library, and how often it asks."""

from math import atan, exp, tanh

import pytest
from scipy.optimize import brentq

from logic.errors import InputError
from logic.roots import bracketed

CURVES = {
    "straight": (lambda x: 3.0 * x - 1.7, -4.0, 9.0),
    "cubic": (lambda x: x**3 - 2.0 * x - 5.0, 2.0, 3.0),
    "steep at one end": (lambda x: exp(x) - 20.0, -30.0, 30.0),
    "flat at both ends": (lambda x: atan(40.0 * (x - 0.3)), -100.0, 5.0),
    "push less load": (lambda x: 900.0 / (1.0 + x) - 12.0 - 0.4 * x * x, 0.0, 40.0),
    "a kink": (lambda x: min(50.0, 90.0 - 6.0 * x) - 0.3 * x * x, 0.0, 15.0),
    "a root at zero": (lambda x: tanh(x), -1.0, 3.0),
}


@pytest.mark.parametrize("name", CURVES)
def test_a_root_is_that_of_the_library_and_is_found_with_few_questions(name: str) -> None:
    """Source: scipy.optimize.brentq (R. P. Brent, Algorithms for Minimization without Derivatives, 1973, chapter 4)."""
    curve, low, high = CURVES[name]
    asked = []

    def counted(x: float) -> float:
        asked.append(x)
        return curve(x)

    found = bracketed(counted, low, high, name="speed")
    assert found.value == pytest.approx(
        brentq(curve, low, high, xtol=1e-15, rtol=9e-16), rel=1e-14, abs=1e-15
    )
    assert (found.low, found.high) == (low, high)
    assert all(low <= x <= high for x in asked)
    assert len(asked) <= 25


def test_a_jump_is_found_by_halving() -> None:
    assert bracketed(lambda x: -1.0 if x < 0.7 else 1.0, 0.0, 1.0, name="speed").value == pytest.approx(
        0.7, rel=1e-15
    )


def test_ends_that_are_roots_are_taken_as_they_are() -> None:
    assert bracketed(lambda x: x - 2.0, 2.0, 5.0, name="speed").value == 2.0
    assert bracketed(lambda x: x - 5.0, 2.0, 5.0, name="speed").value == 5.0


def test_two_ends_of_one_sign_are_refused() -> None:
    with pytest.raises(InputError):
        bracketed(lambda x: x * x + 1.0, -1.0, 1.0, name="speed")
