"""Upkeep: every rule on this board, the most urgent first, with its reason and where it is said."""

from collections.abc import Iterable, Iterator
from functools import partial
from typing import Any

from kivy.properties import ObjectProperty, StringProperty

from logic.tables import sources
from logic.upkeep import Due
from screens.app_page import AppPage
from screens.due import DueCard, open_due
from screens.widgets.load import load_kv
from screens.widgets.refill import refill
from screens.widgets.row import Row, Section
from screens.words import STANDING
from screens.words.checks import due_name, due_when


class DuePage(AppPage):
    """What is due, then what comes next."""

    summary = StringProperty()
    cards = ObjectProperty()
    rows = ObjectProperty()

    def __init__(self, *args: Any, **kwargs: Any) -> None:  # noqa: ANN401  (as AppPage)
        """Follow what is looked up."""
        super().__init__(*args, title="Upkeep", **kwargs)
        self.state.bind(upcoming=self._changed)

    def refresh(self) -> None:
        """Show the rules."""
        due, upcoming = self.state.due, self.state.upcoming
        self.summary = f"{len(due)} due." if due else "Nothing is due."
        if not upcoming:
            self.summary = "Nothing is due. Rules begin with the first tension, build or ride in the log."
        rest = [one for one in upcoming if not one.due]
        refill(self.cards, self._content(due), lambda: [self._card(one) for one in due])
        refill(self.rows, self._content(rest), lambda: self._next_rows(rest))

    def _content(self, wanted: Iterable[Due]) -> list[tuple[str, str, str]]:
        sides = self.state.saved.sides
        return [(one.key, due_name(one, sides), due_when(one, self.style)) for one in wanted]

    def _card(self, one: Due) -> DueCard:
        card = DueCard(one, due_name(one, self.state.saved.sides), due_when(one, self.style))
        card.more = self._source(one)
        card.bind(on_check=lambda *_: open_due(self, one))
        card.bind(on_later=lambda *_: self._later(one))
        card.bind(on_all=lambda *_: open_due(self, one))
        return card

    def _next_rows(self, rest: list[Due]) -> Iterator[Row | Section]:
        if rest:
            yield Section(title="Next")
        for one in rest:
            row = Row(
                title=due_name(one, self.state.saved.sides),
                detail=f"{one.why} {self._source(one)}.",
                value=due_when(one, self.style),
                icon="clock",
            )
            row.bind(on_release=partial(self._open, one))
            yield row

    def _open(self, one: Due, *_: object) -> None:
        open_due(self, one)

    def _source(self, one: Due) -> str:
        standing = STANDING[one.row.standing].capitalize()
        if one.row.source == "practice":
            return f"{standing}: {one.row.where}"
        return f"{standing}: {sources()[one.row.source].title}, {one.row.where}"

    def _later(self, one: Due) -> None:
        self.shell.go("log.snooze", rule=one.key, label=one.name, stop=one.stop)


load_kv(__file__)
