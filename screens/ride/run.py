"""One item of a checklist at a time, large: what to do, what good looks like, and a button that says so."""

from functools import partial
from typing import Any

from kivy.clock import Clock
from kivy.properties import BooleanProperty, ListProperty, NumericProperty, ObjectProperty, StringProperty

from logic.answers.checks import figures, snapshot, volts_fault
from logic.answers.reading import Open, Result
from logic.board import Field, Option, Value, board_fields
from logic.checks.lists import Item
from logic.checks.run import ASIDE, RIGHT
from logic.checks.session import Session
from logic.tables import sources
from screens.entry import PATIENCE, Entry
from screens.page import AppPage
from screens.phone import awake, haptics, speech
from screens.ride.picture import fill_drive
from screens.widgets.drive_drawing import DriveDrawing
from screens.widgets.keypad import Keypad
from screens.widgets.load import load_kv
from screens.widgets.notice import Notice
from screens.widgets.result import Result as ResultCard
from screens.widgets.row import Foot, Row
from screens.widgets.text import width_of
from screens.words import KNOWN, offer, refusal, sureness
from screens.words.checks import FIGURES, REFUSALS, broke_off, size_text
from screens.words.spoken import spoken
from screens.words.tension import tension_text

VOLTS = Field("check.volts", "Pack volts", "number", 0, "", quantity="voltage", low=1.0, high=150.0)
CARD_LOCK = 0.35
"""Seconds after a card changes in which a tap counts for nothing: it was meant for the card before."""


