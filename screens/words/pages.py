"""What the pages are called that a search finds, and other words a rider would type for them."""

from screens.tongue import texts

TEXTS = texts("pages")

FOUND = tuple((page, title, TEXTS["also"][page]) for page, title in TEXTS["titles"].items())
"""Name, title and other words of each page that opens from nothing."""
