"""One fault: its hazard, then the likely causes, the easiest to look at first, each with its check."""

from functools import partial
from typing import Any

from kivy.metrics import dp
from kivy.properties import ObjectProperty, StringProperty

from logic.checks.faults import Cause, fault
from screens.app_page import AppPage
from screens.widgets.column import Column
from screens.widgets.load import load_kv
from screens.widgets.notice import Notice
from screens.widgets.row import Row, Section
from screens.widgets.text import Text
from screens.words import STANDING

EFFORT = {1: "By looking", 2: "By hand", 3: "With tools", 4: "Taken apart"}
PAGES = {
    "ride.tension": "Tension check",
    "numbers.gearing": "Gearing and speed",
    "board": "The board's values",
    "bench.spares": "Tools and spares",
    "log": "The log",
    "numbers.hold": "Hold for how long",
    "ride.pack_signs": "Pack: stop signs",
    "bench.power": "First power: resistor and polarity",
}


class FaultPage(AppPage):
    """Shows `fault`."""

    source = StringProperty()
    notice = ObjectProperty()
    causes = ObjectProperty()

    def __init__(self, *args: Any, **kwargs: Any) -> None:  # noqa: ANN401  (as AppPage)
        """Build without a title: the fault gives it."""
        super().__init__(*args, **kwargs)

    def refresh(self) -> None:
        """Show the causes."""
        found = fault(self.args["fault"])
        self.title = found.title
        self.notice.clear_widgets()
        self.causes.clear_widgets()
        if found.hazard:
            self.notice.add_widget(Notice(word=found.word, text=found.hazard))
        for cause in found.causes:
            self.causes.add_widget(self._cause(cause))
        standing = STANDING[found.causes[0].standing]
        self.source = f"{standing.capitalize()}: {found.causes[0].where}."

    def _cause(self, cause: Cause) -> Column:
        column = Column(spacing=dp(4))
        column.add_widget(Section(title=cause.name))
        column.add_widget(Text(text=EFFORT[cause.effort], role="small", tone="second"))
        column.add_widget(Text(text=cause.check))
        column.add_widget(Text(text=cause.remedy, bold=True))
        if cause.danger:
            column.add_widget(Text(text="Not ridden until this is cleared.", tone="bad"))
        link = self._link(cause.opens)
        if link is not None:
            column.add_widget(link)
        return column

    def _link(self, opens: str) -> Row | None:
        from screens.register import PAGES as BUILT  # noqa: PLC0415  (it imports the packages of pages)

        kind, _, key = opens.partition(":")
        title, page, args = PAGES.get(opens, ""), opens, {}
        if kind == "list":
            title, page, args = self.state.lists()[key].title, "ride.run", {"list": key}
        elif kind == "joint":
            title, page, args = "Joint: torque and locker", "bench.joint", {"joint": key}
        if not opens or page not in BUILT:
            return None
        row = Row(title=title, icon="checklist" if kind == "list" else "")
        row.bind(on_release=partial(self._go, page, args))
        return row

    def _go(self, page: str, args: dict[str, str], *_: object) -> None:
        self.shell.go(page, **args)


load_kv(__file__)
