"""One value of a joint, of a look-up or of the person's hex key: a list to choose from, or a number to type."""

from dataclasses import asdict, replace
from functools import partial
from typing import Any

from kivy.properties import BooleanProperty, ListProperty, ObjectProperty, StringProperty

from logic.answers.joint_options import LOOK_UP, options
from logic.answers.joints import kind_of
from logic.board import Field, Value, field_of, value_from
from logic.fields import ARM
from screens.app_page import AppPage
from screens.bench.joint_card import board_of
from screens.board.value import HOW_KNOWN
from screens.entry import Entry
from screens.widgets.bar import Bar
from screens.widgets.choice import Choice
from screens.widgets.keypad import Keypad
from screens.widgets.load import load_kv
from screens.widgets.row import Row
from screens.widgets.text import Text
from screens.words.joints import value_text


class JointValue(AppPage):
    """Asks for `key`: "joints.motor_face.thread", "joints.lookup.thread" or "person.key_arm".

    An option is taken up by its tap, a number by Save; both go back.
    """

    help = StringProperty()
    now = StringProperty()
    ways = ListProperty(HOW_KNOWN)
    known = StringProperty()
    can_save = BooleanProperty(defaultvalue=False)
    top = ObjectProperty()
    choices = ObjectProperty()
    typing = ObjectProperty()

    def __init__(self, *args: Any, **kwargs: Any) -> None:  # noqa: ANN401  (as AppPage)
        """Make the entry; it is shown for a number only."""
        self.field: Field = ARM
        self._value: Value | None = None
        self.entry = Entry()
        self._bar = Bar(text="Save", disabled=True)
        super().__init__(*args, nav=False, chip=False, **kwargs)
        self._bar.bind(on_release=lambda *_: self.save())
        self.bind(can_save=lambda _, can: setattr(self._bar, "disabled", not can))
        self.entry.bind(
            on_value=lambda _, value: self._hold(value),
            on_empty=lambda *_: self._hold(None),
            on_wrong=lambda *_: self._hold(None),
            on_typed=lambda _, text: self.state.note_typed(f"value/{self.args['key']}", text),
            on_enter=lambda *_: self.save(),
        )

    @property
    def keypad(self) -> Keypad | None:
        """Return the keypad while a number is asked for."""
        return self.entry.keypad if self.entry.parent is not None else None

    @property
    def looking_up(self) -> bool:
        """Tell whether the value belongs to a look-up and not to the board."""
        return str(self.args["key"]).startswith(f"joints.{LOOK_UP}.")

    def open(self, **args: Any) -> None:  # noqa: ANN401  (as AppPage)
        """Ask for the value."""
        super().open(**args)
        self._ask()

    def present(self) -> Value | None:
        """Return the value as it is now."""
        key = self.args["key"]
        if key == ARM.key:
            value: Value | None = self.state.person.key_arm
            return value
        if self.looking_up:
            body = self._looked_up().get(key.rpartition(".")[2])
            return None if body is None else value_from(body)
        return board_of(self.state).value(key)

    def _looked_up(self) -> dict[str, Any]:
        found: dict[str, Any] = next(
            (args["values"] for name, args in reversed(self.shell.trail) if name == "bench.lookup_card"), {}
        )
        return found

    def _ask(self) -> None:
        key = self.args["key"]
        self.field = ARM if key == ARM.key else field_of(key)
        value = self.present()
        self.title, self.help = self.field.label, self.field.help
        self.known = value.known if value is not None and value.known in dict(HOW_KNOWN) else self.field.known
        self._hold(None)
        for slot in (self.top, self.choices, self.typing):
            slot.clear_widgets()
        self._show_now(value)
        if self.field.kind in ("choice", "named"):
            self._list(value)
        else:
            self.typing.add_widget(self.entry)
            self.typing.add_widget(self._bar)
            self.entry.ask(self.field, value, self.style, self.state.typed.get(f"value/{key}", ""))

    def _show_now(self, value: Value | None) -> None:
        if value is not None:
            name = self.args["key"].rpartition(".")[2]
            text = (
                self.style.typed(float(value.si), "length", value.typed_unit)
                if self.field is ARM
                else value_text(name, value, self.style)
            )
            self.now = f"Now: {text}."
        else:
            self.now = "Now: not set."
        if self.looking_up:
            return
        choice = Choice(options=HOW_KNOWN, chosen=self.known)
        choice.bind(on_choose=lambda _, known: self._choose_known(known))
        self.top.add_widget(Text(text="How do you know?", tone="second"))
        self.top.add_widget(choice)
        if value is not None:
            bar = Bar(text="Take this value out", kind="plain")
            bar.bind(on_release=lambda *_: self.take(None))
            self.top.add_widget(bar)

    def _list(self, value: Value | None) -> None:
        """Show the options as rows, the sizes that this kind of joint often has first."""
        found = list(options(self.field))
        key = self.args["key"]
        if self.field.table == "threads" and not self.looking_up:
            often = kind_of(key.split(".")[1]).cells["sizes"]
            found.sort(key=lambda option: option.key not in often)
        for option in found:
            chosen = value is not None and value.si == option.key
            row = Row(
                title=option.label[0].upper() + option.label[1:], icon="tick" if chosen else "", chevron=False
            )
            row.bind(on_release=partial(self._pick, option.key))
            self.choices.add_widget(row)

    def _pick(self, key: str, *_: object) -> None:
        self.take(Value(key, known=self.known))

    def _hold(self, value: Value | None) -> None:
        self._value = value
        self.can_save = value is not None

    def _choose_known(self, known: str) -> None:
        """Say how the value is known; one that stands takes it up at once, with undo."""
        self.known = known
        value = self.present()
        if value is not None and self._value is None:
            self._write(replace(value, known=known, on=""))

    def save(self) -> None:
        """Take up the number that is typed."""
        if self._value is None:
            self.entry.leave()
            return
        self.take(replace(self._value, known=self.known, on=""))

    def take(self, value: Value | None) -> None:
        """Write a value and go back."""
        self.state.note_typed(f"value/{self.args['key']}", "")
        self._write(value)
        self.shell.back()

    def _write(self, value: Value | None) -> None:
        key = self.args["key"]
        if key == ARM.key:
            self.state.set_person(key_arm=value)
        elif self.looking_up:
            name, values = key.rpartition(".")[2], self._looked_up()
            if value is None:
                values.pop(name, None)
            else:
                values[name] = asdict(value)
        else:
            self.state.set_value(key, value)


load_kv(__file__)
