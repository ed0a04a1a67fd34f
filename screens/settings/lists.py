"""One's own lists: copy one of ours, change it, take it out. Ours stay as they are."""

from functools import partial
from typing import Any

from kivy.properties import ObjectProperty, StringProperty

from logic.checks.lists import Checklist
from screens.app_page import AppPage
from screens.widgets.load import load_kv
from screens.widgets.row import Row, Section
from screens.words.checks import items_text


class OwnLists(AppPage):
    """The own lists, and under them what can be copied."""

    empty = StringProperty()
    rows = ObjectProperty()

    def __init__(self, *args: Any, **kwargs: Any) -> None:  # noqa: ANN401  (as AppPage)
        """Name the page."""
        super().__init__(*args, nav=False, chip=False, title="My lists", **kwargs)

    def refresh(self) -> None:
        """List them."""
        self.rows.clear_widgets()
        own = self.state.own_lists()
        self.empty = "" if own else "No list of your own yet. Copy one and change it; ours stays as it is."
        for key, of in own.items():
            self._add(of.title, f"{items_text(len(of.items))}, version {of.version}", "edit", self._open, key)
        self.rows.add_widget(Section(title="Copy one of these"))
        # The stages of building follow each other by their letter, wherever they are kept.
        for key, of in sorted(self.state.lists().items(), key=lambda entry: _order(entry[1])):
            if key not in own:
                self._add(of.title, items_text(len(of.items)), "plus", self._copy, key)

    def _add(self, title: str, detail: str, icon: str, act: Any, key: str) -> None:  # noqa: ANN401
        row = Row(title=title, detail=detail, icon=icon)
        row.bind(on_release=partial(act, key))
        self.rows.add_widget(row)

    def _open(self, key: str, *_: object) -> None:
        self.shell.go("settings.list", key=key)

    def _copy(self, key: str, *_: object) -> None:
        self.shell.go("settings.list", key=self.state.copy_list(key).key)


def _order(of: Checklist) -> tuple[bool, str]:
    return of.title[1:2] == ":", of.title


load_kv(__file__)
