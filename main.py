"""Deckhand: options and environment, then the app."""

import os
import sys
import tempfile
from collections.abc import Callable
from datetime import datetime
from getopt import GetoptError, getopt
from pathlib import Path
from typing import Any, NamedTuple, NoReturn

from screens import ends, environment

SIDES = range(200, 4001)
"""What the side of a picture may measure in dp."""
LARGEST = (915, 1280)
"""The window that every size of the contact sheets fits into."""
TEXT = (1.0, 2.0)
"""The smallest and the largest text scale of a picture."""
THEMES = ("day", "night", "sun")

TAKES: dict[str, Callable[[str], Any]] = {
    "data": Path,
    "pictures": Path,
    "size": str,
    "text": str,
    "theme": str,
}
"""The options that say something, and how it is read."""
SWITCHES = ("demo", "sheets")
HELP = """Deckhand, for small belt-driven electric boards.

--data DIR        keep the data in this folder
--demo            start with the example boards
--pictures DIR    write a picture of every screen and leave
--sheets          with --pictures: contact sheets of all sizes and themes
--size WxH        size of the pictures in dp (412x915)
--text SCALE      text scale of the pictures (1.0)
--theme NAME      theme of the pictures: day, night or sun (day)
--help            say this and leave"""
"""Written out: what would write it by itself takes as long to load as a seventh of our own code."""


class Wanted(NamedTuple):
    """What was asked for on the command line."""

    data: Path | None = None
    demo: bool = False
    pictures: Path | None = None
    sheets: bool = False
    size: str = "412x915"
    text: str = "1.0"
    theme: str = "day"


def options(arguments: list[str]) -> Wanted:
    """Return what was asked for. Leaves with a sentence for what cannot be asked for."""
    try:
        found, rest = getopt(arguments, "h", ["help", *(f"{name}=" for name in TAKES), *SWITCHES])
    except GetoptError as problem:
        _refuse(str(problem))
    if rest:
        _refuse(f"{rest[0]} is no option")
    said = {name.lstrip("-"): text for name, text in found}
    if said.keys() & {"h", "help"}:
        print(HELP)
        sys.exit(0)
    if said.get("theme", "day") not in THEMES:
        _refuse(f"--theme {said['theme']}: choose one of {', '.join(THEMES)}")
    read: dict[str, Any] = {name: TAKES[name](text) if name in TAKES else True for name, text in said.items()}
    return Wanted(**read)


def _refuse(why: str) -> NoReturn:
    print(f"{why}\n\n{HELP}", file=sys.stderr)
    sys.exit(2)


def size_of(text: str) -> tuple[int, int]:
    """Return width and height of a size such as 412x915. Leaves with a sentence for one that no screen has."""
    width, _, height = text.partition("x")
    if not all(side.isdecimal() and int(side) in SIDES for side in (width, height)):
        sys.exit(
            f"--size {text}: write it as width x height in dp, such as 412x915,"
            f" each from {SIDES[0]} to {SIDES[-1]}"
        )
    return int(width), int(height)


def scale_of(text: str) -> float:
    """Return a text scale such as 1.3. Leaves with a sentence for one outside what the app offers."""
    try:
        scale = float(text)
    except ValueError:
        scale = 0.0
    if not TEXT[0] <= scale <= TEXT[1]:
        sys.exit(f"--text {text}: write a number from {TEXT[0]} to {TEXT[1]}")
    return scale


def data_folder(chosen: Path | None) -> Path:
    """Return where boards and log are kept, made if need be."""
    if chosen is not None:
        return chosen
    if "ANDROID_ARGUMENT" in os.environ:
        return Path(os.environ["ANDROID_PRIVATE"]) / "deckhand"
    from platformdirs import user_data_path  # noqa: PLC0415  (not wanted on a phone)

    return user_data_path("deckhand")


def main(arguments: list[str]) -> int:
    """Open the app, or write its pictures. Returns the exit status."""
    wanted = options(arguments)
    size, text = size_of(wanted.size), scale_of(wanted.text)
    if wanted.pictures is None:
        return run(wanted, size, text)
    return ends.guarded(wanted.pictures, lambda: run(wanted, size, text))


def run(wanted: Wanted, size: tuple[int, int], text: float) -> int:
    """Open the window and do what is wanted. Returns the exit status."""
    if wanted.pictures is not None:
        wanted.pictures.mkdir(parents=True, exist_ok=True)
    environment.prepare(Path(tempfile.gettempdir()) / "deckhand-kivy")
    sheets = wanted.sheets and wanted.pictures is not None
    environment.configure(LARGEST if sheets else size)
    window = environment.open_window()
    if window is None:
        print(f"Deckhand needs a window with OpenGL: install {environment.PACKAGES}.", file=sys.stderr)
        return environment.NO_WINDOW
    environment.phone_metrics()
    pictures = wanted.pictures
    if pictures is None and not environment.has_screen(window):
        pictures = Path(tempfile.mkdtemp(prefix="deckhand-pictures-"))
        print(f"No screen here: writing pictures of every screen to {pictures}")
    if sheets and pictures is not None:
        from screens.scenes.sheets import write_sheets  # noqa: PLC0415  (after Kivy's environment is set)

        return ends.guarded(pictures, lambda: write_sheets(pictures))
    if pictures is not None:
        from screens.scenes import write_pictures  # noqa: PLC0415  (after Kivy's environment is set)

        return ends.guarded(pictures, lambda: write_pictures(pictures, size, text, wanted.theme))
    from screens import faults  # noqa: PLC0415  (after Kivy's environment is set)

    data = data_folder(wanted.data)
    faults.watch(data, lambda: datetime.now().astimezone())
    from screens.app import DeckhandApp  # noqa: PLC0415  (the same)
    from screens.words.storage import sentence, status  # noqa: PLC0415  (the same)

    app = DeckhandApp(data, demo=wanted.demo)
    if app.problem is not None:
        print(sentence(app.problem), file=sys.stderr)
    app.run()
    return 0 if app.problem is None else status(app.problem)


if __name__ == "__main__":
    sys.exit(main(sys.argv[1:]))
