"""When the file cannot be opened or written, or a page fails: one sentence on the screen, never a traceback."""

from kivy.base import ExceptionHandler, ExceptionManager

from logic.store.errors import CannotStore
from screens.acts import Act
from screens.blocks import Button, Words
from screens.front import Front
from screens.page import Foot, Page
from screens.tongue import _
from screens.words.storage import sentence


class TryAgain(Act):
    """Try once more to open the data."""


def trouble_page(problem: Exception) -> Page:
    """Return the page that says why the data cannot be opened."""
    return Page(
        title=_("The data cannot be opened"),
        blocks=(Words("why", sentence(problem), role="lead"),),
        foot=Foot(main=Button(_("Try again"), TryAgain())),
        places=False,
    )


class TellsTrouble(ExceptionHandler):
    """Says that a change could not be saved, or that a page failed, and lets the app go on."""

    def __init__(self, front: Front) -> None:
        """Speak through what is in front."""
        self.front = front

    def handle_exception(self, problem: BaseException) -> int:
        """Take up every fault; what ends a program on purpose goes on up."""
        if isinstance(problem, CannotStore):
            self.front.note(problem)
            self.front.tell(sentence(problem))
        elif isinstance(problem, Exception):
            self.front.note(problem)
            self.front.cannot_show(problem)
        else:
            return int(ExceptionManager.RAISE)
        return int(ExceptionManager.PASS)
