"""What is pasted into the keypad."""

import pytest

from tests.screens.session import Session


def test_what_is_pasted_is_taken_whole(app: Session, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr("kivy.core.clipboard.Clipboard.paste", lambda: "280-5M-15\n")
    app.front.go("board.value", key="drive.belt_teeth")
    app.key(ord("v"), "ctrl")
    app.settle()
    assert app.page.entry.text == "280-5M-15"