class RunPage(AppPage):
    """Runs `list`. Every answer is saved before the next item is shown; leaving loses nothing."""

    states = ListProperty()
    place_text = StringProperty()
    must = StringProperty()
    action = StringProperty()
    how = StringProperty()
    wanted = StringProperty()
    tool = StringProperty()
    before = StringProperty()
    why = StringProperty()
    why_open = BooleanProperty(defaultvalue=False)
    source = StringProperty()
    hint = StringProperty()
    problem = StringProperty()
    right_text = StringProperty()
    right_detail = StringProperty()
    can_right = BooleanProperty(defaultvalue=True)
    first_text = StringProperty()
    second_text = StringProperty()
    pair_need = NumericProperty()
    big = BooleanProperty(defaultvalue=False)
    saying = BooleanProperty(defaultvalue=False)
    asking = BooleanProperty(defaultvalue=False)
    care = ObjectProperty()
    flow = ObjectProperty()
    links = ObjectProperty()
    drawing = ObjectProperty()
    more = ObjectProperty()
    why_slot = ObjectProperty()

    def __init__(self, *args: Any, **kwargs: Any) -> None:  # noqa: ANN401  (as AppPage)
        """Build without the four places: a run is worked through, then left."""
        self.session: Session | None = None
        self._left_for: set[str] = set()
        self._value: Value | None = None
        self._fault = ""
        self._tell = Clock.create_trigger(self._tell_fault, PATIENCE)
        self._shown = ""
        self._locked = 0.0
        self._broken = False
        self._foot_kind = ""
        self.entry = Entry()
        self.entry.bind(
            on_value=lambda _, value: self._hold(value),
            on_empty=lambda *_: self._hold(None),
            on_wrong=lambda *_: self._hold(None),
            on_typed=lambda _, text: self.state.note_typed(self._typed_key, text),
            on_enter=lambda *_: self.right(),
        )
        self._why_row = self._row("Why this item", "open", self.toggle_why, chevron=False)
        self._more_rows = (
            self._row("Put aside for now", "clock", self.set_aside, detail="The closing card says so."),
            self._row("The whole list", "checklist", self.open_list),
            self._row("Bench view", "view", self.toggle_big),
            self._row("Say items aloud", "say", self.toggle_say),
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
        back_again = key in self._left_for
        self._left_for.discard(key)
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
        self._left_for.add(self.args["list"])
        self.shell.go(page, **args)

    # The answers

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
        if item.ask and self._value is None:
            self.entry.leave()
            return
        if self._fault:
            self._tell_fault()
            return
        if not self._free():
            return
        value = self._value.si if item.ask and self._value is not None else None
        self._answer(RIGHT, value=value)

    def set_aside(self) -> None:
        """Leave an item that is no stop item for another day."""
        if self._free():
            self._answer(ASIDE)

    def _answer(self, state: str, value: float | str | None = None) -> None:
        self.state.note_typed(self._typed_key, "")
        self.session.answer(self.item.key, state, value=value)
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

    def _hold(self, value: Value | None) -> None:
        item = self.item if value is not None else None
        self._value, self.problem = value, ""
        self._fault = (
            volts_fault(item, float(value.si), self.state.saved) if item and item.ask == "volts" else ""
        )
        self._allow()
        self._tell.cancel()
        if self._fault:
            self._tell()

    def _allow(self) -> None:
        """Let the state be confirmed unless a value is wanted and there is none that can be used."""
        self.can_right = not self.asking or (self._value is not None and not self._fault)

    def _tell_fault(self, *_: object) -> None:
        self._tell.cancel()
        self.problem = REFUSALS.get(self._fault, "")

    # What is shown

    def refresh(self) -> None:
        """Show the item in front, or where the run was broken off."""
        if self.session is None:
            return
        self.big, self.saying = self.state.person.bench, self.state.person.say
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
        self.why_open = self.why_open and not fresh
        self._shown = item.key
        self._show_words(item)
        self._show_figures(item)
        self._show_links(item)
        self._show_picture(item)
        self._show_foot(item, fresh=fresh)
        if fresh and self.saying:
            self.say()

    def _state(self, key: str) -> str:
        run = self.session.under_way
        answer = run.answers.get(key)
        if answer is not None:
            return "right" if answer.state == RIGHT else "noted"
        return "front" if key == run.at else "open"

    def _show_broken(self) -> None:
        run = self.session.under_way
        self.must = self.how = self.tool = self.before = self.why = self.source = self.hint = ""
        self.action = self._where()
        at = f"Next: {self.session.of.item(run.at).action}." if run.at else "Only the sign-off is left."
        size = size_text(len(run.order), self.session.of.seconds)
        self.wanted = f"{at} All in all {size}. What was answered is kept."
        self.why_open = False
        for column in (self.care, self.flow, self.links, self.drawing, self.more, self.why_slot):
            column.clear_widgets()
        stale = self.session.age == "stale"
        self.first_text = "Go on" if stale else "Start again"
        self.second_text = "Start again" if stale else "Go on"
        self._put_foot("broken", BrokenFoot)

    def _show_words(self, item: Item) -> None:
        of = self.session.of
        self.must = "Must pass" if item.stop else ""
        self.action, self.how = item.action, item.how
        self.wanted = f"Wanted: {item.state[0].lower() + item.state[1:]}."
        self.tool = f"Tool: {item.tool}." if item.tool and not self.big else ""
        self.before = self._noted_before(item)
        self.why = f"{item.why} If not: {item.fix[0].lower() + item.fix[1:]}" if item.fix else item.why
        self.source = f"{sources()[item.source].title}, {item.where}" if item.source in sources() else ""
        self._why_row.icon = "shut" if self.why_open else "open"
        self._hang(self.why_slot, (self._why_row,) if self.why else ())
        self.care.clear_widgets()
        if item.care:
            self.care.add_widget(Notice(word=item.care_word, text=item.care))
        aside, whole, bench, aloud = self._more_rows
        whole.detail = f"{len(of.items)} items"
        bench.detail = "On: large text" if self.big else "Large text, read at arm's length"
        aloud.detail = "On" if self.saying else "Off"
        self._hang(self.more, (whole, bench, aloud) if item.stop else (aside, whole, bench, aloud))

    def _hang(self, column: Any, rows: tuple[Row, ...]) -> None:  # noqa: ANN401  (a column)
        """Put rows that are kept from card to card under a column, if they are not there already."""
        if tuple(column.children[::-1]) != rows:
            column.clear_widgets()
            for row in rows:
                column.add_widget(row)

    def _noted_before(self, item: Item) -> str:
        last = self.state.last("check", list=self.args["list"])
        notes = dict(last.body.get("notes", ())) if last is not None else {}
        note = notes.get(item.action, "")
        return f"Last time: {note}" if note else ""

    def _link(self, column: Any, title: str, detail: str, icon: str, act: Any) -> None:  # noqa: ANN401
        row = Row(title=title, detail=detail, icon=icon)
        row.bind(on_release=lambda *_: act())
        column.add_widget(row)

    def _show_figures(self, item: Item) -> None:
        self.flow.clear_widgets()
        board = self.state.saved
        for name, found in figures(item.figures, board).items():
            card = ResultCard(
                label=FIGURES[name], compact=not self.big, has_working=isinstance(found, Result)
            )
            card.role = "big" if self.big else "value"
            if isinstance(found, Result):
                unit = self.state.person.scale_unit if name.startswith("pull") else ""
                shown = self.style.shown(found.value, found.quantity, unit=unit)
                card.value, card.unit, card.standing = shown.number, shown.unit, sureness(found)
                card.bind(
                    on_open=partial(self._on_card, found),
                )
            else:
                card.value, card.detail = "–", self._open_words(found)
            self.flow.add_widget(card)

    def _open_words(self, found: Open) -> str:
        return offer(found.missing) if found.missing else refusal(found.problem, self.style)

    def _on_card(self, found: Result, *_: object) -> None:
        self.leave_for("working", item=found, label=FIGURES[found.name])

    def _show_links(self, item: Item) -> None:
        self.links.clear_widgets()
        for key in item.figures:
            if key in board_fields() and self.state.saved.applies(board_fields()[key]):
                self._board_row(board_fields()[key])
        from screens.shell import PAGES  # noqa: PLC0415  (the shell imports the pages' packages)

        if item.belt:
            self._link(
                self.links, "Tension check", self._belts(), "gauge", partial(self.leave_for, "ride.tension")
            )
        if item.joint and "bench.joint" in PAGES:
            act = partial(self.leave_for, "bench.joint", joint=item.joint)
            self._link(self.links, "Joint: torque and locker", "For this board", "bench", act)
        if item.opens.startswith("list:"):
            key = item.opens.removeprefix("list:")
            title = self.state.lists()[key].title
            act = partial(self.leave_for, "ride.run", list=key)
            self._link(self.links, title, self._last_check(key), "checklist", act)
        elif item.opens in PAGES:
            title = OPENS.get(item.opens, "Open")
            self._link(self.links, title, "", "", partial(self.leave_for, item.opens))

    def _board_row(self, field: Field) -> None:
        value = self.state.saved.value(field.key)
        row = Row(title=field.label, value="not set")
        if value is not None and field.kind == "choice":
            row.value = field.option(str(value.si)).label
        elif value is not None:
            row.value = self.style.typed(float(value.si), field.quantity, value.typed_unit)
        row.detail = "" if value is None else KNOWN.get(value.known, "")
        row.bind(on_release=lambda *_: self.leave_for("board.value", key=field.key))
        self.links.add_widget(row)

    def _belts(self) -> str:
        lines = []
        for side in self.state.saved.sides:
            record = self.state.last("tension", belt=side)
            name = side.capitalize() if len(self.state.saved.sides) > 1 else "Belt"
            lines.append(f"{name}: {tension_text(record, self.style) if record else 'not measured yet'}")
        return ". ".join(lines)

    def _last_check(self, key: str) -> str:
        record = self.state.last("check", list=key)
        return "Not run yet" if record is None else f"Last: {record.at:%Y-%m-%d %H:%M}"

    def _show_picture(self, item: Item) -> None:
        self.drawing.clear_widgets()
        if item.picture == "drive" and not self.big:
            picture = DriveDrawing(size_hint_y=None)
            picture.bind(wanted_height=picture.setter("height"))
            if fill_drive(picture, self.state.saved, self.style, self.state.person.scale_unit):
                self.drawing.add_widget(picture)

    # The foot

    def _show_foot(self, item: Item, *, fresh: bool) -> None:
        self.asking = bool(item.ask)
        self.right_text = item.state.upper()
        self.right_detail = ""
        words = ("Back one", "NOT RIGHT" if item.ask else "Say it")
        self.pair_need = sum(width_of(word, "strong", bold=True) + 80 for word in words) + 8
        if item.ask:
            self._put_foot("ask", AskFoot)
            if fresh:
                self._ask(item)
        else:
            self._put_foot("plain", RunFoot)
        self._allow()

    def _ask(self, item: Item) -> None:
        self._value, self._fault = None, ""
        typed = self.state.typed.get(self._typed_key, "")
        if item.ask == "choice":
            options = tuple(Option(text, text) for text in item.options)
            self.entry.ask(
                Field("check.choice", item.action, "choice", 0, "", options=options), None, self.style
            )
        else:
            self.entry.ask(VOLTS, Value(1.0, typed_unit="V"), self.style, typed)

    @property
    def _typed_key(self) -> str:
        return f"check/{self.args['list']}/{self._shown}"

    def _put_foot(self, kind: str, made: type["RunFootBase"]) -> None:
        if self._foot_kind != kind:
            self._foot_kind = kind
            if self.entry.parent is not None:
                self.entry.parent.remove_widget(self.entry)
            self.foot = made(page=self)

    @property
    def keypad(self) -> Keypad | None:
        """Return the keypad while a value is asked for."""
        return self.entry.keypad if self._foot_kind == "ask" else None

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
        item = self.item
        if item is None:
            return
        parts = [
            f"{item.care_word}. {item.care}" if item.care else "",
            item.spoken or f"{item.action}. {item.state}.",
        ]
        for name, found in figures(item.figures, self.state.saved).items():
            if isinstance(found, Result):
                unit = self.state.person.scale_unit if name.startswith("pull") else ""
                parts.append(f"{FIGURES[name]}: {self.style.shown(found.value, found.quantity, unit=unit)}.")
        parts.append(f"{item.tool}." if item.tool else "")
        self.hint = "" if speech.say(spoken(" ".join(part for part in parts if part))) else speech.NO_VOICE

    def toggle_say(self) -> None:
        """Say each item as it comes, or no longer."""
        self.state.set_person(say=not self.state.person.say)
        if self.state.person.say:
            self.say()

    def toggle_big(self) -> None:
        """Write for reading at arm's length, or as before."""
        self.state.set_person(bench=not self.state.person.bench)

    def toggle_why(self) -> None:
        """Tell why the item is there, or no longer."""
        self.why_open = not self.why_open
        self.refresh()

    def open_list(self) -> None:
        """Show all items with what was said of them."""
        self.leave_for("ride.run_list", list=self.args["list"])


OPENS = {
    "bench.faults": "Fault guide",
    "bench.spares": "Tools and spares",
    "bench.reach": "Screw reach",
    "bench.belt": "Set a belt",
    "bench.power": "First power: resistor and polarity",
    "bench.controller": "What to set in the controller",
    "ride.flight": "Pack for a flight: Wh and rules",
    "board": "The board's values",
}
"""What a page that an item leads to is called here."""


class RunFootBase(Foot):
    """What can be said of an item."""

    def __init__(self, page: RunPage, **kwargs: Any) -> None:  # noqa: ANN401  (Kivy's properties)
        """Act on a page."""
        self.page = page
        super().__init__(**kwargs)


class RunFoot(RunFootBase):
    """Two answers, back and say it."""


class AskFoot(RunFootBase):
    """The same with a value to enter."""

    def __init__(self, page: RunPage, **kwargs: Any) -> None:  # noqa: ANN401  (Kivy's properties)
        """Take the page's entry in."""
        super().__init__(page, **kwargs)
        self.ids.slot.add_widget(page.entry)


class BrokenFoot(RunFootBase):
    """Go on or start again, the better one last."""

    def act(self, text: str) -> None:
        """Do what a bar says."""
        if text == "Go on":
            self.page.go_on()
        else:
            self.page.start_again()


load_kv(__file__)
