"""Words of the gearing answers."""

from screens.tongue import texts

ITEMS = texts("gearing")["items"]
"""Label of each result; {speed} is the chosen speed."""
