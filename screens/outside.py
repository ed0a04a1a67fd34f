"""What the phone is asked for: its voice, files, light, sensor, other apps. What it answers comes back as an act."""

from pathlib import Path
from typing import TYPE_CHECKING, Any, Protocol

from kivy.clock import Clock
from kivy.core.window import Window
from kivy.logger import Logger

from logic.exchange.files import write_whole
from screens.acts import Act, Go, Turn
from screens.acts.boards import Copy, OpenFile
from screens.acts.keeping import Settle
from screens.acts.outside import (
    AllowNotes,
    HandOn,
    HandOnFile,
    Heard,
    Listen,
    OpenSound,
    PickFile,
    PrintOut,
    PutFile,
    ReadOut,
    Say,
    SendFile,
    Share,
    Shine,
    Tilt,
    Tilted,
)
from screens.page import Page
from screens.phone import dialogs, incline, light, notices, share, speech
from screens.phone.documents import Documents
from screens.phone.java import on_android
from screens.told.html import as_html
from screens.told.text import as_speech, as_text
from screens.tongue import _
from screens.update.copies import FOLDER
from screens.words.spoken import spoken
from screens.world import World

if TYPE_CHECKING:
    from collections.abc import Callable

    from logic.answers.belt_sound import Recording
    from screens.phone.microphone import Microphone


UNTIL_LIFTED = 0.25
"""Seconds until a picture is taken of what was touched."""
TAKES = ("settings.files", "bench.sound")
"""Pages that take a file which is dropped on the window; from any other one the first of them opens."""
NO_FILE = _("No file could be made here. Share hands the page on as text.")


class Asks(Protocol):
    """Who asks the phone: it shows a page of a world and carries acts out."""

    world: World

    @property
    def page(self) -> Page:
        """Return the page in front."""

    def perform(self, act: Act) -> None:
        """Carry an act out."""

    def picture(self, path: Path) -> None:
        """Write what is on the screen as a PNG."""

    def tell(self, text: str, *, stays: bool = True) -> None:
        """Say something over the places."""


class Outside:
    """Does what an act leaves to the phone."""

    def __init__(self, front: Asks) -> None:
        """Open nothing yet; a file that is dropped on the window is opened."""
        self.front = front
        self.microphone: Microphone | None = None
        self.documents = Documents(front.world.store.path.parent)
        self._open = True
        Window.bind(on_drop_file=self._dropped)
        self._does: dict[type[Act], Callable[[Any], object]] = {
            Say: lambda act: self.say(act.text),
            ReadOut: lambda _act: self.say(as_speech(front.page)),
            Share: lambda act: front.perform(Turn({"_said": share.share(act.text, act.title)})),
            HandOn: lambda _act: front.tell(share.share(as_text(front.page), front.page.title), stays=False),
            # A picture not with the mark of the finger on it.
            HandOnFile: lambda act: Clock.schedule_once(lambda *_: self._hand_on(act.kind), UNTIL_LIFTED),
            PickFile: lambda _act: self.documents.open(self._picked),
            PutFile: lambda act: self.documents.save(Path(act.path), self._said),
            SendFile: lambda act: self._said(share.share_file(Path(act.path), act.title)),
            PrintOut: self._print_out,
            AllowNotes: lambda _act: notices.allow(self._notes),
            Shine: lambda _act: self._shine(),
            Listen: lambda _act: self._listen(),
            Tilt: lambda act: incline.feel(lambda *felt: self._perform(Tilted(act.key, *felt))),
        }

    def __call__(self, act: Act) -> None:
        """Do one act."""
        self._does[type(act)](act)

    def _hand_on(self, kind: str) -> None:
        front = self.front
        if not self._open:
            return
        ending = "png" if kind == "picture" else "html"
        path = front.world.store.path.parent / FOLDER / f"page-{front.world.now:%Y-%m-%d-%H%M%S}.{ending}"
        try:
            path.parent.mkdir(exist_ok=True)
            if kind == "picture":
                front.picture(path)
            else:
                write_whole(path, as_html(front.page))
            sentence = share.share_file(path, front.page.title)
        except Exception as problem:  # noqa: BLE001  (no room, or graphics that draw nothing into a file)
            Logger.warning("Deckhand: no picture: %s", problem)
            sentence = NO_FILE
        front.tell(sentence, stays=False)

    def _print_out(self, act: PrintOut) -> None:
        if on_android():
            from screens.phone import printing  # noqa: PLC0415  (few print)

            printing.hand(act.html, act.title, self._said)
        else:
            self._perform(Copy("sheet pdf"))

    def _shine(self) -> None:
        sentence = light.switch(on=not light.is_on())
        if sentence:
            self.front.tell(sentence, stays=False)

    def _perform(self, act: Act) -> None:
        """Carry out what the phone answered, unless the app has ended meanwhile."""
        if self._open:
            self.front.perform(act)

    def _said(self, sentence: str) -> None:
        self._perform(Turn({"_told": None, "_said": sentence or None}))

    def _picked(self, path: Path | None, sentence: str) -> None:
        if path is not None:
            self._arrived(str(path))
        elif sentence:
            self._perform(Turn({"_told": sentence, "_said": None}))

    def _arrived(self, path: str) -> None:
        """Open a file that came in: a recording where plucks are heard, else a board or a copy."""
        files = self.front.world.trail[-1].page == "settings.files"
        self._perform(OpenFile(path) if files else OpenSound(path))

    def _notes(self, leave: bool) -> None:  # noqa: FBT001  (yes or no)
        if not leave and self._open:
            self.front.perform(Settle({"remind": False}))
            self.front.tell(notices.NOT_ALLOWED, stays=False)

    def say(self, text: str) -> None:
        """Say something; where the phone cannot, the page says so."""
        speech.say(spoken(text), self._hint)

    def _hint(self, sentence: str) -> None:
        if self.front.world.args.get("_hint") != (sentence or None):
            self._perform(Turn({"_hint": sentence or None}))

    def _listen(self) -> None:
        if self.microphone is None:
            from screens.phone.microphone import Microphone  # noqa: PLC0415  (nobody plucks at the start)

            self.microphone = Microphone()
        self.microphone.record(self._heard)

    def _heard(self, recording: "Recording | None", sentence: str) -> None:
        self._perform(Heard(recording, sentence))

    def _dropped(self, _window: object, path: bytes, *_: object) -> None:
        if self.front.world.trail[-1].page not in TAKES:
            self._perform(Go("settings.files"))
        self._arrived(path.decode("utf-8", "replace"))

    def release(self) -> None:
        """Let go of the window; what is still being recorded is heard by nobody."""
        self._open = False
        speech.close()
        dialogs.close()
        light.switch(on=False)
        Window.unbind(on_drop_file=self._dropped)
