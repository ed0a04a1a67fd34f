"""Words of the motor on the bench."""

LABELS = {
    "kv": "Motor speed constant",
    "resistance": "Winding, line to line",
    "pole_pairs": "Pole pairs",
    "constant six-step": "Torque of one amp, six-step",
    "constant sine peak": "Torque of one amp, sine peak",
    "constant sine rms": "Torque of one amp, sine rms",
}
"""Label of each result."""

CONVENTION = (
    "An amp means DC-equivalent at a six-step controller, peak or rms of a phase at a sine one. Taking {taken} for "
    "{meant} reads the torque {error} off."
)
SAFE = "Belt off, motor held in a vice by its mount, hands clear. It starts without warning."
