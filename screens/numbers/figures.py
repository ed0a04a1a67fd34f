"""What the pages of Numbers share: answers as cards, chips of the board and of the question, the keypad in the foot."""

from functools import partial
from typing import Any

from kivy.properties import ObjectProperty, StringProperty

from logic.answers.asked import questions
from logic.answers.reading import RIDER, Item, Open, Result, stand_in
from logic.board import Field, Value, board_fields
from logic.errors import InputError
from screens.asked import answer, answers
from screens.entry import Entry
from screens.page import AppPage
from screens.widgets.bar import Bar
from screens.widgets.chip import ValueChip
from screens.widgets.keypad import Keypad
from screens.widgets.result import Result as ResultCard
from screens.widgets.row import Foot
from screens.words import label_of, offer, refusal, sureness
from screens.words.figures import OUTCOMES


def field_of(key: str) -> Field:
    """Return a field of the board, of the rider or of a question."""
    if key in questions():
        return questions()[key].field
    return RIDER if key == RIDER.key else board_fields()[key]


def is_asked(key: str) -> bool:
    """Tell whether a value belongs to the question and not to the board."""
    return key in questions()


class DrivePage(AppPage):
    """Cards, chips and the keypad. A page names its `CHIPS`, words its cards by `LABELS`, and answers in `show`.

    Its kv has a `chips` (ChipFlow). A value of the board that is changed here is a trial; one of the question is
    remembered for this board.
    """

    CHIPS: tuple[str, ...] = ()
    LABELS: dict[str, str] = {}  # noqa: RUF012  (words of a subclass, never changed)
    DETAILS: dict[str, str] = {}  # noqa: RUF012  (as above)

    trying = StringProperty()
    problem = StringProperty()
    field = ObjectProperty(None, allownone=True)
    chips = ObjectProperty()

    def __init__(self, *args: Any, **kwargs: Any) -> None:  # noqa: ANN401  (as AppPage)
        """Build the chips once; later only their words change."""
        self.entry: Entry | None = None
        self.items: dict[str, Item] = {}
        self._refused: InputError | None = None
        self._foot_shows: object = None
        self._card_of: dict[str, ResultCard] = {}
        self._chip_of: dict[str, ValueChip] = {}
        super().__init__(*args, **kwargs)
        for key in self.CHIPS:
            chip = ValueChip(label=field_of(key).label)
            chip.bind(on_release=partial(self._tap_chip, key))
            self._chip_of[key] = chip
            self.chips.add_widget(chip)

    # What was asked

    @property
    def asking(self) -> dict[str, Value]:
        """Return the values of the question that were chosen for this board."""
        return answers(self.state)

    def ask_for(self, key: str, value: Value | None) -> None:
        """Remember a value of the question, or forget it."""
        answer(self.state, key, value)
        self.soon()

    def asked(self, key: str) -> float | None:
        """Return the SI value of the question that stands."""
        value = self.asking.get(key) or questions()[key].begins
        return None if value is None else float(value.si)

    # What is shown

    def open(self, **args: Any) -> None:  # noqa: ANN401  (as AppPage)
        """Be shown; with `field`, ask for that one at once."""
        self._leave_field()
        super().open(**args)
        if "field" in args:
            self.edit(args["field"])

    def refresh(self) -> None:
        """Work everything out anew and show it."""
        self.problem = ""
        self.show()
        self._show_chips()
        changed = [label_of(key) for key in self.state.trial]
        self.trying = "" if self.state.is_scratch or not changed else "Trying: " + ", ".join(changed)
        self._show_foot()

    def show(self) -> None:
        """Answer, and put the answer on the page."""

    def show_faults(self, faults: tuple[InputError, ...]) -> None:
        """Tell what does not fit together."""
        self.problem = " ".join(refusal(fault, self.style) for fault in faults)

    def show_items(self, items: dict[str, Item], flow: Any, names: tuple[str, ...] = ()) -> None:  # noqa: ANN401
        """Show results as cards of a flow, in the order of `names`, all without them."""
        self.items |= items
        for name in names or tuple(items):
            card = self._card_of.get(name)
            if card is None:
                card = ResultCard(compact=True)
                card.bind(on_open=partial(self.open_working, name))
                self._card_of[name] = card
                flow.add_widget(card)
            self.fill(card, items[name])

    def fill(self, card: ResultCard, item: Item, label: str = "") -> None:
        """Put one result on a card, or why there is none."""
        style = self.style
        card.label = label or self.label(item.name)
        card.greyed = self._refused is not None
        card.detail = self.DETAILS.get(item.name, "")
        if isinstance(item, Open):
            card.value, card.unit, card.standing = "–", "", ""
            card.has_working = False
            card.detail = self.why(item)
            return
        shown = style.shown(item.value, item.quantity)
        card.value, card.unit = shown.number, shown.unit
        card.has_working = True
        card.standing = sureness(item)
        if item.band is not None:
            low, high = (style.shown(end, item.quantity).number for end in item.band)
            card.value = f"{low} to {high}"
            card.detail = f"{shown} as entered. {card.detail}".strip()

    def why(self, item: Open) -> str:
        """Return the sentence for a result that cannot be given."""
        return (
            OUTCOMES.get(item.outcome)
            or (offer(item.missing) if item.missing else "")
            or (OUTCOMES.get(item.problem.reason, "") if item.problem else "")
            or (refusal(item.problem, self.style) if item.problem else "")
        )

    def label(self, name: str) -> str:
        """Return the words of a result."""
        return self.LABELS[name]

    def open_working(self, name: str, *_: object) -> None:
        """Open the working of a result, or ask for what it lacks."""
        item = self.items[name]
        if isinstance(item, Result):
            self.shell.go("working", item=item, label=self.label(name))

    def _show_chips(self) -> None:
        for key, chip in self._chip_of.items():
            field, value = field_of(key), self._value(key)
            chip.value, chip.known = self._value_text(field, value)
            chip.trial = key in self.state.trial and not self.state.is_scratch
            chip.selected = self.field is not None and self.field.key == key
            chip.error = chip.selected and self._refused is not None

    def _value(self, key: str) -> Value | None:
        if is_asked(key):
            return self.asking.get(key) or questions()[key].begins
        return self.state.person.rider if key == RIDER.key else self.state.board.value(key)

    def _value_text(self, field: Field, value: Value | None) -> tuple[str, str]:
        if value is None and field.stand_in:
            assumed = float(stand_in(field).cells[field.stand_in])
            return self.style.typed(assumed, field.quantity), "assumed"
        if value is None:
            return "not set", ""
        known = "" if value.known in ("chosen", "usual") else value.known
        if field.kind == "choice":
            return field.option(str(value.si)).label, known
        return self.style.typed(float(value.si), field.quantity, value.typed_unit), known

    # Changing values

    def edit(self, key: str) -> None:
        """Ask for a value with the keypad, under the answers."""
        self._leave_field()
        self.field = field_of(key)
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
        self.entry.ask(self.field, self._value(key), self.style, self.state.typed.get(key, ""))
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
        key = self.field.key
        if is_asked(key):
            self.ask_for(key, Value(value.si, "chosen", typed_unit=value.typed_unit))
        elif key == RIDER.key:
            self.state.set_person(rider=value)
        else:
            self.state.try_value(key, value)

    def _on_empty(self, *_: object) -> None:
        self._refused = None
        if is_asked(self.field.key):
            self.ask_for(self.field.key, None)
        elif self.field.key != RIDER.key:
            self.state.untry(self.field.key)

    def _on_wrong(self, _entry: Entry, problem: InputError) -> None:
        self._refused = problem
        self.soon()

    def _on_typed(self, _entry: Entry, text: str) -> None:
        if self.field.kind != "choice":
            self.state.note_typed(self.field.key, text)

    def _on_next(self, _entry: Entry, step: int) -> None:
        keys = self.CHIPS
        self.edit(keys[(keys.index(self.field.key) + step) % len(keys)])

    # The foot

    def bars(self) -> tuple[tuple[str, str, Any], ...]:
        """Return what the foot offers while nothing is typed: text, kind and act of each bar."""
        if not self.state.trial:
            return ()
        return (
            ("Drop the trial", "plain", self.state.drop),
            ("Keep on board", "main", self._keep),
        )

    def _show_foot(self) -> None:
        bars = () if self.field is not None else self.bars()
        shows = "entry" if self.field is not None else tuple((text, kind) for text, kind, _ in bars)
        if self._foot_shows == shows:
            return
        self._foot_shows = shows
        foot = Foot()
        if self.field is not None and self.entry is not None:
            if self.entry.parent is not None:
                self.entry.parent.remove_widget(self.entry)
            foot.add_widget(self.entry)
            bars = (("Done", "main", self.done),)
        for text, kind, act in bars:
            bar = Bar(text=text, kind=kind)
            bar.bind(on_release=partial(_act, act))
            foot.add_widget(bar)
        self.foot = foot

    def _keep(self) -> None:
        if self.state.is_scratch:
            self.shell.go("board.name", purpose="keep")
        else:
            self.state.keep()

    # Back and the keyboard

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

    def press(self, name: str) -> bool:
        """Tab opens the first field when none is open."""
        if name in ("next", "previous") and self.field is None and self.CHIPS:
            self.edit(self.CHIPS[0])
            return True
        return super().press(name)


def _act(act: Any, *_: object) -> None:  # noqa: ANN401  (a function without arguments)
    act()
