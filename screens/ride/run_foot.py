"""The bars under an item of a run: two answers, the same with a value to enter, or go on and start again."""

from typing import TYPE_CHECKING, Any

from screens.widgets.load import load_kv
from screens.widgets.row import Foot

if TYPE_CHECKING:
    from screens.ride.run import RunPage


class RunFootBase(Foot):
    """What can be said of an item."""

    def __init__(self, page: "RunPage", **kwargs: Any) -> None:  # noqa: ANN401  (Kivy's properties)
        """Act on a page."""
        self.page = page
        super().__init__(**kwargs)


class RunFoot(RunFootBase):
    """Two answers, back and say it."""


class AskFoot(RunFootBase):
    """The same with a value to enter."""

    def __init__(self, page: "RunPage", **kwargs: Any) -> None:  # noqa: ANN401  (Kivy's properties)
        """Take the page's entry in."""
        super().__init__(page, **kwargs)
        entry = page.entry
        if entry.parent is not None:
            entry.parent.remove_widget(entry)
        self.ids.slot.add_widget(entry)


class BrokenFoot(RunFootBase):
    """Go on or start again, the better one last."""

    def act(self, text: str) -> None:
        """Do what a bar says."""
        if text == "Go on":
            self.page.go_on()
        else:
            self.page.start_again()


load_kv(__file__)
