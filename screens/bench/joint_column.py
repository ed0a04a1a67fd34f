"""The card of a joint as widgets in a column: for a joint of the board and for one that is looked up."""

from dataclasses import replace
from functools import partial
from typing import TYPE_CHECKING, Any

from kivy.properties import ObjectProperty

from logic.answers.joint_guide import locker_steps
from logic.answers.reading import Item, Open, Result
from logic.fields import ARM
from logic.units import show_in
from screens.app_page import AppPage
from screens.widgets.notice import Notice
from screens.widgets.result import Result as ResultCard
from screens.widgets.result import ResultFlow
from screens.widgets.row import Row, Section
from screens.widgets.stepper import Stepper
from screens.widgets.text import Text
from screens.words import KNOWN, offer, refusal, sureness
from screens.words.joints import (
    ABOVE_DRAG,
    CAUTIONS,
    FEEL,
    HOW,
    ITEMS,
    LIMITS,
    NOTES,
    NOTICES,
    assumed_text,
    drag_text,
    locker_text,
    reuse_text,
    set_text,
    shown_items,
    tool_text,
    torque_text,
    turned_by,
)
from screens.words.typed import not_used

if TYPE_CHECKING:
    from logic.answers.joints import JointCard

COLDEST, HOTTEST, STEP = 263.15, 313.15, 5.0
"""Temperatures of the bench that can be asked for, in K, and the step of the buttons."""


