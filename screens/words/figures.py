"""Sentences in place of a number, wherever figures of a drive are shown."""

from screens.tongue import texts

ALIKE = ("clear of the wheels", "by feel", "too cold")
"""Outcomes that say what the refusal of the same name says."""

OUTCOMES = texts("figures")["outcomes"] | {name: texts("refusals")["sentences"][name] for name in ALIKE}
"""Plain sentence of each outcome."""
