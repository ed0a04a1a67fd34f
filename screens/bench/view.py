"""Bench view: one thing in letters that can be read from a metre away, with dirty hands."""

from typing import Any

from kivy.properties import ListProperty, ObjectProperty, StringProperty

from screens.app_page import AppPage
from screens.widgets.load import load_kv
from screens.widgets.text import Text


class BenchView(AppPage):
    """Shows `big` and under it `lines`."""

    big = StringProperty()
    lines = ListProperty()
    holder = ObjectProperty()

    def __init__(self, *args: Any, **kwargs: Any) -> None:  # noqa: ANN401  (as AppPage)
        """Build without the four places."""
        super().__init__(*args, nav=False, chip=False, **kwargs)

    def refresh(self) -> None:
        """Show what was asked for."""
        self.title, self.big = self.args["title"], self.args["big"]
        self.holder.clear_widgets()
        for line in self.args["lines"]:
            self.holder.add_widget(Text(text=line, role="title", bold=True))


load_kv(__file__)
