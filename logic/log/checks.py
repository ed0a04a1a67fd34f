"""Entries about checklists: what a run of one found."""

from collections.abc import Mapping
from dataclasses import field
from typing import ClassVar, NamedTuple

from logic.frozen import frozen
from logic.log.entry import Entry, choice, figure

ALL_RIGHT, WITH_NOTES, STOPPED, UNFINISHED = "all right", "with notes", "stopped", "not finished"

FIT, CARE, NOT = "fit to ride", "with care", "do not ride"
"""What a check before a ride ends in."""


class Fault(NamedTuple):
    """An item found wrong: its key and name, what was seen, and whether it ended the run."""

    key: str
    name: str
    note: str
    stops: bool


@frozen(kw_only=True)
class Check(Entry):
    """A run of the list `list`, which stems from `base`: counted, never promised, with the board's values then.

    `held` is what forbade riding whatever the list found, `put_off` what was due all the same and why it waited. `notes`
    are pairs of what was done and what was seen, `noted` the keys of those items. `version` is that of the list.
    """

    KIND: ClassVar[str] = "check"

    list: str
    base: str
    verdict: str = choice(ALL_RIGHT, WITH_NOTES, STOPPED, UNFINISHED)
    title: str = "Check"
    version: int = 1
    fit: str = choice("", FIT, CARE, NOT, default="")
    fit_why: tuple[str, ...] = ()
    faults: tuple[Fault, ...] = ()
    right: int = 0
    total: int = 0
    aside: int = 0
    notes: tuple[tuple[str, str], ...] = ()
    noted: tuple[str, ...] = ()
    stopped_by: str = ""
    halted: str = ""
    reason: str = ""
    held: str = ""
    put_off: tuple[tuple[str, str], ...] = ()
    began: str = ""
    seconds: float | None = figure()
    breaks: int = 0
    fast: bool = False
    values: Mapping[str, float | str] = field(default_factory=dict)
    answers: Mapping[str, tuple[str, str]] = field(default_factory=dict)
    board: Mapping[str, float | str] = field(default_factory=dict)

    def volts(self, item: str) -> float | None:
        """Return the volts that were read at an item, None when none were."""
        value = self.values.get(item)
        return value if isinstance(value, float) else None
