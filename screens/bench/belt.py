"""Set a belt: how it stands, which way tells its tension best here, and every way to it."""

from functools import partial
from typing import Any

from kivy.properties import BooleanProperty, ListProperty, ObjectProperty, StringProperty

from logic.answers.belt_bench import nudge_for
from logic.answers.belt_sound import Calibration
from logic.answers.belt_together import Ways, ways
from logic.answers.reading import Open, Result
from logic.answers.tension import BeltPlan, belt_plan
from logic.log import BeltFitted
from logic.store import Record
from screens.app_page import AppPage
from screens.belt_gauge import show_window
from screens.state import Undo
from screens.widgets.load import load_kv
from screens.widgets.result import Result as ResultCard
from screens.widgets.row import Row
from screens.words import offer, refusal, sureness
from screens.words.belt import SHORT_WAY, WAYS, percent
from screens.words.tension import ITEMS, ago, tension_text

PAGES = {
    "scale": "bench.positions",
    "pulls": "bench.pulls",
    "weight": "bench.weight",
    "motor": "bench.motor",
    "pluck": "bench.sound",
}
TARGET = (
    "target",
    "floor",
    "ceiling",
    "run_in",
    "slack_torque",
    "slack_margin",
    "shaft_pull",
    "least_of_manuals",
    "most_of_manuals",
)
"""Results about the tension to set, shown as cards."""

ORDER = (
    "Fit dry, align the pulleys by straight edge, motor screws just loose. Tension, turn the wheel,"
    " tension again."
    " Then one screw at a time: out, locker on, in, torque, paint line. A new belt gives a little:"
    " measure again"
    " after the first rides. Every re-tension: clean, new locker, its cure time before riding."
)


