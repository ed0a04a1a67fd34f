"""The fault guide: what one sees or feels, with a search over the words one would use."""

from functools import partial
from typing import Any

from kivy.properties import ObjectProperty, StringProperty

from logic.checks.faults import find_faults
from screens.app_page import AppPage
from screens.widgets.load import load_kv
from screens.widgets.row import Row


class FaultsPage(AppPage):
    """The list of faults."""

    empty = StringProperty()
    rows = ObjectProperty()
    writing = ObjectProperty()

    def __init__(self, *args: Any, **kwargs: Any) -> None:  # noqa: ANN401  (as AppPage)
        """Follow the search."""
        super().__init__(*args, title="Fault guide", **kwargs)
        self.writing.bind(text=lambda *_: self.soon())

    def refresh(self) -> None:
        """List what fits the words."""
        self.rows.clear_widgets()
        found = find_faults(self.writing.text)
        self.empty = "" if found else "Nothing fits these words. Try fewer: belt, brake, hot, link."
        for fault in found:
            row = Row(title=fault.title, detail=f"{len(fault.causes)} likely causes")
            row.bind(on_release=partial(self._open, fault.key))
            self.rows.add_widget(row)

    def _open(self, key: str, *_: object) -> None:
        self.shell.go("bench.fault", fault=key)


load_kv(__file__)
