"""Graphics lost and found: the page is there again when the app comes back."""

import ctypes.util
import os
import subprocess
import sys
from pathlib import Path

import pytest
from PIL import Image, ImageChops

ROOT = Path(__file__).parents[2]
GRAPHICS = ctypes.util.find_library("GL") and ctypes.util.find_library("EGL")


@pytest.mark.skipif(sys.platform != "linux" or not GRAPHICS, reason="libgl1 and libegl1 are not installed")
def test_a_page_is_painted_anew_when_the_phone_took_its_graphics_and_can_be_handed_on_as_a_picture(
    tmp_path: Path,
) -> None:
    clean = {
        name: value for name, value in os.environ.items() if not name.startswith(("KIVY_", "SDL_", "DISPLAY"))
    }
    done = subprocess.run(  # noqa: S603  (our own interpreter and program)
        [sys.executable, "-m", "tests.phone.lost", str(tmp_path)],
        cwd=ROOT,
        env={**clean, "HOME": str(tmp_path)},
        capture_output=True,
        text=True,
        check=False,
        timeout=120,
    )
    assert done.returncode == 0, done.stderr
    assert (tmp_path / "before.png").read_bytes() == (tmp_path / "after.png").read_bytes()
    shot, page = (Image.open(tmp_path / name).convert("RGB") for name in ("after.png", "page.png"))
    assert shot.size == page.size
    assert ImageChops.difference(shot, page).getbbox() is None
