"""Words of the pairs of pulleys."""

from logic.answers.pairs import PairOption
from screens.tongue import _

LABELS = {
    "top_loaded": _("Top speed, loaded"),
    "top_full": _("Top speed without load, full pack"),
    "ratio": _("Gear ratio"),
    "push_start": _("Push from standstill"),
    "climb_start": _("Steepest climb, from standstill"),
    "climb_heat": _("Heat of one motor, {grade} at {speed}"),
    "stop": _("Stopping distance from top speed"),
    "angular_speed_loaded": _("Motor at top speed"),
    "electrical": _("Electrical speed without load, full pack"),
    "erpm_margin": _("Left below the controller's electrical limit"),
    "belt_load": _("Belt pull, share of what it may carry"),
    "belt": _("Belt"),
    "centre": _("Centre distance"),
    "teeth_in_mesh": _("Teeth in mesh"),
}
"""Label of each figure of a pair; {grade} and {speed} are the reference climb."""

COLUMNS = {
    "loaded": _("Top speed"),
    "push": _("Push"),
    "climb": _("Steepest hill"),
    "heat": _("Motor heat"),
    "stop": _("Stopping distance"),
    "belt": _("Belt"),
    "centre": _("Centre distance"),
    "in_mesh": _("Teeth in mesh"),
    "belt_load": _("Belt pull"),
    "ratio": _("Gear ratio"),
    "unloaded": _("Speed without load"),
    "angular_speed": _("Motor speed"),
    "erpm_margin": _("Electrical room"),
}
"""What the table can be sorted by and shows."""

NONE_FITS = _("No pair of catalogue pulleys has a belt in stock that this mount can tighten.")
CAUTION = _(
    "Local law may allow far less than these speeds. Above about 35 km/h a board may begin to wobble."
)


def teeth(option: PairOption) -> str:
    """Return a pair as one says it: motor, then wheel."""
    return f"{option.motor_teeth}:{option.wheel_teeth}"
