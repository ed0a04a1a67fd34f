"""Numbers: each row with its present answer, so that opening it is often not needed."""

from typing import Any

from kivy.properties import StringProperty

from logic.answers.consumption import consumption
from logic.answers.gearing import top_speed
from logic.answers.reading import Result
from logic.answers.stopping import stop_alone
from screens.numbers.figures import asking
from screens.page import AppPage
from screens.widgets.load import load_kv


class NumbersHome(AppPage):
    """The list of what can be worked out."""

    gearing_value = StringProperty()
    gearing_detail = StringProperty()
    stop_value = StringProperty()
    consumption_value = StringProperty()
    pairs_detail = StringProperty("Which teeth, which belt, what each pair does.")

    def __init__(self, *args: Any, **kwargs: Any) -> None:  # noqa: ANN401  (as AppPage)
        """Name the place."""
        super().__init__(*args, title="Numbers", **kwargs)

    def refresh(self) -> None:
        """Show the present answers."""
        item = top_speed(self.state.board, self.state.person.rider)
        given = isinstance(item, Result)
        self.gearing_value = self.style.number(item.value, "speed") if given else ""
        stop = stop_alone(self.state.board, self.state.person.rider, asking(self.state))
        self.stop_value = self.style.number(stop.value, "way") if isinstance(stop, Result) else ""
        used = consumption(self.state.board, self.state.person.rider, asking(self.state)).items[
            "per_distance"
        ]
        shown = isinstance(used, Result)
        self.consumption_value = self.style.number(used.value, used.quantity) if shown else ""
        trial = " Trial open." if self.state.trial and not self.state.is_scratch else ""
        self.gearing_detail = ("Top speed, loaded." if given else "Speed, push and climb.") + trial


load_kv(__file__)
