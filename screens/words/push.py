"""Words of speed and push."""

from screens.tongue import texts

TEXTS = texts("push")

CHARGE = {"full": "full", "nominal": "nominal", "empty": "empty"}

LABELS = TEXTS["labels"]
"""Label of each result; {speed} is the asked speed."""

LIMITS = TEXTS["limits"]
"""What rules the push."""
