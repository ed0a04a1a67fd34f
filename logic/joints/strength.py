"""What a screw carries: proof load, the preload it is tightened to, and the torque that twists it off."""

from math import pi, sqrt

from logic.errors import InputError, not_negative, positive
from logic.si import Metre, Newton, NewtonMetre, One, Pascal, SquareMetre
from logic.tables import Row, matching, rows
from logic.workings import cited


def strengths() -> tuple[str, ...]:
    """Return the names of all property classes, materials and inch grades a screw can have."""
    return tuple(
        line.text("strength") for table in ("property_classes", "property_grades") for line in rows(table)
    )


def strength(name: str) -> Row:
    """Return the printed row of a property class ("8.8", "A2-70") or an inch grade ("grade 5").

    Columns `tensile`, `yield` and, where printed, `proof`. Raises InputError for a name in neither table.

    >>> strength("8.8").number("proof") / 1e6
    580.0
    """
    for table in ("property_classes", "property_grades"):
        for line in matching(table, strength=name):
            return line
    raise InputError("strength", name, "not in the table")


@cited("proof_stress * stress_area", source="iso-898-1 proof load")
def proof_load(*, proof_stress: Pascal, stress_area: SquareMetre) -> Newton:
    """Load the screw bears without setting. Printed loads are rounded: up to 0.5 % from this.

    >>> round(proof_load(proof_stress=580e6, stress_area=8.78e-6))
    5092
    """
    positive(proof_stress=proof_stress, stress_area=stress_area)
    return proof_stress * stress_area


@cited("tensile_stress * stress_area", source="iso-898-1 minimum ultimate tensile load")
def tensile_load(*, tensile_stress: Pascal, stress_area: SquareMetre) -> Newton:
    """Load the screw breaks at, at the least.

    >>> round(tensile_load(tensile_stress=800e6, stress_area=8.78e-6))
    7024
    """
    positive(tensile_stress=tensile_stress, stress_area=stress_area)
    return tensile_stress * stress_area


@cited("share * proof_load", source="shigley-8 preload, 0.75 of proof if reused, 0.90 if permanent")
def preload_at_share(*, share: One, proof_load: Newton) -> Newton:
    """Preload at a share of the proof load. Raises InputError for a share above 1.

    >>> preload_at_share(share=0.75, proof_load=5100.0)
    3825.0
    """
    positive(share=share, proof_load=proof_load)
    if share > 1.0:
        raise InputError("share", share, "above proof", low=0.0, high=1.0)
    return share * proof_load


@cited("(pitch_diameter + minor_diameter) / 2", source="iso-898-1 stress diameter")
def stress_diameter(*, pitch_diameter: Metre, minor_diameter: Metre) -> Metre:
    """Diameter of the circle whose area is the stress area.

    >>> round(stress_diameter(pitch_diameter=0.003545, minor_diameter=0.003141) * 1000, 3)
    3.343
    """
    positive(pitch_diameter=pitch_diameter, minor_diameter=minor_diameter)
    return (pitch_diameter + minor_diameter) / 2.0


@cited(
    "yield_share * yield_stress * stress_area / sqrt(1 + 3 * (1.5 * pitch_diameter / stress_diameter"
    " * (pitch / (pi * pitch_diameter) + 1.155 * thread_friction))**2)",
    source="vdi-2230 assembly preload",
)
def assembly_preload(  # noqa: PLR0913  (one number each in the formula)
    *,
    yield_share: One,
    yield_stress: Pascal,
    stress_area: SquareMetre,
    pitch: Metre,
    pitch_diameter: Metre,
    stress_diameter: Metre,
    thread_friction: One,
) -> Newton:
    """Preload at which stretch and twist together reach a share of the yield stress, during tightening.

    The formula is from memory; it reproduces the preloads printed for fine threads within 0.3 %.

    >>> preload = assembly_preload(
    ...     yield_share=0.9, yield_stress=640e6, stress_area=8.78e-6, pitch=0.0007,
    ...     pitch_diameter=0.003545, stress_diameter=0.003343, thread_friction=0.14,
    ... )
    >>> round(preload / 1000, 2)
    4.3
    """
    positive(yield_share=yield_share, yield_stress=yield_stress, stress_area=stress_area, pitch=pitch)
    positive(pitch_diameter=pitch_diameter, stress_diameter=stress_diameter)
    not_negative(thread_friction=thread_friction)
    if yield_share > 1.0:
        raise InputError("yield_share", yield_share, "above yield", low=0.0, high=1.0)
    twist = 1.5 * pitch_diameter / stress_diameter * (pitch / (pi * pitch_diameter) + 1.155 * thread_friction)
    return yield_share * yield_stress * stress_area / sqrt(1.0 + 3.0 * twist**2)


@cited(
    "share * tensile_stress",
    source="derived one share of the least tensile strength for every metal",
    standing="derived",
)
def shear_from_tensile(*, share: One, tensile_stress: Pascal) -> Pascal:
    """Shear strength of a metal of which only the tensile strength is known.

    >>> shear_from_tensile(share=0.6, tensile_stress=800e6) / 1e6
    480.0
    """
    positive(share=share, tensile_stress=tensile_stress)
    return share * tensile_stress


@cited("twist_ratio * tensile_stress * pi / 16 * core_diameter**3", source="iso-898-7 torsional strength")
def torsional_strength(*, twist_ratio: One, tensile_stress: Pascal, core_diameter: Metre) -> NewtonMetre:
    """Torque that twists the screw off when nothing carries it but the core: a seized or a bottomed screw.

    The ratios of torsional to tensile strength are from memory.

    >>> round(torsional_strength(twist_ratio=0.84, tensile_stress=800e6, core_diameter=0.003002), 2)
    3.57
    """
    positive(twist_ratio=twist_ratio, tensile_stress=tensile_stress, core_diameter=core_diameter)
    return twist_ratio * tensile_stress * pi / 16.0 * core_diameter**3
