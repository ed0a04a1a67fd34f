"""The working of one result: what it is, what it rests on, each step with its source."""

from typing import TYPE_CHECKING, Any

from kivy.properties import ListProperty, StringProperty

from screens.app_page import AppPage
from screens.widgets.load import load_kv
from screens.words import sureness
from screens.words.workings import steps

if TYPE_CHECKING:
    from logic.answers.reading import Result


class WorkingPage(AppPage):
    """Shows `item`, a result, under its `label`."""

    label = StringProperty()
    answer = StringProperty()
    sureness = StringProperty()
    lines = ListProperty()

    def __init__(self, *args: Any, **kwargs: Any) -> None:  # noqa: ANN401  (as AppPage)
        """Build without the four places: a working is read, then left."""
        super().__init__(*args, nav=False, title="Working", **kwargs)

    def refresh(self) -> None:
        """Show the result in the person's units."""
        item: Result = self.args["item"]
        style = self.style
        self.label = self.args["label"]
        self.answer = style.number(item.value, item.quantity)
        self.sureness = sureness(item)
        self.lines = steps(item, style)


load_kv(__file__)
