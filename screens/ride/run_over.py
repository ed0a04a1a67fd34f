"""The closing card of a run: a count, what is noted, who checked. Nothing here promises anything."""

from typing import Any

from kivy.properties import ObjectProperty, StringProperty

from logic.answers.checks import snapshot
from logic.checks.session import Session
from logic.checks.verdict import STOPPED
from screens.page import AppPage
from screens.ride.holds import pack_held
from screens.widgets.load import load_kv
from screens.widgets.refill import refill
from screens.widgets.row import Foot, Row
from screens.words.checks import check_text, due_name, due_when, headline, held_text, seconds_text


class RunOver(AppPage):
    """Signs `list` off, or shows the stopped run that is logged in `row`."""

    headline = StringProperty()
    tone = StringProperty("text")
    count = StringProperty()
    reason = StringProperty()
    who = StringProperty()
    fast = StringProperty()
    notes = ObjectProperty()
    due = ObjectProperty()

    def __init__(self, *args: Any, **kwargs: Any) -> None:  # noqa: ANN401  (as AppPage)
        """Build without the four places."""
        self._held = ""
        super().__init__(*args, nav=False, chip=False, **kwargs)

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
        self.count = self.reason = self.fast = ""
        notes: list[list[str]] = []
        if self.signed:
            notes = self._show_logged()
        elif self.session.run is not None:
            notes = self._show_found()
        refill(self.notes, notes, lambda: [self._row(*note, "cross") for note in notes])
        self._show_due()
        self._show_foot()

    def _show_logged(self) -> list[list[str]]:
        """Show what is in the log; return its notes."""
        record = self.state.store.entry(self.args["row"])
        body = record.body
        stopped = body["verdict"] == STOPPED
        self.headline = body["halted"] if stopped else check_text(body)
        self.tone = "bad" if stopped else "good"
        self.reason = f"{body['stopped_by']}: {body['reason']}" if stopped else ""
        self.who = f"Checked by you, {record.at:%H:%M}. In the log."
        return [] if stopped else body["notes"]

    def _show_found(self) -> list[list[str]]:
        """Show what the run found, under what forbids riding; return its notes."""
        found = self.session.verdict
        items = {item.key: item for item in self.session.of.items}
        count = headline(found)
        self.headline, self.count = (held_text(self._held), count) if self._held else (count, "")
        self.tone = "bad" if self._held or found.notes or found.aside else "good"
        self.who = f"{seconds_text(found.seconds)}. Checked by you, {self.state.clock():%H:%M}."
        self.fast = "Done fast: the log says so." if found.fast else ""
        return [[items[key].action, note] for key, note in found.notes]

    def _row(self, title: str, detail: str, icon: str) -> Row:
        return Row(title=title, detail=detail, icon=icon, chevron=False)

    def _show_due(self) -> None:
        sides = self.state.saved.sides
        shown = [(f"Due: {due_name(one, sides)}", due_when(one, self.style)) for one in self.state.due[:2]]
        refill(self.due, shown, lambda: [self._row(*line, "due") for line in shown])

    def _show_foot(self) -> None:
        made = SignedFoot if self.signed else PackFoot if self._held else SignFoot
        if not isinstance(self.foot, made):
            self.foot = made(page=self)

    def finish(self) -> None:
        """Write the log entry and go on to what belongs to the list, or back."""
        of = self.session.of
        self.session.finish(snapshot(self.state.saved), pack_held(self.state))
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


class PackFoot(OverFoot):
    """What to do with the pack that is out of use, then sign off that nobody rides."""


class SignedFoot(OverFoot):
    """It is in the log already."""


load_kv(__file__)
