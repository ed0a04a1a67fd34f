"""What every way to a belt's tension has in common: numbers asked in order, a verdict at once, saving."""

from functools import partial
from typing import Any, ClassVar

from kivy.properties import BooleanProperty, ObjectProperty, StringProperty

from logic.answers.belt_bench import nudge_for
from logic.answers.reading import Item, Open, Result
from logic.answers.tension import CANNOT_TELL, BeltPlan, BeltReading, belt_plan
from logic.answers.tension_entry import tension_entry
from logic.board import Field, Value
from logic.errors import InputError
from logic.log import Tension
from logic.store import Record
from logic.units import read
from screens.app_page import AppPage
from screens.belt_gauge import show_window
from screens.entry import Entry  # noqa: F401  (the kv file names it)
from screens.state import Undo
from screens.widgets.chip import ValueChip
from screens.widgets.keypad import Keypad
from screens.widgets.load import load_kv
from screens.widgets.result import Result as ResultCard
from screens.words import offer, refusal, sureness
from screens.words.belt import BENCH, SHORT_WAY, WAYS
from screens.words.tension import ITEMS, MOVES, REASONS, TONES, ago, tension_text, tile, with_error

LABELS = {**ITEMS, **BENCH}
NO_BOARD = "Nothing is kept without a board: make one first."


