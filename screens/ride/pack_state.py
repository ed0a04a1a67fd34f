"""What Ride says about the pack: out of use when it is, and the ways to a flight and to the stop signs."""

from kivy.properties import ObjectProperty

from logic.answers.hazards import Hazard
from screens.app_page import AppPage
from screens.asked import out_of_use
from screens.widgets.column import Column
from screens.widgets.notice import Notice
from screens.widgets.refill import refill
from screens.widgets.row import Row
from screens.words.packs import hazard_text

WAYS = (
    ("Pack for a flight", "flight", "ride.flight", "text"),
    ("Swollen or hot pack?", "battery", "ride.pack_signs", "bad"),
)
"""Title, picture, page and tone of each row."""


class PackNotice(Column):
    """The pack's DANGER while it is out of use: the first thing on the page."""

    page: AppPage = ObjectProperty()

    def refresh(self) -> None:
        """Show the state of the board in use; without a board there is nothing to show."""
        state = self.page.state
        out = None if state.is_scratch else out_of_use(state)
        text = (
            ""
            if out is None
            else hazard_text(Hazard("DANGER", "pack out"), self.page.style, sign=out["sign"])
        )
        refill(self, text, lambda: [Notice(word="danger", text=text)] if text else [])


class PackWays(Column):
    """The ways to a flight and to the stop signs, once there is a board.

    While the pack is out of use the page's own bar leads to the stop signs.
    """

    page: AppPage = ObjectProperty()

    def _row(self, title: str, icon: str, name: str, tone: str) -> Row:
        row = Row(title=title, icon=icon, tone=tone)
        row.bind(on_release=lambda *_: self.page.shell.go(name))
        return row

    def refresh(self) -> None:
        """Show the rows that lead somewhere."""
        state = self.page.state
        wanted = () if state.is_scratch else WAYS[:1] if out_of_use(state) else WAYS
        refill(self, wanted, lambda: [self._row(*way) for way in wanted])
