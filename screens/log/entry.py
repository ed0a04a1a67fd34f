"""One entry of the log: all of it, what it was before a correction, and what can be done with it."""

from collections.abc import Iterator
from typing import Any

from kivy.metrics import dp
from kivy.properties import ObjectProperty, StringProperty

from logic.store import Record
from screens.app_page import AppPage
from screens.state import Undo
from screens.widgets.bar import Bar
from screens.widgets.load import load_kv
from screens.widgets.refill import refill
from screens.widgets.row import Foot, Row, Section
from screens.words.log import KINDS, entry_lines, entry_words


class EntryPage(AppPage):
    """Shows entry `number`. Nothing is overwritten: a correction is a new row, and so is taking it out."""

    heading = StringProperty()
    when = StringProperty()
    whose = StringProperty()
    lines = ObjectProperty()
    before = ObjectProperty()

    def __init__(self, *args: Any, **kwargs: Any) -> None:  # noqa: ANN401  (as AppPage)
        """Build without the four places."""
        super().__init__(*args, nav=False, chip=False, **kwargs)

    @property
    def record(self) -> Record:
        """Return the entry, corrections applied."""
        return self.state.store.entry(self.args["number"])

    def refresh(self) -> None:
        """Show the entry."""
        record = self.record
        self.title = KINDS.get(record.kind, "Entry")
        self.heading = entry_words(record, self.style)[0]
        self.when = f"{record.at:%Y-%m-%d %H:%M}, entry {record.id}."
        board = self.state.store.board(record.board)
        self.whose = f"Board: {board.name}." if board is not None else ""
        lines = list(entry_lines(record, self.style))
        refill(
            self.lines,
            lines,
            lambda: [Row(title=label, value=value, chevron=False) for label, value in lines],
        )
        before = [
            (f"{old.at:%Y-%m-%d %H:%M}", *entry_words(old, self.style))
            for old in self.state.store.versions(record.id)[:-1]
        ]
        refill(self.before, before, lambda: self._old_rows(before))
        self._show_foot(record)

    def _old_rows(self, before: list[tuple[str, str, str, str]]) -> Iterator[Row | Section]:
        if before:
            yield Section(title="As it was before")
        for when, title, _, icon in before:
            yield Row(title=title, detail=when, icon=icon, chevron=False)

    def _show_foot(self, record: Record) -> None:
        foot = Foot(padding=(0, dp(8)))
        if record.voided_by is not None:
            self._bar(foot, "Bring it back", "main", self.restore)
        else:
            self._bar(foot, "Take it out of the log", "bad-outline", self.take_out)
            if record.corrected_by is not None:
                self._bar(foot, "Take the correction back", "plain", self.take_correction_back)
            if record.readable:
                text = "Correct it" if record.kind in ("ride", "note", "work") else "Add or change its note"
                self._bar(foot, text, "main", self.correct)
        self.foot = foot

    def _bar(self, foot: Foot, text: str, kind: str, act: Any) -> None:  # noqa: ANN401  (a function)
        bar = Bar(text=text, kind=kind)
        bar.bind(on_release=lambda *_: act())
        foot.add_widget(bar)

    def correct(self) -> None:
        """Open the form that fits."""
        page = "log.ride" if self.record.kind == "ride" else "log.note"
        self.shell.go(page, number=self.args["number"])

    def take_correction_back(self) -> None:
        """Let the entry stand as it was before its last correction."""
        row = self.state.take_back(self.record.corrected_by)
        self.state.undo = Undo("Correction taken back", lambda: self.state.take_back(row))

    def take_out(self) -> None:
        """Hide the entry, with undo; it stays in the file and can be brought back later too."""
        row = self.state.take_back(self.args["number"])
        self.state.undo = Undo("Taken out of the log", lambda: self.state.take_back(row))
        self.shell.back()

    def restore(self) -> None:
        """Show the entry in the log again."""
        self.state.take_back(self.record.voided_by)


load_kv(__file__)