class MeasurePage(AppPage):
    """A subclass names its way, the fields it asks and how it reads them; one kv file lays all out."""

    way: ClassVar[str] = "scale"
    heading: ClassVar[str] = ""

    instruction = StringProperty()
    verdict = StringProperty()
    tone = StringProperty("text")
    tension = StringProperty()
    certainty = StringProperty()
    change = StringProperty()
    move = StringProperty()
    last = StringProperty()
    notes = StringProperty()
    save_text = StringProperty()
    can_go = BooleanProperty(defaultvalue=False)
    has_working = BooleanProperty(defaultvalue=False)
    side = StringProperty("left")
    entry = ObjectProperty()
    gauge = ObjectProperty()
    chips = ObjectProperty()
    flow = ObjectProperty()
    extra = ObjectProperty()

    def __init__(self, *args: Any, **kwargs: Any) -> None:  # noqa: ANN401  (as AppPage)
        """Listen to the entry."""
        self.values: dict[str, Value] = {}
        self.plan: BeltPlan | None = None
        self.reading: BeltReading | None = None
        self.asked = ""
        self._place: tuple[str, str] = ("", "")
        self._chip_of: dict[str, ValueChip] = {}
        self._cards: dict[str, ResultCard] = {}
        self._items: dict[str, Item] = {}
        super().__init__(*args, nav=False, chip=False, **kwargs)
        self.entry.bind(
            on_value=lambda _, value: self._take(value),
            on_empty=lambda *_: self._take(None),
            on_wrong=lambda *_: self._take(None),
            on_typed=lambda _, text: self._note(text),
            on_enter=lambda *_: self.go_on(),
            on_next=lambda _, step: self._step(step),
        )

    # What a way is

    def fields(self) -> tuple[Field, ...]:
        """Return what is asked, in order."""
        return ()

    def read(self) -> BeltReading | None:
        """Return what the values tell, None while they do not tell anything."""
        return None

    def instructions(self) -> str:
        """Return what to do with the hands."""
        return ""

    def remarks(self) -> list[str]:
        """Return what deserves a sentence."""
        return []

    def cards(self) -> dict[str, Item]:
        """Return the results that are shown as cards."""
        return {}

    def own(self) -> dict[str, Any]:
        """Return the fields of the entry that only this way fills."""
        return {}

    # Opening

    @property
    def keypad(self) -> Keypad | None:
        """Return the keypad: it is always there."""
        return self.entry.keypad

    @property
    def board(self) -> Any:  # noqa: ANN401  (a Board)
        """Return the saved board, or the scratch board with its trial."""
        return self.state.board if self.state.is_scratch else self.state.saved

    def open(self, **args: Any) -> None:  # noqa: ANN401  (as AppPage)
        """Begin with the first field."""
        side = args.get("side") or self.state.saved.sides[0]
        place = (self.state.saved.id, side)
        if self._place != place:
            self._place, self.side, self.values, self.asked = place, side, {}, ""
            self._recall()
        super().open(**args)
        keys = [field.key for field in self.fields()]
        if keys:
            self.ask(self.asked if self.asked in keys else keys[0])

    def begin_anew(self) -> None:
        """Forget the numbers: they were saved, or belong to a belt as it was some time ago."""
        for field in self.fields():
            self.state.note_typed(self._typed_key(field.key), "")
        self.values, self.asked = {}, ""

    def forget(self) -> None:
        """Begin anew, with a way back."""
        values, typed = dict(self.values), dict(self.state.typed)
        self.begin_anew()
        self.ask(self.fields()[0].key)

        def act() -> None:
            self.values, self.state.typed = values, typed
            if self.in_front:
                self.ask(self.fields()[0].key)

        self.state.undo = Undo("Numbers forgotten", act)

    def _recall(self) -> None:
        """Take up again what was typed on this page before the app was shut."""
        found = -1
        while found != len(self.values):
            found = len(self.values)
            for field in self.fields():
                text = self.state.typed.get(self._typed_key(field.key), "")
                try:
                    typed = read(text, field.quantity, self.unit_of(field, None) or None)
                    field.check(typed.si)
                except InputError:
                    continue
                self.values[field.key] = Value(typed.si, typed_unit=typed.unit)

    def _note(self, text: str) -> None:
        field = next(item for item in self.fields() if item.key == self.asked)
        other = self.entry.unit != self.entry.first_unit
        self.state.note_typed(
            self._typed_key(field.key), f"{text} {self.entry.unit}" if text and other else text
        )

    def _typed_key(self, key: str) -> str:
        return f"{self.way}/{self.side}/{key}"

    def number(self, key: str) -> float | None:
        """Return a value in SI, None while it is not there."""
        value = self.values.get(key)
        return None if value is None else float(value.si)

    def ask(self, key: str) -> None:
        """Ask for one of the fields."""
        field = next(item for item in self.fields() if item.key == key)
        self.asked = key
        present = self.values.get(key)
        unit = self.unit_of(field, present)
        typed = self.state.typed.get(self._typed_key(key), "")
        if not typed and present is not None:
            typed = self.style.typed(float(present.si), field.quantity, unit).split("\xa0")[0]
        self.entry.ask(field, Value(1.0, typed_unit=unit) if unit else None, self.style, typed)
        self.scroll.scroll_y = 1
        self.refresh()

    def unit_of(self, field: Field, present: Value | None) -> str:
        """Return the unit a field is typed in."""
        if present is not None and present.typed_unit:
            return present.typed_unit
        return self.state.person.scale_unit if field.quantity == "force" else ""

    def _take(self, value: Value | None) -> None:
        if value is None:
            self.values.pop(self.asked, None)
        else:
            self.values[self.asked] = value
        self.soon()

    def _step(self, step: int) -> None:
        keys = [field.key for field in self.fields()]
        self.ask(keys[(keys.index(self.asked) + step) % len(keys)])

    # Showing

    def refresh(self) -> None:
        """Work everything out anew and show it."""
        sides = self.state.saved.sides
        name = self.heading or WAYS[self.way]
        self.title = name if len(sides) == 1 else f"{name}, {self.side.upper()}"
        self.plan = belt_plan(self.board, self.state.person)
        self.reading = self.read()
        self.instruction = self.instructions()
        self._show_reading()
        last = self.last_record()
        known = None if last is None else last.body.tension
        show_window(self.gauge, self.plan, self.reading, known, self.style)
        self._show_chips()
        self._show_cards()
        self.notes = " ".join([*self.remarks(), *([NO_BOARD] if self.state.is_scratch else [])])
        self._show_save()

    def last_record(self) -> Record | None:
        """Return the last reading of this belt, by whatever way."""
        return self.state.last("tension", belt=self.side)

    def same_way(self) -> Record | None:
        """Return the last reading of this belt by this way: the change since is what is known best."""
        return self.state.last("tension", belt=self.side, method=self.way)

    def _show_reading(self) -> None:
        reading, style = self.reading, self.style
        self.verdict = self.tension = self.certainty = self.change = self.move = ""
        self.tone = "text"
        last = self.last_record()
        self.last = (
            f"Last time {tension_text(last, style)}, {SHORT_WAY.get(last.body.method, '')},"
            f" {ago(last.at, self.state.clock())}."
            if last is not None
            else "First reading of this belt."
        )
        self.has_working = reading is not None and isinstance(reading.tension, Result)
        if reading is None:
            return
        if not isinstance(reading.tension, Result):
            self.certainty = self.open_text(reading.tension)
            return
        tension = reading.tension.value
        error = reading.error.value if isinstance(reading.error, Result) else None
        self.tension = f"{self.scale_reads()}{self.subject()} {with_error(tension, error, style)}"
        before = self.same_way()
        if before is not None and before.body.tension is not None:
            change = style.change(tension, before.body.tension, "force")
            self.change = f"{change[0].upper()}{change[1:]} since last time, {SHORT_WAY[self.way]}."
        if reading.verdict is not None:
            word = reading.verdict.word
            self.verdict, self.certainty, self.tone = tile(word), REASONS[word], TONES.get(word, "text")
            self.move = self.nudge_text(tension) if word not in ("in window", CANNOT_TELL) else ""

    def scale_reads(self) -> str:
        """Return what the scale reads beside what it should, a sentence before the tension; "" without one."""
        return ""

    def subject(self) -> str:
        """Return what the reading is one of."""
        return "Belt tension"

    def held_text(self) -> str:
        """Return what a right belt would seem to have if both pulleys were held, for this very belt."""
        misread = self.plan.items["misread"]
        if not isinstance(misread, Result):
            return "One pulley must be free to turn."
        seems = self.style.number(misread.value, "force")
        return f"One pulley must be free to turn: with both held a right belt would seem to have {seems}."

    def nudge_text(self, tension: float) -> str:
        """Return how far to move the motor, never as a promise."""
        item = nudge_for(self.board, self.state.person, tension)
        if not isinstance(item, Result):
            return MOVES["slack"]
        way = "away from" if item.value > 0 else "towards"
        amount = self.style.number(abs(item.value), "length", 1)
        return (
            f"Nudge the motor {way} the wheel: {amount} in a stiff frame, more in a soft one."
            " Turn, measure again."
        )

    def open_text(self, item: Open) -> str:
        """Return why a result cannot be given."""
        return (offer(item.missing) if item.missing else "") or (
            refusal(item.problem, self.style) if item.problem else ""
        )

    def _show_chips(self) -> None:
        fields = self.fields()
        if list(self._chip_of) != [field.key for field in fields]:
            self.chips.clear_widgets()
            self._chip_of = {}
            for field in fields if len(fields) > 1 else ():
                chip = ValueChip(label=field.label)
                chip.bind(on_release=partial(self._tap_chip, field.key))
                self._chip_of[field.key] = chip
                self.chips.add_widget(chip)
        for field in fields if len(fields) > 1 else ():
            chip, value = self._chip_of[field.key], self.values.get(field.key)
            chip.value = (
                self.style.typed(float(value.si), field.quantity, value.typed_unit)
                if value
                else "\N{EN DASH}"
            )
            chip.selected = self.asked == field.key

    def _tap_chip(self, key: str, *_: object) -> None:
        self.ask(key)

    def _show_cards(self) -> None:
        self._items = self.cards()
        for name, item in self._items.items():
            if name not in self._cards:
                card = ResultCard(compact=True)
                card.bind(on_open=partial(self._on_card, name))
                self._cards[name] = card
            card = self._cards[name]
            if card.parent is None:
                self.flow.add_widget(card)
            card.label, card.has_working = LABELS[name], isinstance(item, Result)
            if isinstance(item, Result):
                unit = self.state.person.scale_unit if name in ("best_pull", "motor_pull") else ""
                shown = self.style.shown(item.value, item.quantity, unit=unit)
                card.value, card.unit, card.detail = shown.number, shown.unit, ""
                card.standing = sureness(item)
            else:
                card.value, card.unit, card.standing = "\N{EN DASH}", "", ""
                card.detail = self.open_text(item)
        for name, card in self._cards.items():
            if name not in self._items and card.parent is not None:
                self.flow.remove_widget(card)

    def _on_card(self, name: str, *_: object) -> None:
        item = self._items[name]
        if isinstance(item, Result):
            self.shell.go("working", item=item, label=LABELS[name])

    def open_working(self) -> None:
        """Open the working of the reading."""
        if self.reading is not None and isinstance(self.reading.tension, Result):
            self.shell.go("working", item=self.reading.tension, label=LABELS["tension"])

    # Going on and saving

    def next_field(self) -> Field | None:
        """Return the next field without a value, None when all are there."""
        fields = self.fields()
        keys = [field.key for field in fields]
        at = keys.index(self.asked) if self.asked in keys else -1
        ordered = (*fields[at + 1 :], *fields[:at])
        return next((field for field in ordered if field.key not in self.values), None)

    def _show_save(self) -> None:
        ahead = self.next_field()
        here = self.asked in self.values
        if here and ahead is not None:
            self.save_text, self.can_go = f"NEXT: {ahead.label.upper()}", True
        else:
            self.save_text, self.can_go = "SAVE", here and self.savable

    def go_on(self) -> None:
        """Go to the next field, or save when all are there."""
        self.refresh()
        if self.asked not in self.values:
            self.entry.leave()
            return
        ahead = self.next_field()
        if ahead is not None:
            self.ask(ahead.key)
        elif self.savable:
            self.save()

    @property
    def savable(self) -> bool:
        """Tell whether there is a tension to keep and a board to keep it with."""
        return self.reading is not None and self.reading.known and not self.state.is_scratch

    def save(self) -> None:
        """Write the reading into the log and show what was saved."""
        entry = self.record()
        self.begin_anew()
        number = self.state.record(entry)
        self.shell.replace("bench.saved", ids=[number])

    def record(self) -> Tension:
        """Return the entry: what every way has, and its own."""
        return tension_entry(self.side, self.way, self.plan, self.reading, self.state.person, **self.own())

    def back(self) -> bool:
        """Go back to the field before; what is typed stays typed."""
        keys = [field.key for field in self.fields()]
        if self.asked not in keys or keys.index(self.asked) == 0:
            return False
        self.ask(keys[keys.index(self.asked) - 1])
        return True


load_kv(__file__)
