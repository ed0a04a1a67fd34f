"""What checks found wrong and no later one found right: open until it is."""

from collections.abc import Iterable
from dataclasses import field
from datetime import datetime

from logic.checks.run import RIGHT
from logic.frozen import frozen
from logic.log import Check
from logic.log.checks import ALL_RIGHT, WITH_NOTES


@frozen
class OpenFault:
    """One item found wrong: its list, what it is about, what was seen, whether it forbids riding, and when."""

    base: str
    key: str
    name: str
    note: str
    stops: bool
    at: datetime

    @property
    def text(self) -> str:
        """Return what it is about and what was seen."""
        return f"{self.name}: {self.note}"


@frozen
class Finding:
    """What one logged check says of faults: those it found, the items it found right, whether it was whole."""

    faults: tuple[OpenFault, ...] = ()
    right: frozenset[str] = field(default_factory=frozenset)
    whole: bool = False


def finding(check: Check, at: datetime) -> Finding:
    """Return what a logged check says of faults."""
    faults = tuple(OpenFault(check.base, *fault, at) for fault in check.faults)
    right = frozenset(key for key, (state, _) in check.answers.items() if state == RIGHT)
    return Finding(faults, right, check.verdict in (ALL_RIGHT, WITH_NOTES))


def still_open(before: Iterable[OpenFault], base: str, new: Finding) -> tuple[OpenFault, ...]:
    """Return the open faults after one more check: the same list found right, or no longer asks, what it cleared."""
    found = {fault.key for fault in new.faults}

    def stays(fault: OpenFault) -> bool:
        return fault.base != base or not (fault.key in found or fault.key in new.right or new.whole)

    return (*filter(stays, before), *new.faults)
