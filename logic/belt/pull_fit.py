"""Several pulls at different depths, fitted together for the tension and the zero error of the depth.

The depth is read from a line that may itself be wrong, the same way for every pull. Two pulls at different
depths tell that zero error; the belt's stiffness is known only roughly and is let free within its error.
"""

from math import sqrt

from logic.belt.scale import check_free
from logic.errors import InputError, positive
from logic.frozen import frozen
from logic.si import Metre, Newton, One
from logic.workings import method

FEWEST = 2
ROUNDS = 12
"""Steps of the fit; it settles in four or five."""


@frozen
class Pull:
    """One pull: what the scale read, and the depth as it was read."""

    force: Newton
    deflection: Metre


@frozen
class PullFit:
    """The tension with its error, the depth's zero error with its own, and the worst misfit of a pull.

    Errors are limits like those put in. `misfit` is in units of a pull's own limit: above 1.5 the pulls do
    not belong together.
    """

    tension: Newton
    error: Newton
    zero: Metre
    zero_error: Metre
    misfit: One


@frozen
class Tools:
    """Limits of the errors: of the scale, of one depth, the share of it that stays from pull to pull."""

    force_error: Newton
    deflection_error: Metre
    zero_share: One
    stiffness_error: Newton


def fit_pulls(pulls: list[Pull], tools: Tools, *, span: Metre, length: Metre, stiffness: Newton) -> PullFit:
    """Return the best tension and zero error for all pulls.

    Raises InputError for fewer than two pulls, for pulls at one depth only, and as `pull_force` does.
    """
    if len(pulls) < FEWEST:
        raise InputError("pulls", len(pulls), "range", low=float(FEWEST))
    if (
        max(pull.deflection for pull in pulls) - min(pull.deflection for pull in pulls)
        < tools.deflection_error / 2
    ):
        raise InputError("depth", pulls[0].deflection, "one depth")
    for pull in pulls:
        positive(force=pull.force)
        check_free(pull.deflection, span, length, stiffness)
    zero_limit = tools.zero_share * tools.deflection_error
    reading_limit = sqrt(max(1 - tools.zero_share**2, 0.0)) * tools.deflection_error
    tension, zero, stiff = pulls[0].force * span / (4 * pulls[0].deflection), 0.0, stiffness
    misfit = 0.0
    spread = [[0.0] * 3 for _ in range(3)]
    for _ in range(ROUNDS):
        # The two prior rows: zero error and stiffness are known within their limits before any pull.
        matrix = [[0.0] * 3 for _ in range(3)]
        right = [0.0] * 3
        _add(matrix, right, (0.0, 1.0, 0.0), -zero, zero_limit)
        _add(matrix, right, (0.0, 0.0, 1.0), stiffness - stiff, tools.stiffness_error)
        misfit = 0.0
        for pull in pulls:
            force, slopes = _model(pull.deflection + zero, tension, stiff, span, length)
            limit = sqrt(tools.force_error**2 + (slopes[1] * reading_limit) ** 2)
            _add(matrix, right, slopes, pull.force - force, limit)
            misfit = max(misfit, abs(pull.force - force) / limit)
        spread = _inverse(matrix)
        step = [sum(row[column] * right[column] for column in range(3)) for row in spread]
        tension, zero, stiff = tension + step[0], zero + step[1], max(stiff + step[2], 0.1 * stiffness)
        zero = max(zero, 1e-5 - min(pull.deflection for pull in pulls))
    return PullFit(tension, sqrt(spread[0][0]), zero, sqrt(spread[1][1]), misfit)


def _model(
    deflection: float, tension: float, stiffness: float, span: float, length: float
) -> tuple[float, tuple[float, float, float]]:
    """Return the pull and its slopes by tension, depth and stiffness."""
    long = sqrt(span**2 + 4 * deflection**2)
    lever, stretch = 4 * deflection / long, (long - span) / length
    pulled = tension + stiffness * stretch
    by_depth = 4 * span**2 / long**3 * pulled + lever * stiffness * lever / length
    return lever * pulled, (lever, by_depth, lever * stretch)


def _add(
    matrix: list[list[float]],
    right: list[float],
    slopes: tuple[float, float, float],
    rest: float,
    limit: float,
) -> None:
    weight = 1 / limit**2
    for row in range(3):
        right[row] += weight * slopes[row] * rest
        for column in range(3):
            matrix[row][column] += weight * slopes[row] * slopes[column]


def _inverse(m: list[list[float]]) -> list[list[float]]:
    """Return the inverse of a symmetric matrix of three rows, scaled first: its entries differ by 1e15."""
    scale = [1 / sqrt(m[index][index]) for index in range(3)]
    s = [[m[row][column] * scale[row] * scale[column] for column in range(3)] for row in range(3)]
    minors = [
        [
            s[(row + 1) % 3][(column + 1) % 3] * s[(row + 2) % 3][(column + 2) % 3]
            - s[(row + 1) % 3][(column + 2) % 3] * s[(row + 2) % 3][(column + 1) % 3]
            for column in range(3)
        ]
        for row in range(3)
    ]
    whole = sum(s[0][column] * minors[0][column] for column in range(3))
    return [
        [minors[column][row] / whole * scale[row] * scale[column] for column in range(3)] for row in range(3)
    ]


def _given(pulls: dict[str, float]) -> list[Pull]:
    count = len(pulls) // 2
    return [Pull(pulls[f"pull_{number}"], pulls[f"depth_{number}"]) for number in range(1, count + 1)]


STEPS = (
    "tension, zero error of the depth and stiffness that fit all pulls best in least squares; zero error and"
    " stiffness are held to what is known of them"
)


@method(STEPS, source="derived simulated in the tests")
def fitted_tension(  # noqa: PLR0913  (a drive, the tools and the pulls)
    *,
    span: Metre,
    length: Metre,
    stiffness: Newton,
    force_error: Newton,
    deflection_error: Metre,
    zero_share: One,
    stiffness_error: Newton,
    **pulls: float,
) -> Newton:
    """Return the tension that fits pulls given as pull_1, depth_1, pull_2, depth_2 and so on.

    Raises InputError as `fit_pulls` does.
    """
    tools = Tools(force_error, deflection_error, zero_share, stiffness_error)
    return fit_pulls(_given(pulls), tools, span=span, length=length, stiffness=stiffness).tension


@method(STEPS + "; the error is what the fit leaves open", source="derived simulated in the tests")
def fitted_error(  # noqa: PLR0913  (as above)
    *,
    span: Metre,
    length: Metre,
    stiffness: Newton,
    force_error: Newton,
    deflection_error: Metre,
    zero_share: One,
    stiffness_error: Newton,
    **pulls: float,
) -> Newton:
    """Return the error of `fitted_tension`, a limit like those put in. Raises InputError as it does."""
    tools = Tools(force_error, deflection_error, zero_share, stiffness_error)
    return fit_pulls(_given(pulls), tools, span=span, length=length, stiffness=stiffness).error


@method(STEPS, source="derived simulated in the tests")
def fitted_zero(  # noqa: PLR0913  (as above)
    *,
    span: Metre,
    length: Metre,
    stiffness: Newton,
    force_error: Newton,
    deflection_error: Metre,
    zero_share: One,
    stiffness_error: Newton,
    **pulls: float,
) -> Metre:
    """Return what must be added to each depth as it was read. Raises InputError as `fit_pulls` does."""
    tools = Tools(force_error, deflection_error, zero_share, stiffness_error)
    return fit_pulls(_given(pulls), tools, span=span, length=length, stiffness=stiffness).zero
