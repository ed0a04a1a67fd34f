"""Tension check by spring scale: one belt after the other, one number each, a verdict at once."""

from functools import partial
from typing import Any

from kivy.properties import BooleanProperty, ObjectProperty, StringProperty

from logic.answers.reading import Result
from logic.answers.tension import BeltPlan, BeltReading, belt_plan, belt_reading
from logic.board import Field, Value
from logic.store import Record
from screens.belt_gauge import show_window
from screens.entry import Entry
from screens.page import AppPage
from screens.widgets.keypad import Keypad
from screens.widgets.load import load_kv
from screens.widgets.result import Result as ResultCard
from screens.words import offer, refusal, sureness
from screens.words.tension import CERTAINTY, ITEMS, MOVES, WORDS, ago, tension_text

PULL = Field("pull", "Scale reads", "number", 0, "", quantity="force", low=0.05, high=500.0)
DEPTH_STEP = 0.0005
"""Step of the depth buttons: what a steel rule shows."""
DEPTHS = (0.0005, 0.02)
"""Depths that can be asked for."""

CARDS = (
    "target",
    "floor",
    "ceiling",
    "pull_target",
    "pull_floor",
    "pull_ceiling",
    "misread",
    "pull_locked",
    "run_in",
    "span",
    "centre",
    "teeth_in_mesh",
    "mesh_factor",
    "slack_torque",
    "slack_margin",
    "shaft_pull",
    "least_of_manuals",
    "most_of_manuals",
)


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
    problem = StringProperty()
    locked = StringProperty()
    notes = StringProperty()
    trial_note = StringProperty()
    depth_text = StringProperty()
    save_text = StringProperty()
    can_save = BooleanProperty(defaultvalue=False)
    has_verdict = BooleanProperty(defaultvalue=False)
    side = StringProperty("left")
    entry = ObjectProperty()
    gauge = ObjectProperty()
    drive = ObjectProperty()
    flow = ObjectProperty()

    def __init__(self, *args: Any, **kwargs: Any) -> None:  # noqa: ANN401  (as AppPage)
        """Listen to the entry."""
        self._pull: Value | None = None
        self._depth: float | None = None
        self._plan: BeltPlan | None = None
        self._reading: BeltReading | None = None
        self._saved_ids: list[int] = []
        self._cards: dict[str, ResultCard] = {}
        super().__init__(*args, nav=False, chip=False, **kwargs)
        self.entry.bind(
            on_value=self._on_value,
            on_empty=lambda *_: self._hold(None),
            on_wrong=self._on_wrong,
            on_typed=lambda _, text: self.state.note_typed(self._typed_key, text),
            on_enter=lambda *_: self.save(),
        )

    @property
    def keypad(self) -> Keypad | None:
        """Return the keypad: it is always there."""
        return self.entry.keypad

    @property
    def _typed_key(self) -> str:
        return f"pull/{self.side}"

    def open(self, **args: Any) -> None:  # noqa: ANN401  (as AppPage)
        """Begin with the first belt."""
        self._saved_ids = []
        self._depth = None
        self.side = self.state.saved.sides[0]
        super().open(**args)
        self._ask()

    def _ask(self) -> None:
        self._pull = None
        person = self.state.person
        typed = self.state.typed.get(self._typed_key, "")
        value = Value(1.0, typed_unit=person.scale_unit)
        self.entry.ask(PULL, value, self.style, typed)
        self.scroll.scroll_y = 1
        self.refresh()

    # What is shown

    def refresh(self) -> None:
        """Work the belt out anew and show it."""
        sides = self.state.saved.sides
        self.title = "Tension check" if len(sides) == 1 else f"Tension, {self.side.upper()} belt"
        self._plan = belt_plan(self.state.saved, self._depth)
        self._reading = None
        if self._pull is not None and self._plan.depth is not None:
            self._reading = belt_reading(
                self.state.saved, self.state.person, float(self._pull.si), self._plan.depth
            )
        self._show_method()
        self._show_gauge()
        self._show_verdict()
        self._show_drive()
        self._show_cards()
        self._show_save()

    def _show_method(self) -> None:
        plan, style = self._plan, self.style
        depth, pull = plan.items["depth"], plan.items["pull_target"]
        self.depth_text = style.number(depth.value, "length") if isinstance(depth, Result) else "–"
        self.trial_note = (
            "A trial is open: this check uses the saved board."
            if self.state.trial and not self.state.is_scratch
            else ""
        )
        self.method = (
            "Power off, pack unplugged. Turn the wheel a few turns to seat the belt. Pull the middle of the free"
            f" span {self.depth_text} aside. Read the scale."
        )
        if isinstance(pull, Result):
            self.heading = (
                f"Set to {self._item('target')}: the scale then reads {self._pull_text(pull.value)}."
            )
        else:
            self.heading = "No window for this belt yet: the pull is saved for comparing."
        misread = plan.items["misread"]
        self.locked = (
            f"One pulley must be free to turn. If both were held, the scale would read"
            f" {self._pull_text(plan.items['pull_locked'].value)} on a right belt, as if it had"
            f" {style.number(misread.value, 'force')}."
            if isinstance(misread, Result)
            else "One pulley must be free to turn."
        )
        notes = []
        if plan.held_down:
            notes.append("The target is held down to the belt's working tension.")
        if plan.held_by_bearing:
            notes.append("The target is held down to what the motor's bearing may carry.")
        if plan.over_working:
            notes.append("Even so the tight span passes the belt's working tension at full current.")
        if plan.few_teeth:
            notes.append("Fewer than 6 teeth in mesh: the belt's rating falls.")
        if plan.fault is not None:
            notes.append(refusal(plan.fault, style))
        self.notes = " ".join(notes)

    def _item(self, name: str) -> str:
        item = self._plan.items[name]
        return self.style.number(item.value, item.quantity) if isinstance(item, Result) else "–"

    def _pull_text(self, force: float) -> str:
        return str(self.style.shown(force, "force", unit=self.entry.unit))

    def _show_gauge(self) -> None:
        last = self._last()
        known = None if last is None else last.body.get("tension")
        show_window(self.gauge, self._plan, self._reading, known, self.style)

    def _show_verdict(self) -> None:
        reading, style = self._reading, self.style
        last = self._last()
        self.last = (
            f"Last time {tension_text(last, style)}, {ago(last.at, self.state.clock())}."
            if last is not None
            else "First reading of this belt."
        )
        self.verdict = self.tension = self.certainty = self.change = self.move = ""
        self.tone = "text"
        self.has_verdict = False
        if reading is None or self._pull is None:
            return
        if not isinstance(reading.tension, Result):
            self.tension = f"Pull {self._pull_text(float(self._pull.si))}."
            problem = reading.tension.problem
            self.certainty = refusal(problem, style) if problem else offer(reading.tension.missing)
            return
        error = style.number(reading.error.value, "force") if isinstance(reading.error, Result) else ""
        self.tension = f"Belt tension {style.number(reading.tension.value, 'force')} ± {error}"
        if last is not None and last.body.get("tension") is not None:
            change = style.change(reading.tension.value, last.body["tension"], "force")
            self.change = f"{change[0].upper()}{change[1:]} since last time."
        if reading.verdict is not None:
            self.has_verdict = True
            self.verdict = WORDS[reading.verdict.word]
            self.certainty = CERTAINTY[reading.verdict.certainty]
            self.move = MOVES[reading.verdict.word]
            self.tone = "good" if reading.verdict.word == "in window" else "bad"

    def _last(self) -> Record | None:
        record = self.state.last("tension", belt=self.side)
        return None if record is not None and record.id in self._saved_ids else record

    def _show_drive(self) -> None:
        plan, drawing, board = self._plan, self.drive, self.state.saved
        teeth = [board.drive.motor_teeth, board.drive.wheel_teeth]
        centre, span = plan.items["centre"], plan.items["span"]
        if not isinstance(centre, Result) or not isinstance(span, Result) or None in teeth:
            drawing.centre = 0
            drawing.empty_text = "The drawing needs both pulleys and the belt."
            return
        drawing.motor_teeth, drawing.wheel_teeth = (int(value.si) for value in teeth)
        drawing.motor_diameter, drawing.wheel_pulley_diameter = plan.diameters
        wheel = board.drive.wheel_diameter
        drawing.wheel_diameter = float(wheel.si) if wheel is not None else 0
        drawing.centre = centre.value
        drawing.motor_text, drawing.wheel_text = (self.style.plain(float(value.si)) for value in teeth)
        drawing.centre_text = self.style.number(centre.value, "length")
        drawing.span_text = self.style.number(span.value, "length")
        drawing.depth_text = self.depth_text
        pull = plan.items["pull_target"]
        drawing.pull_text = self._pull_text(pull.value) if isinstance(pull, Result) else ""
        drawing.mirrored = self.side == "right"

    def _show_cards(self) -> None:
        for name in CARDS:
            if name not in self._cards:
                card = ResultCard(compact=True)
                card.bind(on_open=partial(self._on_card, name))
                self._cards[name] = card
                self.flow.add_widget(card)
            card, item = self._cards[name], self._plan.items[name]
            card.label = ITEMS[name]
            card.has_working = isinstance(item, Result)
            if isinstance(item, Result):
                unit = self.entry.unit if name.startswith("pull") else ""
                shown = self.style.shown(item.value, item.quantity, unit=unit)
                card.value, card.unit = shown.number, shown.unit
                card.standing = sureness(item)
                card.detail = ""
            else:
                card.value, card.unit, card.standing = "–", "", ""
                card.detail = offer(item.missing) if item.missing else refusal(item.problem, self.style)

    def _on_card(self, name: str, *_: object) -> None:
        item = self._plan.items[name]
        if isinstance(item, Result):
            self.shell.go("working", item=item, label=ITEMS[name])

    def _show_save(self) -> None:
        sides = self.state.saved.sides
        self.can_save = self._pull is not None
        if len(sides) == 1:
            self.save_text = "SAVE"
        elif self.side == sides[0]:
            self.save_text = f"SAVE {self.side.upper()}, GO TO {sides[1].upper()}"
        else:
            self.save_text = f"SAVE {self.side.upper()}"

    def open_working(self) -> None:
        """Open the working of the reading, or of the target before there is one."""
        item = self._plan.items["target"] if self._reading is None else self._reading.tension
        if isinstance(item, Result):
            self.shell.go("working", item=item, label=ITEMS[item.name])

    # Entering and saving

    def _hold(self, value: Value | None) -> None:
        self._pull = value
        self.problem = ""
        self.soon()

    def _on_value(self, _entry: Entry, value: Value) -> None:
        self._hold(value)

    def _on_wrong(self, *_: object) -> None:
        self._pull = None
        self.soon()

    def step_depth(self, sign: int) -> None:
        """Pull deeper or less deep."""
        if self._plan is None or self._plan.depth is None:
            return
        low, high = DEPTHS
        self._depth = min(max(self._plan.depth + sign * DEPTH_STEP, low), high)
        self.refresh()

    def save(self) -> None:
        """Write the reading into the log, then go to the other belt or to what was found."""
        if self._pull is None:
            self.entry.leave()
            return
        self.refresh()
        self.state.note_typed(self._typed_key, "")
        self._saved_ids.append(self.state.record("tension", self._body()))
        sides = self.state.saved.sides
        position = sides.index(self.side) + 1
        if position < len(sides):
            self.side = sides[position]
            self._ask()
        else:
            self.shell.replace("ride.tension_saved", ids=self._saved_ids)

    def _body(self) -> dict[str, Any]:
        plan, reading = self._plan, self._reading
        measured = reading is not None and isinstance(reading.tension, Result)
        window = plan.window
        return {
            "belt": self.side,
            "method": "scale",
            "pull": float(self._pull.si),
            "unit": self._pull.typed_unit,
            "depth": plan.depth,
            "tension": reading.tension.value if measured else None,
            "error": reading.error.value if measured and isinstance(reading.error, Result) else None,
            "floor": window.floor if window else None,
            "ceiling": window.ceiling if window else None,
            "target": window.new_low if window else None,
            "word": reading.verdict.word if measured and reading.verdict else "",
            "certainty": reading.verdict.certainty if measured and reading.verdict else "",
            "scale": self.state.person.scale,
            "depth_tool": self.state.person.depth_tool,
        }

    def back(self) -> bool:
        """Go from the second belt back to the first; what is typed stays typed."""
        sides = self.state.saved.sides
        if self.side == sides[0]:
            return False
        self.side = sides[sides.index(self.side) - 1]
        self._ask()
        return True


load_kv(__file__)
