"""What one joint of the board consists of, value by value."""

from functools import partial
from typing import Any

from kivy.properties import ObjectProperty, StringProperty

from logic.answers.joints import kind_of
from logic.board_joints import joint_places
from logic.fields import joint_fields
from screens.app_page import AppPage
from screens.bench.joint_card import board_of
from screens.widgets.load import load_kv
from screens.widgets.row import Row
from screens.words import KNOWN
from screens.words.joints import value_text
from screens.words.typed import not_used


class JointEdit(AppPage):
    """Shows the values of the joint with the key `joint`; each opens a page of its own."""

    rows = ObjectProperty()
    trial_note = StringProperty()

    def __init__(self, *args: Any, **kwargs: Any) -> None:  # noqa: ANN401  (as AppPage)
        """Build without the four places."""
        super().__init__(*args, nav=False, **kwargs)

    def refresh(self) -> None:
        """Show the values that are asked of this joint."""
        key = self.args["joint"]
        joint, fields = board_of(self.state).joint(key), joint_fields()
        self.title = kind_of(key).text("name")
        self.rows.clear_widgets()
        for name in joint_places()[key].asks:
            value, path = joint.value(name), f"joints.{key}.{name}"
            known = "" if value is None else KNOWN.get(value.known, value.known)
            row = Row(
                title=fields[name].label,
                value=value_text(name, value, self.style),
                detail=not_used(self.state.typed.get(f"value/{path}", "")) or known,
            )
            row.bind(on_release=partial(self._open, path))
            self.rows.add_widget(row)

    def _open(self, key: str, *_: object) -> None:
        self.shell.go("bench.joint_value", key=key)


load_kv(__file__)
