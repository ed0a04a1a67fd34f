"""Starts Kivy without a screen and without a sound, once, for all screen tests of the process."""

import atexit
import sys
import tempfile
from pathlib import Path

from screens.driver import prepare

# Before any test module imports Kivy: its window is made at the first import and lasts as long as the
# process.
HOME = tempfile.TemporaryDirectory(prefix="deckhand-tests-")
atexit.register(HOME.cleanup)
prepare(Path(HOME.name) / "kivy", mock=True)

# The app does without numpy and says so to Pint; scipy, which only tests use, needs it.
if sys.modules.get("numpy", sys) is None:
    del sys.modules["numpy"]
