"""The build: its stages in order, with where each stands on this board."""

from functools import partial
from typing import Any

from kivy.properties import ListProperty, ObjectProperty, StringProperty

from logic.checks.lists import build_stages
from logic.log.checks import STOPPED
from screens.app_page import AppPage
from screens.ride.lists import list_state
from screens.widgets.load import load_kv
from screens.widgets.row import Row


class BuildPage(AppPage):
    """Nine stages with a pause after each; first power and the first re-check among them."""

    summary = StringProperty()
    states = ListProperty()
    go_text = StringProperty()
    go_detail = StringProperty()
    rows = ObjectProperty()

    def __init__(self, *args: Any, **kwargs: Any) -> None:  # noqa: ANN401  (as AppPage)
        """Name the page."""
        self._next = build_stages()[0]
        super().__init__(*args, title="Build", **kwargs)

    def refresh(self) -> None:
        """Show the stages, and offer the one to go on with."""
        self.rows.clear_widgets()
        stages = [self._stage(key) for key in build_stages()]
        self.states = [state for _, state in stages]
        done = self.states.count("right")
        self.summary = f"{done} of {len(stages)} stages done."
        waiting = [key for key, state in stages if state != "right"]
        running = [key for key in waiting if self._running(key)]
        self._next = (running or waiting or [build_stages()[0]])[0]
        of = self.state.checklist(self._next)
        begun = self._running(self._next)
        self.go_text = "GO ON" if begun else "BEGIN" if waiting else "BEGIN AGAIN"
        self.go_detail = of.title
        for place, (key, state) in enumerate(stages):
            one = self.state.checklist(key)
            icons = {"right": "ticked", "noted": "cross", "front": "edit", "open": "unticked"}
            row = Row(
                title=self._letter(place, one.title), detail=list_state(self.state, one), icon=icons[state]
            )
            row.bind(on_release=partial(self._open, key))
            self.rows.add_widget(row)

    def _letter(self, place: int, title: str) -> str:
        return title if title[1:2] == ":" else f"{chr(ord('A') + place)}: {title}"

    def _running(self, key: str) -> bool:
        run = self.state.store.run(self.state.saved.id, key)
        return run is not None and bool(run.body["answers"])

    def _stage(self, key: str) -> tuple[str, str]:
        if self._running(key):
            return key, "front"
        last = self.state.last("check", list=key)
        if last is None:
            return key, "open"
        return key, "noted" if last.body.verdict == STOPPED else "right"

    def go_on(self) -> None:
        """Open the stage to go on with."""
        self.shell.go("ride.run", list=self._next)

    def _open(self, key: str, *_: object) -> None:
        self.shell.go("ride.run", list=key)


load_kv(__file__)
