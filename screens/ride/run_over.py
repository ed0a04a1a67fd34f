"""The closing card of a run: a count, what is noted, who checked. Nothing here promises anything."""

from typing import Any

from kivy.properties import BooleanProperty, ObjectProperty, StringProperty

from logic.answers.checks import snapshot
from logic.checks.session import Session
from logic.checks.verdict import STOPPED
from screens.page import AppPage
from screens.widgets.load import load_kv
from screens.widgets.row import Foot, Row
from screens.words.checks import check_text, due_name, due_when, headline, seconds_text


class RunOver(AppPage):
    """Signs `list` off, or shows the stopped run that is logged in `row`."""

    headline = StringProperty()
    tone = StringProperty("text")
    reason = StringProperty()
    who = StringProperty()
    fast = StringProperty()
    signed = BooleanProperty(defaultvalue=False)
    notes = ObjectProperty()
    due = ObjectProperty()

    def __init__(self, *args: Any, **kwargs: Any) -> None:  # noqa: ANN401  (as AppPage)
        """Build without the four places."""
        self._foot_for: bool | None = None
        super().__init__(*args, nav=False, chip=False, **kwargs)

    def open(self, **args: Any) -> None:  # noqa: ANN401  (as AppPage)
        """Show what came of the run."""
        of = self.state.checklist(args["list"])
        self.title = of.title
        self.session = Session(self.state.store, self.state.saved.id, of, self.state.clock)
        super().open(**args)

    def refresh(self) -> None:
        """Count."""
        self.signed = "row" in self.args
        self.notes.clear_widgets()
        self.due.clear_widgets()
        self.reason = self.fast = ""
        if self.signed:
            body = self.state.store.entry(self.args["row"]).body
            stopped = body["verdict"] == STOPPED
            self.headline = body["halted"] if stopped else check_text(body)
            self.tone = "bad" if stopped else "good"
            self.reason = f"{body['stopped_by']}: {body['reason']}" if stopped else ""
            self.who = f"Checked by you, {self.state.store.entry(self.args['row']).at:%H:%M}. In the log."
            notes = body["notes"] if not stopped else []
        elif self.session.run is not None:
            found = self.session.verdict
            items = {item.key: item for item in self.session.of.items}
            self.headline = headline(found)
            self.tone = "bad" if found.notes or found.aside else "good"
            self.who = f"{seconds_text(found.seconds)}. Checked by you, {self.state.clock():%H:%M}."
            self.fast = "Done fast: the log says so." if found.fast else ""
            notes = [[items[key].action, note] for key, note in found.notes]
        else:
            notes = []
        for action, note in notes:
            self.notes.add_widget(Row(title=action, detail=note, icon="cross", chevron=False))
        self._show_due()
        if self._foot_for != self.signed:
            self._foot_for = self.signed
            self.foot = SignedFoot(page=self) if self.signed else SignFoot(page=self)

    def _show_due(self) -> None:
        sides = self.state.saved.sides
        for one in self.state.due[:2]:
            row = Row(
                title=f"Due: {due_name(one, sides)}",
                detail=due_when(one, self.style),
                icon="due",
                chevron=False,
            )
            self.due.add_widget(row)

    def finish(self) -> None:
        """Write the log entry and go on to what belongs to the list, or back."""
        of = self.session.of
        self.session.finish(snapshot(self.state.saved))
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


class SignedFoot(OverFoot):
    """It is in the log already."""


load_kv(__file__)
