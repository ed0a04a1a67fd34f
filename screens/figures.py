"""A page of figures worked out from the board: hazard, answer, inputs, picture, the rest. One base for many pages."""

from functools import partial
from typing import Any

from kivy.properties import BooleanProperty, ListProperty, ObjectProperty, StringProperty

from logic.answers.hazards import Hazard
from logic.answers.reading import Item, Open, Result
from logic.board import Board, Field, Value
from logic.errors import InputError
from screens.asked import answers, out_of_use
from screens.entry import Entry
from screens.inputs import Control, Inputs, field_of
from screens.page import AppPage
from screens.widgets.bar import Bar
from screens.widgets.chip import ValueChip
from screens.widgets.keypad import Keypad
from screens.widgets.load import load_kv
from screens.widgets.notice import Notice
from screens.widgets.result import Result as ResultCard
from screens.widgets.row import Foot, Row
from screens.widgets.text import Text
from screens.words import label_of, offer, refusal, sureness
from screens.words.packs import hazard_text

LONG = 120.0
"""Seconds from which a time is told in minutes."""


class FiguresPage(AppPage):
    """Shows `ITEMS` of an answer, `HEAD` first, over inputs that are tried at once.

    DANGER withholds every figure: the notice and the inputs are all that is left, until a value changes.
    Nothing on the page dismisses it. A page says what it shows by the names in capitals and by `work_out`.
    """

    HEAD = ""
    ITEMS: dict[str, str] = {}  # noqa: RUF012  (each page names its own once, none changes them)
    DETAILS: dict[str, str] = {}  # noqa: RUF012  (as above)
    CONTROLS: tuple[str, ...] = ()
    CHIPS: tuple[str, ...] = ()
    FIXES: dict[str, str] = {}  # noqa: RUF012  (field that ends each DANGER, by its key)
    TRIES = True
    """Whether a changed board value is a trial; else its chip opens the board's own page."""
    MINDS_PACK = True
    """Whether a pack that was taken out of use stops this page."""

    trying = StringProperty()
    more_title = StringProperty("More answers")
    chips_title = StringProperty("From the board: tap one to try another value")
    stopped = BooleanProperty(defaultvalue=False)
    field = ObjectProperty(None, allownone=True)
    head = ObjectProperty()
    signal = ObjectProperty()
    front = ObjectProperty()
    after = ObjectProperty()
    picture = ObjectProperty()
    controls = ObjectProperty()
    flow = ObjectProperty()
    advice = ObjectProperty()
    chips = ObjectProperty()
    hazards = ListProperty()

    def __init__(self, *args: Any, **kwargs: Any) -> None:  # noqa: ANN401  (as AppPage)
        """Build controls and chips once; later only their words change."""
        self.entry: Entry | None = None
        self.answer: Any = None
        self.board: Board | None = None
        self.asking: dict[str, Value] = {}
        self._refused: InputError | None = None
        self._foot_shows: list[str] | None = None
        self._cards: dict[str, ResultCard] = {}
        super().__init__(*args, **kwargs)
        # Kv gives weak references: what is taken off the page for a while must be held here.
        self._held = (self.front.__self__, self.after.__self__)
        self.inputs = Inputs(self)
        self._chip_of: dict[str, ValueChip] = {}
        for key in self.CHIPS:
            chip = ValueChip(label=field_of(key).label)
            chip.bind(on_release=partial(self._tap_chip, key))
            self._chip_of[key] = chip
            self.chips.add_widget(chip)
        self._controls = [Control(self, key) for key in self.CONTROLS]
        for control in self._controls:
            self.controls.add_widget(control.widget)
        self.head.bind(on_open=lambda *_: self.open_working(self.HEAD))

    # What each page says

    def work_out(self, board: Board) -> Any:  # noqa: ANN401  (each page has its own answer)
        """Return the answer for a board: it has `items`, and `hazards` if there are any."""
        raise NotImplementedError

    def show(self, answer: Any) -> None:  # noqa: ANN401  (as above)
        """Show what is not a figure: pictures and advice."""

    def label(self, name: str) -> str:
        """Return the label of a result."""
        return self.ITEMS[name]

    def detail(self, name: str, item: Item) -> str:  # noqa: ARG002  (a page may look at the item)
        """Return what a result holds for."""
        return self.DETAILS.get(name, "")

    # What is shown

    def open(self, **args: Any) -> None:  # noqa: ANN401  (as AppPage)
        """Be shown; with `field`, ask for that one at once."""
        self._leave_field()
        super().open(**args)
        if "field" in args:
            self.edit(args["field"])

    def refresh(self) -> None:
        """Work everything out anew and show it."""
        state = self.state
        self.board = state.board if self.TRIES or state.is_scratch else state.saved
        self.asking = answers(state)
        self.answer = self.work_out(self.board)
        with_saved = self.TRIES and state.trial and not state.is_scratch
        before = self.work_out(state.saved).items if with_saved else {}
        self.show_hazards(list(getattr(self.answer, "hazards", ())))
        self._show_cards(before)
        self._show_inputs()
        self.show(self.answer)
        self._show_foot()

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
        if hazards != self.hazards or lines != getattr(self, "_lines", None):
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

    def _show_cards(self, before: dict[str, Item]) -> None:
        """Fill the head and a card for each result; of results that lack the same value only the first is shown."""
        shown, lacking = [], set()
        for name in self.ITEMS:
            item = self.answer.items.get(name)
            if item is None:
                continue
            lacks = item.missing if isinstance(item, Open) else ()
            if name == self.HEAD:
                self.fill(self.head, name, item, before.get(name))
            elif not lacks or lacks not in lacking:
                self.fill(self._card(name), name, item, before.get(name))
                shown.append(self._cards[name])
            lacking.add(lacks)
        if self.flow.children[::-1] != shown:
            self.flow.clear_widgets()
            for card in shown:
                self.flow.add_widget(card)

    def _card(self, name: str) -> ResultCard:
        if name not in self._cards:
            card = ResultCard(compact=True)
            card.bind(on_open=lambda *_: self.open_working(name))
            self._cards[name] = card
        return self._cards[name]

    def fill(self, card: ResultCard, name: str, item: Item, before: Item | None = None) -> None:
        """Put a result, or what stands in its way, on a card."""
        style = self.style
        card.label, card.greyed = self.label(name), self._refused is not None
        card.detail = self.detail(name, item)
        if isinstance(item, Open):
            card.value, card.unit, card.difference, card.standing = "–", "", "", ""
            card.has_working = bool(item.missing)
            card.detail = (
                (offer(item.missing) if item.missing else "")
                or (refusal(item.problem, style) if item.problem else "")
                or card.detail
            )
            return
        minutes = item.quantity == "time" and item.value >= LONG
        shown = style.shown(item.value, item.quantity, unit="min" if minutes else "")
        card.value, card.unit = shown.number, shown.unit
        card.has_working, card.standing = True, sureness(item)
        if item.band:
            low, high = (style.shown(end, item.quantity).number for end in item.band)
            card.value = low if low == high else f"{low} to {high}"
        same = isinstance(before, Result) and before.value == item.value
        card.difference = (
            f"{style.change(item.value, before.value, item.quantity)} against the saved board"
            if isinstance(before, Result) and not same
            else ""
        )

    def _show_inputs(self) -> None:
        for key, chip in self._chip_of.items():
            field, value = field_of(key), self.inputs.value(key)
            chip.value, chip.known = self.inputs.text(field, value)
            chip.trial = self.TRIES and key in self.state.trial and not self.state.is_scratch
            chip.selected = self.field is not None and self.field.key == key
            chip.error = chip.selected and self._refused is not None
        for control in self._controls:
            control.refresh()
        changed = [label_of(key) for key in self.state.trial] if self.TRIES else []
        self.trying = "" if self.state.is_scratch or not changed else "Trying: " + ", ".join(changed)
        if self.stopped:
            # The chip of the board says that a trial is open; nothing stands beside a DANGER.
            self.trying = ""
        elif not self.TRIES and self.state.trial and not self.state.is_scratch:
            self.trying = "A trial is open: this page uses the saved board."

    # Trying values

    def edit(self, key: str) -> None:
        """Ask for a value with the keypad, under the answers."""
        if not self.TRIES and not key.startswith("ask."):
            self.shell.go("board.value", key=key)
            return
        self._leave_field()
        self.field: Field | None = field_of(key)
        if self.entry is None:
            self.entry = Entry()
            self.entry.bind(
                on_value=self._on_value,
                on_empty=self._on_empty,
                on_wrong=self._on_wrong,
                on_typed=self._on_typed,
                on_enter=lambda *_: self.done(),
                on_next=self._on_next,
            )
        typed = self.state.typed.get(key, "")
        self.entry.ask(self.field, self.inputs.value(key), self.style, typed)
        self.scroll.scroll_y = 1
        self.refresh()

    def done(self) -> None:
        """Close the keypad. What is typed and not a value stays typed, for when the field is opened again."""
        self._leave_field()
        self.refresh()

    def _leave_field(self) -> None:
        if self.field is not None and self._refused is None:
            self.state.note_typed(self.field.key, "")
        self.field, self._refused = None, None

    def _tap_chip(self, key: str, *_: object) -> None:
        if self.field is not None and self.field.key == key:
            self.done()
        else:
            self.edit(key)

    def _on_value(self, _entry: Entry, value: Value) -> None:
        self._refused = None
        self.inputs.put(self.field.key, value)

    def _on_empty(self, *_: object) -> None:
        self._refused = None
        self.inputs.put(self.field.key, None)

    def _on_wrong(self, _entry: Entry, problem: InputError) -> None:
        self._refused = problem
        self.soon()

    def _on_typed(self, _entry: Entry, text: str) -> None:
        if self.field.kind != "choice":
            self.state.note_typed(self.field.key, text)

    def _on_next(self, _entry: Entry, step: int) -> None:
        if self.CHIPS:
            place = self.CHIPS.index(self.field.key) + step if self.field.key in self.CHIPS else 0
            self.edit(self.CHIPS[place % len(self.CHIPS)])

    # The foot

    def foot_bars(self) -> list[tuple[str, str, Any]]:
        """Return text, kind and act of each bar while no value is asked for."""
        bars = []
        fix = self.FIXES.get(self.hazards[0].key) if self.stopped else None
        if self.TRIES and self.state.trial:
            bars.append(("Drop the trial", "plain", self.state.drop))
            if not self.stopped:
                bars.append(("Keep on board", "main", self._keep))
        if fix:
            bars.append((f"Correct: {field_of(fix).label.lower()}", "main", partial(self.edit, fix)))
        return bars

    def _show_foot(self) -> None:
        bars = [] if self.field is not None else self.foot_bars()
        wanted = ["entry"] if self.field is not None else [text for text, _, _ in bars]
        if self._foot_shows == wanted:
            return
        self._foot_shows = wanted
        foot = Foot()
        if self.field is not None and self.entry is not None:
            if self.entry.parent is not None:
                self.entry.parent.remove_widget(self.entry)
            foot.add_widget(self.entry)
            bars = [("Done", "main", self.done)]
        for text, kind, act in bars:
            bar = Bar(text=text, kind=kind)
            bar.bind(on_release=partial(_call, act))
            foot.add_widget(bar)
        self.foot = foot

    def _keep(self) -> None:
        if self.state.is_scratch:
            self.shell.go("board.name", purpose="keep")
        else:
            self.state.keep()

    # Back, the keyboard and the working

    def back(self) -> bool:
        """Close the keypad first."""
        if self.field is None:
            return False
        self.done()
        return True

    @property
    def keypad(self) -> Keypad | None:
        """Return the keypad while it is open."""
        return self.entry.keypad if self.field is not None and self.entry is not None else None

    def open_working(self, name: str) -> None:
        """Open the working of a result, or ask for what it lacks."""
        item = self.answer.items[name]
        if isinstance(item, Result):
            self.shell.go("working", item=item, label=self.label(name))
        elif item.missing:
            self.edit(item.missing[0])


def _call(act: Any, *_: object) -> None:  # noqa: ANN401  (a function without arguments)
    act()


load_kv(__file__)
