"""A page of answers whose inputs are tried at once: cards, chips, the keypad in the foot, keep or drop."""

from functools import partial
from typing import Any, ClassVar

from kivy.properties import ObjectProperty, StringProperty

from logic.answers.reading import RIDER, Item, Open, Result, stand_in
from logic.board import Field, Value, board_fields
from logic.errors import InputError
from screens.entry import Entry
from screens.page import AppPage
from screens.widgets.bar import Bar
from screens.widgets.chip import ValueChip
from screens.widgets.keypad import Keypad
from screens.widgets.result import Result as ResultCard
from screens.widgets.row import Foot
from screens.words import label_of, offer, refusal, sureness


class TryingPage(AppPage):
    """Subclasses name their chips, show their answer in `show`, and lay themselves out in kv."""

    chip_keys: ClassVar[tuple[str, ...]] = ()
    own_fields: ClassVar[dict[str, Field]] = {}
    """Fields that belong to the page and not to the board; kept among the settings."""
    labels: ClassVar[dict[str, str]] = {}

    trying = StringProperty()
    problem = StringProperty()
    field = ObjectProperty(None, allownone=True)
    flow = ObjectProperty()
    chips = ObjectProperty()

    def __init__(self, *args: Any, **kwargs: Any) -> None:  # noqa: ANN401  (as AppPage)
        """Build the chips once; cards come with their first answer."""
        self.entry: Entry | None = None
        self.items: dict[str, Item] = {}
        self.refused: InputError | None = None
        self._cards: dict[str, ResultCard] = {}
        self._chip_of: dict[str, ValueChip] = {}
        self._foot_shows = ""
        super().__init__(*args, **kwargs)
        for key in self.chip_keys:
            chip = ValueChip(label=self.field_of(key).label)
            chip.bind(on_release=partial(self._tap_chip, key))
            self._chip_of[key] = chip
            self.chips.add_widget(chip)

    def open(self, **args: Any) -> None:  # noqa: ANN401  (as AppPage)
        """Be shown; with `field`, ask for that one at once."""
        self._leave_field()
        super().open(**args)
        if "field" in args:
            self.edit(args["field"])

    def refresh(self) -> None:
        """Work everything out anew and show it."""
        self.show()
        for key, chip in self._chip_of.items():
            chip.value, chip.known = self._value_text(self.field_of(key), self.value_of(key))
            chip.trial = self.on_trial(key)
            chip.selected = self.field is not None and self.field.key == key
            chip.error = chip.selected and self.refused is not None
        changed = [label_of(key) for key in self.state.trial]
        self.trying = "" if self.state.is_scratch or not changed else "Trying: " + ", ".join(changed)
        self._show_foot()

    def show(self) -> None:
        """Show the answer."""

    def on_trial(self, key: str) -> bool:
        """Tell whether a field's value is a trial over the saved board."""
        return key in self.state.trial and not self.state.is_scratch

    # Cards

    def show_cards(self, items: dict[str, Item], names: tuple[str, ...], flow: Any) -> None:  # noqa: ANN401
        """Show results as cards, in a flow."""
        self.items |= items
        for name in names:
            if name not in items:
                continue
            if name not in self._cards:
                card = ResultCard(compact=True)
                card.bind(on_open=partial(self._on_card, name))
                self._cards[name] = card
                flow.add_widget(card)
            self.fill(self._cards[name], items[name])

    def fill(self, card: ResultCard, item: Item, label: str = "") -> None:
        """Show one result on its card."""
        card.label = label or self.labels[item.name]
        card.greyed = self.refused is not None
        if isinstance(item, Open):
            card.value, card.unit, card.standing, card.has_working = "\N{EN DASH}", "", "", False
            card.detail = self.open_text(item)
            return
        shown = self.style.shown(item.value, item.quantity)
        card.value, card.unit, card.detail = shown.number, shown.unit, ""
        card.standing, card.has_working = sureness(item), True

    def open_text(self, item: Open) -> str:
        """Return why a result cannot be given."""
        return (offer(item.missing) if item.missing else "") or (
            refusal(item.problem, self.style) if item.problem else ""
        )

    def _on_card(self, name: str, *_: object) -> None:
        self.open_working(name)

    def open_working(self, name: str) -> None:
        """Open the working of a result, or ask for what it lacks."""
        item = self.items[name]
        if isinstance(item, Result):
            self.shell.go("working", item=item, label=self.labels[name])
        elif item.missing and item.missing[0] in board_fields():
            self.edit(item.missing[0])

    # Fields

    def field_of(self, key: str) -> Field:
        """Return a field of the board, the rider or the page."""
        if key == RIDER.key:
            return RIDER
        return self.own_fields.get(key) or board_fields()[key]

    def own_value(self, key: str) -> float | None:
        """Return the value of a field of the page."""
        found = self.state.store.get(key)
        return None if found is None else float(found)

    def value_of(self, key: str) -> Value | None:
        """Return the present value of a field."""
        if key in self.own_fields:
            own = self.own_value(key)
            return None if own is None else Value(own, "chosen")
        return self.state.person.rider if key == RIDER.key else self.state.board.value(key)

    def _value_text(self, field: Field, value: Value | None) -> tuple[str, str]:
        if value is None and field.stand_in:
            assumed = float(stand_in(field).cells[field.stand_in])
            return self.style.typed(assumed, field.quantity), "assumed"
        if value is None:
            return "not set", ""
        if field.kind == "choice":
            return field.option(str(value.si)).label, value.known
        return self.style.typed(float(value.si), field.quantity, value.typed_unit), value.known

    def step(self, key: str, sign: int) -> None:
        """Take one tooth more or less."""
        value = self.state.board.value(key)
        if value is None:
            self.edit(key)
            return
        try:
            self.state.try_value(key, Value(float(value.si) + sign))
        except InputError as problem:
            self.problem = refusal(problem, self.style)

    def edit(self, key: str) -> None:
        """Ask for a value with the keypad, under the answers."""
        self._leave_field()
        self.field = self.field_of(key)
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
        self.entry.ask(self.field, self.value_of(key), self.style, self.state.typed.get(key, ""))
        self.scroll.scroll_y = 1
        self.refresh()

    def done(self) -> None:
        """Close the keypad. What is typed and not a value stays typed, for when the field is opened again."""
        self._leave_field()
        self.refresh()

    def _leave_field(self) -> None:
        if self.field is not None and self.refused is None:
            self.state.note_typed(self.field.key, "")
        self.field, self.refused = None, None

    def _tap_chip(self, key: str, *_: object) -> None:
        if self.field is not None and self.field.key == key:
            self.done()
        else:
            self.edit(key)

    def _on_value(self, _entry: Entry, value: Value) -> None:
        self.refused = None
        key = self.field.key
        if key in self.own_fields:
            self.state.store.put(key, value.si)
            self.soon()
        elif key == RIDER.key:
            self.state.set_person(rider=value)
        else:
            self.state.try_value(key, value)

    def _on_empty(self, *_: object) -> None:
        self.refused = None
        if self.field.key in self.own_fields:
            self.state.store.put(self.field.key, None)
            self.soon()
        elif self.field.key != RIDER.key:
            self.state.untry(self.field.key)

    def _on_wrong(self, _entry: Entry, problem: InputError) -> None:
        self.refused = problem
        self.soon()

    def _on_typed(self, _entry: Entry, text: str) -> None:
        if self.field.kind != "choice":
            self.state.note_typed(self.field.key, text)

    def _on_next(self, _entry: Entry, step: int) -> None:
        keys = self.chip_keys
        if self.field.key in keys:
            self.edit(keys[(keys.index(self.field.key) + step) % len(keys)])

    # The foot, Back and the keyboard

    def _show_foot(self) -> None:
        wanted = "entry" if self.field is not None else "keep" if self.state.trial else ""
        if self._foot_shows == wanted:
            return
        self._foot_shows = wanted
        foot = Foot()
        if wanted == "entry":
            if self.entry.parent is not None:
                self.entry.parent.remove_widget(self.entry)
            foot.add_widget(self.entry)
            foot.add_widget(_bar("Done", "main", self.done))
        elif wanted == "keep":
            foot.add_widget(_bar("Drop the trial", "plain", self.state.drop))
            foot.add_widget(_bar("Keep on board", "main", self._keep))
        self.foot = foot

    def _keep(self) -> None:
        if self.state.is_scratch:
            self.shell.go("board.name", purpose="keep")
        else:
            self.state.keep()

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
        if name in ("next", "previous") and self.field is None:
            self.edit(self.chip_keys[0])
            return True
        return super().press(name)


def _bar(text: str, kind: str, act: Any) -> Bar:  # noqa: ANN401  (a function without arguments)
    bar = Bar(text=text, kind=kind)
    bar.bind(on_release=lambda *_: act())
    return bar
