"""Words of the motor on the bench."""

from screens.tongue import _, texts

LABELS = texts("bench_motor")["labels"]
"""Label of each result."""

CONVENTION = (
    _("At a six-step controller an amp is DC-equivalent. At a sine one it is peak or rms of a phase."),
    _("Taking {taken} for {meant} reads the torque {error} off."),
)
SAFE = _("Belt off, motor held in a vice by its mount, hands clear. It starts without warning.")
