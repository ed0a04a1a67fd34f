"""One item of an own list: what to do and what good looks like, in one's own words."""

from typing import Any

from kivy.metrics import dp
from kivy.properties import BooleanProperty, ObjectProperty, StringProperty

from logic.checks.lists import Checklist
from logic.checks.own import moved, reworded, with_item, without
from logic.errors import InputError
from screens.app_page import AppPage
from screens.widgets.bar import Bar
from screens.widgets.load import load_kv
from screens.widgets.row import Foot
from screens.words.checks import REFUSALS


class OwnItem(AppPage):
    """Changes `item` of list `key`; an empty `item` adds one."""

    sentence = StringProperty()
    stop = BooleanProperty(defaultvalue=False)
    action = ObjectProperty()
    good = ObjectProperty()

    def __init__(self, *args: Any, **kwargs: Any) -> None:  # noqa: ANN401  (as AppPage)
        """Remember what is written at each letter."""
        super().__init__(*args, nav=False, chip=False, **kwargs)
        for name in ("action", "good"):
            getattr(self, name).bind(text=lambda _, text, name=name: self._typed(name, text))

    @property
    def of(self) -> Checklist:
        """Return the list."""
        return self.state.own_lists()[self.args["key"]]

    def open(self, **args: Any) -> None:  # noqa: ANN401  (as AppPage)
        """Show the words as they are."""
        super().open(**args)
        key = args["item"]
        self.title = "Change the item" if key else "Add an item"
        self.sentence = ""
        item = self.of.item(key) if key else None
        self.stop = item is not None and item.stop
        start = (item.action, item.state) if item is not None else ("", "")
        for name, text in zip(("action", "good"), start, strict=True):
            getattr(self, name).text = self.state.typed.get(self._key(name), text)
        foot = Foot(padding=(0, dp(8)))
        if item is not None:
            self._bar(foot, "Move up", "plain", lambda: self._change(moved(self.of, key, -1)))
            if not item.stop:
                self._bar(foot, "Take it out", "bad-outline", lambda: self._change(without(self.of, key)))
        self._bar(foot, "SAVE", "main", self.save)
        self.foot = foot

    def _bar(self, foot: Foot, text: str, kind: str, act: Any) -> None:  # noqa: ANN401  (a function)
        bar = Bar(text=text, kind=kind)
        bar.bind(on_release=lambda *_: act())
        foot.add_widget(bar)

    def _key(self, name: str) -> str:
        return f"list/{self.args['key']}/{self.args['item']}/{name}"

    def _typed(self, name: str, text: str) -> None:
        self.sentence = ""
        if self.in_front:
            self.state.note_typed(self._key(name), text)

    def save(self) -> None:
        """Keep the words."""
        key, words = self.args["item"], (self.action.text, self.good.text)
        try:
            of = self.of
            changed = reworded(of, key, *words) if key else with_item(of, *words, number=of.version)
        except InputError as problem:
            self.sentence = REFUSALS.get(problem.reason, "These words cannot be used.")
            return
        self._change(changed)

    def _change(self, changed: Checklist) -> None:
        for name in ("action", "good"):
            self.state.note_typed(self._key(name), "")
        self.state.save_own(changed)
        self.shell.back()


load_kv(__file__)
