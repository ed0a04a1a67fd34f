"""What was done to a joint, in full: tightened or looked at, to what, with what, by whom, and a note."""

from typing import Any

from kivy.properties import BooleanProperty, ListProperty, ObjectProperty, StringProperty

from logic.answers.joint_entry import tightening
from logic.answers.joints import JointCard, joint_card
from logic.answers.reading import Result
from logic.board import Field, Value
from screens.app_page import AppPage
from screens.bench.joint_card import board_of
from screens.entry import Entry  # noqa: F401  (joint_done.kv names it)
from screens.state import Undo
from screens.widgets.keypad import Keypad
from screens.widgets.load import load_kv
from screens.words.joints import TOOLS, answer_text, torque_text

TORQUE = Field("torque", "Set to", "number", 0, "", quantity="torque", low=0.05, high=100.0)
DONE = (("tightened", "Tightened"), ("looked", "Looked at, line whole"))
LOCKERS = (("none", "None"), ("low", "Low"), ("medium", "Medium"), ("high", "High"))


class JointDone(AppPage):
    """Writes one entry into the log for the joint with the key `joint`. Nothing typed: the card's setting."""

    done = StringProperty("tightened")
    tool = StringProperty("torque wrench")
    locker = StringProperty("none")
    tools = ListProperty(tuple(TOOLS.items()))
    lockers = ListProperty(LOCKERS)
    dones = ListProperty(DONE)
    offered = StringProperty()
    over = StringProperty()
    can_save = BooleanProperty(defaultvalue=True)
    entry = ObjectProperty()
    by = ObjectProperty()
    note = ObjectProperty()

    def __init__(self, *args: Any, **kwargs: Any) -> None:  # noqa: ANN401  (as AppPage)
        """Listen to the entry and to the two lines of text."""
        self._value: Value | None = None
        self.card: JointCard | None = None
        super().__init__(*args, nav=False, chip=False, **kwargs)
        self.entry.bind(
            on_value=lambda _, value: self._hold(value),
            on_empty=lambda *_: self._hold(None),
            on_wrong=lambda *_: self._hold(None, wrong=True),
            on_typed=lambda _, text: self.state.note_typed(self._typed("torque"), text),
            on_enter=lambda *_: self.save(),
        )
        for name in ("by", "note"):
            getattr(self, name).bind(
                text=lambda _, text, name=name: self.state.note_typed(self._typed(name), text)
            )

    @property
    def keypad(self) -> Keypad | None:
        """Return the keypad, unless words are being typed."""
        return None if self.by.focus or self.note.focus else self.entry.keypad

    def _typed(self, name: str) -> str:
        return f"done/{self.args['joint']}/{name}"

    def open(self, **args: Any) -> None:  # noqa: ANN401  (as AppPage)
        """Begin with what the card says."""
        super().open(**args)
        self.card = joint_card(board_of(self.state), args["joint"], self.state.person)
        self.title = self.card.kind.text("name")
        torque = self.card.torque
        self.done = "tightened"
        self.tool = self.state.store.get("joint_tool", "torque wrench") if torque else "by feel"
        self.locker = "none" if self.card.locker is None else self.card.locker.grade
        self._hold(None)
        for name in ("by", "note"):
            getattr(self, name).text = self.state.typed.get(self._typed(name), "")
        unit = Value(1.0, typed_unit="lbf·in" if self.style.system == "inch" else "N·m")
        self.entry.ask(TORQUE, unit, self.style, self.state.typed.get(self._typed("torque"), ""))

    def _hold(self, value: Value | None, *, wrong: bool = False) -> None:
        """Take up what is typed, and say what is recorded without it or that it is too much."""
        self._value, self.can_save, self.offered, self.over = value, not wrong, "", ""
        card = self.card
        if value is None:
            said = f"{answer_text(card, self.style)}, as the card says" if card.torque else "set by feel"
            self.offered = "" if wrong else f"Nothing typed: {said}."
            return
        limit = card.items["wrench_ceiling"]
        # A reading with a drag that is not known cannot be held against a ceiling without it.
        if isinstance(limit, Result) and not card.drag_missing and float(value.si) > limit.value + 1e-9:
            shown = torque_text(limit.value, self.style, inch=self.style.system == "inch")
            self.over = f"That is above {shown}, the most for this joint. Renew screw and hole before riding."

    def save(self) -> None:
        """Write the entry and go back."""
        if not self.can_save or self.card is None:
            self.entry.leave()
            return
        looked = self.done == "looked"
        typed = None if self._value is None else float(self._value.si)
        torque = None if looked else typed if typed is not None else self.card.torque
        if torque and not looked and self.tool != "by feel":
            self.state.remember("joint_tool", self.tool)
        number = self.state.record(
            tightening(
                self.card,
                torque=torque,
                tool=self.tool,
                locker=self.locker,
                by=self.by.text.strip(),
                note=self.note.text.strip(),
                looked=looked,
            )
        )
        for name in ("torque", "by", "note"):
            self.state.note_typed(self._typed(name), "")
        self.by.focus = self.note.focus = False
        self.state.undo = Undo("Recorded", lambda: self.state.take_back(number))
        self.shell.back()


load_kv(__file__)
