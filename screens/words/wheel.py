"""Words of wheel wear and size."""

from screens.tongue import _, texts

LABELS = texts("wheel")["labels"]
"""Label of each result."""

HOW = (
    _("Across: with a calliper, at the narrowest place."),
    _("By rolling: chalk tread and ground, roll ten turns with your weight on, measure between the marks."),
)
LOW = _("The wheel pulley comes close to the ground: pebbles and kerbs reach it.")
