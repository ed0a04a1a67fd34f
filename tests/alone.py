"""Runs our own programs in a process of their own, as from a terminal with an empty home."""

import ctypes.util
import os
import subprocess
import sys
from pathlib import Path

import pytest

ROOT = Path(__file__).parents[1]

GRAPHICS = bool(ctypes.util.find_library("GL") and ctypes.util.find_library("EGL"))
NEEDS_GRAPHICS = pytest.mark.skipif(
    sys.platform != "linux" or not GRAPHICS, reason="libgl1 and libegl1 are not installed"
)


def surroundings(home: Path, **changes: str) -> dict[str, str]:
    """Return the environment without what this process was told of Kivy and of its screen."""
    clean = {
        name: value for name, value in os.environ.items() if not name.startswith(("KIVY_", "SDL_", "DISPLAY"))
    }
    return {**clean, "HOME": str(home), "TMPDIR": str(home), **changes}


def alone(
    home: Path, *arguments: str, folder: Path = ROOT, within: float = 120.0, **changes: str
) -> subprocess.CompletedProcess[str]:
    """Run Python with these arguments in a folder, and return how it ended and what it said."""
    return subprocess.run(  # noqa: S603  (our own interpreter and programs)
        [sys.executable, *arguments],
        cwd=folder,
        env=surroundings(home, **changes),
        capture_output=True,
        text=True,
        check=False,
        timeout=within,
    )
