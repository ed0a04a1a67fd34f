"""Tools and spares of this board, as a list to pack from or to share."""

from typing import Any

from kivy.properties import ObjectProperty, StringProperty

from logic.answers.spares import Need, spares
from screens.app_page import AppPage
from screens.phone.share import share
from screens.widgets.load import load_kv
from screens.widgets.row import Row, Section
from screens.words import STANDING, label_of

HEADINGS = {"spare": "Parts", "tool": "Tools", "bag": "In the bag"}


class SparesPage(AppPage):
    """The list, by kind."""

    said = StringProperty()
    rows = ObjectProperty()

    def __init__(self, *args: Any, **kwargs: Any) -> None:  # noqa: ANN401  (as AppPage)
        """Name the page."""
        super().__init__(*args, title="Tools and spares", **kwargs)

    def open(self, **args: Any) -> None:  # noqa: ANN401  (as AppPage)
        """Show the list."""
        self.said = ""
        super().open(**args)

    def _needs(self) -> tuple[Need, ...]:
        return spares(self.state.saved, self.state.person, self.style.number)

    def refresh(self) -> None:
        """List what the board needs."""
        self.rows.clear_widgets()
        kind = ""
        for need in self._needs():
            if need.kind != kind:
                kind = need.kind
                self.rows.add_widget(Section(title=HEADINGS[kind]))
            self.rows.add_widget(self._row(need))

    def _row(self, need: Need) -> Row:
        detail = need.detail[0].upper() + need.detail[1:] + f". {STANDING[need.row.standing].capitalize()}."
        gap = next((key for key in need.missing if "." in key), "")
        count = f"{need.count} ×" if need.count > 1 else ""
        row = Row(title=need.part, detail=detail, value=count, chevron=bool(gap))
        if gap:
            row.detail += f" {label_of(gap)} is missing: tap to add it."
            row.bind(on_release=lambda *_: self.shell.go("board.value", key=gap))
        return row

    def share_list(self) -> None:
        """Hand the list on as text."""
        lines = [f"Tools and spares: {self.state.saved.name}", ""]
        for need in self._needs():
            count = f"{need.count} x " if need.count > 1 else ""
            lines.append(f"{count}{need.part}: {need.detail}")
        self.said = share("\n".join(lines) + "\n", f"Tools and spares: {self.state.saved.name}")


load_kv(__file__)
