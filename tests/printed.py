"""Comparison with a printed number: half a unit of its last digit, no more."""

from decimal import Decimal


def agrees(value: float, printed: str) -> bool:
    """Tell whether a value rounds to the printed number; "2.50e2" has three figures.

    >>> agrees(1.1881, "1.188"), agrees(1.189, "1.188")
    (True, False)
    """
    number = Decimal(printed)
    exponent = number.as_tuple().exponent
    assert isinstance(exponent, int)
    # The slack of one part in 1e9 is for values on the very edge, which binary fractions miss by a hair.
    return abs(value - float(number)) <= 0.5 * 10.0**exponent * (1.0 + 1e-9) + 1e-12 * abs(value)
