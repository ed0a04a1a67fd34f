"""Words of the parts that decide how a board rides."""

from screens.tongue import _, texts

TEXTS = texts("feel")

LABELS = TEXTS["labels"]
"""Label of each figure; {larger} is how much larger a wheel is compared with."""

DETAILS = TEXTS["details"]
"""What each figure holds for."""

BUSHING = TEXTS["bushing"]
"""What is said of the bushings that are fitted."""

PARTS = TEXTS["parts"]
"""Heading of each part."""

BITES = _("A wheel that touches the deck in a turn stops at once and throws you. Make room before you ride.")
WOBBLE = _("Above about {speed} a board may begin to wobble. Softer parts and more turn bring it sooner.")
