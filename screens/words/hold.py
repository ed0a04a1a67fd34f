"""Words of holding a climb."""

from screens.tongue import _, texts

LABELS = texts("hold")["labels"]
"""Label of each result."""

MODEL = (
    _("An estimate: the motor is taken as one lump that warms evenly."),
    _("The winding is hotter than the can. A thermometer on the can after this climb tells more."),
)

CURVES = {"low": _("cools well"), "usual": _("as entered"), "high": _("cools badly")}
"""Names of the three curves."""
