"""The name of a board: for a new one, a copy, a kept trial or a change."""

from typing import Any

from kivy.clock import Clock
from kivy.properties import ObjectProperty, StringProperty
from kivy.uix.textinput import TextInput

from logic.errors import InputError
from screens.app_page import AppPage
from screens.theme import theme
from screens.widgets.dress import Dressed
from screens.widgets.load import load_kv
from screens.words import refusal

TITLES = {
    "new": "New board",
    "copy": "Copy of the board",
    "keep": "Save as a board",
    "rename": "Rename the board",
}


class NameInput(Dressed, TextInput):
    """A line of text."""

    def dress(self, *_: object) -> None:
        """Take colours and size from the theme."""
        self.font_size = theme.strong
        self.background_color = theme.ground
        self.foreground_color = self.cursor_color = theme.text
        self.selection_color = [*theme.main[:3], 0.35]


class NamePage(AppPage):
    """Asks for a name for `purpose`."""

    act = StringProperty("Save")
    sentence = StringProperty()
    name_input = ObjectProperty()

    def __init__(self, *args: Any, **kwargs: Any) -> None:  # noqa: ANN401  (as AppPage)
        """Build without the four places."""
        super().__init__(*args, nav=False, chip=False, **kwargs)
        # Not at once: the touch that opened the page is still on its way up and would take the keyboard away again.
        self._focus = Clock.create_trigger(lambda *_: setattr(self.name_input, "focus", self.in_front))
        self.name_input.bind(text=self._on_text, on_text_validate=lambda *_: self.save())

    @property
    def purpose(self) -> str:
        """Return what the name is for."""
        return str(self.args["purpose"])

    def open(self, **args: Any) -> None:  # noqa: ANN401  (as AppPage)
        """Offer a name to change where there is one."""
        super().open(**args)
        self.title = TITLES[self.purpose]
        name = self.state.saved.name
        offered = {"rename": name, "copy": f"{name} copy"[:40]}.get(self.purpose, "")
        self.name_input.text = self.state.typed.get(f"name/{self.purpose}", offered)
        self.sentence = ""
        self._focus()

    def _on_text(self, _input: TextInput, text: str) -> None:
        self.sentence = ""
        self.state.note_typed(f"name/{self.purpose}", text)

    def save(self) -> None:
        """Do what the name is for."""
        name = self.name_input.text
        acts = {
            "new": self.state.add_board,
            "copy": self.state.copy_board,
            "keep": self.state.keep_as,
            "rename": self.state.rename_board,
        }
        purpose = self.purpose
        try:
            acts[purpose](name)
        except InputError as problem:
            self.sentence = refusal(problem, self.style)
            return
        self.name_input.focus = False
        self.state.note_typed(f"name/{purpose}", "")
        if purpose == "new":
            self.shell.replace("board")
        else:
            self.shell.back()


load_kv(__file__)
