"""A hardware keyboard: what is typed goes to what is entered, written, or come to by Tab on a paper."""

from typing import Any

from kivy.clock import Clock

from logic.keys import pasted
from screens.acts import Go
from screens.blocks import Field
from screens.paper.focus import MOVES
from screens.paper.paper import Paper
from screens.search_tool import SEARCH

NAMED = {
    8: "backspace",
    13: "enter",
    271: "enter",
    9: "next",
    27: "escape",
    273: "up",
    274: "down",
    275: "right",
    276: "left",
}
"""Kivy's key codes."""
PASTE, FIND = ord("v"), ord("f")
NUMBER_PAD = {**{256 + digit: str(digit) for digit in range(10)}, 266: ".", 267: "/", 269: "-"}


class Keys:
    """Hears the keyboard of a window for the paper in front."""

    def __init__(self, window: Any, paper: Paper) -> None:  # noqa: ANN401 - Kivy's window has no public type.
        """Listen to the window."""
        self._window, self._paper = window, paper
        self._waiting = ""
        self._later = Clock.create_trigger(self._flush, 0)
        window.bind(on_key_down=self._down, on_textinput=self._typed)

    def stop(self) -> None:
        """Listen no longer."""
        self._window.unbind(on_key_down=self._down, on_textinput=self._typed)

    def _down(
        self, _window: object, code: int, _scan: int, character: str | None, modifiers: list[str], *_: object
    ) -> bool:
        if "alt" in modifiers:
            return False
        if {"ctrl", "meta"} & set(modifiers):
            return self._look_for() if code == FIND else code == PASTE and self._feed(pasted(_clipboard()))
        name = NAMED.get(code)
        if name == "next" and "shift" in modifiers:
            name = "previous"
        if name:
            return self._press(name)
        # Where text input is on, the window also says what was typed, in the person's layout: that one
        # counts.
        # Where it is off (phones with a keyboard plugged in) nothing more comes, and the key's own sign
        # must do.
        typed = NUMBER_PAD.get(code) or character or ""
        if typed.isprintable():
            self._waiting += typed
            self._later()
        return False

    def _typed(self, _window: object, characters: str) -> bool:
        self._waiting = ""
        return self._feed(characters)

    def _flush(self, _elapsed: float) -> None:
        typed, self._waiting = self._waiting, ""
        if typed:
            self._feed(typed)

    def _feed(self, characters: str) -> bool:
        """Have what is typed or pasted entered; where no number is, it is for the field of text."""
        paper = self._paper
        if paper.writing is not None:
            return False
        if paper.entry is None and characters.isprintable():
            paper.focused.ask()
            field = next((block for block in paper.page.blocks if isinstance(block, Field)), None)
            if paper.entry is None and field is not None:
                paper.open_writing(field).text += characters
                return True
        return paper.entering.feed(characters)

    def _press(self, name: str) -> bool:
        """Obey a named key; return whether it meant anything here. Escape is else the app's way back."""
        paper = self._paper
        if paper.writing is not None:
            if name not in ("next", "previous", "escape"):
                return False
            paper.close_writing()
            if name == "escape":
                return True
        if name in MOVES:
            return paper.focused.obey(name, paper.entry)
        if name == "backspace":
            paper.entering.delete()
            return paper.entry is not None
        return name == "enter" and self._enter()

    def _enter(self) -> bool:
        """Touch what Tab has come to, else the main bar; where that does nothing, what is wrong is said."""
        paper = self._paper
        area, main = paper.focused.area(paper.entry), paper.page.foot.main
        if area is not None:
            paper.do(*area)
        elif main is not None and main.act is not None:
            paper.act(main.act)
        else:
            paper.entering.say_wrong()
            return paper.entry is not None
        return True

    def _look_for(self) -> bool:
        """Open the search, and its field: what is looked for can be typed at once."""
        paper = self._paper
        if paper.block(SEARCH) is None:
            paper.act(Go(SEARCH))
        field = paper.block(SEARCH)
        if isinstance(field, Field):
            paper.open_writing(field)
        return True


def _clipboard() -> str:
    """Return what was copied; the clipboard is opened when it is wanted, not at the start."""
    from kivy.core.clipboard import Clipboard  # noqa: PLC0415  (said above)

    return Clipboard.paste() or ""
