"""Words of the motor on the bench."""

from screens.tongue import _

LABELS = {
    "kv": _("Motor constant (Kv)"),
    "resistance": _("Winding, line to line"),
    "pole_pairs": _("Pole pairs"),
    "constant six-step": _("Torque of one amp, six-step"),
    "constant sine peak": _("Torque of one amp, sine peak"),
    "constant sine rms": _("Torque of one amp, sine rms"),
}
"""Label of each result."""

CONVENTION = (
    _("At a six-step controller an amp is DC-equivalent. At a sine one it is peak or rms of a phase."),
    _("Taking {taken} for {meant} reads the torque {error} off."),
)
SAFE = _("Belt off, motor held in a vice by its mount, hands clear. It starts without warning.")
