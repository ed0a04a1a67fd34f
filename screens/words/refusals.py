"""Sentences of refusals: what is wrong and what is allowed, by the reason that logic gives."""

from screens.tongue import texts

SENTENCES = texts("refusals")["sentences"]
"""Sentence of each reason for refusing a value."""
