"""One item of a checklist at a time, large: what to do, what good looks like, and a button that says so."""

from typing import Any

from kivy.clock import Clock
from kivy.properties import BooleanProperty, ListProperty, NumericProperty, ObjectProperty, StringProperty

from logic.answers.checks import snapshot
from logic.checks.lists import Item
from logic.checks.run import ASIDE, RIGHT
from logic.checks.session import Session
from screens.entry import Entry
from screens.page import AppPage
from screens.phone import awake, haptics
from screens.ride.aloud import Aloud
from screens.ride.run_card import RunCard  # noqa: F401  (run.kv names it)
from screens.ride.run_figures import said_of
from screens.ride.run_foot import AskFoot, BrokenFoot, RunFoot, RunFootBase
from screens.ride.run_value import RunValue
from screens.widgets.keypad import Keypad
from screens.widgets.load import load_kv
from screens.widgets.refill import refill
from screens.widgets.row import Row
from screens.widgets.text import width_of
from screens.words.checks import broke_off, items_text, size_text

CARD_LOCK = 0.35
"""Seconds after a card changes in which a tap counts for nothing: it was meant for the card before."""


class RunPage(AppPage):
    """Runs `list`. Every answer is saved before the next item is shown; leaving loses nothing."""

    states = ListProperty()
    place_text = StringProperty()
    problem = StringProperty()
    right_text = StringProperty()
    can_right = BooleanProperty(defaultvalue=True)
    first_text = StringProperty()
    second_text = StringProperty()
    pair_need = NumericProperty()
    card = ObjectProperty()
    more = ObjectProperty()

    def __init__(self, *args: Any, **kwargs: Any) -> None:  # noqa: ANN401  (as AppPage)
        """Build without the four places: a run is worked through, then left."""
        self.session: Session | None = None
        self._left: dict[str, object] = {}
        self._shown = ""
        self._locked = 0.0
        self._broken = False
        self.asked = RunValue(self._asked_changed, self.right)
        self.asked.entry.bind(on_typed=lambda _, text: self.state.note_typed(self._typed_key, text))
        self.aloud = Aloud(self, self._words, self._hint)
        self._more_rows = (
            self._row("Put aside for now", "clock", self.set_aside, detail="The closing card says so."),
            self._row("The whole list", "checklist", self.open_list),
            self._row("Bench view", "view", self.toggle_big),
            self._row("Say items aloud", "say", self.aloud.toggle),
        )
        super().__init__(*args, nav=False, chip=False, **kwargs)

    def _row(self, title: str, icon: str, act: Any, **more: Any) -> Row:  # noqa: ANN401  (a function, Row's properties)
        row = Row(title=title, icon=icon, **more)
        row.bind(on_release=lambda *_: act())
        return row

    # Coming and going

    def open(self, **args: Any) -> None:  # noqa: ANN401  (as AppPage)
        """Begin, go on, or ask which of the two when the run was broken off."""
        self.args = args
        key = args["list"]
        of = self.state.checklist(key)
        self.session = Session(self.state.store, self.state.saved.id, of, self.state.clock)
        self.title = of.title
        self._broken, self._shown, self.problem = False, "", ""
        # The same step of the way, not another one to the same list: one that was left is not gone on with unasked.
        back_again = self._left.pop(key, None) is self.shell.trail[-1]
        if self.session.age == "none" or not (self.session.under_way.answers or back_again):
            self.session.begin()
        elif self.session.age == "lapsed":
            self.problem = (
                f"{self._where()} That run lapsed and is in the log as not finished. This is a new one."
            )
            self.session.give_up(snapshot(self.state.saved))
            self.session.begin()
            self.state.changed()
        elif not back_again and not args.get("going_on"):
            self._broken = True
        if not self._broken and not self.session.under_way.at:
            self.shell.replace("ride.run_over", list=key)
            return
        self.scroll.scroll_y = 1
        self.refresh()

    def _where(self) -> str:
        run = self.session.under_way
        return broke_off(run.place, len(run.order), self.session.minutes_away())

    def on_parent(self, _page: "RunPage", parent: object) -> None:
        """Keep the screen awake while the run is in front."""
        if parent is None:
            awake.release()
        else:
            awake.hold()

    def go_on(self) -> None:
        """Take the broken-off run up again, at the item where it was left."""
        self.session.resume()
        self._broken = False
        self._continue()

    def start_again(self) -> None:
        """Begin anew; what was answered is logged as not finished."""
        self.session.give_up(snapshot(self.state.saved))
        self.session.begin()
        self._broken = False
        self.state.changed()
        self._continue()

    def leave_for(self, page: str, **args: Any) -> None:  # noqa: ANN401  (each page names its own)
        """Open another page from an item; coming back from it is no interruption."""
        self._left[self.args["list"]] = self.shell.trail[-1]
        self.shell.go(page, **args)

    # The answers

    @property
    def entry(self) -> Entry:
        """Return where the value of an item is typed."""
        return self.asked.entry

    @property
    def item(self) -> Item | None:
        """Return the item in front."""
        at = self.session.under_way.at
        return self.session.of.item(at) if at else None

    def _free(self) -> bool:
        """Tell whether a tap counts, and lock the next card against the same finger."""
        now = Clock.time()
        if now < self._locked:
            return False
        self._locked = now + CARD_LOCK
        awake.hold()
        if self.state.person.vibrate:
            haptics.tick()
        return True

    def right(self) -> None:
        """Say that the item is as wanted."""
        item = self.item
        if item is None or self._broken:
            return
        if not self.asked.ready:
            self.asked.insist()
        elif self._free():
            self._answer(RIGHT, value=self.asked.value, note=self.asked.note)

    def set_aside(self) -> None:
        """Leave an item that is no stop item for another day."""
        if self._free():
            self._answer(ASIDE)

    def _answer(self, state: str, value: float | str | None = None, note: str = "") -> None:
        self.state.note_typed(self._typed_key, "")
        self.session.answer(self.item.key, state, note, value)
        self.problem = ""
        self._continue()

    def not_right(self) -> None:
        """Open what can be done about it."""
        if self.item is not None and self._free():
            self.leave_for("ride.not_right", list=self.args["list"], item=self.item.key)

    def back_one(self) -> None:
        """Go to the item before; its answer is taken back."""
        if self._broken or not self._free():
            return
        if self.session.under_way.place == 0:
            self.shell.back()
            return
        self.session.back()
        self._continue()

    def _continue(self) -> None:
        if self.session.under_way.at:
            self.scroll.scroll_y = 1
            self.refresh()
        else:
            self.shell.replace("ride.run_over", list=self.args["list"])

    def _asked_changed(self) -> None:
        self.can_right, self.problem = self.asked.ready, self.asked.problem

    # What is shown

    def refresh(self) -> None:
        """Show the item in front, or where the run was broken off."""
        if self.session is None:
            return
        run = self.session.under_way
        self.states = [self._state(key) for key in run.order]
        self.place_text = f"{min(run.place + 1, len(run.order))} of {len(run.order)}"
        self.title = f"{self.session.of.title}, {self.place_text}"
        if self._broken:
            self._show_broken()
            return
        item = self.item
        if item is None:
            return
        fresh = self._shown != item.key
        self._shown = item.key
        note = self.session.noted_before(item)
        before = f"Last time: {note}" if note else ""
        self.card.show(item, before, big=self.state.person.bench, fresh=fresh)
        self._show_more(item)
        self._show_foot(item, fresh=fresh)
        if fresh:
            self.aloud.on_its_own()

    def _state(self, key: str) -> str:
        run = self.session.under_way
        answer = run.answers.get(key)
        if answer is not None:
            return "right" if answer.state == RIGHT else "noted"
        return "front" if key == run.at else "open"

    def _show_broken(self) -> None:
        run = self.session.under_way
        at = f"Next: {self.session.of.item(run.at).action}." if run.at else "Only the sign-off is left."
        size = size_text(len(run.order), self.session.of.seconds)
        self.card.tell(self._where(), f"{at} All in all {size}. What was answered is kept.")
        refill(self.more, (), list)
        stale = self.session.age == "stale"
        self.first_text = "Go on" if stale else "Start again"
        self.second_text = "Start again" if stale else "Go on"
        self._put_foot(BrokenFoot)

    def _show_more(self, item: Item) -> None:
        """Keep the same rows from card to card; a stop item cannot be put aside."""
        aside, whole, bench, aloud = self._more_rows
        person = self.state.person
        whole.detail = items_text(len(self.session.of.items))
        bench.detail = "On: large text" if person.bench else "Large text, read at arm's length"
        aloud.detail = "On" if person.say else "Off"
        rows = (whole, bench, aloud) if item.stop else (aside, whole, bench, aloud)
        refill(self.more, item.stop, lambda: rows)

    # The foot

    def _show_foot(self, item: Item, *, fresh: bool) -> None:
        self.right_text = item.state.upper()
        words = ("Back one", "NOT RIGHT" if item.ask else "Say it")
        self.pair_need = sum(width_of(word, "strong", bold=True) + 80 for word in words) + 8
        self._put_foot(AskFoot if item.ask else RunFoot)
        if fresh:
            typed = self.state.typed.get(self._typed_key, "")
            self.asked.ask(item, self.state.saved, self.style, typed)
        self.can_right = self.asked.ready

    @property
    def _typed_key(self) -> str:
        return f"check/{self.args['list']}/{self._shown}"

    def _put_foot(self, made: type[RunFootBase]) -> None:
        if type(self.foot) is not made:
            self.foot = made(page=self)

    @property
    def keypad(self) -> Keypad | None:
        """Return the keypad while a value is asked for."""
        return self.asked.entry.keypad if isinstance(self.foot, AskFoot) else None

    def press(self, name: str) -> bool:
        """Enter says that the item is as wanted; the keypad comes first."""
        if super().press(name):
            return True
        if name == "enter":
            self.right()
            return True
        return False

    # Hands-free

    def say(self) -> None:
        """Say the item aloud; where the phone cannot, say so on the card."""
        self.aloud.say()

    def _words(self) -> str:
        item, state = self.item, self.state
        return "" if item is None else said_of(item, state.saved, self.style, state.person)

    def _hint(self, text: str) -> None:
        self.card.hint = text

    def toggle_big(self) -> None:
        """Write for reading at arm's length, or as before."""
        self.state.set_person(bench=not self.state.person.bench)

    def open_list(self) -> None:
        """Show all items with what was said of them."""
        self.leave_for("ride.run_list", list=self.args["list"])


load_kv(__file__)
