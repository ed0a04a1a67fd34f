"""The app as on a phone, touched by real fingers: run as a program of its own by `test_fingers.py`.

Kivy takes this machine for a phone (KIVY_BUILD). What only a phone has, the Java bridge, is stood in for; the window, its
graphics and the way of a touch through SDL and Kivy are the real ones: SDL is told of a finger as by a phone's own driver.
"""

import ctypes
import json
import struct
import sys
from pathlib import Path
from types import ModuleType
from typing import Any
from unittest.mock import MagicMock

FINGER, SCREEN = 7, 1
"""Numbers of the finger and of the touch screen, as the driver of a phone would give them."""
DIRECT = 0
"""A screen that is touched where it shows something, not a pad beside it."""


def stand_in_for_java() -> None:
    """Give what Kivy imports on a phone."""
    for name in ("jnius", "android", "android.permissions", "android.runnable"):
        module = ModuleType(name)
        module.__getattr__ = lambda _name: MagicMock()  # type: ignore[method-assign]
        sys.modules[name] = module


def addresses(library: Path, *names: str) -> dict[str, int]:
    """Return where functions stand in a 64-bit ELF file, those it keeps to itself too."""
    data = library.read_bytes()
    (start,) = struct.unpack_from("<Q", data, 0x28)
    size, count, _ = struct.unpack_from("<HHH", data, 0x3A)
    sections = [struct.unpack_from("<IIQQQQIIQQ", data, start + size * number) for number in range(count)]
    found: dict[str, int] = {}
    symbols = 2
    for kind, offset, length, link in ((one[1], one[4], one[5], one[6]) for one in sections):
        if kind != symbols:
            continue
        words = sections[link][4]
        for place in range(offset, offset + length, 24):
            name, _, _, _, value, _ = struct.unpack_from("<IBBHQQ", data, place)
            text = data[words + name : data.index(b"\0", words + name)].decode()
            if text in names:
                found[text] = value
    return found


class Finger:
    """A finger on SDL's own touch screen."""

    def __init__(self, driver: Any) -> None:
        """Find the functions by which a phone's driver tells SDL of a touch, and make the screen known."""
        import kivy  # noqa: PLC0415  (as above)

        library = next((Path(kivy.__file__).parents[1] / "Kivy.libs").glob("libSDL2-2*"))
        here = addresses(library, "SDL_Init", "SDL_AddTouch", "SDL_SendTouch")
        sdl = ctypes.CDLL(str(library))
        shift = ctypes.cast(sdl.SDL_Init, ctypes.c_void_p).value or 0
        shift -= here["SDL_Init"]
        add = ctypes.CFUNCTYPE(ctypes.c_int, ctypes.c_int64, ctypes.c_int, ctypes.c_char_p)
        send = ctypes.CFUNCTYPE(
            ctypes.c_int,
            ctypes.c_int64,
            ctypes.c_int64,
            ctypes.c_void_p,
            ctypes.c_int,
            *[ctypes.c_float] * 3,
        )
        add(shift + here["SDL_AddTouch"])(SCREEN, DIRECT, b"screen")
        self._send = send(shift + here["SDL_SendTouch"])
        sdl.SDL_GetWindowFromID.restype = ctypes.c_void_p
        self._window = sdl.SDL_GetWindowFromID(1)
        self._driver = driver

    def tap(self, target: Any) -> None:
        """Touch what shows a text, or a widget, and lift the finger again."""
        driver = self._driver
        driver.still()
        widget = driver.find(target) if isinstance(target, str) else target
        x, y = widget.middle if hasattr(widget, "middle") else widget.to_window(*widget.center)
        width, height = driver.window.size
        for down, pressure in ((1, 1.0), (0, 0.0)):
            self._send(SCREEN, FINGER, self._window, down, x / width, 1 - y / height, pressure)
            driver.window.mainloop()
            driver.frame(3)
        driver.settle()


def main(folder: Path) -> dict[str, object]:
    """Tap one thing after the other and return how often each has acted."""
    stand_in_for_java()
    from screens.driver import prepare  # noqa: PLC0415  (Kivy is told of the phone first)

    prepare(folder / "kivy", width=412, height=915)
    from kivy.config import Config  # noqa: PLC0415  (the same)
    from kivy.utils import platform  # noqa: PLC0415  (the same)

    # A phone's window fills the screen; here it must have the size of a phone's.
    Config.set("graphics", "fullscreen", "0")

    from logic.log import Note  # noqa: PLC0415  (the same)
    from screens.acts.keeping import Record  # noqa: PLC0415  (the same)
    from screens.scenes import start  # noqa: PLC0415  (the same)
    from screens.scenes.held import Held  # noqa: PLC0415  (the same)

    driver = start(folder / "data")
    finger, front, held = Finger(driver), driver.app.front, Held(driver)
    told: dict[str, object] = {"platform": platform}

    def count(kind: str) -> int:
        return len(held.store.page(board=held.saved.id, kind=kind, limit=99))

    held.do(Record(Note(note="dry"), undo="Noted"))
    driver.settle()
    noted = count("note")
    finger.tap("Undo")
    told["undo"] = noted - count("note")

    front.go("board")
    front.go("board.boards")
    driver.settle()
    depth = len(front.world.trail)
    finger.tap("Back")
    told["back"] = depth - len(front.world.trail)

    front.place("ride")
    driver.settle()
    finger.tap("TENSION CHECK")
    told["bar"] = len(front.world.trail) - 1
    finger.tap("1")
    told["key"] = front.paper.entry.text

    front.place("log")
    front.go("log.note")
    driver.settle()
    finger.tap("A few words")
    front.paper.writing.text = "Belt squeaks"
    before = count("note")
    driver.settle()
    finger.tap("Save")
    told["save"] = count("note") - before
    driver.stop()
    return told


if __name__ == "__main__":
    sys.stdout.write(json.dumps(main(Path(sys.argv[1]))))
