"""The card of the one thing most overdue, and the way to what clears it."""

from typing import Any

from kivy.properties import StringProperty

from logic.upkeep import Due
from screens.app_page import AppPage
from screens.theme import theme
from screens.widgets.column import Column
from screens.widgets.load import load_kv
from screens.widgets.surface import Surface
from screens.widgets.text import width_of


class DueCard(Surface, Column):
    """What is due and why. Events: `on_check()` do it now, `on_later()` put it off, `on_all()` see all."""

    name = StringProperty()
    more = StringProperty()
    line = StringProperty()
    need = 0.0
    __events__ = ("on_check", "on_later", "on_all")

    def __init__(self, due: Due, name: str, when: str, **kwargs: Any) -> None:  # noqa: ANN401  (Kivy's properties)
        """Show one thing that is due."""
        self.need = sum(width_of(word, "strong", bold=True) + 60 for word in ("Check now", "Not now")) + 8
        line = f"{when[0].upper()}{when[1:]}. {due.why}"
        super().__init__(name=name, line=line, **kwargs)

    def dress(self, *_: object) -> None:
        """Stand out by a frame."""
        self.fill, self.edge, self.edge_width = theme.panel, theme.text, 2

    def on_check(self) -> None:
        """Say that it is to be done now."""

    def on_later(self) -> None:
        """Say that it is put off."""

    def on_all(self) -> None:
        """Say that all that is due is wanted."""


def open_due(page: AppPage, due: Due) -> None:
    """Open what clears a rule: a page, or a checklist."""
    if due.opens.startswith("list:"):
        page.shell.go("ride.run", list=due.opens.removeprefix("list:"))
    else:
        page.shell.go(due.opens)


load_kv(__file__)
