"""When a thread strips: shear areas of hole and screw, and the length of engagement that keeps them whole."""

from math import pi

from logic.errors import InputError, not_negative, positive
from logic.si import Metre, Newton, One, Pascal, SquareMetre
from logic.workings import cited


def _shares(pitch: float, outer: float, inner: float, field: str) -> float:
    """Return the sheared share of a pitch. Raises InputError when the flanks do not meet."""
    sheared = 0.5 * pitch + 0.57735 * (outer - inner)
    if sheared <= 0.0 or sheared > pitch:
        raise InputError(field, outer, "flanks do not meet")
    return sheared


@cited(
    "pi * engagement / pitch * screw_major_min * (pitch / 2 + 0.57735 * (screw_major_min - hole_pitch_max))",
    source="fed-std-h28 internal thread",
)
def hole_shear_area(
    *, engagement: Metre, pitch: Metre, screw_major_min: Metre, hole_pitch_max: Metre
) -> SquareMetre:
    """Area of the tapped hole that shears along the crests of the smallest screw in the largest hole.

    >>> limits = {"screw_major_min": 0.004826, "hole_pitch_max": 0.004605}
    >>> area = hole_shear_area(engagement=0.005, pitch=0.0008, **limits)
    >>> round(area * 1e6, 3)
    49.994
    """
    positive(
        engagement=engagement, pitch=pitch, screw_major_min=screw_major_min, hole_pitch_max=hole_pitch_max
    )
    sheared = _shares(pitch, screw_major_min, hole_pitch_max, "screw_major_min")
    return pi * engagement / pitch * screw_major_min * sheared


@cited(
    "pi * engagement / pitch * hole_minor_max * (pitch / 2 + 0.57735 * (screw_pitch_min - hole_minor_max))",
    source="fed-std-h28 external thread",
)
def screw_shear_area(
    *, engagement: Metre, pitch: Metre, hole_minor_max: Metre, screw_pitch_min: Metre
) -> SquareMetre:
    """Area of the screw's thread that shears along the crests of the hole.

    >>> limits = {"hole_minor_max": 0.004334, "screw_pitch_min": 0.004361}
    >>> area = screw_shear_area(engagement=0.005, pitch=0.0008, **limits)
    >>> round(area * 1e6, 3)
    35.366
    """
    positive(
        engagement=engagement, pitch=pitch, hole_minor_max=hole_minor_max, screw_pitch_min=screw_pitch_min
    )
    sheared = _shares(pitch, screw_pitch_min, hole_minor_max, "screw_pitch_min")
    return pi * engagement / pitch * hole_minor_max * sheared


@cited("engagement - pitch", source="derived one pitch lost to chamfer and run-out", standing="derived")
def effective_engagement(*, engagement: Metre, pitch: Metre) -> Metre:
    """Engagement that carries: one pitch less than what overlaps. Raises InputError when nothing is left.

    >>> round(effective_engagement(engagement=0.005, pitch=0.0007) * 1000, 2)
    4.3
    """
    positive(engagement=engagement, pitch=pitch)
    if engagement <= pitch:
        raise InputError("engagement", engagement, "less than one thread", low=pitch)
    return engagement - pitch


@cited("length + pitch", source="derived one pitch lost to chamfer and run-out", standing="derived")
def with_lead_in(*, length: Metre, pitch: Metre) -> Metre:
    """Engagement that leaves a length carrying.

    >>> round(with_lead_in(length=0.0044, pitch=0.0007) * 1000, 1)
    5.1
    """
    positive(length=length, pitch=pitch)
    return length + pitch


@cited("shear_area * shear_strength", source="fed-std-h28 strip load")
def strip_force(*, shear_area: SquareMetre, shear_strength: Pascal) -> Newton:
    """Tension at which a thread strips.

    >>> round(strip_force(shear_area=49.994e-6, shear_strength=207e6))
    10349
    """
    positive(shear_area=shear_area, shear_strength=shear_strength)
    return shear_area * shear_strength


@cited(
    "strip_force / (safety * (1 + scatter))",
    source="derived safety 1.5 over the scatter of 35 %",
    standing="derived",
)
def allowed_preload(*, strip_force: Newton, safety: One, scatter: One) -> Newton:
    """Preload that leaves a safety and the scatter of torque control below the strip force.

    >>> round(allowed_preload(strip_force=6915.0, safety=1.5, scatter=0.35))
    3415
    """
    positive(strip_force=strip_force, safety=safety)
    not_negative(scatter=scatter)
    return strip_force / (safety * (1.0 + scatter))


@cited(
    "screw_force / (shear_area_per_length * shear_strength)",
    source="fed-std-h28 length of engagement",
    standing="derived",
)
def engagement_for_force(
    *, screw_force: Newton, shear_area_per_length: Metre, shear_strength: Pascal
) -> Metre:
    """Full thread that must engage so that the screw, at the force it breaks at, does not strip the hole.

    `shear_area_per_length` is the shear area of one metre of engagement. Add one pitch for the lead-in.

    >>> hole = {"shear_area_per_length": 7.769e-3, "shear_strength": 207e6}
    >>> length = engagement_for_force(screw_force=7020.0, **hole)
    >>> round(length * 1000, 1)
    4.4
    """
    positive(
        screw_force=screw_force, shear_area_per_length=shear_area_per_length, shear_strength=shear_strength
    )
    return screw_force / (shear_area_per_length * shear_strength)


@cited(
    "2 * stress_area"
    " / (pi * hole_minor_max * (1 / 2 + 0.57735 * (screw_pitch_min - hole_minor_max) / pitch))",
    source="fed-std-h28 length of engagement, screw to break before its own thread strips",
)
def engagement_for_screw_thread(
    *, stress_area: SquareMetre, pitch: Metre, hole_minor_max: Metre, screw_pitch_min: Metre
) -> Metre:
    """Engagement at which the screw breaks before its own thread strips, in a hole at least as strong.

    >>> length = engagement_for_screw_thread(
    ...     stress_area=14.2e-6, pitch=0.0008, hole_minor_max=0.004334, screw_pitch_min=0.004361)
    >>> round(length * 1000, 2)
    4.02
    """
    positive(
        stress_area=stress_area, pitch=pitch, hole_minor_max=hole_minor_max, screw_pitch_min=screw_pitch_min
    )
    sheared = _shares(pitch, screw_pitch_min, hole_minor_max, "screw_pitch_min")
    return 2.0 * stress_area / (pi * hole_minor_max * sheared / pitch)
