"""Tension check by spring scale: one belt after the other, one number each, a verdict at once."""

from typing import Any

from kivy.clock import Clock
from kivy.properties import BooleanProperty, ListProperty, NumericProperty, ObjectProperty, StringProperty

from logic.answers.reading import Result
from logic.answers.tension import BeltPlan, BeltReading, belt_plan, belt_reading
from logic.board import Field, Value
from logic.store import Record
from screens.belt_gauge import show_window
from screens.entry import Entry  # noqa: F401  (the kv file names it)
from screens.page import AppPage
from screens.ride.aloud import Aloud
from screens.ride.picture import fill_drive
from screens.ride.readings import latest
from screens.ride.tension_cards import TensionCards
from screens.ride.tension_record import tension_body
from screens.widgets.keypad import Keypad
from screens.widgets.load import load_kv
from screens.widgets.refill import refill
from screens.widgets.row import Row
from screens.words.tension import (
    ITEMS,
    MOVES,
    ago,
    aim_text,
    locked_text,
    method_text,
    plan_notes,
    tension_text,
)
from screens.words.tension_verdict import told

PULL = Field("pull", "Scale reads", "number", 0, "", quantity="force", low=0.05, high=500.0)
DEPTHS = (0.0005, 0.02)
"""Depths that can be asked for."""
AGAIN = "ADJUST, MEASURE AGAIN"
"""The main bar while a belt is outside its window."""
PATIENCE = 1.0
"""Seconds after the last key until a verdict is said: not while the number is half typed."""


