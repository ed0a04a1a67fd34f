"""The microphone: a second or so of sound as 16-bit numbers, on a phone and on a desktop.

It is opened when a recording is asked for and shut when it is done. Nothing is kept but the numbers.
"""

from collections.abc import Callable
from threading import Thread
from typing import Any

from kivy.logger import Logger

from logic.answers.belt_sound import Recording, from_pcm
from screens.phone import permission
from screens.phone.java import in_app, on_android
from screens.tongue import _

RATE = 44100
SECONDS = 1.5
UNPROCESSED, VOICE, PLAIN = 9, 6, 1
"""Android's sources: without filters where the phone has that, else as for speech, else as it comes."""
MONO, SIXTEEN = 16, 2

RECORD = "android.permission.RECORD_AUDIO"

NONE_HERE = _("No microphone can be used here. Open a WAV file, or type the pitch from another meter.")
NOT_ALLOWED = _("The phone did not allow the microphone. Everything else works without it.")

Heard = Callable[[Recording | None, str], None]
"""Called in the app's own thread with the recording, or None and the sentence that says why not."""


class Microphone:
    """Records on request. One recording at a time."""

    def __init__(self) -> None:
        """Open nothing yet."""
        self.busy = False

    def record(self, heard: Heard, seconds: float = SECONDS) -> None:
        """Record, then call `heard` in the app's own thread."""
        if self.busy:
            return
        self.busy = True
        if on_android():
            self._ask_phone(heard, seconds)
        else:
            self._start(_from_desktop, heard, seconds)

    def _start(self, source: Callable[[float], bytes], heard: Heard, seconds: float) -> None:
        Thread(target=self._work, args=(source, heard, seconds), daemon=True).start()

    def _work(self, source: Callable[[float], bytes], heard: Heard, seconds: float) -> None:
        try:
            found: Recording | None = from_pcm(source(seconds), RATE)
            sentence = ""
        except Exception as problem:  # noqa: BLE001  (a phone raises what it likes; who listens must hear of it)
            Logger.info("Deckhand: nothing recorded: %s", problem)
            found, sentence = None, NONE_HERE
        in_app(lambda: self._done(heard, found, sentence))

    def _done(self, heard: Heard, found: Recording | None, sentence: str) -> None:
        self.busy = False
        heard(found, sentence)

    def _ask_phone(self, heard: Heard, seconds: float) -> None:
        def answered(leave: bool) -> None:  # noqa: FBT001  (yes or no)
            if leave:
                self._start(_from_phone, heard, seconds)
            else:
                self._done(heard, None, NOT_ALLOWED)

        permission.ask(RECORD, answered)


def _from_phone(seconds: float) -> bytes:
    """Return the bytes of Android's AudioRecord. Raises OSError when no source opens."""
    import jnius  # noqa: PLC0415  (only on a phone)

    try:
        audio = jnius.autoclass("android.media.AudioRecord")
        room = max(audio.getMinBufferSize(RATE, MONO, SIXTEEN), 8192)
        for source in (UNPROCESSED, VOICE, PLAIN):
            recorder = audio(source, RATE, MONO, SIXTEEN, room * 2)
            if recorder.getState() == 1:
                break
            recorder.release()
        else:
            raise OSError("no source opens")
        wanted, body, part = int(seconds * RATE) * 2, bytearray(), bytearray(room)
        recorder.startRecording()
        try:
            while len(body) < wanted:
                got = recorder.read(part, 0, room)
                if got <= 0:
                    raise OSError(f"the recorder gave {got}")
                body += part[:got]
        finally:
            recorder.stop()
            recorder.release()
        return bytes(body[:wanted])
    finally:
        jnius.detach()


def _from_desktop(seconds: float) -> bytes:
    """Return the bytes of the default input. Raises ImportError or OSError where there is none."""
    import sounddevice  # noqa: PLC0415  (not part of the app; used where a person has it)

    body = bytearray()
    wanted = int(seconds * RATE) * 2

    def take(part: Any, *_: object) -> None:  # noqa: ANN401  (a buffer of the library)
        body.extend(bytes(part))

    try:
        with sounddevice.RawInputStream(samplerate=RATE, channels=1, dtype="int16", callback=take):
            sounddevice.sleep(int(seconds * 1000) + 200)
    except sounddevice.PortAudioError as problem:
        raise OSError(str(problem)) from problem
    return bytes(body[:wanted])
