"""What carries a pulley on its shaft: the points of set screws on a bare one, a flat, or a key."""

from logic.errors import InputError, positive
from logic.frozen import frozen
from logic.joints.materials import hole_strips_at, shear_of
from logic.joints.set_screw import cup_diameter
from logic.joints.threads import Thread, thread
from logic.si import Metre, Newton, NewtonMetre, One, Pascal
from logic.tables import matching, pick
from logic.workings import cited


@frozen
class ScrewHolding:
    """Torque that set screws hold on a bare round shaft: at slip, and with the dynamic safety factors.

    `holds` is true only when the drive torque stays under `least`, the one with the larger factor.
    """

    slip: NewtonMetre
    most: NewtonMetre
    least: NewtonMetre
    holds: bool | None


@cited(
    "point_factor * screws_factor * axial_force * shaft_diameter / 2",
    source="shigley-7-4 holding force at the shaft's surface",
)
def holding_torque(
    *, point_factor: One, screws_factor: One, axial_force: Newton, shaft_diameter: Metre
) -> NewtonMetre:
    """Torque at which the pulley slips on a round shaft, by 0.25 mm in the tests behind the forces.

    >>> one = {"point_factor": 1.0, "screws_factor": 1.0}
    >>> round(holding_torque(**one, axial_force=711.7, shaft_diameter=0.00635), 2)
    2.26
    """
    positive(point_factor=point_factor, screws_factor=screws_factor)
    positive(axial_force=axial_force, shaft_diameter=shaft_diameter)
    return point_factor * screws_factor * axial_force * shaft_diameter / 2.0


@cited("holding_torque / safety", source="unbrako safety factor, static 1.5 to 2, dynamic 4 to 8")
def safe_torque(*, holding_torque: NewtonMetre, safety: One) -> NewtonMetre:
    """Drive torque that may be asked of a holding torque. Raises InputError for a factor below 1.

    >>> safe_torque(holding_torque=6.84, safety=4.0)
    1.71
    """
    positive(holding_torque=holding_torque, safety=safety)
    if safety < 1.0:
        raise InputError("safety", safety, "below 1", low=1.0)
    return holding_torque / safety


@cited(
    "shear_strength * key_width * key_length * shaft_diameter / 2",
    source="derived key sheared along the shaft's surface",
    standing="derived",
)
def key_shear_torque(
    *, shear_strength: Pascal, key_width: Metre, key_length: Metre, shaft_diameter: Metre
) -> NewtonMetre:
    """Torque that shears a parallel key.

    >>> key = {"key_width": 0.003, "key_length": 0.01, "shaft_diameter": 0.008}
    >>> round(key_shear_torque(shear_strength=180e6, **key), 1)
    21.6
    """
    positive(shear_strength=shear_strength, key_width=key_width)
    positive(key_length=key_length, shaft_diameter=shaft_diameter)
    return shear_strength * key_width * key_length * shaft_diameter / 2.0


@cited(
    "pressure * key_height / 2 * key_length * shaft_diameter / 2",
    source="derived key pressed on half its height",
    standing="derived",
)
def key_bearing_torque(
    *, pressure: Pascal, key_height: Metre, key_length: Metre, shaft_diameter: Metre
) -> NewtonMetre:
    """Torque at which the side of a key sinks into the softer of pulley and shaft.

    >>> key = {"key_height": 0.003, "key_length": 0.01, "shaft_diameter": 0.008}
    >>> round(key_bearing_torque(pressure=260e6, **key), 1)
    15.6
    """
    positive(pressure=pressure, key_height=key_height, key_length=key_length, shaft_diameter=shaft_diameter)
    return pressure * key_height / 2.0 * key_length * shaft_diameter / 2.0


@cited(
    "strip_force * cup_diameter / 2",
    source="derived flat that tips against the edge of the point",
    standing="estimate",
)
def flat_torque(*, strip_force: Newton, cup_diameter: Metre) -> NewtonMetre:
    """Torque at which a flat that tries to turn lifts the screw out of the pulley's thread.

    An estimate: the screw's point bears on one edge only; friction, burrs and the shaft's softness are left
    out.

    >>> round(flat_torque(strip_force=6915.0, cup_diameter=0.002), 2)
    6.92
    """
    positive(strip_force=strip_force, cup_diameter=cup_diameter)
    return strip_force * cup_diameter / 2.0


def axial_force(screw: Thread) -> Newton:
    """Return the axial holding force of one seated cup-point screw; metric takes the nearest inch size.

    Raises InputError for a size with neither.
    """
    like = next(matching("set_screw_sizes", thread=screw.designation), None)
    size = like.text("size") if like else screw.size
    return pick("set_screws_inch", size=size, part="seat").number("holding_force")


def factor(of: str, name: str) -> One:
    """Return a factor of a "point", of the "screws" or of "safety"."""
    return pick("set_screw_points", of=of, name=name).number("factor")


def holding(
    designation: str,
    *,
    shaft_diameter: Metre,
    screws: str = "two at 90",
    point: str = "cup",
    drive_torque: NewtonMetre | None = None,
) -> ScrewHolding:
    """Return what set screws hold on a bare round shaft; `drive_torque` is the largest the motor makes.

    >>> holding("M4", shaft_diameter=0.008, screws="one", drive_torque=2.5).holds
    False
    """
    slip = holding_torque(
        point_factor=factor("point", point),
        screws_factor=factor("screws", screws),
        axial_force=axial_force(thread(designation)),
        shaft_diameter=shaft_diameter,
    )
    most = safe_torque(holding_torque=slip, safety=factor("safety", "dynamic low"))
    least = safe_torque(holding_torque=slip, safety=factor("safety", "dynamic high"))
    return ScrewHolding(slip, most, least, None if drive_torque is None else drive_torque <= least)


def flat_holding(designation: str, *, engagement: Metre, pulley: str) -> NewtonMetre:
    """Return the torque one screw on a flat carries, an estimate with the static safety factor.

    `engagement` is the screw's thread in the pulley, `pulley` its material. Raises InputError for other
    sizes.

    >>> round(flat_holding("M4", engagement=0.005, pulley="6061-T6"), 1)
    3.1
    """
    screw = thread(designation)
    force = hole_strips_at(screw, engagement=engagement, material=pulley)
    return safe_torque(
        holding_torque=flat_torque(strip_force=force, cup_diameter=cup_diameter(screw)),
        safety=factor("safety", "static high"),
    )


def key_holding(
    *, key_width: Metre, key_height: Metre, key_length: Metre, shaft_diameter: Metre, pulley: str
) -> NewtonMetre:
    """Return the torque a mild-steel key carries in a pulley, with the static safety factor.

    >>> key = {"key_width": 0.003, "key_height": 0.003, "key_length": 0.01, "shaft_diameter": 0.008}
    >>> round(key_holding(**key, pulley="6061-T6"), 1)
    7.8
    """
    sheared = key_shear_torque(
        shear_strength=shear_of("steel"),
        key_width=key_width,
        key_length=key_length,
        shaft_diameter=shaft_diameter,
    )
    pressed = key_bearing_torque(
        pressure=pick("bearing_pressures", material=pulley).number("pressure"),
        key_height=key_height,
        key_length=key_length,
        shaft_diameter=shaft_diameter,
    )
    return safe_torque(holding_torque=min(sheared, pressed), safety=factor("safety", "static high"))
