"""Units: type a number with any unit word, read it in the units of the trade."""

from functools import partial
from typing import Any

from kivy.properties import ObjectProperty, StringProperty

from logic.answers.unit_page import by_rule, in_every_unit
from screens.numbers.figures import FiguresPage, field_of
from screens.widgets.load import load_kv
from screens.widgets.result import Result as ResultCard
from screens.words.unit_page import KINDS, LABELS


class UnitsPage(FiguresPage):
    """One kind at a time, the one that was typed last."""

    CHIPS = tuple(KINDS)
    LABELS = LABELS

    headline = StringProperty()
    flow = ObjectProperty()

    def __init__(self, *args: Any, **kwargs: Any) -> None:  # noqa: ANN401  (as AppPage)
        """Begin with a length."""
        self.kind = self.CHIPS[0]
        self._shows: tuple[str, int] = ("", 0)
        super().__init__(*args, title="Units", **kwargs)

    def edit(self, key: str) -> None:
        """Turn to the kind that was tapped."""
        self.kind = key
        super().edit(key)

    def show(self) -> None:
        """Show the kind in every unit."""
        value = self._value(self.kind)
        field = field_of(self.kind)
        typed = "–" if value is None else self.style.typed(float(value.si), field.quantity, value.typed_unit)
        self.headline = f"{KINDS[self.kind]}: {typed}"
        plain = in_every_unit(self.asking, self.kind, mark=self.style.mark)
        self.items = by_rule(self.asking, self.kind)
        self._build(len(plain))
        for card, shown in zip(reversed(self.flow.children), plain, strict=False):
            card.value, card.unit, card.label = shown.number, shown.unit, KINDS[self.kind]
            card.has_working, card.greyed = False, self._refused is not None
        for name, item in self.items.items():
            self.fill(self._card_of[name], item)

    def _build(self, plain: int) -> None:
        wanted = (self.kind, plain)
        if self._shows == wanted:
            return
        self._shows = wanted
        self.flow.clear_widgets()
        self._card_of.clear()
        for _ in range(plain):
            self.flow.add_widget(ResultCard(compact=True))
        for name in self.items:
            card = ResultCard(compact=True)
            card.bind(on_open=partial(self.open_working, name))
            self._card_of[name] = card
            self.flow.add_widget(card)


load_kv(__file__)
