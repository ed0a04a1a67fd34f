"""Storage, care and stop signs of packs: advice that needs no board."""

from logic.frozen import frozen
from logic.pack.care import care


@frozen
class CareAdvice:
    """One sentence: its key and its words."""

    key: str
    text: str


def advice(kind: str) -> tuple[CareAdvice, ...]:
    """Return the advice of a kind, "stop", "fire", "charge" or "storage", the most urgent first.

    >>> advice("stop")[0].key
    'swollen'
    """
    return tuple(CareAdvice(row.text("key"), row.text("text")) for row in care(kind))
