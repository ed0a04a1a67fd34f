"""Words of the units page."""

from screens.tongue import texts

TEXTS = texts("unit_page")

KINDS = TEXTS["kinds"]
"""Name of each kind."""

LABELS = TEXTS["labels"]
"""Label of what is not a plain change of unit."""
