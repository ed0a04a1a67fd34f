"""Every checklist of the kerb, with when it was last run; the build's stages are on Bench."""

from functools import partial
from typing import Any

from kivy.properties import ObjectProperty

from logic.checks.lists import Checklist
from logic.checks.run import fit, run_from_dict
from screens.app_page import AppPage
from screens.widgets.load import load_kv
from screens.widgets.refill import refill
from screens.widgets.row import Row
from screens.words.checks import broke_off, check_text, items_text
from screens.words.tension import ago

FIRST = ("before_ride", "after_ride", "first_recheck", "after_crash", "after_water", "travel", "storage")


class Lists(AppPage):
    """The lists, ours first in the order of use, then one's own."""

    rows = ObjectProperty()

    def __init__(self, *args: Any, **kwargs: Any) -> None:  # noqa: ANN401  (as AppPage)
        """Name the page."""
        super().__init__(*args, title="All checks", **kwargs)

    def refresh(self) -> None:
        """List them."""
        lists = self.state.lists()
        order = [key for key in FIRST if key in lists]
        order += [key for key, of in lists.items() if of.place == "ride" and key not in order]
        lines = [(key, lists[key].title, self.detail(lists[key])) for key in order]
        refill(self.rows, lines, lambda: [self._row(*line) for line in lines])

    def _row(self, key: str, title: str, detail: str) -> Row:
        row = Row(title=title, detail=detail, icon="checklist")
        row.bind(on_release=partial(self._open, key))
        return row

    def detail(self, of: Checklist) -> str:
        """Return where a list stands: broken off, or what it found last."""
        return list_state(self, of)

    def _open(self, key: str, *_: object) -> None:
        self.shell.go("ride.run", list=key)


def list_state(page: AppPage, of: Checklist) -> str:
    """Return where a list, fitted to the board in use, stands: broken off, or what it found last and when."""
    state = page.state
    of = state.checklist(of.key)
    saved = state.store.run(state.saved.id, of.key)
    if saved is not None and saved.body["answers"]:
        run = fit(run_from_dict(saved.body), of)
        minutes = int((state.clock() - saved.at).total_seconds() // 60)
        return broke_off(run.place, len(run.order), minutes)
    last = state.last("check", list=of.key)
    if last is None:
        return f"{items_text(len(of.items))}, {of.pause}."
    return f"{check_text(last.body)}, {ago(last.at, state.clock())}."


load_kv(__file__)
