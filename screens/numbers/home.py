"""Numbers: each row with its present answer, so that opening it is often not needed."""

from typing import Any

from kivy.properties import ObjectProperty, StringProperty

from logic.answers.belt_choice import centre_of
from logic.answers.belt_fit import narrowest_gap
from logic.answers.consumption import consumption
from logic.answers.gearing import top_speed
from logic.answers.reading import Result
from logic.answers.stopping import stop_alone
from screens.numbers import pack_rows  # noqa: F401  (home.kv names its class)
from screens.numbers.figures import asking
from screens.page import AppPage
from screens.widgets.load import load_kv

WEAR = 0.01
"""Wear of the wheel at which the narrowest gap of the list is told, in metres."""


class NumbersHome(AppPage):
    """The list of what can be worked out."""

    gearing_value = StringProperty()
    gearing_detail = StringProperty()
    packs = ObjectProperty()
    belt_value = StringProperty()
    belt_detail = StringProperty()
    fit_value = StringProperty()
    fit_detail = StringProperty()
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
        self.packs.refresh()
        self.gearing_detail = ("Top speed, loaded." if given else "Speed, push and climb.") + trial
        self._show_belt()

    def _show_belt(self) -> None:
        board = self.state.board
        centre = centre_of(board)
        given = isinstance(centre, Result)
        self.belt_value = self.style.number(centre.value, "length") if given else ""
        self.belt_detail = "Centre distance of its belt." if given else "Stock lengths, travel, rating."
        gap = narrowest_gap(board, WEAR)
        self.fit_value = self.style.number(gap.value, "length") if gap is not None else ""
        self.fit_detail = "Narrowest gap." if gap is not None else "Ground, deck, hanger, two motors."


load_kv(__file__)