class TensionCheck(AppPage):
    """Asks for the pull of each belt, then shows what was saved on a page of its own."""

    method = StringProperty()
    heading = StringProperty()
    verdict = StringProperty()
    tone = StringProperty("text")
    tension = StringProperty()
    certainty = StringProperty()
    change = StringProperty()
    last = StringProperty()
    move = StringProperty()
    first = StringProperty()
    locked = StringProperty()
    notes = StringProperty()
    trial_note = StringProperty()
    depth_text = StringProperty()
    saying = BooleanProperty(defaultvalue=False)
    hint = StringProperty()
    latest = ListProperty()
    floor = NumericProperty()
    ceiling = NumericProperty()
    latest_title = StringProperty()
    bar_text = StringProperty()
    can_save = BooleanProperty(defaultvalue=False)
    side = StringProperty("left")
    entry = ObjectProperty()
    gauge = ObjectProperty()
    drive = ObjectProperty()
    flow = ObjectProperty()
    keep_slot = ObjectProperty()

    def __init__(self, *args: Any, **kwargs: Any) -> None:  # noqa: ANN401  (as AppPage)
        """Listen to the entry."""
        self._pull: Value | None = None
        self._depth: float | None = None
        self._plan: BeltPlan | None = None
        self._reading: BeltReading | None = None
        self._kept: dict[str, int] = {}
        self._moved = ""
        self._step: object = None
        super().__init__(*args, nav=False, chip=False, **kwargs)
        self._cards = TensionCards(self, self.flow)
        self.aloud = Aloud(self, self._words, self._hint)
        self._say_found = Clock.create_trigger(lambda *_: self.aloud.on_its_own(), PATIENCE)
        self.entry.bind(
            on_value=lambda _, value: self._hold(value),
            on_empty=lambda *_: self._hold(None),
            on_wrong=lambda *_: self._hold(None),
            on_typed=lambda _, text: self.state.note_typed(self._typed_key, text),
            on_enter=lambda *_: self.go_on(),
        )

    @property
    def keypad(self) -> Keypad | None:
        """Return the keypad: it is always there."""
        return self.entry.keypad

    @property
    def _typed_key(self) -> str:
        return f"pull/{self.side}"

    def open(self, **args: Any) -> None:  # noqa: ANN401  (as AppPage)
        """Begin with the first belt, unless one comes back from a page that was opened from here."""
        step = self.shell.trail[-1]
        if self._step is not step:
            self._step, self._kept, self._depth, self._moved = step, {}, None, ""
            self.side = self.state.saved.sides[0]
        super().open(**args)
        self._ask()

    def _ask(self) -> None:
        self._pull = None
        typed = self.state.typed.get(self._typed_key, "")
        self.entry.ask(PULL, Value(1.0, typed_unit=self.state.person.scale_unit), self.style, typed)
        self.scroll.scroll_y = 1
        self.refresh()
        self._say_found.cancel()
        self.aloud.on_its_own()

    # What is shown

    def refresh(self) -> None:
        """Work the belt out anew and show it."""
        board, person = self.state.saved, self.state.person
        self.title = "Tension check" if len(board.sides) == 1 else f"Tension, {self.side.upper()} belt"
        self._plan = belt_plan(board, person, self._depth)
        self._reading = None
        if self._pull is not None and self._plan.depth is not None:
            self._reading = belt_reading(board, person, float(self._pull.si), self._plan.depth)
        last = self._last()
        self.saying = person.say
        self._show_method()
        self._show_verdict(last)
        known = None if last is None else last.body.get("tension")
        show_window(self.gauge, self._plan, self._reading, known, self.style)
        self._show_latest()
        self._show_drive()
        self._cards.show(self._plan.items, self.entry.unit)
        self._show_bar()

    def _show_method(self) -> None:
        plan, style, unit = self._plan, self.style, self.entry.unit
        depth = plan.items["depth"]
        self.depth_text = style.number(depth.value, "length") if isinstance(depth, Result) else "–"
        self.method = method_text(self.depth_text)
        self.heading = aim_text(plan, style, unit)
        self.locked = locked_text(plan, style, unit)
        self.notes = plan_notes(plan, style)
        self.trial_note = (
            "A trial is open: this check uses the saved board."
            if self.state.trial and not self.state.is_scratch
            else ""
        )

    def _show_verdict(self, last: Record | None) -> None:
        self.last = (
            f"Last time {tension_text(last, self.style)}, {ago(last.at, self.state.clock())}."
            if last is not None
            else "First reading of this belt."
        )
        self.first = self._moved if self._pull is None else ""
        before = None if last is None else last.body.get("tension")
        found = told(self._reading, self._pull, self._plan, before, self.style, self.entry.unit)
        self.verdict, self.tone, self.move = found.verdict, found.tone, found.move
        self.tension = " ".join(part for part in (found.reads, found.tension) if part)
        self.certainty, self.change = found.certainty, found.change

    def _last(self) -> Record | None:
        """Return the reading before: not the one that this check has already saved of the belt."""
        record = self.state.last("tension", belt=self.side)
        return None if record is not None and record.id == self._kept.get(self.side) else record

    def _show_latest(self) -> None:
        """Set the last readings of this belt side by side over its window."""
        style, window = self.style, self._plan.window
        self.latest = latest(self.state, self.side, style)
        self.floor, self.ceiling = (
            (style.scale(edge, "force") for edge in (window.floor, window.ceiling)) if window else (0.0, 0.0)
        )
        unit = style.shown(1.0, "force").unit
        self.latest_title = f"Last readings of this belt, {unit}" if len(self.latest) > 1 else ""

    def _show_drive(self) -> None:
        drawing = self.drive
        if not fill_drive(drawing, self.state.saved, self.style, self.entry.unit, self._plan):
            drawing.centre = 0
            drawing.empty_text = "The drawing needs both pulleys and the belt."
        drawing.mirrored = self.side == "right"

    @property
    def outside(self) -> bool:
        """Tell whether what is typed lies outside the window."""
        verdict = self._reading.verdict if self._reading is not None else None
        return verdict is not None and verdict.wrong

    def _show_bar(self) -> None:
        """Offer to save; a belt outside its window is adjusted first, and saving it as it is steps back.

        The bar stays one and as high as it was: no key of the keypad moves while a number is typed.
        """
        sides = self.state.saved.sides
        on = f", go to {sides[1]}" if self.side != sides[-1] else ""
        belt = f"Save {self.side}" if len(sides) > 1 else "Save"
        reading = self._reading
        self.can_save = reading is not None and reading.known and not self.state.is_scratch
        self.bar_text = AGAIN if self.outside else f"{belt}{on}".upper()
        keep = f"{belt} as it is{on}" if self.outside else ""
        refill(self.keep_slot, keep, lambda: [self._keep_row(keep)] if keep else [])

    def _keep_row(self, text: str) -> Row:
        row = Row(title=text, icon="save")
        row.bind(on_release=lambda *_: self.save())
        return row

    def open_working(self) -> None:
        """Open the working of the reading, or of the target before there is one."""
        item = self._plan.items["target"] if self._reading is None else self._reading.tension
        if isinstance(item, Result):
            self.shell.go("working", item=item, label=ITEMS[item.name])

    # Said aloud

    def _words(self) -> str:
        """Return what to pull for; once a number stands, what it tells."""
        belt = "Belt" if len(self.state.saved.sides) == 1 else f"{self.side.capitalize()} belt"
        parts = (
            (f"{belt}. Pull {self.depth_text} aside.", self.heading)
            if not self.tension
            else (f"{self.tension}.", f"{self.verdict.capitalize()}." if self.verdict else "", self.move)
        )
        return " ".join(part for part in parts if part)

    def _hint(self, text: str) -> None:
        self.hint = text

    # Entering and saving

    def _hold(self, value: Value | None) -> None:
        self._pull = value
        self._say_found.cancel()
        if value is not None:
            self._say_found()
        self.soon()

    def step_depth(self, sign: int) -> None:
        """Pull deeper or less deep."""
        if self._plan is None or self._plan.depth is None:
            return
        low, high = DEPTHS
        self._depth = min(max(self._plan.depth + sign * self._plan.step, low), high)
        self.refresh()

    def go_on(self) -> None:
        """Do what the main bar says."""
        self.refresh()
        if self.outside:
            self.measure_again()
        else:
            self.save()

    def measure_again(self) -> None:
        """Keep the reading in the log and ask for the same belt once more, after it was adjusted."""
        if not self.can_save:
            return
        number = self._record()
        self._moved = MOVES.get(self.state.store.entry(number).body["word"], "")
        self._ask()

    def save(self) -> None:
        """Write the reading into the log, then go to the other belt or to what was found."""
        if not self.can_save:
            self.entry.leave()
            return
        self._kept[self.side] = self._record()
        self._moved = ""
        sides = self.state.saved.sides
        position = sides.index(self.side) + 1
        if position < len(sides):
            self.side = sides[position]
            self._ask()
        else:
            self.shell.replace("ride.tension_saved", ids=list(self._kept.values()))

    def _record(self) -> int:
        self.refresh()
        self.state.note_typed(self._typed_key, "")
        body = tension_body(self.side, self._pull, self._plan, self._reading, self.state.person)
        return self.state.record("tension", body)

    def back(self) -> bool:
        """Go from the second belt back to the first; what is typed stays typed."""
        sides = self.state.saved.sides
        if self.side == sides[0]:
            return False
        self.side = sides[sides.index(self.side) - 1]
        self._moved = ""
        self._ask()
        return True


load_kv(__file__)
