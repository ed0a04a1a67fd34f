"""What a page shows: results as cards, each filled with its value, its standing and its difference to the saved board."""

from collections.abc import Callable
from dataclasses import replace
from functools import partial
from typing import TYPE_CHECKING, Any

from logic.answers.reading import Item, Open, Result
from logic.units import Shown
from screens.widgets.result import Result as ResultCard
from screens.words import Style, offer, refusal, sureness

if TYPE_CHECKING:
    from screens.answering import AnsweringPage


def why(item: Open, style: Style, outcomes: dict[str, str]) -> str:
    """Return the sentence for a result that cannot be given."""
    return (
        outcomes.get(item.outcome)
        or (offer(item.missing) if item.missing else "")
        or (outcomes.get(item.problem.reason, "") if item.problem else "")
        or (refusal(item.problem, style) if item.problem else "")
    )


LONG = 120.0
"""Seconds from which a time is told in minutes."""


def written(item: Result, si: float, style: Style) -> Shown:
    """Return a number of a result, its value or an end of its band, as a page writes it."""
    minutes = item.quantity == "time" and item.value >= LONG
    return style.shown(si, item.quantity, unit="min" if minutes else "")


def spanned(item: Result, write: Callable[[float], Shown]) -> Shown:
    """Return what is shown of a result: both ends of its band, where it has one."""
    shown = write(item.value)
    if not item.band:
        return shown
    low, high = (write(end).number for end in item.band)
    return shown if low == high else replace(shown, number=f"{low} to {high}")


def lead(item: Item | None, style: Style) -> str:
    """Return what a page leads with as one text for a row that opens it; empty for what cannot be given."""
    if not isinstance(item, Result):
        return ""
    return str(spanned(item, lambda si: written(item, si, style)))


class Cards:
    """The cards of a page, one for each result that was ever shown in a flow."""

    def __init__(self, page: "AnsweringPage") -> None:
        """Serve a page."""
        self.page = page
        self._of: dict[str, ResultCard] = {}

    def __getitem__(self, name: str) -> ResultCard:
        """Return the card of a result."""
        if name not in self._of:
            card = ResultCard(compact=True)
            card.bind(on_open=partial(self._open, name))
            self._of[name] = card
        return self._of[name]

    def _open(self, name: str, *_: object) -> None:
        self.page.open_working(name)

    def show(self, flow: Any, *names: str) -> None:  # noqa: ANN401  (a ResultFlow)
        """Show those results there are in a flow, in this order; of those that lack the same value only the first."""
        items = self.page.items
        lacking, shown = {_lacks(items.get(self.page.HEAD))}, []
        for name in names:
            if name not in items or name == self.page.HEAD:
                continue
            lacks = _lacks(items[name])
            if not lacks or lacks not in lacking:
                self.fill(self[name], items[name])
                shown.append(self[name])
            lacking.add(lacks)
        if flow.children[::-1] != shown:
            flow.clear_widgets()
            for card in shown:
                flow.add_widget(card)

    def fill(self, card: ResultCard, item: Item, label: str = "") -> None:
        """Put a result, or what stands in its way, on a card."""
        page = self.page
        card.label, card.greyed = label or page.label(item.name), page.greyed
        card.detail = page.detail(item.name, item)
        if isinstance(item, Open):
            card.value, card.unit, card.difference, card.standing = "–", "", "", ""
            card.has_working = bool(item.missing)
            card.detail = why(item, page.style, page.OUTCOMES) or card.detail
            return
        shown = spanned(item, partial(page.figure, item))
        card.value, card.unit = shown.number, shown.unit
        card.has_working, card.standing = True, sureness(item)
        card.difference = self._difference(item, card.unit)

    def _difference(self, item: Result, unit: str) -> str:
        before = self.page.before(item.name)
        if not isinstance(before, Result) or before.value == item.value:
            return ""
        return (
            f"{self.page.style.change(item.value, before.value, item.quantity, unit)} against the saved board"
        )


def _lacks(item: Item | None) -> tuple[str, ...]:
    return item.missing if isinstance(item, Open) else ()
