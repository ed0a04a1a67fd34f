"""What logged rides tell about rolling and air: each ride's energy with the speed usual on it."""

from functools import partial
from typing import Any

from kivy.properties import ObjectProperty, StringProperty

from logic.answers.consumption import Sample, ride_fit
from logic.board import Value
from logic.store import Record
from screens.numbers import consumption as _kv  # noqa: F401  (its kv file holds this page's rule)
from screens.numbers.figures import DrivePage
from screens.widgets.row import Row
from screens.words.consumption import LABELS, LEVEL, NOT_CLEAR

SPEED = "ask.ride_speed"
SHOWN = 12
"""Rides on the page: the newest."""


class RidesPage(DrivePage):
    """The two coefficients with their bands, then the rides they come from."""

    LABELS = LABELS

    headline = StringProperty()
    told = StringProperty()
    flow = ObjectProperty()
    rows = ObjectProperty()

    def __init__(self, *args: Any, **kwargs: Any) -> None:  # noqa: ANN401  (as AppPage)
        """Start with no ride asked about."""
        self.ride: int | None = None
        self._row_of: list[Row] = []
        self.rides: list[Record] = []
        super().__init__(*args, title="Drag from rides", **kwargs)

    @property
    def speeds(self) -> dict[str, float]:
        """Return the usual speed of each ride for which one was given, by its number in the log."""
        return dict(self.state.store.get(f"ride speeds {self.state.saved.id}", {}))

    def speed_of(self, ride: Record) -> float | None:
        """Return the usual speed of a ride, None while it is not known."""
        given = self.speeds.get(str(ride.id))
        return float(given) if given else None

    def show(self) -> None:
        """Show what the rides tell."""
        rides = self.state.store.page(self.state.saved.id, "ride", limit=SHOWN)
        self.rides = [ride for ride in rides if ride.body.get("energy") and ride.body.get("distance")]
        samples = [
            Sample(speed=speed, energy_per_distance=ride.body["energy"] / ride.body["distance"])
            for ride in self.rides
            if (speed := self.speed_of(ride)) is not None
        ]
        answer = ride_fit(self.state.board, self.state.person.rider, samples)
        self.show_items(answer.items, self.flow)
        self.fitted = answer.fit
        for name, item in answer.items.items():
            if answer.fit is not None:
                estimate = getattr(answer.fit, name)
                half = self.style.number(estimate.half, item.quantity, 2)
                card = self._card_of[name]
                card.value = self.style.shown(estimate.value, item.quantity).number
                card.detail = f"± {half}, 95 %. {self._assumed(name)}"
        if answer.rides < answer.wanted:
            self.headline = f"{answer.rides} of {answer.wanted} rides with an energy and a usual speed."
        elif answer.fit is None:
            self.headline = "The rides cannot be used as they are."
        else:
            scatter = self.style.number(answer.fit.scatter, "share", 2)
            self.headline = f"From {answer.rides} rides that scatter by {scatter}."
        self.told = NOT_CLEAR if answer.fit is not None and not answer.clear else LEVEL
        self.clear = answer.clear
        self._show_rows()

    def _assumed(self, name: str) -> str:
        value = self.state.board.value(f"load.{name}")
        return "Assumed so far." if value is None else "Entered on the board so far."

    def _show_rows(self) -> None:
        style = self.style
        while len(self._row_of) < len(self.rides):
            row = Row(chevron=False)
            row.bind(on_release=partial(self._ask, len(self._row_of)))
            self._row_of.append(row)
            self.rows.add_widget(row)
        while len(self._row_of) > len(self.rides):
            self.rows.remove_widget(self._row_of.pop())
        for row, ride in zip(self._row_of, self.rides, strict=True):
            speed = self.speed_of(ride)
            row.title = f"{ride.at:%d %b}, {style.number(ride.body['distance'], 'distance')}"
            row.detail = style.number(ride.body["energy"] / ride.body["distance"], "energy_per_distance")
            row.value = "speed not set" if speed is None else style.number(speed, "speed")

    def _ask(self, place: int, *_: object) -> None:
        self.ride = self.rides[place].id
        self.edit(SPEED)

    def _value(self, key: str) -> Value | None:
        given = self.speeds.get(str(self.ride))
        return Value(float(given), "chosen") if key == SPEED and given else None

    def ask_for(self, key: str, value: Value | None) -> None:
        """Remember the usual speed of the ride that was tapped."""
        if key != SPEED or self.ride is None:
            super().ask_for(key, value)
            return
        speeds = {**self.speeds, str(self.ride): None if value is None else float(value.si)}
        self.state.store.put(
            f"ride speeds {self.state.saved.id}", {ride: speed for ride, speed in speeds.items() if speed}
        )
        self.soon()

    def bars(self) -> tuple[tuple[str, str, Any], ...]:
        """Offer to try both coefficients once they are told clearly."""
        if not self.clear or self._on_board():
            return super().bars()
        return (("Try both on the board", "main", self.try_both),)

    def _on_board(self) -> bool:
        load = self.state.board.load
        return (
            load.rolling is not None
            and self.fitted is not None
            and load.rolling.si == self.fitted.rolling.value
        )

    def try_both(self) -> None:
        """Lay both coefficients over the board as a trial."""
        if self.fitted is not None:
            for name in ("rolling", "drag_area"):
                value = Value(getattr(self.fitted, name).value, "measured", note="least squares of rides")
                self.state.try_value(f"load.{name}", value)
