"""Entries in words, what was put off, and what changed on the board."""

from collections.abc import Mapping
from dataclasses import field
from typing import ClassVar

from logic.fields import Value
from logic.frozen import frozen
from logic.log.entry import Entry


@frozen(kw_only=True)
class Note(Entry):
    """Anything worth keeping, in its `note`."""

    KIND: ClassVar[str] = "note"


@frozen(kw_only=True)
class Work(Entry):
    """What was repaired, renewed or changed, in its `note`."""

    KIND: ClassVar[str] = "work"


@frozen(kw_only=True)
class Snooze(Entry):
    """The upkeep `rule` that was put off until after the next ride, and why; `stop` when it stops a ride."""

    KIND: ClassVar[str] = "snooze"

    rule: str
    name: str = ""
    reason: str = ""
    stop: bool = False


@frozen
class Change:
    """One value of a board before and after, None where it was not set."""

    was: Value | None = None
    now: Value | None = field(default=None, metadata={"key": "is"})


@frozen(kw_only=True)
class BoardChanged(Entry):
    """The values of a trial that were kept, by the key of their field."""

    KIND: ClassVar[str] = "board_changed"

    changes: Mapping[str, Change] = field(default_factory=dict)
