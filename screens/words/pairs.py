"""Words of the pairs of pulleys."""

from logic.answers.pairs import PairOption
from screens.tongue import _, texts

TEXTS = texts("pairs")

LABELS = TEXTS["labels"]
"""Label of each figure of a pair; {grade} and {speed} are the reference climb."""

COLUMNS = TEXTS["columns"]
"""What the table can be sorted by and shows."""

NONE_FITS = _("No pair of catalogue pulleys has a belt in stock that this mount can tighten.")
CAUTION = _(
    "Local law may allow far less than these speeds. Above about 35 km/h a board may begin to wobble."
)


def teeth(option: PairOption) -> str:
    """Return a pair as one says it: motor, then wheel."""
    return f"{option.motor_teeth}:{option.wheel_teeth}"
