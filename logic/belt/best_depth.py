"""The pull depth at which a person's own tools tell the tension best, and what is left of the error there."""

from math import floor, sqrt

from logic.belt.pull_reading import (
    tension_error,
    tension_per_deflection,
    tension_per_force,
    tension_per_stiffness,
)
from logic.belt.scale import check_free, pull_force
from logic.errors import InputError, positive
from logic.si import Metre, Newton, NewtonPerMetre, One
from logic.workings import cited, method

DEEPEST_OFFERED = 1 / 16
"""Deepest pull that is offered, as a share of the span: beyond it the hook's width and the curve of the belt
over the pulleys count."""


@cited(
    "tension + stiffness * (sqrt(span**2 + 4 * deflection**2) - span) / length",
    source="derived the whole belt shares the stretch of the pulled span",
    standing="derived",
)
def tension_while_pulled(
    *, tension: Newton, deflection: Metre, span: Metre, length: Metre, stiffness: Newton
) -> Newton:
    """Tension of the belt while its span is held at a depth. Raises InputError as `pull_force` does.

    >>> round(tension_while_pulled(tension=100.0, deflection=0.002, span=0.064, length=0.28, stiffness=226900.0))
    201
    """
    positive(tension=tension)
    check_free(deflection, span, length, stiffness)
    return tension + stiffness * (sqrt(span**2 + 4 * deflection**2) - span) / length


@cited("abs(slope * error)", source="derived first-order propagation", standing="derived")
def force_part(*, slope: One, error: Newton) -> Newton:
    """Part of the tension's error that one error of a force makes.

    >>> force_part(slope=-16.0, error=0.5)
    8.0
    """
    return abs(slope * error)


@cited("abs(slope * error)", source="derived first-order propagation", standing="derived")
def deflection_part(*, slope: NewtonPerMetre, error: Metre) -> Newton:
    """Part of the tension's error that the depth's error makes.

    >>> deflection_part(slope=-180000.0, error=0.0001)
    18.0
    """
    return abs(slope * error)


def error_at(  # noqa: PLR0913  (a drive, a depth and the three errors)
    *,
    tension: Newton,
    deflection: Metre,
    span: Metre,
    length: Metre,
    stiffness: Newton,
    force_error: Newton,
    deflection_error: Metre,
    stiffness_error: Newton,
) -> Newton:
    """Return the error a pull at a depth would leave on a belt of this tension.

    >>> round(error_at(
    ...     tension=106.8, deflection=0.001, span=0.0636, length=0.265, stiffness=226800.0,
    ...     force_error=0.5, deflection_error=0.0001, stiffness_error=45360.0), 1)
    21.1
    """
    force = pull_force(tension=tension, deflection=deflection, span=span, length=length, stiffness=stiffness)
    return tension_error(
        per_force=tension_per_force(deflection=deflection, span=span),
        force_error=force_error,
        per_depth=tension_per_deflection(
            force=force, deflection=deflection, span=span, length=length, stiffness=stiffness
        ),
        deflection_error=deflection_error,
        per_stiffness=tension_per_stiffness(deflection=deflection, span=span, length=length),
        stiffness_error=stiffness_error,
    )


@method(
    "of the depths in whole steps down to a sixteenth of the span, as long as the pulled belt stays under its"
    " working tension: the one whose error on a belt of this tension is smallest",
    source="derived first-order propagation at each deflection",
)
def best_depth(  # noqa: PLR0913  (a drive, three errors, the step and the limit)
    *,
    tension: Newton,
    span: Metre,
    length: Metre,
    stiffness: Newton,
    force_error: Newton,
    deflection_error: Metre,
    stiffness_error: Newton,
    step: Metre,
    working: Newton,
) -> Metre:
    """Return the depth to pull to. Raises InputError unless sizes are positive and a first step is possible.

    Deeper makes the depth and the scale count less and the belt's own stiffness count more: between them
    lies a best depth.

    >>> best_depth(
    ...     tension=106.8, span=0.0636, length=0.265, stiffness=226800.0, force_error=0.5,
    ...     deflection_error=0.0001, stiffness_error=45360.0, step=0.0005, working=268.0)
    0.001
    """
    positive(tension=tension, span=span, step=step, working=working)
    count = floor(span * DEEPEST_OFFERED / step)
    if count < 1:
        raise InputError("step", step, "range", high=span * DEEPEST_OFFERED)
    best, least = step, float("inf")
    for number in range(1, count + 1):
        deflection = number * step
        if number > 1 and working < tension_while_pulled(
            tension=tension, deflection=deflection, span=span, length=length, stiffness=stiffness
        ):
            break
        error = error_at(
            tension=tension,
            deflection=deflection,
            span=span,
            length=length,
            stiffness=stiffness,
            force_error=force_error,
            deflection_error=deflection_error,
            stiffness_error=stiffness_error,
        )
        if error < least:
            best, least = deflection, error
    return best
