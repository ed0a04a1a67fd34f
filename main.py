"""Deckhand: options and environment, then the app."""

import argparse
import os
import sys
import tempfile
from datetime import datetime
from pathlib import Path

from screens import ends, environment

SIDES = range(200, 4001)
"""What the side of a picture may measure in dp."""
LARGEST = (915, 1280)
"""The window that every size of the contact sheets fits into."""
TEXT = (1.0, 2.0)
"""The smallest and the largest text scale of a picture."""


def options(arguments: list[str]) -> argparse.Namespace:
    """Return what was asked for on the command line."""
    parser = argparse.ArgumentParser(
        prog="main.py", description="Deckhand, for small belt-driven electric boards."
    )
    parser.add_argument("--data", type=Path, metavar="DIR", help="keep the data in this folder")
    parser.add_argument("--demo", action="store_true", help="start with the example boards")
    parser.add_argument(
        "--pictures", type=Path, metavar="DIR", help="write a picture of every screen and leave"
    )
    parser.add_argument(
        "--sheets", action="store_true", help="with --pictures: contact sheets of all sizes and themes"
    )
    parser.add_argument("--size", default="412x915", metavar="WxH", help="size of the pictures in dp")
    parser.add_argument("--text", default="1.0", metavar="SCALE", help="text scale of the pictures")
    parser.add_argument(
        "--theme", choices=("day", "night", "sun"), default="day", help="theme of the pictures"
    )
    return parser.parse_args(arguments)


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


def run(wanted: argparse.Namespace, size: tuple[int, int], text: float) -> int:
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
    if sheets:
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
