"""An own list: its items, each of them a way to other words; add one, take the list out."""

from functools import partial
from typing import Any

from kivy.properties import ObjectProperty, StringProperty

from screens.app_page import AppPage
from screens.widgets.load import load_kv
from screens.widgets.row import Row
from screens.words.checks import items_text


class OwnList(AppPage):
    """Shows list `key`."""

    summary = StringProperty()
    rows = ObjectProperty()

    def __init__(self, *args: Any, **kwargs: Any) -> None:  # noqa: ANN401  (as AppPage)
        """Build without the four places."""
        super().__init__(*args, nav=False, chip=False, **kwargs)

    def refresh(self) -> None:
        """List the items."""
        of = self.state.own_lists().get(self.args["key"])
        self.rows.clear_widgets()
        if of is None:
            self.title, self.summary = "List taken out", "This list is not there any more."
            return
        self.title = of.title
        base = self.state.lists()[of.base].title
        self.summary = f"{items_text(len(of.items))}, version {of.version}. Counts as: {base}."
        for item in of.items:
            row = Row(title=item.action, detail=("Must pass. " if item.stop else "") + item.state)
            row.bind(on_release=partial(self._open, item.key))
            self.rows.add_widget(row)

    def _open(self, item: str, *_: object) -> None:
        self.shell.go("settings.item", key=self.args["key"], item=item)

    def run(self) -> None:
        """Begin a run of it."""
        self.shell.go("ride.run", list=self.args["key"])

    def drop(self) -> None:
        """Take the list out, with undo."""
        self.state.drop_own(self.args["key"])
        self.shell.back()


load_kv(__file__)
