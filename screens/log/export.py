"""Copies out of the app: the log as a table, the build sheet as text or as a page with pictures."""

from collections.abc import Iterable, Iterator
from pathlib import Path
from typing import Any

from kivy.properties import ObjectProperty, StringProperty

from logic.log_table import log_table
from screens.app_page import AppPage
from screens.phone.share import share
from screens.sheet.content import Part, sheet
from screens.sheet.page import as_page
from screens.sheet.text import as_text
from screens.widgets.load import load_kv
from screens.widgets.refill import refill
from screens.widgets.row import Row, Section


def _rows(parts: Iterable[Part]) -> Iterator[Row | Section]:
    for part in parts:
        yield Section(title=part.title)
        for label, value, known in part.lines:
            yield Row(title=label, value=value, detail=known, chevron=False)


class ExportPage(AppPage):
    """Writes files into the folder of the app and says where; the sheet can be read here as well."""

    said = StringProperty()
    rows = ObjectProperty()

    def __init__(self, *args: Any, **kwargs: Any) -> None:  # noqa: ANN401  (as AppPage)
        """Name the page."""
        super().__init__(*args, title="Build sheet", **kwargs)

    def open(self, **args: Any) -> None:  # noqa: ANN401  (as AppPage)
        """Show the sheet."""
        self.said = ""
        super().open(**args)

    @property
    def folder(self) -> Path:
        """Return where copies are written: beside the app's own file."""
        return Path(self.state.store.path).parent / "copies"

    def refresh(self) -> None:
        """Show the sheet as it would be written now."""
        parts = sheet(self.state, self.style).parts
        refill(self.rows, parts, lambda: _rows(parts))

    def share_sheet(self) -> None:
        """Hand the sheet's text on."""
        text = as_text(sheet(self.state, self.style))
        self.said = share(text, f"Build sheet: {self.state.saved.name}")

    def write_text(self) -> None:
        """Write the sheet as text."""
        self._write("build-sheet", "txt", as_text(sheet(self.state, self.style)))

    def write_page(self) -> None:
        """Write the sheet as a page with pictures."""
        made = as_page(sheet(self.state, self.style), self.state.saved, self.style, self.state.person)
        self._write("build-sheet", "html", made)

    def write_log(self) -> None:
        """Write the log of this board as a table."""
        state = self.state
        records = state.store.page(state.saved.id, limit=-1)
        self._write("log", "csv", log_table(records, {state.saved.id: state.saved.name}))

    def _write(self, what: str, kind: str, text: str) -> None:
        name = "".join(letter if letter.isalnum() else "-" for letter in self.state.saved.name.casefold())
        path = self.folder / f"{name}-{what}-{self.state.clock():%Y-%m-%d}.{kind}"
        try:
            self.folder.mkdir(exist_ok=True)
            path.write_text(text, encoding="utf-8")
        except OSError:
            self.said = "The phone could not write the file: is its storage full?"
            return
        self.said = f"Saved as {path.name} in the folder {self.folder.name}."


load_kv(__file__)
