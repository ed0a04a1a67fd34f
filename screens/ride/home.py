"""Ride: the state of the board at the kerb, and the checks."""

from functools import partial
from typing import Any

from kivy.properties import NumericProperty, ObjectProperty, StringProperty

from logic.checks.lists import checklist
from logic.ledger import ride_open
from logic.upkeep import Due
from screens.app_page import AppPage
from screens.due import DueCard, open_due
from screens.holds import pack_held
from screens.ride import pack_state  # noqa: F401  (home.kv names its class)
from screens.widgets.load import load_kv
from screens.widgets.refill import refill
from screens.widgets.row import Foot, Row
from screens.widgets.text import width_of
from screens.words.checks import due_name, due_when, fault_text, items_text, size_text
from screens.words.tension import ago, tension_text

ALL_CHECKS = ("All checks", "After a crash, after water, storage", "checklist", "ride.lists", {})
FAULTS_SHOWN = 3

ADD_RIDE = ("Add a ride", "Distance, energy or volts", "road", "log.ride", {})
"""What else can be done from here: title, detail, picture, page and what it is asked for."""


class RideHome(AppPage):
    """Where the app opens. Without any board it offers three equal ways to begin.

    `mode` is "begin" without a board, "out" while the pack is out of use, "riding" while a ride waits to be
    entered, else "ready".
    """

    mode = StringProperty()
    belts = StringProperty()
    notice = ObjectProperty()
    packs = ObjectProperty()
    pack = StringProperty()
    before_size = StringProperty()
    after_size = StringProperty()
    pair_need = NumericProperty()
    fault_slot = ObjectProperty()
    due_slot = ObjectProperty()
    rest_slot = ObjectProperty()

    def __init__(self, *args: Any, **kwargs: Any) -> None:  # noqa: ANN401  (as AppPage)
        """Name the place."""
        super().__init__(*args, title="Ride", **kwargs)
        self.state.bind(upcoming=self._changed)

    def refresh(self) -> None:
        """Show what is known of the board, and what can be done with it as it stands."""
        state = self.state
        begun = not state.is_scratch
        self.belts = "\n".join(self._belt_line(side) for side in state.saved.sides) if begun else ""
        self.notice.refresh()
        self.packs.refresh()
        self.pack = self._pack_line() if begun else ""
        before, after = state.checklist("before_ride"), state.checklist("after_ride")
        self.before_size = size_text(len(before.items), before.seconds)
        self.after_size = items_text(len(after.items))
        self.pair_need = (
            sum(width_of(word, "strong", bold=True) + 32 for word in ("Add a ride", "AFTER-RIDE")) + 8
        )
        self._take_mode()
        self._show_faults()
        self._show_due()
        self._show_rest()

    def _take_mode(self) -> None:
        state = self.state
        mode = "begin" if state.is_scratch else "out" if pack_held(state) else "ready"
        if mode == "ready" and ride_open(
            state.last("check", base="before_ride"), state.last("ride"), state.clock()
        ):
            mode = "riding"
        if self.mode != mode:
            self.mode = mode
            feet = {"begin": BeginFoot, "out": OutFoot, "riding": RidingFoot, "ready": TaskFoot}
            self.foot = feet[mode](page=self)

    def _belt_line(self, side: str) -> str:
        record = self.state.last("tension", belt=side)
        name = "Belt" if len(self.state.saved.sides) == 1 else f"{side.capitalize()} belt"
        if record is None:
            return f"{name}: no tension recorded yet."
        return f"{name}: {tension_text(record, self.style)}, {ago(record.at, self.state.clock())}."

    def _pack_line(self) -> str:
        check = self.state.last("check", base="before_ride")
        volts = check.body.volts("charge") if check is not None else None
        if check is None or volts is None:
            return ""
        return f"Pack: {self.style.number(volts, 'voltage')} read {ago(check.at, self.state.clock())}."

    def _show_faults(self) -> None:
        """Show what checks found wrong and no later one found right, what forbids riding first."""
        faults = () if self.state.is_scratch else self.state.history().faults
        first = sorted(faults, key=lambda one: (not one.stops, -one.at.timestamp()))[:FAULTS_SHOWN]
        more = f" {len(faults) - len(first)} more in the log." if len(faults) > len(first) else ""
        lines = [
            (fault_text(one), f"{checklist(one.base).title}, {ago(one.at, self.state.clock())}.", one)
            for one in first
        ]
        refill(
            self.fault_slot,
            lines,
            lambda: [
                self._row(
                    title,
                    f"{when} Opens the list that clears it.{more if one is first[-1] else ''}",
                    "cross",
                    "ride.run",
                    {"list": one.base},
                    tone="bad" if one.stops else "text",
                )
                for title, when, one in lines
            ],
        )

    def _show_due(self) -> None:
        """Show the one thing that is most overdue."""
        due = self.state.due if self.mode != "begin" else ()
        shown = [(one.key, one.subject, due_when(one, self.style)) for one in due]
        refill(self.due_slot, (self.mode, shown), lambda: [self._due_widget(due)] if due else [])

    def _due_widget(self, due: tuple[Due, ...]) -> Row | DueCard:
        name, when = due_name(due[0], self.state.saved.sides), due_when(due[0], self.style)
        if self.mode == "out":
            row = Row(title=f"Due: {name}", detail=when, icon="due")
            row.bind(on_release=lambda *_: open_due(self, due[0]))
            return row
        card = DueCard(due[0], name, when)
        card.more = f"{len(due) - 1} more due" if len(due) > 1 else ""
        card.bind(on_check=lambda *_: open_due(self, due[0]))
        card.bind(on_later=lambda *_: self._later(due[0]))
        card.bind(on_all=lambda *_: self.shell.go("log.due"))
        return card

    def _later(self, due: Due) -> None:
        self.shell.go("log.snooze", rule=due.key, label=due.name, stop=due.stop)

    def _show_rest(self) -> None:
        """List what has no bar: while the pack is out of use, the checks as well."""
        checks = (
            ("Pre-ride", self.before_size, "checklist", "ride.run", {"list": "before_ride"}),
            ("After-ride", self.after_size, "checklist", "ride.run", {"list": "after_ride"}),
            ("Tension check", "about 1 minute", "gauge", "ride.tension", {}),
        )
        ready = (ALL_CHECKS, ADD_RIDE)
        wanted = {"begin": (), "ready": ready, "riding": (ALL_CHECKS,), "out": (*checks, *ready)}[self.mode]
        refill(self.rest_slot, wanted, lambda: [self._row(*one) for one in wanted])

    def _row(  # noqa: PLR0913  (what a row shows and where it leads)
        self, title: str, detail: str, icon: str, page: str, args: dict[str, str], tone: str = "text"
    ) -> Row:
        row = Row(title=title, detail=detail, icon=icon, tone=tone)
        row.bind(on_release=partial(self._go, page, args))
        return row

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


class RidingFoot(RideFoot):
    """The same while a ride waits to be entered: that stands beside what follows a ride."""


class OutFoot(RideFoot):
    """The one thing to do with a pack that is out of use."""


class BeginFoot(RideFoot):
    """Three equal ways to begin."""


load_kv(__file__)
