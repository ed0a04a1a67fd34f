"""Words said aloud by the phone's own voice. What is said later takes the place of what is being said."""

from collections.abc import Callable
from functools import partial
from threading import Thread
from typing import Any

from screens.phone.java import activity, amiss, in_app, java, on_android, words
from screens.phone.service import service
from screens.tongue import _

NO_VOICE = _("This phone has no offline voice. Add one in the phone's settings to hear items.")
NO_ENGLISH = _("The phone's voice speaks no English. Add English in the phone's settings.")

FLUSH, ADD, DONE = 0, 1, 0
"""Android's numbers: in place of what is said, after it, and that a call went well."""
LONGEST = 3900
"""Characters that are said at once; Android takes 4000."""

Told = Callable[[str], None]
"""Called in the app's own thread with "" once the phone speaks, or with the sentence that says why it does not."""


def parts(text: str, longest: int = LONGEST) -> list[str]:
    """Return a text cut between words into parts that a voice takes.

    >>> parts("one two three", 7)
    ['one two', 'three']
    """
    found: list[str] = []
    for word in text.split():
        if found and len(found[-1]) + 1 + len(word) <= longest:
            found[-1] += f" {word}"
        else:
            found.append(word[:longest])
    return found


def _listener(answered: Callable[[int], None]) -> Any:  # noqa: ANN401  (a class of Java's)
    from jnius import PythonJavaClass, java_method  # noqa: PLC0415  (there is none off a phone)

    class Began(PythonJavaClass):
        """Hears whether the voice is there."""

        __javainterfaces__ = ("android/speech/tts/TextToSpeech$OnInitListener",)

        @java_method("(I)V")
        def onInit(self, status: int) -> None:  # noqa: N802  (Android's name)
            answered(status)

    return Began()


class AndroidVoice:
    """Android's TextToSpeech, opened at the first word. Until it has answered, the last text waits."""

    def __init__(self) -> None:
        """Open nothing yet."""
        self._engine: Any = None
        self._listens: Any = None
        self._ready = False
        self._waits: tuple[str, Told] | None = None

    def say(self, text: str, told: Told) -> None:
        """Say a text."""
        if self._ready:
            self._speak(text, told)
            return
        self._waits = (text, told)
        if self._engine is not None:
            return
        with amiss("no voice", lambda: self._give_up(NO_VOICE)):
            # It is held here: Java alone would not keep it from going.
            self._listens = _listener(lambda status: in_app(lambda: self._began(status)))
            self._engine = java("android.speech.tts.TextToSpeech")(activity(), self._listens)

    def _began(self, status: int) -> None:
        if self._engine is None:
            return
        lacks = NO_VOICE
        with amiss("no voice"):
            if status == DONE:
                speaks = self._engine.setLanguage(java("java.util.Locale").ENGLISH) >= DONE
                lacks = "" if speaks else NO_ENGLISH
        if lacks:
            self._give_up(lacks)
            return
        self._ready = True
        waits, self._waits = self._waits, None
        if waits is not None:
            self._speak(*waits)

    def _speak(self, text: str, told: Told) -> None:
        taken = False
        with amiss("not said"):
            taken = all(
                self._engine.speak(words(part), ADD if place else FLUSH, None, f"deckhand {place}") == DONE
                for place, part in enumerate(parts(text))
            )
        if taken:
            told("")
        else:
            self._waits = (text, told)
            self._give_up(NO_VOICE)

    def _give_up(self, sentence: str) -> None:
        """Shut a voice that does not speak, so that the next word looks for one anew."""
        waits = self._waits
        self.close()
        if waits is not None:
            waits[1](sentence)

    def close(self) -> None:
        """Fall silent and let the phone's voice go."""
        engine, self._engine, self._listens = self._engine, None, None
        self._ready, self._waits = False, None
        if engine is not None:
            with amiss("the voice did not go"):
                engine.stop()
                engine.shutdown()


class DesktopVoice:
    """The voice of a desktop, through plyer: it waits until all is said, so it has a thread of its own."""

    def __init__(self) -> None:
        """Say nothing yet."""
        self._busy = False
        self._waits: tuple[str, Told] | None = None

    def say(self, text: str, told: Told) -> None:
        """Say a text after what is being said; one that still waits gives way to it."""
        self._waits = (text, told)
        if not self._busy:
            self._busy = True
            Thread(target=self._work, daemon=True).start()

    def _work(self) -> None:
        while self._waits is not None:
            (text, told), self._waits = self._waits, None
            try:
                service("tts").speak(text)
                sentence = ""
            except Exception:  # noqa: BLE001  (a voice that is missing fails in as many ways as there are systems)
                sentence = NO_VOICE
            in_app(partial(told, sentence))
        self._busy = False

    def close(self) -> None:
        """Begin nothing more."""
        self._waits = None


_voices: dict[str, AndroidVoice | DesktopVoice] = {}


def say(text: str, told: Told) -> None:
    """Say a text; `told` hears "" once it is said, or why it is not."""
    if "voice" not in _voices:
        _voices["voice"] = AndroidVoice() if on_android() else DesktopVoice()
    _voices["voice"].say(text, told)


def close() -> None:
    """Let the voice go."""
    voice = _voices.pop("voice", None)
    if voice is not None:
        voice.close()


__all__ = ["NO_ENGLISH", "NO_VOICE", "close", "parts", "say"]
