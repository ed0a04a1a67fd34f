"""Storage, care and stop signs of packs: sentences that are data, each with its source."""

from logic.errors import InputError
from logic.tables import Row, matching

KINDS = ("stop", "fire", "charge", "storage")
"""Kinds of advice, the most urgent first."""


def care(kind: str) -> tuple[Row, ...]:
    """Return the advice of a kind, in order: texts `key`, `signal` (may be empty) and `text`.

    >>> care("fire")[0].text("signal")
    'DANGER'
    """
    if kind not in KINDS:
        raise InputError("kind", kind, "unknown kind")
    return tuple(matching("care", kind=kind))
