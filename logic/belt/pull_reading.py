"""The tension that a pull tells, with its error: how far each thing that was measured moves it."""

from math import sqrt

from logic.belt.scale import check_depth, check_free, tension_from_pull
from logic.belt.verdict import Measured
from logic.errors import not_negative, positive
from logic.si import Metre, Newton, NewtonPerMetre, One
from logic.workings import cited


@cited(
    "sqrt(span**2 + 4 * deflection**2) / (4 * deflection)",
    source="derived slope of tension_from_pull",
    standing="derived",
)
def tension_per_force(*, deflection: Metre, span: Metre) -> One:
    """Change of the inferred tension for each newton of pull.

    Raises InputError unless both are positive and the depth is at most a quarter of the span.

    >>> round(tension_per_force(deflection=0.001, span=0.064), 2)
    16.01
    """
    check_depth(deflection, span)
    return sqrt(span**2 + 4 * deflection**2) / (4 * deflection)


@cited(
    "-(force * span**2 / (4 * deflection**2) + 4 * stiffness * deflection / length) / sqrt(span**2 + 4 * deflection**2)",
    source="derived slope of tension_from_pull",
    standing="derived",
)
def tension_per_deflection(
    *, force: Newton, deflection: Metre, span: Metre, length: Metre, stiffness: Newton
) -> NewtonPerMetre:
    """Change of the inferred tension for each metre of depth, below zero: deeper means slacker.

    Raises InputError as `tension_from_pull` does.

    >>> per_depth = tension_per_deflection(force=8.0, deflection=0.001, span=0.064, length=0.265, stiffness=226900.0)
    >>> round(per_depth / 1000, 1)
    -181.4
    """
    positive(force=force)
    check_free(deflection, span, length, stiffness)
    stretched = sqrt(span**2 + 4 * deflection**2)
    return -(force * span**2 / (4 * deflection**2) + 4 * stiffness * deflection / length) / stretched


@cited(
    "(span - sqrt(span**2 + 4 * deflection**2)) / length",
    source="derived slope of tension_from_pull",
    standing="derived",
)
def tension_per_stiffness(*, deflection: Metre, span: Metre, length: Metre) -> One:
    """Change of the inferred tension for each newton of stiffness, below zero: stiffer means slacker.

    Raises InputError as `tension_from_pull` does.

    >>> round(tension_per_stiffness(deflection=0.000994, span=0.063597, length=0.265) * 1e6)
    -117
    """
    check_free(deflection, span, length, 1.0)
    return (span - sqrt(span**2 + 4 * deflection**2)) / length


@cited(
    "sqrt((per_force * force_error)**2 + (per_depth * deflection_error)**2"
    " + (per_stiffness * stiffness_error)**2)",
    source="derived first-order propagation of independent errors",
    standing="derived",
)
def tension_error(  # noqa: PLR0913  (three slopes and the three errors they carry)
    *,
    per_force: One,
    force_error: Newton,
    per_depth: NewtonPerMetre,
    deflection_error: Metre,
    per_stiffness: One,
    stiffness_error: Newton,
) -> Newton:
    """Error of the inferred tension, a limit of the same kind (about 95 %) as the errors put in.

    Raises InputError for an error below zero.

    >>> tension_error(
    ...     per_force=16.0, force_error=0.25, per_depth=-3000.0, deflection_error=0.001,
    ...     per_stiffness=0.0, stiffness_error=0.0)
    5.0
    """
    not_negative(force_error=force_error, deflection_error=deflection_error, stiffness_error=stiffness_error)
    return sqrt(
        (per_force * force_error) ** 2
        + (per_depth * deflection_error) ** 2
        + (per_stiffness * stiffness_error) ** 2
    )


def read_pull(  # noqa: PLR0913  (a pull, the drive it was made on and the three errors)
    *,
    force: Newton,
    deflection: Metre,
    span: Metre,
    length: Metre,
    stiffness: Newton,
    force_error: Newton,
    deflection_error: Metre,
    stiffness_error: Newton,
) -> Measured:
    """Return the tension that a pull tells, with its error; a pulley must be free to turn.

    Raises InputError as `tension_from_pull` and `tension_error` do.

    >>> reading = read_pull(
    ...     force=8.33, deflection=0.000994, span=0.063597, length=0.265, stiffness=226800.0,
    ...     force_error=0.2, deflection_error=0.0001, stiffness_error=0.0)
    >>> round(reading.tension), round(reading.error)
    (107, 19)
    """
    return Measured(
        tension_from_pull(force=force, deflection=deflection, span=span, length=length, stiffness=stiffness),
        tension_error(
            per_force=tension_per_force(deflection=deflection, span=span),
            force_error=force_error,
            per_depth=tension_per_deflection(
                force=force, deflection=deflection, span=span, length=length, stiffness=stiffness
            ),
            deflection_error=deflection_error,
            per_stiffness=tension_per_stiffness(deflection=deflection, span=span, length=length),
            stiffness_error=stiffness_error,
        ),
    )
