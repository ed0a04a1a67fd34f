"""The file dialog of a desktop, by a program that its system brings, each in a thread of its own.

plyer's is not used: on Linux it needs a module that Python 3.12 no longer has, and it holds the app up until it is closed.
"""

import os
import shutil
import subprocess
from collections.abc import Callable
from pathlib import Path
from threading import Thread

from kivy.logger import Logger
from kivy.utils import platform

from screens.phone.java import in_app

Answered = Callable[[Path | None, bool], None]
"""Called in the app's own thread with the path, None where none was chosen; and whether the dialog failed."""

CANCELLED = 1
"""Status by which each of the programs tells that nothing was chosen."""
NO_MAC = "-128"
"""What a Mac writes then; it ends with the same status where the dialog may not be shown at all."""

ZENITY = ("zenity", "--file-selection", "--title=Deckhand")
WINDOWS = (
    "[Console]::OutputEncoding = [Text.Encoding]::UTF8; Add-Type -AssemblyName System.Windows.Forms;"
    " $asked = New-Object System.Windows.Forms.{kind}FileDialog; $asked.FileName = '{name}';"
    " if ($asked.ShowDialog() -eq 'OK') {{ $asked.FileName }} else {{ exit 1 }}"
)

_shown: dict[str, subprocess.Popen[str]] = {}


def _zenity(name: str) -> list[str]:
    return [*ZENITY, *(("--save", "--confirm-overwrite", f"--filename={name}") if name else ())]


def _kdialog(name: str) -> list[str]:
    home = Path.home()
    return (
        ["kdialog", "--getsavefilename", str(home / name)]
        if name
        else ["kdialog", "--getopenfilename", str(home)]
    )


def _mac(name: str) -> list[str]:
    asked = f'choose file name default name "{name}"' if name else "choose file"
    return ["osascript", "-e", f"POSIX path of ({asked})"]


def _windows(name: str) -> list[str]:
    script = WINDOWS.format(kind="Save" if name else "Open", name=name)
    return ["powershell", "-NoProfile", "-STA", "-Command", script]


WAYS: dict[str, tuple[Callable[[str], list[str]], ...]] = {
    "linux": (_zenity, _kdialog),
    "macosx": (_mac,),
    "win": (_windows,),
}
"""How the dialog is asked for on each system: to open a file, or to save one of a name."""


def command(name: str) -> list[str] | None:
    """Return the command of the dialog here, None where there is none. `name` is that of a file to be saved, "" to open one.

    Names are those of `file_name`: letters, digits, "-" and ".".
    """
    if platform == "linux" and not (os.environ.get("DISPLAY") or os.environ.get("WAYLAND_DISPLAY")):
        return None
    for way in WAYS.get(platform, ()):
        found = way(name)
        if shutil.which(found[0]):
            return found
    return None


def ask(name: str, answered: Answered) -> bool:
    """Show the dialog; return False where there is none. While one is shown no other comes."""
    wanted = command(name)
    if wanted is None:
        return False
    if not _shown:
        try:
            _shown["it"] = subprocess.Popen(  # noqa: S603  (a program of the system, and a name of our making)
                wanted, stdin=subprocess.DEVNULL, stdout=subprocess.PIPE, stderr=subprocess.PIPE, text=True
            )
        except OSError as problem:
            Logger.warning("Deckhand: no dialog: %s", problem)
            return False
        Thread(target=_wait, args=(_shown["it"], answered), daemon=True).start()
    return True


def _wait(shown: "subprocess.Popen[str]", answered: Answered) -> None:
    try:
        said, amiss = shown.communicate()
    except (OSError, ValueError) as problem:
        said, amiss = "", str(problem)
    chosen = said.rstrip("\r\n") if shown.returncode == 0 else ""
    cancelled = shown.returncode == CANCELLED and (platform != "macosx" or NO_MAC in amiss)
    if not chosen and not cancelled:
        Logger.warning("Deckhand: the dialog failed: %s", amiss)

    def tell() -> None:
        _shown.pop("it", None)
        answered(Path(chosen) if chosen else None, not chosen and not cancelled)

    in_app(tell)


def close() -> None:
    """Take the dialog away, for an app that ends."""
    shown = _shown.pop("it", None)
    if shown is not None:
        shown.terminate()
