"""Root of a function between two ends, for the few results that have no closed form."""

from collections.abc import Callable

from logic.errors import InputError
from logic.workings import Root


def bracketed(function: Callable[[float], float], low: float, high: float, *, name: str) -> Root:
    """Return the root of a continuous `function` whose sign differs at `low` and `high`, to the last digits.

    The interpolation keeps its bracket and halves the weight of an end that is kept twice (the Illinois form of
    regula falsi), with a bisection whenever that does not shrink the bracket fast enough. Raises InputError when
    both ends have the same sign.

    >>> round(bracketed(lambda x: x * x - 2.0, 0.0, 2.0, name="side").value, 12)
    1.414213562373
    """
    a, b = low, high
    at_a, at_b = function(a), function(b)
    if at_a == 0.0:
        return Root(a, low, high)
    if at_b == 0.0:
        return Root(b, low, high)
    if (at_a > 0.0) == (at_b > 0.0):
        raise InputError(name, (low, high), "no solution", low=low, high=high)
    kept = 0
    for step in range(200):
        width = b - a
        if abs(width) <= 4e-16 * max(abs(a), abs(b)):
            break
        middle = 0.5 * (a + b) if step % 3 == 2 else b - at_b * width / (at_b - at_a)  # noqa: PLR2004  (every third)
        if not min(a, b) < middle < max(a, b):
            middle = 0.5 * (a + b)
        at_middle = function(middle)
        if at_middle == 0.0:
            return Root(middle, low, high)
        if (at_middle > 0.0) == (at_a > 0.0):
            a, at_a = middle, at_middle
            at_b, kept = (0.5 * at_b, kept) if kept == 1 else (at_b, 1)
        else:
            b, at_b = middle, at_middle
            at_a, kept = (0.5 * at_a, kept) if kept == -1 else (at_a, -1)
    return Root(0.5 * (a + b), low, high)
