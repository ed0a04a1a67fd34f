"""What stands in place of a page that failed: a plain sentence, so that Back and the four places still lead on."""

from typing import Any

from screens.app_page import AppPage
from screens.widgets.notice import Notice

TEXT = (
    "This page has a fault and cannot be shown with the values as they are. Nothing that was saved is lost."
    " Go back, or change the value that was entered last on the page of the board."
)


class CannotShowPage(AppPage):
    """One notice."""

    def __init__(self, *args: Any, **kwargs: Any) -> None:  # noqa: ANN401  (as AppPage)
        """Name the page."""
        super().__init__(*args, title="This page cannot be shown", **kwargs)
        self.add_widget(Notice(text=TEXT))
