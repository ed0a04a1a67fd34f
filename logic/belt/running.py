"""A tensioned belt at work: spans under torque, when one goes slack, pull on the shaft, other manuals."""

from math import pi, sin

from logic.errors import InputError, positive
from logic.si import Metre, Newton, NewtonMetre, Radian
from logic.workings import cited


@cited(
    "tension * pitch_diameter",
    source="derived the slack span of two equal ones loses torque / pitch diameter",
    standing="derived",
)
def slack_torque(*, tension: Newton, pitch_diameter: Metre) -> NewtonMetre:
    """Torque at which the slack span of a belt set to `tension` hangs loose.

    Raises InputError unless both are positive.

    >>> round(slack_torque(tension=107.0, pitch_diameter=0.02546), 2)
    2.72
    """
    positive(tension=tension, pitch_diameter=pitch_diameter)
    return tension * pitch_diameter


@cited("2 * tension * sin(wrap / 2)", source="sdpsi-2017 p. T-31")
def shaft_pull(*, tension: Newton, wrap: Radian) -> Newton:
    """Pull of both spans on a shaft at rest, along the line of centres: what the motor is pulled with.

    Raises InputError unless both are positive and the wrap is at most half a turn.

    >>> shaft_pull(tension=100.0, wrap=3.141592653589793)
    200.0
    """
    positive(tension=tension)
    _check_wrap(wrap)
    return 2 * tension * sin(wrap / 2)


@cited("pull / (2 * sin(wrap / 2))", source="sdpsi-2017 p. T-31")
def tension_from_shaft_pull(*, pull: Newton, wrap: Radian) -> Newton:
    """Tension of each span while the motor is pulled along the line of centres with `pull`.

    Raises InputError unless both are positive and the wrap is at most half a turn.

    >>> tension_from_shaft_pull(pull=200.0, wrap=3.141592653589793)
    100.0
    """
    positive(pull=pull)
    _check_wrap(wrap)
    return pull / (2 * sin(wrap / 2))


@cited(
    "0.812 / 2 * pull",
    source="derived sdpsi-2017 eq. 10-1 in terms of the effective pull",
    standing="derived",
)
def least_of_manuals(*, pull: Newton) -> Newton:
    """Least installation tension of the manuals read, no speed term; `pull` is 2 x design torque / d.

    Raises InputError unless it is positive.

    >>> least_of_manuals(pull=200.0)
    81.2
    """
    positive(pull=pull)
    return 0.812 / 2 * pull


@cited(
    "20 / 33 * pull",
    source="derived gates-17195 p. 180 formula 5 in terms of the effective pull",
    standing="derived",
)
def most_of_manuals(*, pull: Newton) -> Newton:
    """Greatest installation tension of the manuals read, no speed term; `pull` is 2 x design torque / d.

    The manual prints 20 x horsepower / (thousands of feet a minute); one horsepower is 33 000 foot-pounds a
    minute. Raises InputError unless it is positive.

    >>> round(most_of_manuals(pull=200.0), 1)
    121.2
    """
    positive(pull=pull)
    return 20 / 33 * pull


def _check_wrap(wrap: float) -> None:
    positive(wrap=wrap)
    if wrap > pi:
        raise InputError("wrap", wrap, "range", low=0.0, high=pi)
