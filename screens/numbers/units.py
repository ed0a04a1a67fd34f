"""Units: type a number with any unit word, read it in the units of the trade."""

from typing import Any

from kivy.properties import StringProperty

from logic.answers.reading import Item
from logic.answers.unit_page import by_rule, in_every_unit
from logic.board import Board
from screens.answering import AnsweringPage
from screens.widgets.load import load_kv
from screens.widgets.result import Result as ResultCard
from screens.words.unit_page import KINDS, LABELS


class UnitsPage(AnsweringPage):
    """One kind at a time, the one that was typed last."""

    CHIPS = tuple(KINDS)
    LABELS = LABELS

    title = StringProperty("Units")
    headline = StringProperty()

    def __init__(self, *args: Any, **kwargs: Any) -> None:  # noqa: ANN401  (as AppPage)
        """Begin with a length."""
        self.kind = self.CHIPS[0]
        self._plain: list[ResultCard] = []
        super().__init__(*args, **kwargs)

    def edit(self, key: str) -> None:
        """Turn to the kind that was tapped."""
        self.kind = key
        super().edit(key)

    def work_out(self, _board: Board) -> dict[str, Item]:
        """Return what follows by a rule of the trade."""
        return by_rule(self.asking, self.kind)

    def show_figures(self) -> None:
        """Show the kind in every unit, then by rule."""
        plain = in_every_unit(self.asking, self.kind, mark=self.style.mark)
        while len(self._plain) < len(plain):
            self._plain.append(ResultCard(compact=True, has_working=False))
        for card, shown in zip(self._plain, plain, strict=False):
            card.value, card.unit, card.label = shown.number, shown.unit, KINDS[self.kind]
            card.greyed = self.greyed
        cards = [*self._plain[: len(plain)], *(self.cards[name] for name in self.items)]
        if self.flow.children[::-1] != cards:
            self.flow.clear_widgets()
            for card in cards:
                self.flow.add_widget(card)
        for name, item in self.items.items():
            self.cards.fill(self.cards[name], item)

    def show(self, _answer: dict[str, Item]) -> None:
        """Head the page by what was typed."""
        self.headline = f"{KINDS[self.kind]}: {self.inputs.text(self.kind)[0]}"


load_kv(__file__)
