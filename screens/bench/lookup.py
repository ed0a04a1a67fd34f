"""Finding a screw by what one sees: a kind of joint, a size, or a word."""

from functools import partial
from typing import Any

from kivy.properties import ObjectProperty, StringProperty

from logic.answers.joint_guide import find_joints, kind_named
from logic.answers.joint_options import thread_label, usual_joint
from logic.board import to_dict
from logic.board_joints import joint_places
from logic.tables import Row as Line
from screens.app_page import AppPage
from screens.bench.joint import board_of
from screens.widgets.load import load_kv
from screens.widgets.row import Row, Section

MOST_THREADS = 6
"""Threads listed for what is typed; more would hide the joints."""


class LookUpPage(AppPage):
    """Kinds of joint, and threads, that what is typed can mean."""

    found = ObjectProperty()
    words = ObjectProperty()
    sentence = StringProperty()

    def __init__(self, *args: Any, **kwargs: Any) -> None:  # noqa: ANN401  (as AppPage)
        """Listen to the line of text."""
        super().__init__(*args, title="Look up a screw", **kwargs)
        self.words.bind(text=self._on_text)

    def open(self, **args: Any) -> None:  # noqa: ANN401  (as AppPage)
        """Come back to what was typed."""
        super().open(**args)
        self.words.text = self.state.typed.get("lookup", "")

    def _on_text(self, _input: object, text: str) -> None:
        self.state.note_typed("lookup", text)
        self.refresh()

    def refresh(self) -> None:
        """Show what was found."""
        text = self.words.text
        answer = find_joints(text)
        self.found.clear_widgets()
        self.sentence = (
            "" if answer.kinds or answer.threads else "Nothing by this name. Try a size, or: grub, axle, lid."
        )
        for kind in answer.kinds:
            if kind.text("kind") != "screw":
                self._add(kind.text("name"), ", ".join(kind.cells["sizes"]), kind, "")
        screw = kind_named("screw")
        if answer.threads:
            self.found.add_widget(Section(title="By size"))
        for thread in answer.threads[:MOST_THREADS]:
            self._add(f"Any screw {thread_label(thread)}", "", screw, thread.designation)
        if not text.strip() or screw in answer.kinds:
            self._add(screw.text("name"), "M2 to M12, #4 to 3/8", screw, "")

    def _add(self, title: str, detail: str, kind: Line, thread: str) -> None:
        row = Row(title=title, detail=detail)
        row.bind(on_release=partial(self._open, kind, thread))
        self.found.add_widget(row)

    def _open(self, kind: Line, thread: str, *_: object) -> None:
        name = kind.text("kind")
        self.shell.go("bench.lookup_card", kind=name, values=self._values(kind, thread))

    def _values(self, kind: Line, thread: str) -> dict[str, Any]:
        """Return what the look-up begins with: this board's own joint of the kind, else the usual one."""
        values = _plain(usual_joint(kind))
        board = board_of(self)
        key = next((key for key, place in joint_places().items() if place.kind == kind.text("kind")), "")
        own = to_dict(board).get("joints", {}).get(key, {})
        if "thread" in own:
            values = {name: value for name, value in own.items() if name != "count"}
        if thread:
            values["thread"] = {"si": thread, "known": "guess"}
        return values


def _plain(joint: Any) -> dict[str, Any]:  # noqa: ANN401  (a BoardJoint)
    return {name: {"si": value.si, "known": value.known} for name, value in joint.values()}


load_kv(__file__)
