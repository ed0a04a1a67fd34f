"""What logged rides tell about rolling and air: each ride's energy with the speed usual on it."""

from functools import partial
from typing import Any

from kivy.properties import ObjectProperty, StringProperty

from logic.answers.consumption import RideFit, Sample, ride_fit
from logic.answers.reading import Item, Open, Result
from logic.board import Board, Value
from logic.store import Record
from logic.units import Shown
from screens.answering import AnsweringPage
from screens.asked import ride_speeds
from screens.inputs import Inputs
from screens.numbers import consumption as _kv  # noqa: F401  (its kv file holds this page's rule)
from screens.widgets.row import Row
from screens.words.consumption import LABELS, LEVEL, NOT_CLEAR

SPEED = "ask.ride_speed"
SHOWN = 12
"""Rides on the page: the newest."""


class RideSpeeds(Inputs):
    """The usual speed belongs to the ride that was tapped."""

    def value(self, key: str) -> Value | None:
        """Return the present value."""
        if key != SPEED:
            return super().value(key)
        given = self.page.speeds.get(str(self.page.ride))
        return Value(float(given), "chosen") if given else None

    def put(self, key: str, value: Value | None, typed: str = "") -> None:
        """Remember the usual speed of the ride."""
        page = self.page
        if key != SPEED or page.ride is None:
            super().put(key, value, typed)
            return
        self.note(key, typed)
        speeds = {**page.speeds, str(page.ride): None if value is None else float(value.si)}
        page.state.remember(
            f"ride speeds {page.state.saved.id}", {ride: speed for ride, speed in speeds.items() if speed}
        )
        page.soon()


class RidesPage(AnsweringPage):
    """The two coefficients with their bands, then the rides they come from."""

    LABELS = LABELS
    INPUTS = RideSpeeds

    title = StringProperty("Drag from rides")
    headline = StringProperty()
    told = StringProperty()
    rows = ObjectProperty()

    def __init__(self, *args: Any, **kwargs: Any) -> None:  # noqa: ANN401  (as AppPage)
        """Start with no ride asked about."""
        self.ride: int | None = None
        self._row_of: list[Row] = []
        self.rides: list[Record] = []
        super().__init__(*args, **kwargs)

    @property
    def speeds(self) -> dict[str, float]:
        """Return the usual speed of each ride for which one was given, by its number in the log."""
        return ride_speeds(self.state)

    def speed_of(self, ride: Record) -> float | None:
        """Return the usual speed of a ride, None while it is not known."""
        given = self.speeds.get(str(ride.id))
        return float(given) if given else None

    def work_out(self, board: Board) -> RideFit:
        """Return what the rides tell."""
        self.rides = [ride for ride in self.state.entries("ride", SHOWN) if ride.body.energy_per_distance]
        samples = [
            Sample(speed=speed, energy_per_distance=ride.body.energy_per_distance)
            for ride in self.rides
            if (speed := self.speed_of(ride)) is not None
        ]
        return ride_fit(board, self.rider, samples)

    def figure(self, item: Result, _si: float) -> Shown:
        """Write what fits the rides best; how far they leave it open stands under it."""
        return super().figure(item, getattr(self.answer.fit, item.name).value)

    def detail(self, name: str, item: Item) -> str:
        """Tell how far the rides leave it open."""
        if self.answer.fit is None or isinstance(item, Open):
            return super().detail(name, item)
        half = self.style.number(getattr(self.answer.fit, name).half, item.quantity, 2)
        return f"± {half}, 95 %. {self._assumed(name)}"

    def show(self, answer: RideFit) -> None:
        """Say how many rides tell it, and show them."""
        if answer.rides < answer.wanted:
            self.headline = f"{answer.rides} of {answer.wanted} rides with an energy and a usual speed."
        elif answer.fit is None:
            self.headline = "The rides cannot be used as they are."
        else:
            scatter = self.style.number(answer.fit.scatter, "share", 2)
            self.headline = f"From {answer.rides} rides that scatter by {scatter}."
        self.told = NOT_CLEAR if answer.fit is not None and not answer.clear else LEVEL
        self._show_rows()

    def _assumed(self, name: str) -> str:
        value = self.board.value(f"load.{name}")
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
            row.title = f"{ride.at:%d %b}, {style.number(ride.body.distance, 'distance')}"
            row.detail = style.number(ride.body.energy_per_distance, "energy_per_distance")
            row.value = "speed not set" if speed is None else style.number(speed, "speed")

    def _ask(self, place: int, *_: object) -> None:
        self.ride = self.rides[place].id
        self.edit(SPEED)

    def bars(self) -> list[tuple[str, str, Any]]:
        """Offer to try both coefficients once they are told clearly."""
        if not self.answer.clear or self._on_board():
            return super().bars()
        return [("Try both on the board", "main", self.try_both)]

    def _on_board(self) -> bool:
        load = self.board.load
        return (
            load.rolling is not None
            and self.answer.fit is not None
            and load.rolling.si == self.answer.fit.rolling.value
        )

    def try_both(self) -> None:
        """Lay both coefficients over the board as a trial."""
        if self.answer.fit is not None:
            for name in ("rolling", "drag_area"):
                value = Value(getattr(self.answer.fit, name).value, "measured", note="least squares of rides")
                self.state.try_value(f"load.{name}", value)
