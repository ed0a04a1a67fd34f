"""A real text field, opened over a Field block while one writes."""

import re
from collections.abc import Callable
from pathlib import Path
from typing import Any

from kivy import kivy_data_dir
from kivy.lang import Builder
from kivy.metrics import dp
from kivy.uix.textinput import TextInput

from screens.blocks import Field
from screens.paper.scale import LEAD, grown
from screens.theme import theme

WIDGETS = {
    *("TextInput", "Selector", "Image", "RelativeLayout", "Scatter"),
    *("TextInputCutCopyPaste", "BubbleContent", "BubbleButton", "-Button", "Label"),
}
"""What a text field is made of: its handles, and the bubble that cuts and pastes."""


def _read_rules() -> None:
    """Give Kivy its rules for a text field, where it was started without any (`environment`)."""
    path = Path(kivy_data_dir, "style.kv")
    if str(path) in Builder.files:
        return
    _, *rules = re.split(r"^(?=<)", path.read_text("utf-8"), flags=re.MULTILINE)
    wanted = (rule for rule in rules if WIDGETS & set(re.split("[<>,]", rule.partition("\n")[0])))
    Builder.load_string("".join(wanted), filename=str(path), rulesonly=True)


_read_rules()


class Writing(TextInput):
    """Sends the text at each letter, and stays over its block."""

    def __init__(self, paper: Any, block: Field, write: Callable[[str], None]) -> None:  # noqa: ANN401  (the paper)
        """Begin with what is written."""
        super().__init__(
            text=block.text,
            multiline=False,
            write_tab=False,
            # Kivy's own default asks for no kind of keyboard at all; words are helped along where the phone can.
            input_type="text",
            keyboard_suggestions=True,
            size_hint=(None, None),
            padding=(dp(10), dp(10)),
            cursor_width=dp(2),
            background_normal="",
            background_active="",
        )
        self.dress()
        self.paper, self.key = paper, block.key
        self.name = block.label
        self.bind(text=lambda _, text: write(text), on_text_validate=lambda *_: paper.close_writing())

    def dress(self) -> None:
        """Take the colours and the text size in force."""
        self.font_size = grown(LEAD, theme.scale)
        self.background_color, self.foreground_color = theme.colour("panel"), theme.colour("text")
        self.cursor_color = theme.colour("main")

    def place(self) -> None:
        """Stand where the block's frame is."""
        for spot in self.paper.spots():
            if spot.touch is not None and spot.touch.part == "field" and spot.text == self.name:
                spot.bring()
                self.pos, self.size = (spot.x, spot.y), (spot.width, spot.height)
                # In the middle, as the block shows it: nothing jumps when it is touched.
                self.padding = (dp(10), max(dp(10), (spot.height - self.line_height) / 2))
                return
        self.paper.close_writing()
