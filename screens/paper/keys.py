"""A hardware keyboard: its keys go to whatever stands in front."""

from typing import Any, Protocol

from kivy.clock import Clock

from logic.keys import pasted

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


class TakesKeys(Protocol):
    """What can stand in front: the keypad is one."""

    def feed(self, characters: str) -> bool:
        """Take typed characters; return whether they were taken."""

    def press(self, name: str) -> bool:
        """Obey backspace, enter, escape, search, next, previous or an arrow; return whether it meant anything."""


class Keys:
    """Passes on what is typed.

    The shell makes one; the page in front sets `front` and clears it when it leaves.
    """

    def __init__(self, window: Any) -> None:  # noqa: ANN401 - Kivy's window has no public type.
        """Listen to the window."""
        self._window = window
        self.front: TakesKeys | None = None
        self._waiting = ""
        self._later = Clock.create_trigger(self._flush, 0)
        window.bind(on_key_down=self._down, on_textinput=self._typed)

    def stop(self) -> None:
        """Listen no longer."""
        self._window.unbind(on_key_down=self._down, on_textinput=self._typed)

    def _down(
        self, _window: object, code: int, _scan: int, character: str | None, modifiers: list[str], *_: object
    ) -> bool:
        if self.front is None:
            return False
        if {"ctrl", "alt", "meta"} & set(modifiers):
            if code == FIND and "alt" not in modifiers:
                return self.front.press("search")
            return code == PASTE and "alt" not in modifiers and self.front.feed(pasted(_clipboard()))
        name = NAMED.get(code)
        if name == "next" and "shift" in modifiers:
            name = "previous"
        if name:
            return self.front.press(name)
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
        return self.front is not None and self.front.feed(characters)

    def _flush(self, _elapsed: float) -> None:
        typed, self._waiting = self._waiting, ""
        if typed and self.front is not None:
            self.front.feed(typed)


def _clipboard() -> str:
    """Return what was copied; the clipboard is opened when it is wanted, not at the start."""
    from kivy.core.clipboard import Clipboard  # noqa: PLC0415  (said above)

    return Clipboard.paste() or ""
