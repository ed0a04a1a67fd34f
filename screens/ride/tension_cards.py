"""The results behind a tension check, each a card that opens its working."""

from functools import partial
from typing import Any

from logic.answers.reading import Item, Result
from screens.page import AppPage
from screens.widgets.result import Result as ResultCard
from screens.words import offer, refusal, sureness
from screens.words.tension import ITEMS

CARDS = (
    "target",
    "floor",
    "ceiling",
    "pull_target",
    "pull_floor",
    "pull_ceiling",
    "misread",
    "pull_locked",
    "run_in",
    "span",
    "centre",
    "teeth_in_mesh",
    "mesh_factor",
    "slack_torque",
    "slack_margin",
    "shaft_pull",
    "least_of_manuals",
    "most_of_manuals",
)


class TensionCards:
    """Fills a flow of a page with one card for each result; the cards are built once."""

    def __init__(self, page: AppPage, flow: Any) -> None:  # noqa: ANN401  (a ResultFlow)
        """Put the cards into a flow."""
        self._page = page
        self._items: dict[str, Item] = {}
        self._cards = {name: ResultCard(compact=True, label=ITEMS[name]) for name in CARDS}
        for name, card in self._cards.items():
            card.bind(on_open=partial(self._open, name))
            flow.add_widget(card)

    def show(self, items: dict[str, Item], scale_unit: str) -> None:
        """Show the results of a plan, pulls in the unit of the scale."""
        self._items, style = items, self._page.style
        for name, card in self._cards.items():
            item = items[name]
            card.has_working = isinstance(item, Result)
            if isinstance(item, Result):
                unit = scale_unit if name.startswith("pull") else ""
                shown = style.shown(item.value, item.quantity, unit=unit)
                card.value, card.unit = shown.number, shown.unit
                card.standing, card.detail = sureness(item), ""
            else:
                card.value, card.unit, card.standing = "–", "", ""
                card.detail = offer(item.missing) if item.missing else refusal(item.problem, style)

    def _open(self, name: str, *_: object) -> None:
        if isinstance(self._items[name], Result):
            self._page.shell.go("working", item=self._items[name], label=ITEMS[name])
