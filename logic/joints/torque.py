"""Torque and preload, in the short form with a nut factor and in the long form with two frictions."""

from math import pi

from logic.errors import InputError, not_negative, positive
from logic.si import Metre, Newton, NewtonMetre, One
from logic.workings import cited


@cited("nut_factor * nominal_diameter * preload", source="shigley-8 eq. 8-27")
def torque_short(*, nut_factor: One, nominal_diameter: Metre, preload: Newton) -> NewtonMetre:
    """Torque that gives a preload, friction lumped into the nut factor K.

    >>> round(torque_short(nut_factor=0.2, nominal_diameter=0.004, preload=3819.0), 2)
    3.06
    """
    positive(nut_factor=nut_factor, nominal_diameter=nominal_diameter, preload=preload)
    return nut_factor * nominal_diameter * preload


@cited("torque / (nut_factor * nominal_diameter)", source="shigley-8 eq. 8-27")
def preload_from_torque(*, torque: NewtonMetre, nut_factor: One, nominal_diameter: Metre) -> Newton:
    """Preload that a torque gives: the lowest nut factor gives the most, the highest the least.

    >>> preload_from_torque(torque=1.5, nut_factor=0.12, nominal_diameter=0.004)
    3125.0
    """
    positive(torque=torque, nut_factor=nut_factor, nominal_diameter=nominal_diameter)
    return torque / (nut_factor * nominal_diameter)


@cited("(bearing_diameter + hole) / 2", source="iso-16047 mean bearing diameter")
def mean_bearing_diameter(*, bearing_diameter: Metre, hole: Metre) -> Metre:
    """Diameter at which the friction below the head acts. Raises InputError when the hole is not the smaller.

    >>> round(mean_bearing_diameter(bearing_diameter=0.00588, hole=0.0045) * 1000, 2)
    5.19
    """
    positive(bearing_diameter=bearing_diameter, hole=hole)
    if hole >= bearing_diameter:
        raise InputError("hole", hole, "head falls through", low=0.0, high=bearing_diameter)
    return (bearing_diameter + hole) / 2.0


@cited(
    "preload * (pitch / (2 * pi) + 0.577 * pitch_diameter * thread_friction"
    " + mean_bearing_diameter / 2 * head_friction)",
    source="iso-16047 torque and preload; vdi-2230 rounds the factors to 0.16 and 0.58",
)
def torque_long(  # noqa: PLR0913  (one number each in the formula)
    *,
    preload: Newton,
    pitch: Metre,
    pitch_diameter: Metre,
    mean_bearing_diameter: Metre,
    thread_friction: One,
    head_friction: One,
) -> NewtonMetre:
    """Torque that gives a preload: stretch, thread friction and head friction apart.

    >>> torque = torque_long(
    ...     preload=4300.0, pitch=0.0007, pitch_diameter=0.003545, mean_bearing_diameter=0.00519,
    ...     thread_friction=0.14, head_friction=0.14,
    ... )
    >>> round(torque, 2)
    3.27
    """
    positive(preload=preload, pitch=pitch, pitch_diameter=pitch_diameter)
    positive(mean_bearing_diameter=mean_bearing_diameter)
    not_negative(thread_friction=thread_friction, head_friction=head_friction)
    thread_part = pitch / (2.0 * pi) + 0.577 * pitch_diameter * thread_friction
    return preload * (thread_part + mean_bearing_diameter / 2.0 * head_friction)


@cited(
    "(nut_factor - 0.026) / 1.165",
    source="derived fit of the long form, M3 to M12 hexagon",
    standing="derived",
)
def friction_from_nut_factor(*, nut_factor: One) -> One:
    """Friction of thread and head that a nut factor stands for. Raises InputError below 0.026.

    >>> round(friction_from_nut_factor(nut_factor=0.12), 3)
    0.081
    """
    positive(nut_factor=nut_factor)
    if nut_factor <= 0.026:  # noqa: PLR2004  (the stretch alone)
        raise InputError("nut_factor", nut_factor, "below the stretch of the screw", low=0.026)
    return (nut_factor - 0.026) / 1.165


@cited("torque / arm", source="derived lever: the pull square to the arm", standing="derived")
def pull_on_arm(*, torque: NewtonMetre, arm: Metre) -> Newton:
    """Pull at the end of a hex key's arm that gives a torque, by a spring scale held square to the arm.

    >>> pull_on_arm(torque=2.0, arm=0.08)
    25.0
    """
    positive(torque=torque, arm=arm)
    return torque / arm
