"""Root of a function between two ends, for the few results that have no closed form."""

from collections.abc import Callable

from logic.errors import InputError
from logic.workings import Root


def bracketed(function: Callable[[float], float], low: float, high: float, *, name: str) -> Root:
    """Return the root of a continuous `function` whose sign differs at `low` and `high`, to the last digits.

    Chandrupatla's search (Advances in Engineering Software 28, 1997): through the last three points by a parabola of
    the inverse where that is safe, else by halving. Raises InputError when both ends have the same sign.

    >>> round(bracketed(lambda x: x * x - 2.0, 0.0, 2.0, name="side").value, 12)
    1.414213562373
    """
    a, b = high, low
    at_a, at_b = function(a), function(b)
    if at_b == 0.0:
        return Root(b, low, high)
    if at_a == 0.0:
        return Root(a, low, high)
    if (at_a > 0.0) == (at_b > 0.0):
        raise InputError(name, (low, high), "no solution", low=low, high=high)
    share = 0.5
    while True:
        middle = a + share * (b - a)
        at_middle = function(middle)
        if (at_middle > 0.0) == (at_a > 0.0):
            c, at_c = a, at_a
        else:
            c, at_c, b, at_b = b, at_b, a, at_a
        a, at_a = middle, at_middle
        best = a if abs(at_a) < abs(at_b) else b
        least = (4e-16 * abs(best) + 1e-18 * abs(high - low)) / abs(b - a)
        if at_middle == 0.0 or least > 0.5:  # noqa: PLR2004  (nothing lies between)
            return Root(best, low, high)
        near, flat = (a - b) / (c - b), (at_a - at_b) / (at_c - at_b)
        share = 0.5
        if flat**2 < near and (1.0 - flat) ** 2 < 1.0 - near:
            share = at_a / (at_b - at_a) * at_c / (at_b - at_c)
            share += (c - a) / (b - a) * at_a / (at_c - at_a) * at_b / (at_c - at_b)
        share = min(1.0 - least, max(least, share))
