"""One touch is one act on a phone: the app in a process of its own, touched through SDL as a phone's driver touches it."""

import json
from pathlib import Path

from tests.alone import NEEDS_GRAPHICS, alone

ONE_ACT = {"undo": 1, "back": 1, "bar": 1, "key": "1", "save": 1}


@NEEDS_GRAPHICS
def test_one_touch_of_a_phone_is_one_act(tmp_path: Path) -> None:
    """Undo, Back, a bar, a key of the keypad and Save: SDL tells a phone's app of each finger twice over."""
    done = alone(
        tmp_path,
        "-m",
        "tests.screens.finger",
        str(tmp_path),
        ANDROID_APP_PATH=str(tmp_path),
        KIVY_BUILD="android",
    )
    assert done.returncode == 0, done.stderr
    assert json.loads(done.stdout.splitlines()[-1]) == {"platform": "android", **ONE_ACT}
