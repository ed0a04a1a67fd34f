"""What Ride says about the pack: out of use when it is, and the ways to a flight and to the stop signs."""

from typing import Any

from kivy.properties import ObjectProperty

from logic.answers.questions import Hazard
from screens.asked import out_of_use
from screens.page import AppPage
from screens.widgets.column import Column
from screens.widgets.notice import Notice
from screens.widgets.row import Row
from screens.words.packs import hazard_text


class PackState(Column):
    """Asks for the pack's state when its page is shown."""

    page: AppPage = ObjectProperty()

    def __init__(self, **kwargs: Any) -> None:  # noqa: ANN401  (Kivy's properties)
        """Build the rows once."""
        super().__init__(**kwargs)
        self._notice = Column()
        self._rows = Column()
        for title, icon, name, tone in (
            ("Pack for a flight", "flight", "ride.flight", "text"),
            ("Swollen or hot pack?", "battery", "ride.pack_signs", "bad"),
        ):
            row = Row(title=title, icon=icon, tone=tone)
            row.name = name
            row.bind(on_release=lambda pressed: self.page.shell.go(pressed.name))
            self._rows.add_widget(row)
        self.add_widget(self._notice)

    def refresh(self) -> None:
        """Show the state of the board in use; without a board there is nothing to show."""
        state = self.page.state
        out = None if state.is_scratch else out_of_use(state)
        self._notice.clear_widgets()
        if out is not None:
            text = hazard_text(Hazard("DANGER", "pack out"), self.page.style, sign=out["sign"])
            self._notice.add_widget(Notice(word="danger", text=text))
        if state.is_scratch and self._rows.parent is not None:
            self.remove_widget(self._rows)
        elif not state.is_scratch and self._rows.parent is None:
            self.add_widget(self._rows)
