"""Log: what was recorded, newest first. Filters, search, corrections and export come with later work."""

from typing import Any

from kivy.properties import ListProperty, ObjectProperty

from logic.store import Record
from screens.page import AppPage
from screens.widgets.load import load_kv
from screens.widgets.row import Row
from screens.words import label_of
from screens.words.tension import tension_text

SHOWN = 30
"""Entries on the page; the pages of a long log come with later work."""


class LogHome(AppPage):
    """The newest entries of the board in use."""

    entries = ListProperty()
    rows = ObjectProperty()

    def __init__(self, *args: Any, **kwargs: Any) -> None:  # noqa: ANN401  (as AppPage)
        """Name the place."""
        super().__init__(*args, title="Log", **kwargs)

    def refresh(self) -> None:
        """Show the newest entries."""
        records = self.state.store.page(self.state.saved.id, limit=SHOWN)
        self.entries = [(record.id, *self._words(record)) for record in records]
        self.rows.clear_widgets()
        for _, title, detail in self.entries:
            self.rows.add_widget(Row(title=title, detail=detail, chevron=False))

    def _words(self, record: Record) -> tuple[str, str]:
        when = f"{record.at:%Y-%m-%d %H:%M}"
        if record.kind == "tension":
            name = "Tension" if len(self.state.saved.sides) == 1 else f"Tension, {record.body['belt']} belt"
            return f"{name}: {tension_text(record, self.style)}", when
        if record.kind == "belt_fitted":
            name = "New belt" if len(self.state.saved.sides) == 1 else f"New {record.body['belt']} belt"
            return name, when
        changed = ", ".join(label_of(key) for key in record.body.get("changes", {}))
        return f"Board changed: {changed}", when


load_kv(__file__)
