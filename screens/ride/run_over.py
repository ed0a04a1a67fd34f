"""The closing card of a run: a count, what is noted, who checked. Nothing here promises anything."""

from typing import Any

from kivy.properties import NumericProperty, ObjectProperty, StringProperty

from logic.answers.checks import snapshot
from logic.checks.session import Session
from logic.checks.verdict import Fitness
from logic.log.checks import FIT, STOPPED
from logic.upkeep import Due
from screens.app_page import AppPage
from screens.due import open_due
from screens.ride.holds import due_stops, forbids, open_elsewhere, pack_held, put_off
from screens.widgets.load import load_kv
from screens.widgets.refill import refill
from screens.widgets.row import Foot, Row
from screens.widgets.text import width_of
from screens.words.checks import (
    check_text,
    due_name,
    due_when,
    fit_text,
    headline,
    held_text,
    not_yet_text,
    seconds_text,
)


class RunOver(AppPage):
    """Signs `list` off, or shows the stopped run that is logged in `row`."""

    headline = StringProperty()
    tone = StringProperty("text")
    count = StringProperty()
    reason = StringProperty()
    who = StringProperty()
    fast = StringProperty()
    stop_text = StringProperty()
    pair_need = NumericProperty()
    notes = ObjectProperty()
    due = ObjectProperty()

    def __init__(self, *args: Any, **kwargs: Any) -> None:  # noqa: ANN401  (as AppPage)
        """Build without the four places."""
        self._held = ""
        self._stops: tuple[Due, ...] = ()
        super().__init__(*args, nav=False, chip=False, **kwargs)
        self.state.bind(upcoming=self._changed)

    def open(self, **args: Any) -> None:  # noqa: ANN401  (as AppPage)
        """Show what came of the run."""
        of = self.state.checklist(args["list"])
        self.title = of.title
        self.session = Session(self.state.store, self.state.saved.id, of, self.state.clock)
        super().open(**args)

    @property
    def signed(self) -> bool:
        """Tell whether the run is in the log already."""
        return "row" in self.args

    def refresh(self) -> None:
        """Count."""
        self._held = pack_held(self.state)
        self._stops = () if self.signed else due_stops(self.state, self.session.of)
        self.count = self.reason = self.fast = ""
        notes: tuple[tuple[str, str], ...] = ()
        if self.signed:
            notes = self._show_logged()
        elif self.session.run is not None:
            notes = self._show_found()
        refill(self.notes, notes, lambda: [self._row(*note, "cross") for note in notes])
        self._show_due()
        self._show_foot()

    def _show_logged(self) -> tuple[tuple[str, str], ...]:
        """Show what is in the log; return its notes."""
        record = self.state.store.entry(self.args["row"])
        check = record.body
        stopped = check.verdict == STOPPED
        self.headline = check.halted if stopped and not check.fit else check_text(check)
        self.tone = "bad" if stopped else "good"
        self.reason = f"{check.stopped_by}: {check.reason}" if stopped else ""
        self.who = f"Checked by you, {record.at:%H:%M}. In the log."
        return () if stopped else check.notes

    def _show_found(self) -> tuple[tuple[str, str], ...]:
        """Show what the run found, under what forbids riding; return its notes."""
        found = self.session.verdict
        items = {item.key: item for item in self.session.of.items}
        count = headline(found)
        fit = self._fitness()
        first = held_text(self._held) if self._held else fit_text(fit) if fit is not None else ""
        if self._stops and not self._held:
            first = not_yet_text([self._name(one) for one in self._stops])
        self.headline, self.count = (first, count) if first else (count, "")
        unfit = self._held or self._stops or (fit is not None and fit.word != FIT)
        self.tone = "bad" if unfit or found.notes or found.aside else "good"
        self.who = f"{seconds_text(found.seconds)}. Checked by you, {self.state.clock():%H:%M}."
        self.fast = "Done fast: the log says so." if found.fast else ""
        return tuple((items[key].action, note) for key, note in found.notes)

    def _fitness(self) -> Fitness | None:
        state, of = self.state, self.session.of
        return self.session.fitness(forbids(state, of), put_off(state, of), open_elsewhere(state, of))

    def _row(self, title: str, detail: str, icon: str) -> Row:
        return Row(title=title, detail=detail, icon=icon, chevron=False)

    def _name(self, one: Due) -> str:
        return due_name(one, self.state.saved.sides)

    def _show_due(self) -> None:
        """Show what is due, the stop items first, then what of them was put off and why."""
        due = self._stops or self.state.due[:2]
        shown = [(f"Due: {self._name(one)}", due_when(one, self.style), "due") for one in due]
        if not self.signed:
            shown += [
                (f"Put off: {name}", reason, "clock") for name, reason in put_off(self.state, self.session.of)
            ]
        refill(self.due, shown, lambda: [self._row(*line) for line in shown])

    def _show_foot(self) -> None:
        self.stop_text = self._name(self._stops[0]) if self._stops else ""
        self.pair_need = (
            sum(width_of(word, "strong", bold=True) + 60 for word in ("Back one", "Put it off")) + 8
        )
        stopped = StoppedPackFoot if self.args.get("about_pack") else SignedFoot
        made = stopped if self.signed else PackFoot if self._held else DueFoot if self._stops else SignFoot
        if not isinstance(self.foot, made):
            self.foot = made(page=self)

    def do_due(self) -> None:
        """Open the first check that stops this ride; the run waits here for its sign-off."""
        if self._stops:
            open_due(self, self._stops[0])

    def put_due_off(self) -> None:
        """Put it off, for a reason that goes into the log."""
        if self._stops:
            first = self._stops[0]
            self.shell.go("log.snooze", rule=first.key, label=first.name, stop=True)

    def finish(self) -> None:
        """Write the log entry and go on to what belongs to the list, or back."""
        state, of = self.state, self.session.of
        if not pack_held(state) and due_stops(state, of):
            self.refresh()
            return
        self.session.finish(
            snapshot(state.saved), forbids(state, of), put_off(state, of), open_elsewhere(state, of)
        )
        self.state.changed()
        if of.next:
            self.shell.replace(of.next)
        else:
            self.shell.back()

    def leave(self) -> None:
        """Go back to where the run was begun."""
        self.shell.back()

    def back(self) -> bool:
        """Before the sign-off, go back to the last item; after it, back to where the run began."""
        if self.signed or self.session.run is None:
            return False
        self.session.back()
        self.shell.replace("ride.run", list=self.args["list"], going_on=True)
        return True


class OverFoot(Foot):
    """What can be done with a run that is over."""

    def __init__(self, page: RunOver, **kwargs: Any) -> None:  # noqa: ANN401  (Kivy's properties)
        """Act on a page."""
        self.page = page
        super().__init__(**kwargs)


class SignFoot(OverFoot):
    """Sign it off, or go back."""


class DueFoot(OverFoot):
    """Do what is due first, or put it off with a reason; the sign-off comes after."""


class PackFoot(OverFoot):
    """What to do with the pack that is out of use, then sign off that nobody rides."""


class StoppedPackFoot(OverFoot):
    """It is in the log; next the pack is taken out of use."""


class SignedFoot(OverFoot):
    """It is in the log already."""


load_kv(__file__)
