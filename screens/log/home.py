"""Log: what is due, then everything recorded, newest first, a page at a time."""

from collections.abc import Iterator
from functools import partial
from typing import Any

from kivy.clock import Clock
from kivy.properties import BooleanProperty, ListProperty, NumericProperty, ObjectProperty, StringProperty

from logic.upkeep import Due
from screens.app_page import AppPage
from screens.due import open_due
from screens.log.filter import FilterPanel
from screens.widgets.load import load_kv
from screens.widgets.refill import refill
from screens.widgets.row import Row, Section
from screens.widgets.text import width_of
from screens.words.checks import due_name, due_when
from screens.words.log import KINDS, entry_words

SHOWN = 20
"""Entries on a page."""
PATIENCE = 0.3
"""Seconds after a letter of the search until the log is looked through: it may be long."""


class LogHome(AppPage):
    """The entries of this board or of all boards, of one kind or all, with a word in them or not."""

    entries = ListProperty()
    kinds = ListProperty(list(KINDS.items()))
    kind = StringProperty()
    whose = StringProperty("this")
    filters = StringProperty()
    filters_open = BooleanProperty(defaultvalue=False)
    empty = StringProperty()
    pair_need = NumericProperty()
    rows = ObjectProperty()
    due = ObjectProperty()
    filter_slot = ObjectProperty()
    pager = ObjectProperty()

    def __init__(self, *args: Any, **kwargs: Any) -> None:  # noqa: ANN401  (as AppPage)
        """Name the place."""
        self._before: list[int | None] = [None]
        self._text = ""
        self._panel: FilterPanel | None = None
        self._search = Clock.create_trigger(lambda *_: self._from_start(), PATIENCE)
        super().__init__(*args, title="Log", **kwargs)
        self.state.bind(upcoming=self._due_found)

    def open(self, **args: Any) -> None:  # noqa: ANN401  (as AppPage)
        """Open at the newest entries."""
        self._before = [None]
        super().open(**args)

    # What is shown

    def refresh(self) -> None:
        """Show the page of entries in front."""
        state = self.state
        board = state.saved.id if self.whose == "this" else None
        found = state.store.page(
            board, self.kind or None, self._before[-1], limit=SHOWN + 1, text=self._text.strip()
        )
        records, self._older = found[:SHOWN], len(found) > SHOWN
        names = {one.id: one.name for one in state.boards()} if board is None else {}
        lines = []
        for record in records:
            title, detail, icon = entry_words(record, self.style)
            if board is None:
                detail = f"{names.get(record.board, 'Another board')}. {detail}"
            lines.append((record.id, title, detail, icon, self._day(f"{record.at:%Y-%m-%d}")))
        self._show_lines(lines)
        self.empty = "" if records else self._empty_text()
        self._last = records[-1].id if records else None
        self._show_pager()
        self._show_filters()
        self._show_due()
        words = ("+ Add a ride", "+ Add a note")
        self.pair_need = sum(width_of(word, "strong", bold=True) + 60 for word in words) + 8

    def _show_lines(self, lines: list[tuple[int, str, str, str, str]]) -> None:
        self.entries = lines
        refill(self.rows, lines, lambda: self._entry_rows(lines))

    def _entry_rows(self, lines: list[tuple[int, str, str, str, str]]) -> Iterator[Row | Section]:
        today = ""
        for number, title, detail, icon, day in lines:
            if day != today:
                today = day
                yield Section(title=day)
            row = Row(title=title, detail=detail, icon=icon)
            row.bind(on_release=partial(self._open_entry, number))
            yield row

    def _day(self, day: str) -> str:
        return "Today" if day == f"{self.state.clock():%Y-%m-%d}" else day

    def _empty_text(self) -> str:
        if self.kind or self._text.strip():
            return "Nothing in the log fits this filter."
        return "Rides, checks and work on this board appear here. Finish a check to start."

    def _due_found(self, *_: object) -> None:
        if self.in_front:
            self._show_due()

    def _show_due(self) -> None:
        upcoming = self.state.upcoming if len(self._before) == 1 else ()
        sides = self.state.saved.sides
        first = [(one, due_name(one, sides), due_when(one, self.style)) for one in upcoming[:2]]
        content = (len(upcoming), [(one.key, one.due, name, when) for one, name, when in first])
        refill(self.due, content, lambda: self._due_rows(first, len(upcoming)) if first else [])

    def _due_rows(self, first: list[tuple[Due, str, str]], rules: int) -> Iterator[Row | Section]:
        yield Section(title="Due" if first[0][0].due else "Next")
        for one, name, when in first:
            row = Row(title=name, value=when)
            row.icon, row.value_tone = ("due", "bad") if one.due else ("clock", "text")
            row.bind(on_release=lambda _, one=one: open_due(self, one))
            yield row
        yield self._row(
            "All upkeep",
            f"{rules} rule" if rules == 1 else f"{rules} rules",
            "due",
            partial(self.shell.go, "log.due"),
        )

    def _row(self, title: str, detail: str, icon: str, act: Any) -> Row:  # noqa: ANN401  (a function)
        row = Row(title=title, detail=detail, icon=icon)
        row.bind(on_release=lambda *_: act())
        return row

    def _show_filters(self) -> None:
        kind = "All kinds" if not self.kind else KINDS[self.kind]
        whose = "this board" if self.whose == "this" else "all boards"
        said = f', "{self._text.strip()}"' if self._text.strip() else ""
        self.filters = f"{kind}, {whose}{said}"
        if self.filters_open and self._panel is None:
            self._panel = FilterPanel(page=self)
            self.filter_slot.add_widget(self._panel)
        elif not self.filters_open and self._panel is not None:
            self.filter_slot.clear_widgets()
            self._panel = None

    def _show_pager(self) -> None:
        ways = [("Older entries", "", "open", self.older)] if self._older else []
        if len(self._before) > 1:
            ways.append(("Newer entries", "", "shut", self.newer))
        refill(self.pager, [title for title, *_ in ways], lambda: [self._row(*way) for way in ways])

    # What can be done

    def toggle_filters(self) -> None:
        """Open the filters, or close them with what they are set to in force."""
        self.filters_open = not self.filters_open
        self.refresh()

    def choose_kind(self, kind: str) -> None:
        """Show one kind of entry."""
        self.kind = kind
        self._from_start()

    def choose_whose(self, whose: str) -> None:
        """Show this board's entries or those of all boards."""
        self.whose = whose
        self._from_start()

    def search(self, text: str) -> None:
        """Show entries with a word in them."""
        if text != self._text:
            self._text = text
            self._search()

    def _from_start(self) -> None:
        self._before = [None]
        self.refresh()

    def older(self) -> None:
        """Turn to older entries."""
        self._before.append(self._last)
        self.scroll.scroll_y = 1
        self.refresh()

    def newer(self) -> None:
        """Turn back to newer ones."""
        self._before.pop()
        self.scroll.scroll_y = 1
        self.refresh()

    def back(self) -> bool:
        """Turn back to newer entries first."""
        if len(self._before) == 1:
            return False
        self.newer()
        return True

    def _open_entry(self, number: int, *_: object) -> None:
        self.shell.go("log.entry", number=number)


load_kv(__file__)
