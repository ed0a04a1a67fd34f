"""What Kivy must find set before it is imported, and whether this machine can open a window at all."""

import gc
import logging
import os
import sys
from pathlib import Path
from types import SimpleNamespace

PACKAGES = "libgl1 libegl1"
PHONES = ("android", "ios")
NO_WINDOW = 3
"""Exit status where no window and no OpenGL can be had."""

COLLECT = (15_000, 5, 3)
"""When Python looks for dead cycles. At its own settings it does so many times while one page of widgets is built and
finds none; much rarer than this, pages that were left pile up."""

NOISE = ("Input: MTDev", "Cutbuffer: Unable", "Clipboard: Unable", "Window: Unable to find any valuable")


class _Quiet(logging.Filter):
    """Drops what Kivy says about devices and clipboards that the app does not use."""

    def filter(self, record: logging.LogRecord) -> bool:
        return not record.getMessage().startswith(NOISE)


def prepare(home: Path) -> None:
    """Set what Kivy reads at import. `home` is where it may keep its own files."""
    gc.set_threshold(*COLLECT)
    home.mkdir(parents=True, exist_ok=True)
    os.environ.update(
        KIVY_NO_ARGS="1",
        KIVY_NO_CONFIG="1",
        KIVY_NO_FILELOG="1",
        KIVY_LOG_MODE="PYTHON",
        KIVY_HOME=str(home),
        KIVY_IMAGE="sdl2",
        KIVY_TEXT="sdl2",
        KIVY_CLIPBOARD="sdl2",
        KIVY_WINDOW="sdl2",
    )
    logger = logging.getLogger("kivy")
    logger.addFilter(_Quiet())
    logger.setLevel(logging.ERROR)
    # Pint would import numpy where the developers' tools have brought it, which doubles its start; the app needs none.
    sys.modules.setdefault("numpy", None)  # type: ignore[arg-type]


def configure(size: tuple[int, int] | None) -> None:
    """Set Kivy's own options: the window's size, and no input devices but the screen and the keyboard.

    On a phone the window itself hands the fingers on. The mouse is for desktops only: a phone sends a mouse's click for
    each finger as well, and every tap would act twice.
    """
    from kivy.config import Config  # noqa: PLC0415  (Kivy may be imported only after `prepare`)
    from kivy.utils import platform  # noqa: PLC0415  (the same)

    Config.set("kivy", "exit_on_escape", "0")
    for name, _ in Config.items("input"):
        Config.remove_option("input", name)
    if platform not in PHONES:
        Config.set("input", "mouse", "mouse,disable_multitouch")
    Config.set("graphics", "multisamples", "0")
    if size is not None:
        Config.set("graphics", "width", str(size[0]))
        Config.set("graphics", "height", str(size[1]))


def _import_lean() -> None:
    """Import Kivy's clock and its language without what they bring for others: together more than a quarter of a start.

    The clock brings asyncio, for apps that run inside its loop. The language brings the rules of all of Kivy's widgets;
    those of the one widget here that has some are read when it is (`screens.paper.writing`).
    """
    # Whoever wants the real one later imports it; only the clock keeps this, for the loop that is not run.
    stands_in = sys.modules.setdefault("asyncio", SimpleNamespace(wait_for=None))  # type: ignore[arg-type]
    import kivy.clock  # noqa: PLC0415  (Kivy may be imported only after `prepare`)

    if isinstance(stands_in, SimpleNamespace):
        del sys.modules["asyncio"]
    from kivy.resources import Cache  # noqa: PLC0415  (the same)

    found = ("kv.resourcefind", str(Path(kivy.kivy_data_dir, "style.kv")))
    Cache.append(*found, os.devnull)
    import kivy.lang.builder  # noqa: PLC0415  (the same)

    Cache.remove(*found)


def open_window() -> object | None:
    """Open the window, on a Kivy without what Deckhand does not use. Returns None where no window or OpenGL can be had."""
    _import_lean()
    try:
        from kivy.core.window import Window  # noqa: PLC0415  (Kivy may be imported only after `prepare`)
    except (ImportError, RuntimeError):
        return None
    return Window


def phone_metrics() -> None:
    """Set a phone's own density: Kivy would multiply it by the phone's text size, and text size is a setting here."""
    if "ANDROID_ARGUMENT" not in os.environ:
        return
    from kivy.metrics import Metrics  # noqa: PLC0415  (Kivy may be imported only after `prepare`)

    try:
        from jnius import autoclass  # noqa: PLC0415  (there is none off the phone)

        activity = autoclass("org.kivy.android.PythonActivity").mActivity
        Metrics.density = activity.getResources().getDisplayMetrics().density
    except Exception as problem:  # noqa: BLE001  (whatever Java raises: Kivy's own density is a size one can read)
        logging.getLogger(__name__).warning("the phone's density cannot be read: %s", problem)
        return
    Metrics.fontscale = 1.0


def has_screen(window: object) -> bool:
    """Tell whether a person can see the window: Linux without a display gives an off-screen one."""
    if sys.platform != "linux" or "ANDROID_ARGUMENT" in os.environ:
        return True
    return window.get_window_info() is not None  # type: ignore[attr-defined]
