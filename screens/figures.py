"""A page of figures about packs: hazard, answer, inputs, picture, the rest. All are laid out alike."""

from functools import partial
from typing import Any

from kivy.properties import BooleanProperty, ListProperty, ObjectProperty, StringProperty

from logic.answers.asked import questions
from logic.answers.hazards import Hazard
from logic.answers.reading import Item
from logic.board import Board
from screens.answering import AnsweringPage
from screens.asked import out_of_use
from screens.inputs import SavedInputs, field_of
from screens.widgets.load import load_kv
from screens.widgets.notice import Notice
from screens.widgets.row import Row
from screens.widgets.text import Text
from screens.words.packs import hazard_text


class FiguresPage(AnsweringPage):
    """Shows the results that `LABELS` names, in that order.

    DANGER withholds every figure: the notice and the inputs are all that is left, until a value changes. Nothing on
    the page dismisses it.
    """

    OUTCOMES: dict[str, str] = {}  # noqa: RUF012  (the pages word their own in `detail`)
    FIXES: dict[str, str] = {}  # noqa: RUF012  (field that ends each DANGER, by its key)
    MINDS_PACK = True
    """Whether a pack that was taken out of use stops this page."""

    more_title = StringProperty("More answers")
    chips_title = StringProperty("From the board: tap one to try another value")
    stopped = BooleanProperty(defaultvalue=False)
    signal = ObjectProperty()
    front = ObjectProperty()
    after = ObjectProperty()
    picture = ObjectProperty()
    advice = ObjectProperty()
    hazards = ListProperty()

    def __init__(self, *args: Any, **kwargs: Any) -> None:  # noqa: ANN401  (as AppPage)
        """Hold what is taken off the page for a while."""
        self._lines: list[str] | None = None
        super().__init__(*args, **kwargs)
        # Kv gives weak references: what is taken off the page must be held here.
        self._held = (self.front.__self__, self.after.__self__)

    def detail(self, name: str, item: Item) -> str:  # noqa: ARG002  (a page may look at the item)
        """Return what a result holds for."""
        return self.DETAILS.get(name, "")

    def show_figures(self) -> None:
        """Show the hazards, then the results."""
        self.show_hazards(list(getattr(self.answer, "hazards", ())))
        self.show_head()
        self.cards.show(self.flow, *self.LABELS)

    def show_hazards(self, hazards: list[Hazard]) -> None:
        """Show the worst with its word, the others plain; DANGER withholds the figures."""
        out = out_of_use(self.state) if self.MINDS_PACK and not self.state.is_scratch else None
        if out is not None:
            hazards = [Hazard("DANGER", "pack out")]
        stopped = bool(hazards) and hazards[0].word == "DANGER"
        sign = {"sign": out["sign"]} if out is not None else {}
        lines = [hazard_text(hazard, self.style, **sign) for hazard in hazards]
        if stopped:
            hazards, lines = hazards[:1], lines[:1]
        if hazards != self.hazards or lines != self._lines:
            self._lines = lines
            self.signal.clear_widgets()
            for place, (hazard, line) in enumerate(zip(hazards, lines, strict=True)):
                word = hazard.word.lower() if place == 0 else ""
                self.signal.add_widget(Notice(word=word, text=line) if word else Text(text=line, bold=True))
            if out is not None:
                row = Row(title="What to do with this pack", icon="battery", tone="bad")
                row.bind(on_release=lambda *_: self.shell.go("ride.pack_signs"))
                self.signal.add_widget(row)
            self.hazards = hazards
        self._withhold(on=stopped)

    def _withhold(self, *, on: bool) -> None:
        if on and not self.stopped:
            self.scroll.scroll_y = 1
        self.stopped = on
        for slot, content in ((self.ids.front_slot, self.front), (self.ids.after_slot, self.after)):
            if on and content.parent is not None:
                slot.remove_widget(content)
            elif not on and content.parent is None:
                slot.add_widget(content)

    def trying_text(self) -> str:
        """Say nothing beside a DANGER: the chip of the board says that a trial is open."""
        return "" if self.stopped else super().trying_text()

    def bars(self) -> list[tuple[str, str, Any]]:
        """Offer the value that ends a DANGER; what led to it can be dropped and not kept."""
        bars = super().bars()
        if not self.stopped:
            return bars
        fix = self.FIXES.get(self.hazards[0].key)
        if not fix:
            return bars[:1]
        return [*bars[:1], (f"Change: {field_of(fix).label.lower()}", "plain", partial(self.edit, fix))]


class SavedFiguresPage(FiguresPage):
    """The same for the saved board, where nothing is tried: a value of the board is changed on the board's own page."""

    INPUTS = SavedInputs

    @property
    def board(self) -> Board:
        """Return the saved board, or the scratch board's values."""
        return self.state.board if self.state.is_scratch else self.state.saved

    @property
    def keys(self) -> list[str]:
        """Return the questions only."""
        return [key for key in super().keys if key in questions()]

    def edit(self, key: str) -> None:
        """Open the board's own page for a value of the board."""
        if key in questions():
            super().edit(key)
        else:
            self.shell.go("board.value", key=key)

    def before(self, _name: str) -> Item | None:
        """Tell no difference: nothing is tried."""
        return None

    def trying_text(self) -> str:
        """Say that a trial does not count here."""
        open_trial = self.state.trial and not self.state.is_scratch and not self.stopped
        return "A trial is open: this page uses the saved board." if open_trial else ""

    def bars(self) -> list[tuple[str, str, Any]]:
        """Offer nothing to keep or drop."""
        return []


load_kv(__file__)
