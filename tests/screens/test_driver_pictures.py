"""Pictures from real graphics off the screen, in a process apart from the window without pixels."""

import os
import struct
import subprocess
import sys
import zlib
from pathlib import Path

import pytest

ROOT = Path(__file__).parents[2]
SCRIPT = """
import sys
from pathlib import Path
from screens.driver import prepare
prepare(Path(sys.argv[1]) / "home", width=412, height=915)
from kivy.core.window import Window
if Window is None:
    sys.exit(3)
from screens.scenes import start
from screens.scenes.held import Held
driver = start(Path(sys.argv[1]) / "data")
for number, (width, height, name) in enumerate([(412, 915, "day"), (320, 568, "night")]):
    driver.resize(width, height)
    Held(driver).set_person(theme=name)
    driver.settle()
    driver.shot(Path(sys.argv[1]) / f"{number}.png")
driver.stop()
assert "PIL" not in sys.modules
"""


def pixels(path: Path) -> tuple[int, int, bytes]:
    """Return width, height and the first row's colour bytes of a PNG, read from its bytes alone."""
    data = path.read_bytes()
    assert data[:8] == b"\x89PNG\r\n\x1a\n"
    width, height, _depth, kind = struct.unpack(">IIBB", data[16:26])
    body, place = b"", 8
    while place < len(data):
        length, name = struct.unpack(">I4s", data[place : place + 8])
        if name == b"IDAT":
            body += data[place + 8 : place + 8 + length]
        place += length + 12
    return width, height, zlib.decompress(body)[1 : 1 + (3 if kind == 2 else 4)]


def test_a_picture_has_the_size_of_the_window_and_the_ground_of_the_theme(tmp_path: Path) -> None:
    run = subprocess.run(  # noqa: S603 - our own script.
        [sys.executable, "-c", SCRIPT, str(tmp_path)],
        cwd=ROOT,
        env={name: value for name, value in os.environ.items() if not name.startswith(("KIVY_", "SDL_"))},
        capture_output=True,
        text=True,
        check=False,
        timeout=100,
    )
    if run.returncode == 3:
        pytest.skip("no graphics on this machine")
    assert (run.returncode, run.stderr) == (0, "")
    width, height, colour = pixels(tmp_path / "0.png")
    assert (width, height, colour[:3]) == (412, 915, bytes.fromhex("FAF9F6"))
    width, height, colour = pixels(tmp_path / "1.png")
    assert (width, height, colour[:3]) == (320, 568, bytes.fromhex("121316"))
