"""Screw reach: five lengths in, whether the thread holds and the windings are clear, drawn to scale."""

from dataclasses import asdict
from functools import partial
from typing import Any

from kivy.properties import BooleanProperty, ListProperty, ObjectProperty, StringProperty

from logic.answers.joint_guide import diameter_of
from logic.answers.joint_options import option_label
from logic.answers.reach import NAMES, ReachCard, reach_card, reach_fields
from logic.answers.reading import Result
from logic.board import Value, value_from
from logic.fields import joint_fields
from logic.tables import matching
from screens.app_page import AppPage
from screens.bench.joint_card import board_of
from screens.entry import Entry  # noqa: F401  (reach.kv names it)
from screens.widgets.chip import ValueChip
from screens.widgets.keypad import Keypad
from screens.widgets.load import load_kv
from screens.widgets.notice import Notice
from screens.widgets.result import Result as ResultCard
from screens.widgets.row import Foot
from screens.widgets.text import Text
from screens.words import refusal, sureness
from screens.words.joints import ITEMS

VERDICTS = {
    "too short": ("TOO SHORT", "Less than one diameter of thread holds."),
    "enough": ("ENOUGH", "The thread holds and the end of the hole is clear."),
    "close": ("CLOSE", "Less than half a millimetre is left. Measure screw and hole again, or add a washer."),
    "reaches the windings": ("TOO LONG", ""),
    "bottoms": (
        "TOO LONG",
        "The screw jams at the end of the thread before the head clamps. The joint feels tight and is loose.",
    ),
    "does not reach": ("DOES NOT REACH", "Plate and washers are as thick as the screw is long."),
}
WINDINGS = (
    "Screw reaches the windings. It can short the motor and lock the wheel while riding. Add washers or take"
    " a shorter screw."
)
SIZES = ("M3", "M4", "M5", "M6", "8-32", "10-32")
METALS = ("6061-T6", "6082-T6", "aluminium unknown", "steel", "brass", "PA66")
SAVED = "reach"
"""Key under which the lengths are remembered: they are no part of a board."""


