"""Words of wheel wear and size."""

from screens.tongue import _

LABELS = {
    "today": _("Wheel today"),
    "circumference_today": _("Circumference today"),
    "rolled": _("Circumference by the marks"),
    "change": _("Speed and distance against the other"),
    "push_change": _("Push against the other"),
    "top": _("Unloaded speed, nominal, today"),
    "top_other": _("Unloaded speed on the other"),
    "push_today": _("Push from standstill, today"),
    "push_other": _("Push on the other"),
    "clearance": _("Wheel pulley above the ground, today"),
    "clearance_other": _("Wheel pulley above the ground, other"),
}
"""Label of each result."""

HOW = (
    _("Across: with a calliper, at the narrowest place."),
    _("By rolling: chalk tread and ground, roll ten turns with your weight on, measure between the marks."),
)
LOW = _("The wheel pulley comes close to the ground: pebbles and kerbs reach it.")
