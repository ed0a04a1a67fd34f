"""Words of holding a climb."""

LABELS = {
    "hold_time": "Until {limit}",
    "held_grade": "Held for good at {speed}",
    "settled": "Settles at",
    "climb_current": "Motor amps, each motor",
    "climb_heat": "Heat of one winding, cold",
    "heat_hot": "Heat of one winding at {limit}",
    "drag": "Heat of one motor's own drag",
    "held": "Motor amps held for good, each motor",
}
"""Label of each result."""

MODEL = (
    "An estimate: the motor is taken as one lump that warms evenly. The winding is hotter than the can. "
    "A thermometer on the can after this climb tells more."
)

CURVES = {"low": "cools well", "usual": "as entered", "high": "cools badly"}
"""Names of the three curves."""