class ReachPage(AppPage):
    """Lengths as chips; the chosen one is typed below, and all above follows at each key. Done: the keypad goes."""

    verdict = StringProperty()
    tone = StringProperty("text")
    told = StringProperty()
    hazard = ObjectProperty()
    fits = StringProperty()
    thread_size = StringProperty("M4")
    sizes = ListProperty([(size, size) for size in SIZES])
    metal = StringProperty("6061-T6")
    metals = ListProperty()
    behind = StringProperty("windings")
    name = StringProperty()
    """Length that is asked for, "" while none is."""
    stale = BooleanProperty(defaultvalue=False)
    drawing = ObjectProperty()
    chips = ObjectProperty()
    flow = ObjectProperty()
    steps = ObjectProperty()
    entry = ObjectProperty()

    def __init__(self, *args: Any, **kwargs: Any) -> None:  # noqa: ANN401  (as AppPage)
        """Build the chips once and take up what was measured last."""
        self.lengths: dict[str, Value] = {}
        self.card: ReachCard | None = None
        self._chips: dict[str, ValueChip] = {}
        super().__init__(*args, title="Screw reach", nav=False, chip=False, **kwargs)
        self._asking = self.foot
        self.metals = [
            (key, option_label(joint_fields()["into"], key).removeprefix("aluminium ")) for key in METALS
        ]
        for name in NAMES:
            chip = ValueChip(label=reach_fields()[name].label)
            chip.bind(on_release=partial(self.choose, name))
            self._chips[name] = chip
            self.chips.add_widget(chip)
        for row in matching("reach_steps", of="after"):
            self.steps.add_widget(Text(text=row.text("step")))
        self.entry.bind(
            on_value=lambda _, value: self._take(value),
            on_empty=lambda *_: self._wrong(wrong=False),
            on_wrong=lambda *_: self._wrong(wrong=True),
            on_typed=lambda _, text: self.state.note_typed(f"reach/{self.name}", text),
            on_enter=lambda *_: self.go_on(),
            on_next=lambda _, step: self.next(step),
        )

    @property
    def keypad(self) -> Keypad | None:
        """Return the keypad while a length is asked for."""
        return self.entry.keypad if self.name else None

    def open(self, **args: Any) -> None:  # noqa: ANN401  (as AppPage)
        """Begin with what was measured last, else with this board's motor screws."""
        saved = self.state.store.get(SAVED)
        own = board_of(self.state).joint("motor_face")
        if saved is not None:
            self.lengths = {name: value_from(body) for name, body in saved["lengths"].items()}
            self.thread_size, self.metal, self.behind = saved["size"], saved["metal"], saved["behind"]
        else:
            self.lengths = {}
            if own.thread is not None and str(own.thread.si) in SIZES:
                self.thread_size = str(own.thread.si)
            if own.into is not None and str(own.into.si) in METALS:
                self.metal = str(own.into.si)
        super().open(**args)
        self.go_on()

    def go_on(self) -> None:
        """Ask for the next length that is missing; done when there is none."""
        missing = next((name for name in NAMES if name not in self.lengths), "")
        if missing:
            self.choose(missing)
        else:
            self.done()

    def done(self) -> None:
        """Put the keypad away."""
        self.name, self.stale, self.foot = "", False, Foot()
        self.refresh()

    def choose(self, name: str, *_: object) -> None:
        """Ask for one length."""
        self.name, self.stale, self.foot = name, False, self._asking
        typed = self.state.typed.get(f"reach/{name}", "")
        self.entry.ask(reach_fields()[name], self.lengths.get(name), self.style, typed)
        self.refresh()

    def next(self, step: int) -> None:
        """Ask for the next length, or the last one."""
        self.choose(NAMES[(NAMES.index(self.name) + step) % len(NAMES)])

    def change(self, name: str, key: str) -> None:
        """Take up a size, a metal or what is behind the hole."""
        setattr(self, name, key)
        self._remember()
        self.refresh()

    def _take(self, value: Value) -> None:
        self.stale = False
        self.lengths = {**self.lengths, self.name: Value(value.si, "measured", typed_unit=value.typed_unit)}
        self._remember()
        self.soon()

    def _wrong(self, *, wrong: bool) -> None:
        self.stale = wrong
        self.soon()

    def _remember(self) -> None:
        self.state.remember(
            SAVED,
            {
                "lengths": {name: asdict(value) for name, value in self.lengths.items()},
                "size": self.thread_size,
                "metal": self.metal,
                "behind": self.behind,
            },
        )

    def refresh(self) -> None:
        """Work the reach out anew and show it."""
        through = self.behind == "windings"
        self.card = reach_card(self.thread_size, self.lengths, self.metal, through=through)
        for name, chip in self._chips.items():
            value = self.lengths.get(name)
            chip.value = "not set" if value is None else self._text(value)
            chip.selected, chip.error = name == self.name, name == self.name and self.stale
        self._show_verdict()
        self._show_drawing(through=through)
        self._show_results()

    def _text(self, value: Value) -> str:
        return self.style.typed(float(value.si), "length", value.typed_unit)

    def _show_verdict(self) -> None:
        card = self.card
        word, sentence = VERDICTS.get(card.verdict, ("", ""))
        self.verdict, self.told = word, sentence
        self.tone = "good" if card.verdict == "enough" else "bad" if word else "text"
        self.hazard.clear_widgets()
        if card.verdict == "reaches the windings":
            self.hazard.add_widget(Notice(word="warning", text=WINDINGS))
        self.fits = ""
        if card.verdict == "enough" and card.short:
            self.told = "The end of the hole is clear; one diameter holds, but less than this metal wants."
        if not word:
            count = len(card.missing)
            self.told = f"Still to measure: {count} length{'' if count == 1 else 's'}." if count else ""
            if card.problem is not None:
                self.told = refusal(card.problem, self.style)
        shortest, longest = card.items.get("shortest"), card.items.get("longest")
        if isinstance(shortest, Result) and isinstance(longest, Result):
            low, high = (self.style.number(item.value, "length") for item in (shortest, longest))
            self.fits = f"Screws of {low} to {high} fit here."
        elif shortest is not None:
            self.fits = "No screw fits here: the hole has less than one diameter of thread to give."
        if card.verdict in ("reaches the windings", "bottoms"):
            self.fits = f"{self.fits} {next(matching('reach_steps', of='long')).text('step')}"

    def _show_drawing(self, *, through: bool) -> None:
        drawing, card = self.drawing, self.card
        for name in NAMES:
            value = self.lengths.get(name)
            setattr(drawing, name, 0.0 if value is None else float(value.si))
        drawing.diameter = diameter_of(self.thread_size)
        drawing.through = through
        drawing.empty_text = "The drawing comes when all five lengths are there."
        front = drawing.washers + drawing.plate
        drawing.plate_text = f"Plate and washers {self.style.number(front, 'length')}" if front else ""
        engaged, room = card.items.get("engaged"), card.items.get("room")
        drawing.engaged_text = drawing.room_text = ""
        if isinstance(engaged, Result) and isinstance(room, Result):
            drawing.engaged_text = f"Engaged {self.style.number(engaged.value, 'length')}"
            size = self.style.number(abs(room.value), "length")
            end = "end" if through else "thread"
            drawing.room_text = f"Room {size}" if room.value >= 0 else f"Past the {end} {size}"
        drawing.behind_text = "Windings" if through else "Bottom of the hole"

    def _show_results(self) -> None:
        self.flow.clear_widgets()
        for name, item in self.card.items.items():
            if isinstance(item, Result):
                shown = self.style.shown(item.value, "length")
                card = ResultCard(
                    compact=True,
                    label=ITEMS[name],
                    value=shown.number,
                    unit=shown.unit,
                    standing=sureness(item),
                    greyed=self.stale,
                )
                card.bind(on_open=partial(self._open, name))
                self.flow.add_widget(card)

    def _open(self, name: str, *_: object) -> None:
        self.shell.go("working", item=self.card.items[name], label=ITEMS[name])


load_kv(__file__)
