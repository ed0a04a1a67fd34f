"""The card for the counter: watt-hours to be read at arm's length, and the same as a text to send."""

from typing import Any

from kivy.metrics import dp
from kivy.properties import StringProperty

from logic.answers.carrying import flight
from screens.app_page import AppPage
from screens.asked import answers, out_of_use
from screens.phone.share import COPIED, NEITHER, SHARED, share_text
from screens.theme import theme
from screens.widgets.load import load_kv
from screens.widgets.text import Text, width_of
from screens.words.flight import as_text, counted, large_energy, lines, watt_hours

LEAST, MOST = 80, 132
"""Font size in dp of the large figure: digits are 0.71 of it, so 80 dp makes them 57 dp or 9 mm high."""

TOLD = {
    SHARED: "",
    COPIED: "Copied. Paste it into a message.",
    NEITHER: "This device can neither send nor copy the text.",
}


class LargeText(Text):
    """A figure as large as its width lets it be, whatever the text size of the app."""

    def dress(self, *_: object) -> None:
        """Take the colour from the theme, the size from the room."""
        super().dress()
        self.fit()

    def fit(self, *_: object) -> None:
        """Choose the font size."""
        if not self.text or self.width <= 1:
            return
        # The width at one known size tells that at every other.
        wide = width_of(self.text, "big", bold=True) / theme.big
        self.font_size = min(max(self.width / wide, dp(LEAST)), dp(MOST))
        self.padding = (0, 0, 0, 0)

    def on_width(self, label: Text, width: float) -> None:
        """Fit again, then wrap."""
        self.fit()
        super().on_width(label, width)

    def on_text(self, *_: object) -> None:
        """Fit again."""
        self.fit()


class FlightCard(AppPage):
    """Shows the figure that counts, its arithmetic and how the packs are protected."""

    packs = StringProperty()
    number = StringProperty()
    energy = StringProperty()
    unit = StringProperty()
    detail = StringProperty()
    told = StringProperty()

    def __init__(self, *args: Any, **kwargs: Any) -> None:  # noqa: ANN401  (as AppPage)
        """Build without the four places: the card is held up, then left."""
        super().__init__(*args, nav=False, chip=False, title="Lithium-ion packs", **kwargs)

    def open(self, **args: Any) -> None:  # noqa: ANN401  (as AppPage)
        """Forget what was told last time."""
        self.told = ""
        super().open(**args)

    @property
    def _answer(self) -> Any:  # noqa: ANN401  (a Flight)
        state = self.state
        board = state.board if state.is_scratch else state.saved
        return flight(board, answers(state), damaged=out_of_use(state) is not None)

    @property
    def _today(self) -> str:
        return self.state.clock().date().isoformat()

    @property
    def _chemistry(self) -> str:
        board = self.state.board if self.state.is_scratch else self.state.saved
        return "" if board.pack.chemistry is None else str(board.pack.chemistry.si)

    def refresh(self) -> None:
        """Show the card, or nothing when there is none to show."""
        answer, style = self._answer, self.style
        if not answer.cards:
            self.packs, self.number, self.detail = "There is no card to show for these packs.", "", ""
            self.arrange()
            return
        self.packs = counted(answer)
        self.number = watt_hours(large_energy(answer), style)
        self.arrange()
        self.detail = "\n".join(line for line in lines(answer, self._chemistry, style, self._today) if line)

    def arrange(self, *_: object) -> None:
        """Put number and unit on one line where they fit at the least size, else on two."""
        whole = f"{self.number}\u00a0Wh" if self.number else ""
        wide = width_of(whole, "big", bold=True) * dp(LEAST) / theme.big
        beside = wide <= self.width - 2 * self.margin
        self.energy, self.unit = (whole, "") if beside else (self.number, "Wh")

    on_width = arrange

    def send(self) -> None:
        """Hand the text on and say how, when nothing else shows it."""
        answer = self._answer
        if not answer.cards:
            return
        text = as_text(answer, self.state.saved.name, self._chemistry, self.style, self._today)
        self.told = TOLD[share_text(text, "Packs for a flight")]


load_kv(__file__)
