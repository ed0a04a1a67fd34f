"""Starts Kivy without a screen and without a sound, once, for all screen tests of the process."""

import tempfile
from pathlib import Path

from screens.driver import prepare

# Before any test module imports Kivy: its window is made at the first import and lasts as long as the process.
prepare(Path(tempfile.mkdtemp(prefix="deckhand-tests-")) / "kivy", mock=True)
