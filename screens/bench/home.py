"""Bench: what the hands are doing to the board. Its parts come with later work; nothing is pretended."""

from typing import Any

from screens.page import AppPage
from screens.widgets.load import load_kv


class BenchHome(AppPage):
    """The list of bench tasks."""

    def __init__(self, *args: Any, **kwargs: Any) -> None:  # noqa: ANN401  (as AppPage)
        """Name the place."""
        super().__init__(*args, title="Bench", **kwargs)


load_kv(__file__)
