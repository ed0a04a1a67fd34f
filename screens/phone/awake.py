"""The screen kept awake while a run is in front, at most a quarter of an hour after the last tap."""

from typing import Any

from kivy.clock import Clock
from kivy.core.window import Window

LONGEST = 15 * 60
"""Seconds after the last tap for which the screen is kept awake."""

_event: dict[str, Any] = {}


def hold() -> None:
    """Keep the screen awake from now on; call it again at each tap."""
    release()
    Window.allow_screensaver = False
    _event["end"] = Clock.schedule_once(lambda *_: release(), LONGEST)


def release() -> None:
    """Let the screen sleep again."""
    event = _event.pop("end", None)
    if event is not None:
        event.cancel()
    Window.allow_screensaver = True
