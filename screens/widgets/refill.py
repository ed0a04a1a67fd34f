"""Filling a column anew only when what it is to show has changed: building rows is what takes time."""

from collections.abc import Callable, Iterable
from typing import Any


def refill(column: Any, content: object, build: Callable[[], Iterable[Any]]) -> bool:  # noqa: ANN401  (any layout)
    """Put the widgets of `build` under a column, unless they show `content` already; return whether it was done.

    `content` is plain data that holds all the widgets show and do: two that are equal need no new widgets.
    """
    if getattr(column, "content", None) == content:
        return False
    column.content = content
    column.clear_widgets()
    for widget in build():
        column.add_widget(widget)
    return True
