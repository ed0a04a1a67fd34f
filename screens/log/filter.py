"""The filters of the log, in a panel that opens under their summary."""

from typing import Any

from kivy.properties import ObjectProperty

from screens.widgets.column import Column
from screens.widgets.load import load_kv


class FilterPanel(Column):
    """Kind, board and search of a log page."""

    page = ObjectProperty()

    def __init__(self, page: Any, **kwargs: Any) -> None:  # noqa: ANN401  (the log page)
        """Act on a page."""
        super().__init__(page=page, **kwargs)


load_kv(__file__)
