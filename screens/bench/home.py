"""Bench: what the hands are doing to the board. The build stands first, at the stage where it was left."""

from typing import Any

from kivy.properties import StringProperty

from logic.checks.lists import build_stages
from screens.app_page import AppPage
from screens.ride.lists import list_state
from screens.widgets.load import load_kv


class BenchHome(AppPage):
    """The list of bench tasks."""

    build_detail = StringProperty()

    def __init__(self, *args: Any, **kwargs: Any) -> None:  # noqa: ANN401  (as AppPage)
        """Name the place."""
        super().__init__(*args, title="Bench", **kwargs)

    def refresh(self) -> None:
        """Say where the build stands."""
        state = self.state
        stages = build_stages()
        for key in stages:
            run = state.store.run(state.saved.id, key)
            if run is not None and run.body["answers"]:
                of = state.checklist(key)
                self.build_detail = f"{of.title}. {list_state(self.state, of)}"
                return
        done = sum(state.last("check", list=key) is not None for key in stages)
        self.build_detail = (
            f"{done} of {len(stages)} stages done." if done else f"{len(stages)} stages, parts to first ride."
        )


load_kv(__file__)
