"""Entries taken out of the log: each can be brought back, however long ago it was."""

from functools import partial
from typing import Any

from kivy.properties import ObjectProperty, StringProperty

from screens.app_page import AppPage
from screens.widgets.load import load_kv
from screens.widgets.refill import refill
from screens.widgets.row import Row
from screens.words.log import entry_words


class BinPage(AppPage):
    """The hidden entries of the board in use, newest first."""

    empty = StringProperty()
    rows = ObjectProperty()

    def __init__(self, *args: Any, **kwargs: Any) -> None:  # noqa: ANN401  (as AppPage)
        """Name the page."""
        super().__init__(*args, nav=False, chip=False, title="Taken out of the log", **kwargs)

    def refresh(self) -> None:
        """List them."""
        records = self.state.store.voided(self.state.saved.id)
        self.empty = "" if records else "Nothing has been taken out of this board's log."
        lines = [(record.id, *entry_words(record, self.style)) for record in records]
        refill(self.rows, lines, lambda: [self._row(*line) for line in lines])

    def _row(self, number: int, title: str, detail: str, icon: str) -> Row:
        row = Row(title=title, detail=f"{detail}. Tap to see it or bring it back.", icon=icon)
        row.bind(on_release=partial(self._open, number))
        return row

    def _open(self, number: int, *_: object) -> None:
        self.shell.go("log.entry", number=number)


load_kv(__file__)
