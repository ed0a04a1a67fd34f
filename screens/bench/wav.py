"""Open a recording that was made elsewhere: a WAV file by its path, or one dropped on the window."""

from pathlib import Path
from typing import Any

from kivy.core.window import Window
from kivy.properties import ObjectProperty, StringProperty
from kivy.uix.textinput import TextInput

from logic.answers.belt_sound import from_wav
from logic.errors import InputError
from screens.app_page import AppPage
from screens.board import name  # noqa: F401  (its line of text is used in the kv file)
from screens.widgets.load import load_kv
from screens.words import refusal

LARGEST = 50_000_000
"""Bytes of the largest file that is opened."""


class WavPage(AppPage):
    """Asks for a path and gives the recording to the sound page."""

    sentence = StringProperty()
    path_input = ObjectProperty()

    def __init__(self, *args: Any, **kwargs: Any) -> None:  # noqa: ANN401  (as AppPage)
        """Build without the four places."""
        super().__init__(*args, title="Open a recording", nav=False, chip=False, **kwargs)
        self.path_input.bind(text=self._on_text, on_text_validate=lambda *_: self.take())
        Window.bind(on_drop_file=self._on_drop)

    def open(self, **args: Any) -> None:  # noqa: ANN401  (as AppPage)
        """Offer the path typed last."""
        super().open(**args)
        self.path_input.text = self.state.typed.get("wav", "")
        self.sentence = ""

    def _on_text(self, _input: TextInput, text: str) -> None:
        self.sentence = ""
        self.state.note_typed("wav", text)

    def _on_drop(self, _window: object, path: bytes, *_: object) -> None:
        if self.in_front:
            self.path_input.text = path.decode("utf-8", "replace")
            self.take()

    def take(self) -> None:
        """Read the file and go back with what was heard."""
        path = Path(self.path_input.text.strip()).expanduser()
        try:
            if not path.is_file():
                self.sentence = "There is no file at this path."
                return
            if path.stat().st_size > LARGEST:
                self.sentence = "This file is too large: a few seconds are enough."
                return
            recording = from_wav(path.read_bytes())
        except InputError as problem:
            self.sentence = refusal(problem, self.style)
            return
        except OSError:
            self.sentence = "This file cannot be read."
            return
        self.path_input.focus = False
        self.shell.back()
        self.shell.page.take_recording(recording)


load_kv(__file__)
