"""The log as pages read it: each entry looked up once."""

from datetime import datetime
from functools import cached_property
from typing import Any

from logic.history import History
from logic.ledger import Ledger
from logic.store import Record as Entered
from logic.store import Store

SHOWN = 200
"""Newest entries that are looked through for what is set side by side."""


class LogBook:
    """The log of one board as it stood at one moment; the next entry makes the next one."""

    def __init__(self, store: Store, board: str, ledger: Ledger | None = None) -> None:
        """Read nothing yet."""
        self.store, self.board = store, board
        self.ledger = ledger if ledger is not None and ledger.board == board else None
        self._history: History | None = None

    def history(self, now: datetime) -> History:
        """Return what the log holds of rides, checks, tensions and joints."""
        if self._history is None:
            self.ledger = self.ledger or Ledger(self.store, self.board)
            self._history = self.ledger.read(now)
        return self._history

    @cached_property
    def _latest(self) -> dict[Any, Entered | None]:
        return {}

    def last(self, kind: str, **match: object) -> Entered | None:
        """Return the newest entry that can be read and matches."""
        key = (kind, *sorted(match.items()))
        if key not in self._latest:
            self._latest[key] = self.store.latest(self.board, kind, **match)
        return self._latest[key]

    @cached_property
    def tensions(self) -> list[Entered]:
        """Return the newest tension entries that can be read, newest first."""
        return self.store.entries(self.board, "tension")

    def readings(self, side: str) -> list[Entered]:
        """Return the readings of one belt that can be compared, oldest first, since it was fitted."""
        fitted = self.last("belt_fitted", belt=side)
        return [
            record
            for record in reversed(self.tensions[:SHOWN])
            if record.body.belt == side
            and record.body.comparable
            and (fitted is None or record.id > fitted.id)
        ]
