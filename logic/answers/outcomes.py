"""Answers that are a plain sentence in place of a number."""

OUTCOMES = frozenset(
    {
        "cannot start",
        "runs past",
        "not reached",
        "needs the brake",
        "does not stop",
        "never reached",
        "beyond the weight",
        "stays below",
        "too hot at the start",
        "own drag",
        "runs away",
        "no such motor",
        "odd magnets",
        "too alike",
        "too few rides",
        "rolls on",
        "by feel",
        "too cold",
        "clear of the wheels",
    }
)
"""Refusals of the formulas that are answers to the person: the key of the sentence."""
