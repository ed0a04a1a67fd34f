"""Storage and care of packs, and the signs to stop."""

from typing import Any

from logic.answers.care import advice
from screens.app_page import AppPage
from screens.widgets.load import load_kv
from screens.widgets.row import Section
from screens.widgets.text import Text

SECTIONS = {"charge": "Charging", "storage": "Storage"}


class CarePage(AppPage):
    """What to do with a pack that is not ridden. The stop signs have a page of their own."""

    def __init__(self, *args: Any, **kwargs: Any) -> None:  # noqa: ANN401  (as AppPage)
        """Write the advice once: it is data."""
        super().__init__(*args, title="Storage and care", **kwargs)
        for kind, title in SECTIONS.items():
            self.ids.lines.add_widget(Section(title=title))
            for row in advice(kind):
                self.ids.lines.add_widget(Text(text=row.text))


load_kv(__file__)
