"""Words of rides that tell about drag, and of coasting."""

from screens.tongue import _, texts

LABELS = texts("drag")["labels"]
"""Label of each result."""

RESTS_ON = _("Rolling coefficient {rolling} and drag area {area}: {known}.")
ASSUMED = _("assumed, until rides or a coast tell better")
ENTERED = _("entered on the board")
NOT_CLEAR = _("The band of one reaches zero. Ride some slower and some faster.")
LEVEL = _("Hills, stops and wind read as drag. Level rides at a steady speed tell most.")
COAST = (
    _("Level road, no wind, upright as you ride; once each way."),
    _("The air's part rests on the drag area."),
)
