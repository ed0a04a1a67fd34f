"""Ride: the state of the board at the kerb, and the checks."""

from functools import partial
from typing import Any

from kivy.properties import BooleanProperty, ObjectProperty, StringProperty

from logic.upkeep import Due
from screens.due import DueCard, open_due
from screens.page import AppPage
from screens.ride import pack_state  # noqa: F401  (home.kv names its class)
from screens.widgets.load import load_kv
from screens.widgets.row import Foot, Row
from screens.words.checks import due_name, due_when
from screens.words.tension import ago, tension_text

REST = (
    ("All checks", "After a crash, after water, storage", "checklist", "ride.lists", {}),
    ("Add a ride", "Distance, energy or volts", "road", "log.ride", {}),
)
"""What else can be done from here: title, detail, picture, page and what it is asked for."""


class RideHome(AppPage):
    """Where the app opens. Without any board it offers three equal ways to begin."""

    begun = BooleanProperty(defaultvalue=False)
    belts = StringProperty()
    notice = ObjectProperty()
    packs = ObjectProperty()
    pack = StringProperty()
    due_slot = ObjectProperty()
    rest_slot = ObjectProperty()

    def __init__(self, *args: Any, **kwargs: Any) -> None:  # noqa: ANN401  (as AppPage)
        """Name the place."""
        self._shows: bool | None = None
        self._due_shown: list[tuple[str, str, str]] = []
        super().__init__(*args, title="Ride", **kwargs)
        self.state.bind(upcoming=self._changed)

    def refresh(self) -> None:
        """Show what is known of the belts."""
        self.begun = not self.state.is_scratch
        self.belts = "\n".join(self._belt_line(side) for side in self.state.saved.sides) if self.begun else ""
        self.notice.refresh()
        self.packs.refresh()
        self.pack = self._pack_line() if self.begun else ""
        self._show_due()
        self._show_rest()
        if self._shows != self.begun:
            self._shows = self.begun
            self.foot = TaskFoot(page=self) if self.begun else BeginFoot(page=self)

    def _belt_line(self, side: str) -> str:
        record = self.state.last("tension", belt=side)
        name = "Belt" if len(self.state.saved.sides) == 1 else f"{side.capitalize()} belt"
        if record is None:
            return f"{name}: no tension recorded yet."
        return f"{name}: {tension_text(record, self.style)}, {ago(record.at, self.state.clock())}."

    def _pack_line(self) -> str:
        check = self.state.last("check", base="before_ride")
        volts = check.body.get("values", {}).get("charge") if check is not None else None
        if check is None or volts is None:
            return ""
        return f"Pack: {self.style.number(volts, 'voltage')} read {ago(check.at, self.state.clock())}."

    def _show_due(self) -> None:
        """Show the one thing that is most overdue."""
        due = self.state.due if self.begun else ()
        shown = [(one.key, one.subject, due_when(one, self.style)) for one in due]
        if shown == self._due_shown:
            return
        self._due_shown = shown
        self.due_slot.clear_widgets()
        if due:
            card = DueCard(due[0], due_name(due[0], self.state.saved.sides), due_when(due[0], self.style))
            card.more = f"{len(due) - 1} more due" if len(due) > 1 else ""
            card.bind(on_check=lambda *_: open_due(self, due[0]))
            card.bind(on_later=lambda *_: self._later(due[0]))
            card.bind(on_all=lambda *_: self.shell.go("log.due"))
            self.due_slot.add_widget(card)

    def _later(self, due: Due) -> None:
        self.shell.go("log.snooze", rule=due.key, label=due.name, stop=due.stop)

    def _show_rest(self) -> None:
        if self._shows == self.begun:
            return
        self.rest_slot.clear_widgets()
        if not self.begun:
            return
        for title, detail, icon, page, args in REST:
            row = Row(title=title, detail=detail, icon=icon)
            row.bind(on_release=partial(self._go, page, args))
            self.rest_slot.add_widget(row)

    def _go(self, page: str, args: dict[str, str], *_: object) -> None:
        self.shell.go(page, **args)

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
