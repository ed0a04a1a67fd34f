"""Two readings of one belt by different ways: whether they agree, and what they tell together."""

from math import sqrt

from logic.errors import positive
from logic.si import Newton, One
from logic.workings import cited


@cited(
    "abs(first - second) / sqrt(first_error**2 + second_error**2)",
    source="derived difference over its own limit",
    standing="derived",
)
def disagreement(*, first: Newton, second: Newton, first_error: Newton, second_error: Newton) -> One:
    """How far two readings stand apart, in units of what they may; above 1 they disagree.

    Raises InputError unless both errors are positive.

    >>> disagreement(first=100.0, second=90.0, first_error=3.0, second_error=4.0)
    2.0
    """
    positive(first_error=first_error, second_error=second_error)
    return abs(first - second) / sqrt(first_error**2 + second_error**2)


@cited(
    "(first / first_error**2 + second / second_error**2) / (1 / first_error**2 + 1 / second_error**2)",
    source="derived mean weighted by the inverse squares of the errors",
    standing="derived",
)
def weighted_mean(*, first: Newton, second: Newton, first_error: Newton, second_error: Newton) -> Newton:
    """Best tension from two independent readings. Raises InputError unless both errors are positive.

    >>> round(weighted_mean(first=100.0, second=90.0, first_error=10.0, second_error=20.0), 6)
    98.0
    """
    positive(first_error=first_error, second_error=second_error)
    return (first / first_error**2 + second / second_error**2) / (1 / first_error**2 + 1 / second_error**2)


@cited(
    "1 / sqrt(1 / first_error**2 + 1 / second_error**2)",
    source="derived error of the weighted mean",
    standing="derived",
)
def mean_error(*, first_error: Newton, second_error: Newton) -> Newton:
    """Error of the weighted mean, a limit like those put in. Raises InputError unless both are positive.

    >>> round(mean_error(first_error=10.0, second_error=10.0), 3)
    7.071
    """
    positive(first_error=first_error, second_error=second_error)
    return 1 / sqrt(1 / first_error**2 + 1 / second_error**2)


@cited("sqrt(error**2 + (bias * tension)**2)", source="derived root of squares", standing="derived")
def with_bias(*, error: Newton, bias: One, tension: Newton) -> Newton:
    """Error that counts a one-sided bias as well. Raises InputError unless error and tension are positive.

    >>> with_bias(error=3.0, bias=0.04, tension=100.0)
    5.0
    """
    positive(error=error, tension=tension)
    return sqrt(error**2 + (bias * tension) ** 2)
