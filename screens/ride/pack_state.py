"""What Ride says about the pack: out of use when it is, and the ways to a flight and to the stop signs."""

from functools import partial
from typing import Any

from kivy.properties import ObjectProperty

from logic.answers.hazards import Hazard
from screens.asked import out_of_use
from screens.page import AppPage
from screens.widgets.column import Column
from screens.widgets.notice import Notice
from screens.widgets.row import Row
from screens.words.packs import hazard_text


class PackNotice(Column):
    """The pack's DANGER while it is out of use: the first thing on the page."""

    page: AppPage = ObjectProperty()

    def refresh(self) -> None:
        """Show the state of the board in use; without a board there is nothing to show."""
        state = self.page.state
        out = None if state.is_scratch else out_of_use(state)
        self.clear_widgets()
        if out is not None:
            text = hazard_text(Hazard("DANGER", "pack out"), self.page.style, sign=out["sign"])
            self.add_widget(Notice(word="danger", text=text))


class PackWays(Column):
    """The ways to a flight and to the stop signs, once there is a board."""

    page: AppPage = ObjectProperty()

    def __init__(self, **kwargs: Any) -> None:  # noqa: ANN401  (Kivy's properties)
        """Build the rows once."""
        super().__init__(**kwargs)
        self._rows = []
        for title, icon, name, tone in (
            ("Pack for a flight", "flight", "ride.flight", "text"),
            ("Swollen or hot pack?", "battery", "ride.pack_signs", "bad"),
        ):
            row = Row(title=title, icon=icon, tone=tone)
            row.bind(on_release=partial(self._open, name))
            self._rows.append(row)

    def _open(self, name: str, *_: object) -> None:
        self.page.shell.go(name)

    def refresh(self) -> None:
        """Show the rows unless the board is the scratch board."""
        wanted = not self.page.state.is_scratch
        if wanted != bool(self.children):
            self.clear_widgets()
            for row in self._rows if wanted else ():
                self.add_widget(row)
