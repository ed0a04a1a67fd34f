"""How tight a belt should be: installation tension per span, target, window and marks.

*Tension* is always that of one span. `torque` and `pitch_diameter` belong to the same pulley, here the
motor's.
"""

from logic.belt.catalogue import Belt
from logic.errors import InputError, not_negative, positive
from logic.frozen import frozen
from logic.si import KilogramPerMetre, Metre, MetrePerSecond, Newton, NewtonMetre, One
from logic.workings import cited

LEAST_SERVICE_FACTOR = 1.3
"""Below it the handbook changes to another formula and the result would jump up."""


@frozen
class Target:
    """The tension to set a belt to.

    `held_down` tells that the belt's working tension, not the torque, decided it; `over_working` that even so
    the tight span goes above the working tension at full torque.
    """

    tension: Newton
    installation: Newton
    tight: Newton
    held_down: bool
    over_working: bool


@frozen
class Window:
    """Edges within which a measured tension is good, and the marks to set to."""

    floor: Newton
    ceiling: Newton
    new_low: Newton
    new_high: Newton
    run_in: Newton


@cited(
    "0.812 * service_factor * torque / pitch_diameter + mass_factor * belt_speed**2",
    source="sdpsi-2017 p. T-29 eq. 10-1",
)
def installation_tension(
    *,
    torque: NewtonMetre,
    service_factor: One,
    pitch_diameter: Metre,
    mass_factor: KilogramPerMetre,
    belt_speed: MetrePerSecond,
) -> Newton:
    """Tension of each span at rest that carries the torque with its service factor at that belt speed.

    Other manuals ask for 0.41 to 0.61 of the effective pull (`least_of_manuals`, `most_of_manuals`). Raises
    InputError unless all are positive (a speed of 0 is allowed), and for a service factor below 1.3.

    >>> round(installation_tension(
    ...     torque=2.5, service_factor=1.3, pitch_diameter=0.025, mass_factor=0.05, belt_speed=10.0), 1)
    110.6
    """
    positive(torque=torque, pitch_diameter=pitch_diameter, mass_factor=mass_factor)
    not_negative(belt_speed=belt_speed)
    if not LEAST_SERVICE_FACTOR <= service_factor < float("inf"):
        raise InputError("service_factor", service_factor, "formula changes below", low=LEAST_SERVICE_FACTOR)
    return 0.812 * service_factor * torque / pitch_diameter + mass_factor * belt_speed**2


@cited("2 * torque / pitch_diameter", source="derived torque over pitch radius", standing="derived")
def effective_pull(*, torque: NewtonMetre, pitch_diameter: Metre) -> Newton:
    """Difference between tight and slack span that carries the torque (Te in the handbooks).

    Raises InputError unless both are positive.

    >>> effective_pull(torque=2.5, pitch_diameter=0.025)
    200.0
    """
    positive(torque=torque, pitch_diameter=pitch_diameter)
    return 2 * torque / pitch_diameter


@cited(
    "torque / pitch_diameter",
    source="derived two spans of equal stiffness share the effective pull",
    standing="derived",
)
def tension_swing(*, torque: NewtonMetre, pitch_diameter: Metre) -> Newton:
    """Half the effective pull (Q / d): the tight span gains it and the slack span loses it under the torque.

    Raises InputError unless both are positive.

    >>> tension_swing(torque=2.5, pitch_diameter=0.025)
    100.0
    """
    positive(torque=torque, pitch_diameter=pitch_diameter)
    return torque / pitch_diameter


@cited(
    "max(least, working - swing) if max(installation, least) + swing > working else max(installation, least)",
    source="derived sdpsi-2017 p. T-31 and the working tension of table 3",
    standing="derived",
)
def target_tension(*, installation: Newton, least: Newton, swing: Newton, working: Newton) -> Newton:
    """Tension to set: at least the width's least, held down so that the tight span keeps to `working`.

    The holding down is ours; the handbook prints the larger of the two. Raises InputError unless all are
    positive.

    >>> target_tension(installation=150.0, least=53.0, swing=140.0, working=268.0)
    128.0
    """
    positive(installation=installation, least=least, swing=swing, working=working)
    wanted = max(installation, least)
    return max(least, working - swing) if wanted + swing > working else wanted


def target(
    *,
    belt: Belt,
    torque: NewtonMetre,
    service_factor: One,
    pitch_diameter: Metre,
    belt_speed: MetrePerSecond,
) -> Target:
    """Return the tension to set a belt to, and whether the belt's working tension held it down.

    Raises InputError as `installation_tension` does.
    """
    installation = installation_tension(
        torque=torque,
        service_factor=service_factor,
        pitch_diameter=pitch_diameter,
        mass_factor=belt.mass_factor,
        belt_speed=belt_speed,
    )
    swing = tension_swing(torque=torque, pitch_diameter=pitch_diameter)
    tension = target_tension(
        installation=installation, least=belt.least_tension, swing=swing, working=belt.working_tension
    )
    tight = tension + swing
    return Target(
        tension,
        installation,
        tight,
        held_down=tension < max(installation, belt.least_tension),
        # Held down to the limit exactly, the sum may land one rounding step above it.
        over_working=tight > belt.working_tension * (1 + 1e-12),
    )


@cited(
    "max(least, min(tension, bearing))",
    source="derived the shaft's pull held to what the motor's bearing may carry",
    standing="derived",
)
def held_by_bearing(*, tension: Newton, bearing: Newton, least: Newton) -> Newton:
    """Tension to set where the motor's bearing carries less than the belt would ask for.

    Never under the width's least. Raises InputError unless all are positive.

    >>> held_by_bearing(tension=120.0, bearing=90.0, least=50.0)
    90.0
    """
    positive(tension=tension, bearing=bearing, least=least)
    return max(least, min(tension, bearing))


@cited(
    "max(least, 0.7 * target)",
    source="practice the low end of the 0.7 to 0.8 that manuals print for a used belt",
    standing="practice",
)
def window_floor(*, target: Newton, least: Newton) -> Newton:
    """Lowest tension that is still good: a used belt's 0.7, but not under the least for the width.

    Raises InputError unless both are positive.

    >>> round(window_floor(target=100.0, least=53.0), 9)
    70.0
    """
    positive(target=target, least=least)
    return max(least, 0.7 * target)


@cited("1.1 * target", source="gates-17195 p. 181")
def window_ceiling(*, target: Newton) -> Newton:
    """Highest tension that is still good, and the upper mark for a new belt (the lower is the target itself).

    Raises InputError unless it is positive.

    >>> round(window_ceiling(target=100.0), 9)
    110.0
    """
    positive(target=target)
    return 1.1 * target


@cited("max(least, 0.8 * target)", source="gates-17195 p. 181")
def run_in_mark(*, target: Newton, least: Newton) -> Newton:
    """Tension to set a belt to that has run in, but not under the least for the width.

    Raises InputError unless both are positive.

    >>> run_in_mark(target=100.0, least=53.0)
    80.0
    """
    positive(target=target, least=least)
    return max(least, 0.8 * target)


def window(*, target: Newton, least: Newton) -> Window:
    """Return the window of a target and the marks to set a new and a run-in belt to.

    Raises InputError unless both are positive.
    """
    ceiling = window_ceiling(target=target)
    return Window(
        floor=window_floor(target=target, least=least),
        ceiling=ceiling,
        new_low=target,
        new_high=ceiling,
        run_in=run_in_mark(target=target, least=least),
    )
