"""Tension of a plucked span from its frequency, and back.

A short toothed belt is stiff against bending, so it sounds higher than a string of its tension: the reading
is too high until it has been set against a pull on this very belt.
"""

from math import sqrt

from logic.errors import not_negative, positive
from logic.si import Hertz, KilogramPerMetre, Metre, Newton, One
from logic.workings import cited


@cited(
    "printed_mass * width / printed_width",
    source="derived mass in proportion to the width",
    standing="derived",
)
def mass_for_width(*, printed_mass: KilogramPerMetre, width: Metre, printed_width: Metre) -> KilogramPerMetre:
    """Mass per metre of a belt from the table's, by the width. Raises InputError unless all are positive.

    >>> round(mass_for_width(printed_mass=0.0035, width=0.015, printed_width=0.001), 4)
    0.0525
    """
    positive(printed_mass=printed_mass, width=width, printed_width=printed_width)
    return printed_mass * width / printed_width


@cited("4 * mass_per_length * span**2 * frequency**2", source="optibelt-rubber p. 44")
def tension_from_frequency(*, mass_per_length: KilogramPerMetre, span: Metre, frequency: Hertz) -> Newton:
    """Tension of a span that vibrates freely in its first mode, bending stiffness left out.

    Raises InputError unless all are positive.

    >>> round(tension_from_frequency(mass_per_length=0.0525, span=0.0636, frequency=355.0), 1)
    107.1
    """
    positive(mass_per_length=mass_per_length, span=span, frequency=frequency)
    return 4 * mass_per_length * span**2 * frequency**2


@cited("sqrt(tension / (4 * mass_per_length * span**2))", source="optibelt-rubber p. 44")
def frequency_from_tension(*, mass_per_length: KilogramPerMetre, span: Metre, tension: Newton) -> Hertz:
    """Frequency of the first mode of a span, bending stiffness left out. Raises InputError unless positive.

    >>> round(frequency_from_tension(mass_per_length=0.0525, span=0.0636, tension=107.1))
    355
    """
    positive(mass_per_length=mass_per_length, span=span, tension=tension)
    return sqrt(tension / (4 * mass_per_length * span**2))


@cited(
    "tension * sqrt(mass_share**2 + (2 * frequency_error / frequency)**2 + (2 * span_error / span)**2)",
    source="derived first-order propagation of independent errors",
    standing="derived",
)
def pluck_error(  # noqa: PLR0913  (three measured numbers with their errors)
    *,
    tension: Newton,
    mass_share: One,
    frequency: Hertz,
    frequency_error: Hertz,
    span: Metre,
    span_error: Metre,
) -> Newton:
    """Error of a plucked tension without that of the bending stiffness, a limit like those put in.

    Raises InputError unless tension, frequency and span are positive and no error is below zero.

    >>> round(pluck_error(
    ...     tension=100.0, mass_share=0.12, frequency=355.0, frequency_error=3.55,
    ...     span=0.06, span_error=0.0), 1)
    12.2
    """
    positive(tension=tension, frequency=frequency, span=span)
    not_negative(mass_share=mass_share, frequency_error=frequency_error, span_error=span_error)
    return tension * sqrt(
        mass_share**2 + (2 * frequency_error / frequency) ** 2 + (2 * span_error / span) ** 2
    )


@cited("pulled / plucked", source="derived one belt measured both ways", standing="derived")
def calibration(*, pulled: Newton, plucked: Newton) -> One:
    """Factor from a plucked tension of this belt to the pulled one. Raises InputError unless positive.

    >>> calibration(pulled=90.0, plucked=120.0)
    0.75
    """
    positive(pulled=pulled, plucked=plucked)
    return pulled / plucked


@cited(
    "sqrt((tension * pull_share)**2 + (2 * tension * frequency_error / frequency)**2"
    " + ((tension - pulled) * (1 - factor))**2)",
    source="derived error of the calibration, of this pluck, and of using the factor at another tension",
    standing="derived",
)
def calibrated_error(  # noqa: PLR0913  (three parts of an error)
    *,
    tension: Newton,
    pull_share: One,
    frequency: Hertz,
    frequency_error: Hertz,
    pulled: Newton,
    factor: One,
) -> Newton:
    """Error of a calibrated tension; `pull_share` is that of the pull it was set against.

    The mass and the span drop out. Raises InputError unless tension, frequency, pull and factor are positive.

    >>> round(calibrated_error(
    ...     tension=80.0, pull_share=0.15, frequency=350.0, frequency_error=3.5, pulled=80.0, factor=0.8), 1)
    12.1
    """
    positive(tension=tension, frequency=frequency, pulled=pulled, factor=factor)
    not_negative(pull_share=pull_share, frequency_error=frequency_error)
    return sqrt(
        (tension * pull_share) ** 2
        + (2 * tension * frequency_error / frequency) ** 2
        + ((tension - pulled) * (1 - factor)) ** 2
    )
