"""Gearing and speed: change a value and see what it does, against the saved board."""

from functools import partial
from typing import Any

from kivy.properties import BooleanProperty, ListProperty, ObjectProperty, StringProperty

from logic.answers.gearing import Gearing, gearing
from logic.answers.reading import RIDER, Item, Open, Result, stand_in
from logic.board import Field, Value, board_fields
from logic.errors import InputError
from logic.units import quantities
from screens.entry import Entry
from screens.page import AppPage
from screens.widgets.bar import Bar
from screens.widgets.chart import Curve, Mark
from screens.widgets.chip import ValueChip
from screens.widgets.keypad import Keypad
from screens.widgets.load import load_kv
from screens.widgets.result import Result as ResultCard
from screens.widgets.row import Foot
from screens.words import label_of, offer, refusal, sureness
from screens.words.gearing import ITEMS, OUTCOMES

AT_SPEED = Field("at_speed", "Ask at a speed of", "number", 0, "", quantity="speed", low=0.0, high=30.0)
CHOSEN_SPEED = 20 / 3.6
"""Speed asked about until the person chooses another: 20 km/h."""

CHIPS = (
    "drive.wheel_diameter",
    "motor.kv",
    "pack.series",
    "pack.chemistry",
    "drive.motors",
    "controller.motor_current",
    "controller.battery_current",
    "controller.current_meaning",
    "controller.duty",
    "motor.resistance",
    "motor.no_load_current",
    "motor.pole_pairs",
    "pack.cell_resistance",
    "pack.parallel",
    "pack.packs",
    "load.board_mass",
    RIDER.key,
    "load.rolling",
    "load.drag_area",
    "load.efficiency",
    AT_SPEED.key,
)
TEETH = {"motor": "drive.motor_teeth", "wheel": "drive.wheel_teeth"}
DETAILS = {
    "top_loaded": "Nominal pack, level road, no wind.",
    "top_nominal": "No load at all: never quite reached.",
}


def field_of(key: str) -> Field:
    """Return a field of the board, the rider or the chosen speed."""
    return {RIDER.key: RIDER, AT_SPEED.key: AT_SPEED}.get(key) or board_fields()[key]


