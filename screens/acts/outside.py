"""Acts that want something outside the app, put into `World.out` and done by the phone; and what comes back."""

from typing import TYPE_CHECKING

from screens.acts import Act

if TYPE_CHECKING:
    from logic.answers.belt_sound import Recording


class Wanted(Act):
    """Something that is left to the phone as it is."""


class Say(Wanted):
    """Say something aloud."""

    text: str


class Share(Wanted):
    """Hand a text to another app."""

    title: str
    text: str


class HandOn(Wanted):
    """Hand what the page in front says to another app."""


class HandOnFile(Wanted):
    """Hand the page in front on as a file: "picture" as it is on the screen, "page" as HTML with its drawings."""

    kind: str


class ReadOut(Wanted):
    """Say what the page in front says aloud."""


class PickFile(Wanted):
    """Let the person choose a file by the phone's own page; it is then opened as one that is dropped on the window."""


class PutFile(Wanted):
    """Let the person choose where a file that was written here goes."""

    path: str


class SendFile(Wanted):
    """Hand a file that was written here to another app."""

    path: str
    title: str


class PrintOut(Act):
    """Print a page of HTML by the phone's own page for it; a desktop writes the build sheet as a PDF."""

    title: str
    html: str


class AllowNotes(Wanted):
    """Ask for leave to show notes, where the phone wants to be asked."""


class Shine(Wanted):
    """Switch the phone's light on, or off again."""


class Tilt(Act):
    """Feel how the phone lies; what it felt comes back as Tilted, for the question of a grade."""

    key: str


class Tilted(Act):
    """What was felt, along the short edge, the long edge and out of the screen in m/s2, or why there is nothing."""

    key: str
    gravity: tuple[float, float, float] | None
    sentence: str = ""


class Listen(Act):
    """Record a pluck; what is heard comes back as Heard."""


class Heard(Act):
    """What the microphone gave, or the sentence that says why it gave nothing."""

    recording: "Recording | None"
    sentence: str = ""


class OpenSound(Act):
    """Read a recording that was made elsewhere, by the path of its file."""

    path: str
