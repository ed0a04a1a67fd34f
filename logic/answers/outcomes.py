"""Answers that are a plain sentence in place of a number."""

from collections.abc import Callable

from logic.answers.reading import Item, Open, attempt
from logic.workings import Recorder

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
    }
)
"""Refusals of the formulas that are answers to the person: the key of the sentence."""


def told(recorder: Recorder, name: str, quantity: str, compute: Callable[[], float]) -> Item:
    """Return a result as `attempt` does, with an outcome where the refusal itself is the answer."""
    item = attempt(recorder, name, quantity, compute)
    if isinstance(item, Open) and item.problem is not None and item.problem.reason in OUTCOMES:
        return Open(name, outcome=item.problem.reason)
    return item
