"""What the phone is asked for: say, share, hand a page on, listen. What it answers comes back as an act."""

from typing import TYPE_CHECKING, Protocol

from kivy.core.window import Window

from screens.acts import Act, HandOn, Heard, Listen, OpenSound, ReadOut, Say, Share, Turn
from screens.page import Page
from screens.phone import light, share, speech
from screens.told.speech import as_speech
from screens.told.text import as_text
from screens.words.spoken import spoken
from screens.world import World

if TYPE_CHECKING:
    from logic.answers.belt_sound import Recording
    from screens.phone.microphone import Microphone


class Asks(Protocol):
    """Who asks the phone: it shows a page of a world and carries acts out."""

    world: World

    @property
    def page(self) -> Page:
        """Return the page in front."""

    def perform(self, act: Act) -> None:
        """Carry an act out."""

    def tell(self, text: str, *, stays: bool = True) -> None:
        """Say something over the places."""


class Outside:
    """Does what an act leaves to the phone."""

    def __init__(self, front: Asks) -> None:
        """Open nothing yet; a file that is dropped on the window is read as a recording."""
        self.front = front
        self.microphone: Microphone | None = None
        self._open = True
        Window.bind(on_drop_file=self._dropped)

    def __call__(self, act: Act) -> None:
        """Do one act."""
        front = self.front
        if isinstance(act, Say):
            self.say(act.text)
        elif isinstance(act, ReadOut):
            self.say(as_speech(front.page))
        elif isinstance(act, Share):
            front.perform(Turn({"_said": share.share(act.text, act.title)}))
        elif isinstance(act, HandOn):
            front.tell(share.share(as_text(front.page), front.page.title), stays=False)
        elif isinstance(act, Listen):
            self._listen()

    def say(self, text: str) -> None:
        """Say something; where the phone cannot, the page says so."""
        speech.say(spoken(text), self._hint)

    def _hint(self, sentence: str) -> None:
        if self._open and self.front.world.args.get("_hint") != (sentence or None):
            self.front.perform(Turn({"_hint": sentence or None}))

    def _listen(self) -> None:
        if self.microphone is None:
            from screens.phone.microphone import Microphone  # noqa: PLC0415  (nobody plucks at the start)

            self.microphone = Microphone()
        self.microphone.record(self._heard)

    def _heard(self, recording: "Recording | None", sentence: str) -> None:
        if self._open:
            self.front.perform(Heard(recording, sentence))

    def _dropped(self, _window: object, path: bytes, *_: object) -> None:
        self.front.perform(OpenSound(path.decode("utf-8", "replace")))

    def release(self) -> None:
        """Let go of the window; what is still being recorded is heard by nobody."""
        self._open = False
        speech.close()
        light.switch(on=False)
        Window.unbind(on_drop_file=self._dropped)
