"""Pulling a span sideways at its middle with a scale: force of a tension and tension of a force.

*Pull* is what the scale reads, *tension* is that of each span. The span stretches into a triangle of height
`deflection`; `length` is the belt's pitch length and `stiffness` its force per unit strain. With a pulley free to
turn the whole belt shares the stretch; with both held only the pulled span does, and the scale reads far too
much.
"""

from math import sqrt

from logic.errors import InputError, positive
from logic.si import Metre, Newton
from logic.workings import cited

DEEPEST = 0.25
"""Largest depth as a fraction of the span: a belt tears long before, so more is a slip of the hand."""


def check_depth(deflection: float, span: float) -> None:
    """Raise InputError unless both are positive and the depth is at most a quarter of the span."""
    positive(deflection=deflection, span=span)
    if deflection > DEEPEST * span:
        raise InputError("depth", deflection, "too deep for the span", low=0.0, high=DEEPEST * span)


def check_free(deflection: float, span: float, length: float, stiffness: float) -> None:
    """Raise InputError as `check_depth`, and unless the belt is at least two spans long and stiff."""
    check_depth(deflection, span)
    positive(length=length, stiffness=stiffness)
    if length < 2 * span:
        raise InputError("length", length, "belt shorter than its two spans", low=2 * span)


@cited(
    "4 * deflection / sqrt(span**2 + 4 * deflection**2)"
    " * (tension + stiffness * (sqrt(span**2 + 4 * deflection**2) - span) / length)",
    source="derived balance of forces on the stretched span, one pulley free to turn",
    standing="derived",
)
def pull_force(
    *, tension: Newton, deflection: Metre, span: Metre, length: Metre, stiffness: Newton
) -> Newton:
    """Pull that brings the middle of a span to `deflection` with a pulley free to turn, exact.

    The curve of the pulleys under the belt's ends changes it by 1 %, left out. Raises InputError unless all
    are positive, the depth is at most a quarter of the span and the belt at least two spans long.

    >>> round(pull_force(tension=106.8, deflection=0.000994, span=0.063597, length=0.265, stiffness=226800.0), 1)
    8.3
    """
    positive(tension=tension)
    check_free(deflection, span, length, stiffness)
    stretched = sqrt(span**2 + 4 * deflection**2)
    return 4 * deflection / stretched * (tension + stiffness * (stretched - span) / length)


@cited(
    "4 * deflection / sqrt(span**2 + 4 * deflection**2)"
    " * (tension + stiffness * (sqrt(span**2 + 4 * deflection**2) - span) / span)",
    source="derived balance of forces on the stretched span, both pulleys held",
    standing="derived",
)
def pull_force_locked(*, tension: Newton, deflection: Metre, span: Metre, stiffness: Newton) -> Newton:
    """Pull that brings the middle of a span to `deflection` while neither pulley can turn, exact.

    Raises InputError unless all are positive and the depth is at most a quarter of the span.

    >>> round(pull_force_locked(tension=106.8, deflection=0.000994, span=0.063597, stiffness=226800.0), 1)
    13.6
    """
    positive(tension=tension, stiffness=stiffness)
    check_depth(deflection, span)
    stretched = sqrt(span**2 + 4 * deflection**2)
    return 4 * deflection / stretched * (tension + stiffness * (stretched - span) / span)


@cited(
    "force * sqrt(span**2 + 4 * deflection**2) / (4 * deflection)"
    " - stiffness * (sqrt(span**2 + 4 * deflection**2) - span) / length",
    source="derived balance of forces on the stretched span, one pulley free to turn",
    standing="derived",
)
def tension_from_pull(
    *, force: Newton, deflection: Metre, span: Metre, length: Metre, stiffness: Newton
) -> Newton:
    """Tension of a span at rest from the pull at a depth, a pulley free to turn.

    Below zero when the pull is less than stretching the belt alone would take: the belt hung loose before the
    pull. Raises InputError as `pull_force` does.

    >>> round(tension_from_pull(force=8.33, deflection=0.000994, span=0.063597, length=0.265, stiffness=226800.0))
    107
    """
    positive(force=force)
    check_free(deflection, span, length, stiffness)
    stretched = sqrt(span**2 + 4 * deflection**2)
    return force * stretched / (4 * deflection) - stiffness * (stretched - span) / length


@cited(
    "tension + stiffness * (sqrt(span**2 + 4 * deflection**2) - span) * (1 / span - 1 / length)",
    source="derived the locked pull read as if a pulley were free",
    standing="derived",
)
def misread_tension(
    *, tension: Newton, deflection: Metre, span: Metre, length: Metre, stiffness: Newton
) -> Newton:
    """Tension one would find on a belt of this `tension` if the pulleys were held without one knowing.

    Raises InputError as `pull_force` does.

    >>> round(misread_tension(tension=106.8, deflection=0.000994, span=0.063597, length=0.265, stiffness=226800.0))
    191
    """
    positive(tension=tension)
    check_free(deflection, span, length, stiffness)
    return tension + stiffness * (sqrt(span**2 + 4 * deflection**2) - span) * (1 / span - 1 / length)