class CardPage(AppPage):
    """A page that shows a `JointCard` in the column `body`."""

    body = ObjectProperty()

    def __init__(self, *args: Any, **kwargs: Any) -> None:  # noqa: ANN401  (as AppPage)
        """Keep the card that is shown."""
        self.card: JointCard | None = None
        self._shown: tuple[object, ...] = ()
        super().__init__(*args, nav=False, **kwargs)

    def same(self, *shown: object) -> bool:
        """Tell whether the column shows these things already: text size and theme change nothing in it."""
        person = replace(self.state.person, text=1.0, theme="day")
        now = (*shown, person, self.state.typed)
        before, self._shown = self._shown, now
        return before == now

    def add(self, *widgets: Any) -> None:  # noqa: ANN401  (widgets have no common public type)
        """Put widgets at the end of the column."""
        self.add_to(self.body, *widgets)

    def add_to(self, column: Any, *widgets: Any) -> None:  # noqa: ANN401  (as above)
        """Put widgets at the end of a column."""
        for widget in widgets:
            column.add_widget(widget)

    def row(self, act: Any, **words: Any) -> Row:  # noqa: ANN401  (Kivy's properties)
        """Return a row that does something."""
        row = Row(**words)
        row.bind(on_release=lambda *_: act())
        return row

    def add_answer(self, column: Any = None) -> None:  # noqa: ANN401  (a Column)
        """Add hazard, setting and ceiling, what limits it; or how it is set by feel; or what is missing."""
        card, style = self.card, self.style
        column = column or self.body
        word, key = card.notice
        if word:
            self.add_to(column, Notice(word=word, text=NOTICES[key]))
        item = card.items["wrench"]
        if isinstance(item, Result):
            self._add_torque(item, column)
        elif isinstance(item, Open) and item.missing:
            self.add_to(column, Text(text=offer(item.missing), role="strong", bold=True))
        elif isinstance(item, Open) and item.problem is not None:
            self.add_to(column, Text(text=refusal(item.problem, style), role="strong", bold=True))
        else:
            how = card.kind.text("how") if "how" in card.kind else HOW.get(card.feel, "")
            self.add_to(
                column, Text(text=FEEL.get(card.feel, "By feel"), role="title", bold=True), Text(text=how)
            )

    def _add_torque(self, item: Result, column: Any) -> None:  # noqa: ANN401  (a Column)
        card, style = self.card, self.style
        inch = style.system == "inch"
        number, unit = torque_text(item.value, style, inch=inch).split("\u00a0")
        head = ResultCard(
            label=f"{ITEMS['wrench']}{ABOVE_DRAG if card.drag_missing else ''}",
            value=number,
            unit=unit,
            detail=set_text(card, style, inch=not inch),
            standing=sureness(item),
        )
        head.bind(on_open=partial(self.open_working, "wrench"))
        never = torque_text(card.items["wrench_ceiling"].value, style, inch=inch)
        over = ABOVE_DRAG if card.drag_missing else ""
        drag = drag_text(card, style)
        self.add_to(
            column,
            head,
            Text(text=f"Never above {never}{over}.", role="strong", bold=True),
            *([Text(text=drag, bold=card.drag_missing)] if drag else []),
            Text(text=f"What limits it: {LIMITS[card.limit]}."),
        )

    def add_hold(self) -> None:
        """Add what the motor asks of a pulley on its shaft, and what that carries."""
        flow = ResultFlow()
        for name in ("drive_torque", "carried"):
            item = self.card.items.get(name)
            if item is not None and not (isinstance(item, Open) and item.outcome):
                flow.add_widget(self.result(name, ""))
        if flow.children:
            self.add(flow)

    def add_pull(self) -> None:
        """Add the same torque as a pull on the person's own key or spanner."""
        card, style = self.card, self.style
        item = card.items.get("pull")
        if not isinstance(item, Result):
            return
        unit = self.state.person.scale_unit
        arm = self.state.person.key_arm
        arm_text = style.number(next(one.value for one in item.inputs if one.name == ARM.label), "length")
        scale = show_in(item.value, "force", unit, mark=style.mark, digits=3)
        over = ", over what turns the loose nut" if card.drag_missing else ""
        tool, turned = turned_by(card), "nut" if turned_by(card) == "spanner" else "screw"
        pull = self.result(
            "pull", f"{scale} on the scale{over}, {arm_text} from the {turned}, square to the {tool}."
        )
        error = card.items["pull_error"]
        if isinstance(error, Result):
            pull.detail += f" Your scale is good to ± {style.number(error.value, 'share', 2)} of it."
        self.add(Section(title="Without a torque wrench"), pull)
        left = not_used(self.state.typed.get(f"value/{ARM.key}", ""))
        self.add(
            self.row(
                lambda: self.shell.go("bench.joint_value", key="person.key_arm"),
                title=ARM.label,
                detail=left or KNOWN["assumed" if arm is None else arm.known],
                value=arm_text,
            )
        )

    def add_notes(self) -> None:
        """Add what deserves a word, and what was assumed."""
        card = self.card
        for note in card.notes:
            self.add(Text(text=NOTES[note]))
        if card.assumed:
            self.add(Text(text=assumed_text(card), tone="second"))

    def add_locker(self) -> None:
        """Add grade, preparation and cure; or none and why."""
        card, style = self.card, self.style
        self.add(Section(title="Threadlocker"), Text(text=locker_text(card), bold=True))
        locker = card.locker
        if locker is None or locker.grade == "none":
            return
        first = locker_steps("put on")[0]
        self.add(
            Text(
                text=f"{first} {'Activator on the threads, let it dry.' if locker.activator else ''}".strip()
            )
        )
        for caution in locker.cautions:
            self.add(Text(text=CAUTIONS[caution], tone="second"))
        item = card.items["cure"]
        if isinstance(item, Result):
            flow = ResultFlow()
            flow.add_widget(self.result("cure", "Longer in the cold. Then ride."))
            self.add(flow)
        else:
            self.add(Text(text="Too cold to cure: warm the parts and the bench first.", bold=True))
        day = Stepper(
            label="Temperature at the bench", value=style.number(self.state.person.day, "temperature")
        )
        day.bind(on_step=lambda _, sign: self.step_day(sign))
        self.add(day)

    def add_work(self) -> None:
        """Add tool, order and what may be used again."""
        card = self.card
        self.add(Section(title="Tool and order"))
        tool = tool_text(card)
        if tool:
            self.add(Text(text=f"{tool}. Try the tool first: its size is from memory.", bold=True))
        self.add(Text(text=card.kind.text("order")), Text(text=card.kind.text("reuse")))
        item = card.items.get("drag_reuse")
        if isinstance(item, Result):
            least = torque_text(item.value, self.style, inch=self.style.system == "inch")
            verdict = reuse_text(card)
            self.add(Text(text=f"An insert nut is used again only from a drag of {least}.{verdict}"))

    def add_alike(self) -> None:
        """Add threads that this one can be mistaken for."""
        if not self.card.alike:
            return
        self.add(Section(title="Looks alike"))
        for position, (other, warning) in enumerate(self.card.alike):
            word = "notice" if position == 0 and not self.card.notice[0] else ""
            self.add(Notice(word=word, text=f"{other}: {warning}"))

    def add_workings(self) -> None:
        """Add every other result, each with its working."""
        flow = ResultFlow()
        for name in shown_items(self.card):
            flow.add_widget(self.result(name, ""))
        if flow.children:
            self.add(Section(title="How it is worked out"), flow)

    def result(self, name: str, detail: str) -> ResultCard:
        """Return the card of one result."""
        item: Item = self.card.items[name]
        card = ResultCard(
            compact=True, label=ITEMS[name], detail=detail, has_working=isinstance(item, Result)
        )
        if isinstance(item, Result):
            shown = self.style.shown(item.value, item.quantity)
            card.value, card.unit, card.standing = shown.number, shown.unit, sureness(item)
            card.bind(on_open=partial(self.open_working, name))
        else:
            card.value = "–"
            card.detail = offer(item.missing) if item.missing else ""
            if item.problem is not None:
                card.detail = refusal(item.problem, self.style)
        return card

    def open_working(self, name: str, *_: object) -> None:
        """Open the working of a result."""
        item = self.card.items[name]
        if isinstance(item, Result):
            self.shell.go("working", item=item, label=ITEMS[name])

    def step_day(self, sign: int) -> None:
        """Say how warm it is at the bench."""
        day = min(max(self.state.person.day + sign * STEP, COLDEST), HOTTEST)
        self.state.set_person(day=day)