class GearingPage(AppPage):
    """Answers first, then teeth and chips, then the chart, then the rest."""

    trying = StringProperty()
    problem = StringProperty()
    motor_teeth = StringProperty("–")
    wheel_teeth = StringProperty("–")
    motor_trial = BooleanProperty(defaultvalue=False)
    wheel_trial = BooleanProperty(defaultvalue=False)
    field = ObjectProperty(None, allownone=True)
    head = ObjectProperty()
    flow = ObjectProperty()
    chips = ObjectProperty()
    chart = ObjectProperty()
    curves = ListProperty()

    def __init__(self, *args: Any, **kwargs: Any) -> None:  # noqa: ANN401  (as AppPage)
        """Build the cards and chips once; later only their words change."""
        self.entry: Entry | None = None
        self.answer: Gearing | None = None
        self._of_saved: tuple[tuple[Any, ...], Gearing] | None = None
        self._refused: InputError | None = None
        self._foot_shows: list[str] | None = None
        super().__init__(*args, title="Gearing and speed", **kwargs)
        self._cards: dict[str, ResultCard] = {}
        self._chip_of: dict[str, ValueChip] = {}
        for key in CHIPS:
            chip = ValueChip(label=field_of(key).label)
            chip.bind(on_release=partial(self._tap_chip, key))
            self._chip_of[key] = chip
            self.chips.add_widget(chip)
        self.head.bind(on_open=lambda *_: self._open_working("top_loaded"))

    # What is shown

    def open(self, **args: Any) -> None:  # noqa: ANN401  (as AppPage)
        """Be shown; with `field`, ask for that one at once."""
        self._leave_field()
        super().open(**args)
        if "field" in args:
            self.edit(args["field"])

    @property
    def at_speed(self) -> float:
        """Return the chosen speed in m/s."""
        return float(self.state.store.get("at_speed", CHOSEN_SPEED))

    def refresh(self) -> None:
        """Work everything out anew and show it."""
        state = self.state
        rider = state.person.rider
        self.answer = gearing(state.board, rider, self.at_speed)
        self._show_items(self.answer, self._saved_answer() if state.trial and not state.is_scratch else None)
        self._show_inputs()
        self._show_chart(self.answer)
        faults = [refusal(fault, self.style) for fault in self.answer.faults]
        self.problem = " ".join(faults)
        self._show_foot()

    def _saved_answer(self) -> Gearing:
        """Return the answer of the saved board; typing does not change it, so it is worked out once."""
        asked = (self.state.saved, self.state.person.rider, self.at_speed)
        if self._of_saved is None or self._of_saved[0] != asked:
            self._of_saved = (asked, gearing(*asked))
        return self._of_saved[1]

    def _show_items(self, now: Gearing, saved: Gearing | None) -> None:
        old = self._refused is not None or bool(now.faults)
        for name, item in now.items.items():
            card = self.head if name == "top_loaded" else self._card(name)
            before = saved.items.get(name) if saved else None
            self._fill(card, item, before)
            card.greyed = old

    def _card(self, name: str) -> ResultCard:
        if name not in self._cards:
            card = ResultCard(compact=True)
            card.bind(on_open=partial(self._on_card, name))
            self._cards[name] = card
            self.flow.add_widget(card)
        return self._cards[name]

    def _on_card(self, name: str, *_: object) -> None:
        self._open_working(name)

    def _fill(self, card: ResultCard, item: Item, before: Item | None) -> None:
        style = self.style
        card.label = ITEMS[item.name].format(speed=style.number(self.at_speed, "speed"))
        if isinstance(item, Open):
            card.value, card.unit, card.difference, card.standing = "–", "", "", ""
            card.has_working = False
            card.detail = (
                OUTCOMES.get(item.outcome)
                or (offer(item.missing) if item.missing else "")
                or (refusal(item.problem, style) if item.problem else "")
            )
            return
        shown = style.shown(item.value, item.quantity)
        card.value, card.unit = shown.number, shown.unit
        card.has_working = True
        card.standing = sureness(item)
        card.detail = DETAILS.get(item.name, "")
        if item.band:
            low, high = (style.shown(end, item.quantity).number for end in item.band)
            card.value = f"{low} to {high}"
            card.detail = f"{shown} if the printed motor constant is right. {card.detail}".strip()
        card.difference = (
            f"{style.change(item.value, before.value, item.quantity)} against the saved board"
            if isinstance(before, Result)
            else ""
        )

    def _show_inputs(self) -> None:
        for key, chip in self._chip_of.items():
            field, value = field_of(key), self._value(key)
            chip.value, chip.known = self._value_text(field, value)
            chip.trial = key in self.state.trial and not self.state.is_scratch
            chip.selected = self.field is not None and self.field.key == key
            chip.error = chip.selected and self._refused is not None
        for side, key in TEETH.items():
            value = self.state.board.value(key)
            setattr(self, f"{side}_teeth", "–" if value is None else self.style.plain(float(value.si)))
            setattr(self, f"{side}_trial", key in self.state.trial and not self.state.is_scratch)
        changed = [label_of(key) for key in self.state.trial]
        self.trying = "" if self.state.is_scratch or not changed else "Trying: " + ", ".join(changed)

    def _value(self, key: str) -> Value | None:
        if key == AT_SPEED.key:
            return Value(self.at_speed, "chosen")
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

    def _show_chart(self, answer: Gearing) -> None:
        if answer.curves is None:
            self.chart.lines, self.chart.marks = (), ()
            self.chart.empty_text = "The chart needs the values that are missing above."
            return
        style = self.style
        speed, force = (quantities()[name].home(style.system).shown for name in ("speed", "force"))
        self.chart.x_title, self.chart.y_title = f"Speed, {speed}", f"Push, {force}"

        def scaled(points: tuple[tuple[float, float], ...]) -> list[tuple[float, float]]:
            return [(style.scale(x, "speed"), style.scale(y, "force")) for x, y in points]

        self.chart.lines = (
            Curve("push at full remote", scaled(answer.curves.push)),
            Curve("road load", scaled(answer.curves.load)),
        )
        marks = scaled((answer.curves.meeting,)) if answer.curves.meeting else []
        self.chart.marks = tuple(Mark(x, y, style.plain(x)) for x, y in marks)

    # Trying values

    def step(self, side: str, sign: int) -> None:
        """Take one tooth more or less."""
        key = TEETH[side]
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
        self.field = field_of(key)
        if self.entry is None:
            self.entry = Entry()
            self.entry.bind(
                on_value=self._on_value,
                on_empty=self._on_empty,
                on_wrong=self._on_wrong,
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
        if self.field.kind == "choice":
            self.state.try_value(key, value)
        elif key not in (AT_SPEED.key, RIDER.key):
            self.state.try_value(key, value, self.entry.text)
        else:
            self.state.note_typed(key, self.entry.text)
            if key == AT_SPEED.key:
                self.state.store.put("at_speed", value.si)
                self.soon()
            else:
                self.state.set_person(rider=value)

    def _on_empty(self, *_: object) -> None:
        self._refused = None
        if self.field.key in (AT_SPEED.key, RIDER.key):
            self.state.note_typed(self.field.key, "")
        else:
            self.state.untry(self.field.key)

    def _on_wrong(self, _entry: Entry, problem: InputError) -> None:
        self._refused = problem
        self.state.note_typed(self.field.key, self.entry.text)
        self.soon()

    def _on_next(self, _entry: Entry, step: int) -> None:
        keys = [*TEETH.values(), *CHIPS]
        self.edit(keys[(keys.index(self.field.key) + step) % len(keys)])

    # The foot

    def _show_foot(self) -> None:
        wanted: list[str] = []
        if self.field is not None:
            wanted = ["entry"]
        elif self.state.trial:
            wanted = ["keep"]
        if self._foot_shows == wanted:
            return
        # The keypad needs the height that the four places take.
        self.nav = self.field is None
        self._foot_shows = wanted
        foot = Foot()
        if wanted == ["entry"]:
            if self.entry.parent is not None:
                self.entry.parent.remove_widget(self.entry)
            foot.add_widget(self.entry)
            foot.add_widget(self._bar("Done", "main", self.done))
        elif wanted == ["keep"]:
            foot.add_widget(self._bar("Drop the trial", "plain", self.state.drop))
            foot.add_widget(self._bar("Keep on board", "main", self._keep))
        self.foot = foot

    def _bar(self, text: str, kind: str, act: Any) -> Bar:  # noqa: ANN401  (a function without arguments)
        bar = Bar(text=text, kind=kind)
        bar.bind(on_release=lambda *_: act())
        return bar

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

    def press(self, name: str) -> bool:
        """Tab opens the first field when none is open."""
        if name in ("next", "previous") and self.field is None:
            self.edit(TEETH["motor"])
            return True
        return super().press(name)

    def _open_working(self, name: str) -> None:
        item = self.answer.items[name]
        if isinstance(item, Result):
            label = ITEMS[name].format(speed=self.style.number(self.at_speed, "speed"))
            self.shell.go("working", item=item, label=label)
        elif item.missing:
            self.edit(item.missing[0])


load_kv(__file__)
