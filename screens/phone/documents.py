"""Files that a person chooses: opened from anywhere and written to anywhere, by the system's own page where there is one.

On Android these are ACTION_OPEN_DOCUMENT and ACTION_CREATE_DOCUMENT, which need no leave to the storage. On a desktop it is the
system's dialog. Where there is none a path is typed or a file dropped on the window, and what is written lies in a folder that
is named.
"""

import os
import shutil
from collections.abc import Callable
from pathlib import Path
from threading import Thread
from typing import Any

from kivy.logger import Logger

from screens.phone import dialogs
from screens.phone.java import activity, amiss, in_app, java, on_android
from screens.phone.share import TYPES
from screens.tongue import _

BY_PATH = _("Type where the file is, or drop it on this window.")
NOT_OPENED = _("The phone could not open this file. Save it on the phone first, then try again.")
NOT_WRITTEN = _("Nothing could be written there. Choose another place.")
TOO_LARGE = _("This file is over 64 MB. Deckhand writes none as large. Nothing was changed.")
WRITTEN = _("Written where you chose.")
LARGEST = 64 * 1024 * 1024
"""Bytes that are taken from outside."""
IN = "arrived"
"""Folder beside the data where what was opened lies until the next one."""

OPEN, CREATE = 2601, 2602
"""Numbers by which the answers are known."""
OK = -1
"""Android's number of a file that was chosen; anything else is a person who chose none."""

Opened = Callable[[Path | None, str], None]
"""Called in the app's own thread with the file, or None and why there is none: "" when the person chose none."""


class Documents:
    """One question at a time: a later one takes the place of the one before. `folder` holds what was opened."""

    def __init__(self, folder: Path) -> None:
        """Ask nothing yet."""
        self.folder = folder / IN
        self._bound = False
        self._answers: dict[int, Callable[[Any], None]] = {}

    def open(self, opened: Opened) -> None:
        """Let the person choose a file to be read."""
        if not on_android():

            def chosen(path: Path | None, failed: bool) -> None:  # noqa: FBT001  (yes or no)
                opened(path, BY_PATH if failed else "")

            if not dialogs.ask("", chosen):
                opened(None, BY_PATH)
            return
        with amiss("no file could be asked for", lambda: opened(None, NOT_OPENED)):
            intent = self._asking(java("android.content.Intent").ACTION_OPEN_DOCUMENT, "*/*")
            self._ask(OPEN, intent, lambda uri: self._read(uri, opened))

    def save(self, path: Path, done: Callable[[str], None]) -> None:
        """Let the person choose where a file goes; `done` hears where it went, or why not, "" when none was chosen."""
        here = _("Saved as {name} in the folder {folder}.").format(name=path.name, folder=path.parent.name)
        if not on_android():

            def chosen(place: Path | None, _failed: bool) -> None:  # noqa: FBT001  (yes or no)
                done(here if place is None else _copied_to(path, place))

            if not dialogs.ask(path.name, chosen):
                done(here)
            return
        with amiss("no place could be asked for", lambda: done(here)):
            kind = TYPES.get(path.suffix, "application/octet-stream")
            intent = self._asking(java("android.content.Intent").ACTION_CREATE_DOCUMENT, kind)
            intent.putExtra(java("android.content.Intent").EXTRA_TITLE, path.name)
            self._ask(CREATE, intent, lambda uri: self._write(path, uri, done))

    @staticmethod
    def _asking(action: str, kind: str) -> Any:  # noqa: ANN401  (an Intent)
        intent_class = java("android.content.Intent")
        intent = intent_class(action)
        intent.addCategory(intent_class.CATEGORY_OPENABLE)
        intent.setType(kind)
        return intent

    def _ask(self, number: int, intent: Any, answer: Callable[[Any], None]) -> None:  # noqa: ANN401  (an Intent)
        if not self._bound:
            from android import activity as results  # noqa: PLC0415  (there is none off a phone)

            results.bind(on_activity_result=self._result)
            self._bound = True
        self._answers[number] = answer
        activity().startActivityForResult(intent, number)

    def _result(self, number: int, result: int, intent: Any) -> None:  # noqa: ANN401  (an Intent, or None)
        """Take what was chosen, on Android's thread: all that follows is done in the app's own."""
        answer = self._answers.pop(number, None)
        if answer is not None:
            in_app(lambda: answer(intent.getData() if result == OK and intent is not None else None))

    def _read(self, uri: Any, opened: Opened) -> None:  # noqa: ANN401  (a Uri)
        if uri is None:
            opened(None, "")
            return
        path = self.folder / _name(uri)
        with amiss("not opened", lambda: opened(None, NOT_OPENED)):
            number = self._stream(uri, "r")

            def work() -> None:
                found, sentence = self._copied(number, path)
                in_app(lambda: opened(found, sentence))

            # A file that lies in a cloud comes as fast as the cloud gives it.
            Thread(target=work, daemon=True).start()

    def _copied(self, number: int, path: Path) -> tuple[Path | None, str]:
        try:
            with os.fdopen(number, "rb") as source:
                shutil.rmtree(self.folder, ignore_errors=True)
                self.folder.mkdir(parents=True)
                with path.open("wb") as target:
                    left = LARGEST + 1
                    while left > 0 and (part := source.read(min(left, 1 << 20))):
                        target.write(part)
                        left -= len(part)
        except OSError as problem:
            Logger.warning("Deckhand: not read: %s", problem)
            return None, NOT_OPENED
        return (None, TOO_LARGE) if left <= 0 else (path, "")

    def _write(self, path: Path, uri: Any, done: Callable[[str], None]) -> None:  # noqa: ANN401  (a Uri)
        if uri is None:
            done("")
            return
        said = NOT_WRITTEN
        with amiss("not written"):
            with os.fdopen(self._stream(uri, "wt"), "wb") as target, path.open("rb") as source:
                shutil.copyfileobj(source, target)
            said = WRITTEN
        done(said)

    @staticmethod
    def _stream(uri: Any, mode: str) -> int:  # noqa: ANN401  (a Uri)
        """Return the number of an open file, which is ours from now on. Raises OSError where none is given."""
        given = activity().getContentResolver().openFileDescriptor(uri, mode)
        if given is None:
            raise OSError("nothing was opened")
        return int(given.detachFd())


def _copied_to(path: Path, place: Path) -> str:
    """Copy a file where the person chose; return what came of it."""
    try:
        if not (place.exists() and place.samefile(path)):
            shutil.copyfile(path, place)
    except OSError as problem:
        Logger.warning("Deckhand: not written: %s", problem)
        return NOT_WRITTEN
    return _("Written as {name} in the folder {folder}.").format(name=place.name, folder=place.parent.name)


def _name(uri: Any) -> str:  # noqa: ANN401  (a Uri)
    """Return a name for the copy: its ending tells a recording and a copy of everything from a board."""
    last = str(uri.getLastPathSegment() or "")
    ending = Path(last.rpartition("/")[2]).suffix
    return f"file{ending if ending[1:].isalnum() else ''}"


__all__ = ["BY_PATH", "Documents"]
