"""Words of holding a climb."""

from screens.tongue import _

LABELS = {
    "hold_time": _("Until {limit} on a climb of {grade}"),
    "held_grade": _("Climb without end at {speed}"),
    "settled": _("Settles at"),
    "climb_current": _("Motor amps, each motor"),
    "climb_heat": _("Heat of one winding, cold"),
    "heat_hot": _("Heat of one winding at {limit}"),
    "drag": _("Heat of one motor's own drag"),
    "held": _("Motor amps without end, each motor"),
}
"""Label of each result."""

MODEL = (
    _("An estimate: the motor is taken as one lump that warms evenly."),
    _("The winding is hotter than the can. A thermometer on the can after this climb tells more."),
)

CURVES = {"low": _("cools well"), "usual": _("as entered"), "high": _("cools badly")}
"""Names of the three curves."""
