"""All items of a run under way: what was said of each. A tap opens the item, never answers it."""

from functools import partial
from typing import Any

from kivy.properties import ObjectProperty, StringProperty

from logic.checks.run import ASIDE, RIGHT
from logic.checks.session import Session
from screens.app_page import AppPage
from screens.widgets.load import load_kv
from screens.widgets.row import Row

ICONS = {"right": "ticked", "noted": "cross", "failed": "cross", "aside": "clock"}


class RunList(AppPage):
    """Lists the items of `list`."""

    summary = StringProperty()
    rows = ObjectProperty()

    def __init__(self, *args: Any, **kwargs: Any) -> None:  # noqa: ANN401  (as AppPage)
        """Build without the four places."""
        super().__init__(*args, nav=False, chip=False, **kwargs)

    def refresh(self) -> None:
        """Show each item with its answer."""
        of = self.state.checklist(self.args["list"])
        self.title = of.title
        self.session = Session(self.state.store, self.state.saved.id, of, self.state.clock)
        run = self.session.run
        self.rows.clear_widgets()
        if run is None:
            return
        done = sum(answer.state == RIGHT for answer in run.answers.values())
        self.summary = f"{done} of {len(run.order)} right. Pause: {of.pause}."
        for key in run.order:
            item, answer = of.item(key), run.answers.get(key)
            said = answer.note or item.state if answer is not None else item.state
            if answer is not None and answer.state == ASIDE:
                said = "Put aside"
            row = Row(
                title=item.action,
                detail=("Must pass. " if item.stop else "") + said,
                icon=ICONS[answer.state] if answer is not None else "unticked",
            )
            row.bind(on_release=partial(self._open, key))
            self.rows.add_widget(row)

    def _open(self, key: str, *_: object) -> None:
        """Put the item in front; an answer it had is taken back."""
        self.session.go_to(key)
        self.shell.back()


load_kv(__file__)
