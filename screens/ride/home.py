"""Ride: the state of the board at the kerb, and the checks."""

from typing import Any

from kivy.properties import BooleanProperty, ObjectProperty, StringProperty

from screens.page import AppPage
from screens.ride import pack_state  # noqa: F401  (home.kv names its class)
from screens.widgets.load import load_kv
from screens.widgets.row import Foot
from screens.words.tension import ago, tension_text


class RideHome(AppPage):
    """Where the app opens. Without any board it offers three equal ways to begin."""

    begun = BooleanProperty(defaultvalue=False)
    belts = StringProperty()
    notice = ObjectProperty()
    packs = ObjectProperty()

    def __init__(self, *args: Any, **kwargs: Any) -> None:  # noqa: ANN401  (as AppPage)
        """Name the place."""
        self._shows: bool | None = None
        super().__init__(*args, title="Ride", **kwargs)

    def refresh(self) -> None:
        """Show what is known of the belts."""
        self.begun = not self.state.is_scratch
        self.belts = "\n".join(self._belt_line(side) for side in self.state.saved.sides) if self.begun else ""
        self.notice.refresh()
        self.packs.refresh()
        if self._shows != self.begun:
            self._shows = self.begun
            self.foot = TaskFoot(page=self) if self.begun else BeginFoot(page=self)

    def _belt_line(self, side: str) -> str:
        record = self.state.last("tension", belt=side)
        name = "Belt" if len(self.state.saved.sides) == 1 else f"{side.capitalize()} belt"
        if record is None:
            return f"{name}: no tension recorded yet."
        return f"{name}: {tension_text(record, self.style)}, {ago(record.at, self.state.clock())}."

    def begin(self, way: str) -> None:
        """Begin with a board of one's own, with a look-up on the scratch board, or with the examples."""
        if way == "own":
            self.shell.go("board.name", purpose="new")
        elif way == "look":
            self.shell.place("numbers")
            self.shell.go("numbers.gearing")
        else:
            self.state.add_demo_boards()


class RideFoot(Foot):
    """What can be done from here."""

    def __init__(self, page: RideHome, **kwargs: Any) -> None:  # noqa: ANN401  (Kivy's properties)
        """Act on a page."""
        self.page = page
        super().__init__(**kwargs)


class TaskFoot(RideFoot):
    """The tasks, the most used lowest."""


class BeginFoot(RideFoot):
    """Three equal ways to begin."""


load_kv(__file__)
