"""Entries about joints: tightened, or looked at."""

from typing import ClassVar

from logic.frozen import frozen
from logic.log.entry import Entry, figure


@frozen(kw_only=True)
class Tightening(Entry):
    """A joint that was tightened, or whose paint line was `looked` at and found whole.

    `torque` is what it was set to, `setting` and `ceiling` are what the card said then, in N·m.
    """

    KIND: ClassVar[str] = "tightening"

    joint: str
    torque: float | None = figure(0.0, 1000.0)
    setting: float | None = figure(0.0, 1000.0)
    ceiling: float | None = figure(0.0, 1000.0)
    tool: str = ""
    locker: str = "none"
    by: str = ""
    looked: bool = False
