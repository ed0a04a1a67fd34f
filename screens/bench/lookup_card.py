"""A screw that is looked up: its size, what it goes into, how deep; the answer at every tap. Nothing is saved."""

from dataclasses import replace
from functools import partial

from kivy.properties import ListProperty, ObjectProperty, StringProperty

from logic.answers.joint_guide import holds_a_thread, kind_named
from logic.answers.joint_options import LOOK_UP, option_label, usual
from logic.answers.joints import joint_card
from logic.board import value_from
from logic.board_joints import BoardJoint
from logic.fields import joint_fields
from screens.bench.joint import board_of
from screens.bench.joint_column import CardPage
from screens.widgets.load import load_kv
from screens.widgets.row import Row
from screens.words.joints import summary, value_text
from screens.words.typed import not_used

OTHER = "other"
INTO = ("aluminium unknown", "6061-T6", "6082-T6", "steel", "insert nut")
SHORT = {
    "aluminium unknown": "alloy not known",
    "6061-T6": "I know it is 6061",
    "6082-T6": "I know it is 6082",
    "insert nut": "insert nut",
}
"""What stands on a button, where the full name is too long for one."""
MORE = {
    "set screw": ("carries", "shaft", "screws", "key_width", "key_height", "key_length"),
    "torque": ("strength", "condition", "head", "member", "washer", "running"),
    "feel": ("head", "stack", "running"),
}


class LookUpCard(CardPage):
    """Shows a joint of a `kind` with `values` by name, kept with the page and not with a board."""

    said = StringProperty()
    sizes = ListProperty()
    thread_size = StringProperty()
    holders = ListProperty()
    holder = StringProperty()
    lengths = ListProperty()
    length = StringProperty()
    front = ObjectProperty()
    more = ObjectProperty()

    def refresh(self) -> None:
        """Work the screw out anew and show it."""
        kind = kind_named(self.args["kind"])
        joint = BoardJoint(
            LOOK_UP, **{name: value_from(dict(value)) for name, value in self.args["values"].items()}
        )
        board = board_of(self)
        if self.same(kind, joint, board):
            return
        board = replace(board, joints=(*board.joints, joint))
        self.card = joint_card(board, LOOK_UP, self.state.person, kind)
        self.title = kind.text("name")
        self.said = f"Looked up: {summary(joint, self.style)}"
        self._show_picks(joint)
        self.front.clear_widgets()
        self.body.clear_widgets()
        self.add_answer(self.front)
        self.add_hold()
        self.add_notes()
        self.add_work()
        self.add_locker()
        self.add_pull()
        self.add_alike()
        self._show_more(joint)
        self.add_workings()

    def _show_picks(self, joint: BoardJoint) -> None:
        kind, style = self.card.kind, self.style
        own = "" if joint.thread is None else str(joint.thread.si)
        sizes = list(kind.cells["sizes"]) or ["M3", "M4", "M5", "M6", "M8"]
        self.sizes = [(size, size) for size in dict.fromkeys([*sizes, *([own] if own else [])])] + [
            (OTHER, "other")
        ]
        self.thread_size = own
        self.holders, self.lengths = [], []
        if kind.text("way") == "feel":
            return
        into = "" if joint.into is None else str(joint.into.si)
        names = list(dict.fromkeys([*INTO, *([into] if into else [])]))
        fields = joint_fields()
        self.holders = [(name, SHORT.get(name, _short(option_label(fields["into"], name)))) for name in names]
        self.holders.append((OTHER, "other"))
        self.holder = into
        if not holds_a_thread(into):
            return
        deep = joint.engagement
        lengths = {
            f"{number / 1000:.4f}": f"{number} mm" for number in usual(kind.text("kind")).cells["lengths"]
        }
        self.length = "" if deep is None else f"{float(deep.si):.4f}"
        if deep is not None and self.length not in lengths:
            lengths[self.length] = style.typed(float(deep.si), "length", deep.typed_unit)
        self.lengths = [*lengths.items(), (OTHER, "other")]

    def _show_more(self, joint: BoardJoint) -> None:
        fields = joint_fields()
        self.more.clear_widgets()
        for name in MORE[self.card.kind.text("way")]:
            row = Row(
                title=fields[name].label,
                value=value_text(name, joint.value(name), self.style),
                detail=not_used(self.state.typed.get(f"value/joints.{LOOK_UP}.{name}", "")),
            )
            row.bind(on_release=partial(self._ask, name))
            self.more.add_widget(row)

    def _ask(self, name: str, *_: object) -> None:
        self.shell.go("bench.joint_value", key=f"joints.{LOOK_UP}.{name}")

    def choose(self, name: str, key: str) -> None:
        """Take up a button; "other" opens the whole list."""
        if key == OTHER:
            # The tick goes back to what stands, should nothing else be chosen.
            setattr(self, {"thread": "thread_size", "into": "holder", "engagement": "length"}[name], OTHER)
            self._ask(name)
            return
        value = {"si": float(key), "typed_unit": "mm"} if name == "engagement" else {"si": key}
        self.args["values"][name] = {**value, "known": "chosen"}
        self.shell.note_args()
        self.refresh()


def _short(label: str) -> str:
    return label.removeprefix("aluminium ").removeprefix("a ").removesuffix("-T6")


load_kv(__file__)