class SetBelt(AppPage):
    """Where setting a belt begins."""

    sides = ListProperty()
    side = StringProperty("left")
    state_line = StringProperty()
    aim = StringProperty()
    best = StringProperty()
    both = StringProperty()
    order = StringProperty(ORDER)
    nudge = StringProperty()
    two_ways = StringProperty()
    can_combine = BooleanProperty(defaultvalue=False)
    gauge = ObjectProperty()
    rows = ObjectProperty()
    flow = ObjectProperty()

    def __init__(self, *args: Any, **kwargs: Any) -> None:  # noqa: ANN401  (as AppPage)
        """Build the rows of the ways once."""
        self.found: Ways | None = None
        self.plan: BeltPlan | None = None
        self._rows: dict[str, Row] = {}
        self._cards: dict[str, ResultCard] = {}
        super().__init__(*args, title="Set a belt", **kwargs)
        for way, page in PAGES.items():
            row = Row(title=WAYS[way])
            row.bind(on_release=partial(self._go, page))
            self._rows[way] = row
            self.rows.add_widget(row)

    def open(self, **args: Any) -> None:  # noqa: ANN401  (as AppPage)
        """Begin with the side seen last, if this board has it."""
        self.sides = [(side, side.capitalize()) for side in self.state.saved.sides]
        if args.get("side"):
            self.side = args["side"]
        if self.side not in self.state.saved.sides:
            self.side = self.state.saved.sides[0]
        super().open(**args)

    def take_side(self, side: str) -> None:
        """Go to the other belt."""
        self.side = side
        self.refresh()

    def _go(self, page: str, *_: object) -> None:
        self.shell.go(page, side=self.side)

    def refresh(self) -> None:
        """Show how the belt stands and what each way is worth."""
        board = self.state.board if self.state.is_scratch else self.state.saved
        style, person = self.style, self.state.person
        self.plan = belt_plan(board, person)
        last = self.state.last("tension", belt=self.side)
        known = None if last is None else last.body.tension
        show_window(self.gauge, self.plan, None, known, style)
        self.state_line = (
            f"{tension_text(last, style)}, {SHORT_WAY.get(last.body.method, '')},"
            f" {ago(last.at, self.state.clock())}."
            if last is not None
            else "No tension recorded yet."
        )
        target = self.plan.items["target"]
        self.aim = (
            f"Set to {style.number(target.value, 'force')} in each span."
            if isinstance(target, Result)
            else ""
        )
        self.found = ways(board, person, self._calibration())
        self._show_ways()
        self._show_target()
        self._show_both()
        self._show_nudge(known)
        pair = self.pair()
        self.can_combine = pair is not None
        self.two_ways = (
            f"{WAYS[pair[0].body.method]} and {WAYS[pair[1].body.method].lower()}."
            if pair is not None
            else "Needs two readings of this belt by different ways."
        )

    def _show_ways(self) -> None:
        best = self.found.best
        self.best = (
            f"Best here: {WAYS[best].lower()}, good to {percent(self.found.items[best], self.style)}."
            if best
            else ""
        )
        for way, row in self._rows.items():
            item = self.found.items[way]
            row.value = percent(item, self.style)
            row.icon = "tick" if way == best else ""
            row.detail = self._open_text(item) if isinstance(item, Open) else ""
        if isinstance(self.found.items["pluck"], Result) and self._calibration() is None:
            self._rows["pluck"].detail = "For change and left against right until it is set against a pull."

    def _show_target(self) -> None:
        for name in TARGET:
            if name not in self._cards:
                card = ResultCard(compact=True)
                card.bind(on_open=partial(self._on_card, name))
                self._cards[name] = card
                self.flow.add_widget(card)
            card, item = self._cards[name], self.plan.items[name]
            card.label, card.has_working = ITEMS[name], isinstance(item, Result)
            if isinstance(item, Result):
                shown = self.style.shown(item.value, item.quantity)
                card.value, card.unit, card.detail = shown.number, shown.unit, ""
                card.standing = sureness(item)
            else:
                card.value, card.unit, card.standing = "\N{EN DASH}", "", ""
                card.detail = self._open_text(item)

    def _on_card(self, name: str, *_: object) -> None:
        item = self.plan.items[name]
        if isinstance(item, Result):
            self.shell.go("working", item=item, label=ITEMS[name])

    def _open_text(self, item: Open) -> str:
        return (offer(item.missing) if item.missing else "") or (
            refusal(item.problem, self.style) if item.problem else ""
        )

    def _calibration(self) -> Calibration | None:
        stored = self.state.store.get(f"pluck/{self.state.saved.id}/{self.side}")
        fitted = self.state.last("belt_fitted", belt=self.side)
        if stored is None or (fitted is not None and fitted.at.isoformat() > stored["at"]):
            return None
        return Calibration(stored["factor"], stored["pulled"], stored["share"])

    def _show_both(self) -> None:
        self.both = ""
        if len(self.sides) < 2:  # noqa: PLR2004  (two belts)
            return
        records = [self.state.last("tension", belt=side) for side, _ in self.sides]
        tensions = [None if record is None else record.body.tension for record in records]
        if all(tension is not None for tension in tensions):
            apart = self.style.change(tensions[0], tensions[1], "force")
            same = records[0].body.method == records[1].body.method
            self.both = f"Left against right: {apart}" + ("." if same else ", by two different ways.")

    def _show_nudge(self, tension: float | None) -> None:
        self.nudge = ""
        if tension is None:
            return
        board = self.state.board if self.state.is_scratch else self.state.saved
        item, target = nudge_for(board, self.state.person, tension), self.plan.items["target"]
        last = self.state.last("tension", belt=self.side)
        if isinstance(target, Result) and abs(target.value - tension) <= (last.body.error or 0.0):
            self.nudge = "The last reading is at the target within its error: leave the motor where it is."
        elif isinstance(item, Result):
            way = "away from" if item.value > 0 else "towards"
            self.nudge = (
                "From the last reading to the target: about"
                f" {self.style.number(abs(item.value), 'length', 1)} {way}"
                " the wheel if nothing gives. Nudge, then measure again."
            )

    def pair(self) -> tuple[Record, Record] | None:
        """Return the two newest readings of this belt by different ways since it was fitted."""
        fitted = self.state.last("belt_fitted", belt=self.side)
        newest: list[Record] = []
        for record in self.state.entries("tension"):
            said = record.body
            if said.belt != self.side or said.method not in PAGES or not said.comparable:
                continue
            if fitted is not None and record.id < fitted.id:
                break
            if not newest or newest[0].body.method != said.method:
                newest.append(record)
            if len(newest) == 2:  # noqa: PLR2004  (a pair)
                return newest[1], newest[0]
        return None

    def combine(self) -> None:
        """Open what two ways tell together."""
        pair = self.pair()
        if pair is not None:
            self.shell.go("bench.together", side=self.side, ids=[record.id for record in pair])

    def replaced(self) -> None:
        """Note that a new belt is on: the history begins anew."""
        number = self.state.record(BeltFitted(belt=self.side))
        self.state.undo = Undo("New belt noted", lambda: self.state.take_back(number))

    def bench_view(self) -> None:
        """Show what matters in letters for a metre."""
        lines = [self.aim, self.best]
        pull = self.plan.items["pull_target"]
        big = ""
        if isinstance(pull, Result):
            depth = self.style.number(self.plan.depth, "length")
            big = str(self.style.shown(pull.value, "force", unit=self.state.person.scale_unit))
            lines = [f"Pull {depth} aside", *lines]
        self.shell.go(
            "bench.view", title=f"Belt, {self.side}", big=big, lines=[line for line in lines if line]
        )


load_kv(__file__)
