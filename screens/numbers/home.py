"""Numbers: each row with its present answer, so that opening it is often not needed."""

from typing import Any

from kivy.properties import ObjectProperty, StringProperty

from logic.answers.gearing import top_speed
from logic.answers.reading import Result
from screens.numbers import pack_rows  # noqa: F401  (home.kv names its class)
from screens.page import AppPage
from screens.widgets.load import load_kv


class NumbersHome(AppPage):
    """The list of what can be worked out."""

    gearing_value = StringProperty()
    gearing_detail = StringProperty()
    packs = ObjectProperty()

    def __init__(self, *args: Any, **kwargs: Any) -> None:  # noqa: ANN401  (as AppPage)
        """Name the place."""
        super().__init__(*args, title="Numbers", **kwargs)

    def refresh(self) -> None:
        """Show the present answers."""
        item = top_speed(self.state.board, self.state.person.rider)
        given = isinstance(item, Result)
        self.gearing_value = self.style.number(item.value, "speed") if given else ""
        trial = " Trial open." if self.state.trial and not self.state.is_scratch else ""
        self.packs.refresh()
        self.gearing_detail = ("Top speed, loaded." if given else "Speed, push and climb.") + trial


load_kv(__file__)
