"""One touch is one act on a phone: the app in a process of its own, touched through SDL as a phone's driver touches it."""

import ctypes.util
import json
import os
import subprocess
import sys
from pathlib import Path

import pytest

ROOT = Path(__file__).parents[2]
GRAPHICS = ctypes.util.find_library("GL") and ctypes.util.find_library("EGL")
ONE_ACT = {"undo": 1, "back": 1, "bar": 1, "key": "1", "save": 1}


@pytest.mark.skipif(sys.platform != "linux" or not GRAPHICS, reason="libgl1 and libegl1 are not installed")
def test_one_touch_of_a_phone_is_one_act(tmp_path: Path) -> None:
    """Undo, Back, a bar, a key of the keypad and Save: SDL tells a phone's app of each finger twice over."""
    clean = {
        name: value for name, value in os.environ.items() if not name.startswith(("KIVY_", "SDL_", "DISPLAY"))
    }
    done = subprocess.run(  # noqa: S603  (our own interpreter and program)
        [sys.executable, "-m", "tests.screens.finger", str(tmp_path)],
        cwd=ROOT,
        env={**clean, "HOME": str(tmp_path), "ANDROID_APP_PATH": str(tmp_path), "KIVY_BUILD": "android"},
        capture_output=True,
        text=True,
        check=False,
        timeout=120,
    )
    assert done.returncode == 0, done.stderr
    assert json.loads(done.stdout.splitlines()[-1]) == {"platform": "android", **ONE_ACT}
