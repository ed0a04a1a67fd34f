"""Words of two set-ups side by side: what each figure is called, and what is said of the one that is better at it."""

from screens.tongue import _
from screens.words import pairs

LABELS = {
    **{name: pairs.LABELS[name] for name in ("top_loaded", "climb_start", "stop")},
    "per_distance": _("Energy at {steady}, held steady"),
    "time_20": _("From standstill to {low}"),
    "push_start": pairs.LABELS["push_start"],
    "time_30": _("From standstill to {high}"),
    "climb_heat": pairs.LABELS["climb_heat"],
    "belt_load": pairs.LABELS["belt_load"],
    "top_full": pairs.LABELS["top_full"],
    "ratio": pairs.LABELS["ratio"],
    "electrical": pairs.LABELS["electrical"],
}
"""Label of each figure in the order shown; {grade}, {speed}, {steady}, {low} and {high} are put in."""

BETTER = {
    "top_loaded": (1, _("faster")),
    "climb_start": (1, _("climbs steeper")),
    "stop": (-1, _("stops shorter from its top speed")),
    "per_distance": (-1, _("uses less energy")),
    "time_20": (-1, _("gets going quicker")),
    "push_start": (1, _("pushes harder")),
    "climb_heat": (-1, _("cooler motors on a climb")),
    "belt_load": (-1, _("easier on its belts")),
}
"""Which way a figure is better, and in a word what the better one does. The others are neither."""
