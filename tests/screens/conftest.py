"""Starts Kivy without a screen and without a sound, once, for all screen tests of the process."""

import atexit
import gc
import sys
import tempfile
from collections.abc import Callable, Iterator
from pathlib import Path
from typing import Any

import pytest

from screens import environment
from screens.driver import prepare

# Before any test module imports Kivy: its window is made at the first import and lasts as long as the
# process.
HOME = tempfile.TemporaryDirectory(prefix="deckhand-tests-")
atexit.register(HOME.cleanup)
prepare(Path(HOME.name) / "kivy", mock=True)
environment.open_window()

# The app does without numpy and says so to Pint; scipy, which only tests use, needs it.
if sys.modules.get("numpy", sys) is None:
    del sys.modules["numpy"]

from screens.phone import dialogs  # noqa: E402  (Kivy is set up above)
from tests.screens.session import Session  # noqa: E402  (Kivy is set up above)

# No test waits for a person: where they run on a desktop, its dialog stays shut.
dialogs.WAYS.clear()

# What is loaded stays: the collector need not look at it again for each of hundreds of apps.
gc.collect()
gc.freeze()


@pytest.fixture
def begin(tmp_path: Path) -> Iterator[Callable[..., Session]]:
    """Give a function that starts the real app in an empty folder, with or without the example boards."""
    opened: list[Session] = []

    def start(**options: Any) -> Session:
        opened.append(Session(tmp_path / "data", **options))
        return opened[-1]

    yield start
    for session in opened:
        session.stop()


@pytest.fixture
def app(begin: Callable[..., Session]) -> Session:
    """Give the real app on the example boards, Towpath 36 in use."""
    return begin(demo=True)
